"""The blower's casing on its frame, with what sits on top (inlet elbow) and on the flank (relief valve, pressure line)."""

import math

from mathutils import Matrix, Vector

from fasteners import MM, fit
from shapes import (bevel, box, cast, cut, cyl, group, lathe, obround, place, prism, solid, tube)

Z0, HALF = 1.80, 0.55
UP = Matrix.Rotation(-math.pi / 2, 4, 'X')
RIGHT = Matrix.Rotation(math.pi / 2, 4, 'Z')
INLET_Z, FLANK_X = 3.22, 1.90
INLET = [(0.68 * math.cos(a), 0.68 * math.sin(a)) for a in (math.pi * 0.625 - i * math.pi / 4 for i in range(8))]
RELIEF = [(-0.28, 0.28), (0.28, 0.28), (0.28, -0.28), (-0.28, -0.28)]
FEET = [(-1.28, -0.62), (1.28, -0.62), (1.28, 0.62), (-1.28, 0.62)]


def casing(look):
    group('casing')
    parts = [prism(obround(1.0, HALF, Z0), -0.95, 0.95)]
    for y in (-0.42, 0.0, 0.42):
        parts.append(prism(obround(1.075, HALF, Z0), y - 0.045, y + 0.045))
    for y in (-0.86, 0.86):
        parts.append(prism(obround(1.09, HALF, Z0), y - 0.09, y + 0.09))
    parts += [box(2.9, 0.42, 0.20, (0, y, 0.50)) for y in (-0.62, 0.62)]
    parts += [box(0.16, 1.2, 0.7, (x, 0, 0.85)) for x in (-0.9, 0.9)] + [box(1.8, 1.0, 0.3, (0, 0, 0.85))]
    parts += [box(0.5, 0.34, 0.09, (x, y, 0.72), (s * 0.75, 'Y')) for x, s in ((-1.02, -1), (1.02, 1)) for y in (-0.62, 0.62)]
    parts += [cyl(0.22, 0.10, (x, y, 0.59), 'Z', 40) for x, y in FEET]
    parts += [cyl(0.60, 0.60, (0, 0, 2.88), 'Z'), cyl(0.80, 0.17, (0, 0, INLET_Z - 0.085), 'Z')]
    parts += [cyl(0.16, 0.20, (x, y, INLET_Z - 0.10), 'Z', 40) for x, y in INLET]
    parts += [cyl(0.36, 0.45, (1.62, 0, Z0 + 0.15), 'X'), box(0.13, 0.84, 0.84, (FLANK_X - 0.065, 0, Z0 + 0.15))]
    parts += [cyl(0.17, 0.40, (1.52, -0.60, Z0 - 0.25), 'X', 48)]
    skin = cast(solid('casing', parts, look), 0.019, 5)
    cut(skin, [cyl(0.44, 1.0, (0, 0, INLET_Z), 'Z')] + [cyl(5 * MM, 0.5, (x, y, INLET_Z), 'Z', 32) for x, y in INLET])
    group('casing')


def frame():
    group('casing')
    for y in (-0.62, 0.62):
        bar = solid('bar', [box(4.2, 0.5, 0.07, (0, y, 0.365)), box(4.2, 0.06, 0.36, (0, y - 0.22, 0.19)), box(4.2, 0.06, 0.36, (0, y + 0.22, 0.19))], 'frame', False)
        bevel(bar, 0.012, 2)
    bevel(solid('cross', [box(0.3, 1.24, 0.08, (x, 0, 0.30)) for x in (-1.95, 1.95)], 'frame', False), 0.012)


def feet(material, mark=None):
    """Four stacks; what can be seen of them: bolt, washer, foot, spacer, frame (washer and nut are underneath)."""
    group('casing')
    for n, (x, y) in enumerate(FEET, 1):
        fit('feet', n, (x, y, 0.64), 12, facing=UP, material=material, mark=mark)
        solid('spacer', [cyl(0.17, 0.05, (x, y, 0.42), 'Z', 48)], 'washer', True, 0.5)


def inlet(bolts, elbow=True, mark=None, screen=True):
    group('casing')
    if not elbow:
        solid('inlet face', [lathe([(0.45, 0), (0.80, 0), (0.80, 0.006), (0.45, 0.006)], (0, 0, INLET_Z), 'Z')], 'machined', False)
        for n, (x, y) in enumerate(INLET, 1):
            place('inlet', n, (x, y, INLET_Z), what='hole')
        return
    solid('inlet gasket', [lathe([(0.46, 0), (0.81, 0), (0.81, 0.03), (0.46, 0.03)], (0, 0, INLET_Z), 'Z')], 'gasket', True, 0.5)
    parts = [cyl(0.78, 0.16, (0, 0, INLET_Z + 0.11), 'Z')] + [cyl(0.165, 0.20, (x, y, INLET_Z + 0.13), 'Z', 40) for x, y in INLET]
    turn = 0.62
    for i in range(19):
        a = math.pi / 2 * i / 18
        at = Vector((-turn + turn * math.cos(a), 0, INLET_Z + 0.30 + turn * math.sin(a)))
        ring = cyl(0.47, 0.14, (0, 0, 0), 'Z', 64)
        ring.transform(Matrix.Translation(at) @ Matrix.Rotation(-a, 4, 'Y'))
        parts.append(ring)
    parts += [cyl(0.47, 0.30, (0, 0, INLET_Z + 0.22), 'Z', 64), cyl(0.58, 0.16, (-turn - 0.10, 0, INLET_Z + 0.30 + turn), 'X', 64)]
    parts += [box(0.05, 0.5, 0.5, (0.40, 0, INLET_Z + 0.40))]
    pipe = cast(solid('elbow', parts, bolts['casting']), 0.018, 6)
    cut(pipe, [cyl(0.40, 0.6, (-turn - 0.3, 0, INLET_Z + 0.30 + turn), 'X')])
    if screen:
        wires = [box(0.012, 0.80, 0.012, (-turn - 0.17, 0, INLET_Z + 0.30 + turn + d)) for d in (i * 0.08 for i in range(-4, 5))]
        wires += [box(0.012, 0.012, 0.80, (-turn - 0.17, d, INLET_Z + 0.30 + turn)) for d in (i * 0.08 for i in range(-4, 5))]
        solid('screen', wires, 'tin', False)
    for n, (x, y) in enumerate(INLET, 1):
        fit('inlet', n, (x, y, INLET_Z + 0.23), 10, facing=UP, material=bolts['inlet'], mark=mark)
    place('inlet elbow', 0, (-0.2, -0.45, INLET_Z + 0.75), what='part')


def relief(bolts, mark=None):
    """Valve on the right flank, its bonnet up, with lever and a lead seal's wire left out."""
    group('casing')
    z = Z0 + 0.15
    solid('relief gasket', [box(0.025, 0.82, 0.82, (FLANK_X + 0.01, 0, z))], 'gasket', False)
    body = [box(0.14, 0.80, 0.80, (FLANK_X + 0.095, 0, z)), cyl(0.30, 0.5, (FLANK_X + 0.35, 0, z), 'X', 64),
            cyl(0.36, 0.62, (FLANK_X + 0.52, 0, z + 0.10), 'Z', 64), cyl(0.30, 0.3, (FLANK_X + 0.52, 0, z - 0.32), 'Z', 64)]
    cast(solid('relief', body, bolts['casting']), 0.017, 6)
    bevel(solid('bonnet', [cyl(0.33, 0.20, (FLANK_X + 0.52, 0, z + 0.50), 'Z', 6)], 'brass', False), 0.02)
    solid('spring case', [lathe([(0.24, 0), (0.24, 0.42), (0.19, 0.50), (0, 0.50)], (FLANK_X + 0.52, 0, z + 0.58), 'Z')], 'brass', True, 0.5)
    bevel(solid('lever', [box(0.72, 0.07, 0.05, (FLANK_X + 0.76, 0, z + 1.12), (-0.25, 'Y'))], 'bolt', False), 0.012)
    solid('stem', [cyl(0.045, 0.3, (FLANK_X + 0.52, 0, z + 1.1), 'Z', 32)], 'ground')
    for n, (y, dz) in enumerate(RELIEF, 1):
        fit('relief', n, (FLANK_X + 0.165, y, z + dz), 10, ring=False, facing=RIGHT, material=bolts['inlet'], mark=mark)
    place('relief valve', 0, (FLANK_X + 0.52, -0.30, z + 0.35), what='part')


def lines(moved=False):
    """Pressure line with its union, earth lead with its lug, breather."""
    group('casing')
    y, z = -0.60, Z0 - 0.25
    bevel(solid('union', [cyl(0.17, 0.20, (1.82, y, z), 'X', 6)], 'brass', False), 0.012)
    solid('olive', [cyl(0.11, 0.2, (1.98, y, z), 'X', 40)], 'brass', True, 0.5)
    tube([(2.0, y, z), (2.35, y - 0.05, z), (2.62, y - 0.1, z - 0.35), (2.70, y - 0.05, 0.50), (2.95, y + 0.3, 0.10), (3.6, y + 0.6, 0.08)], 0.065, 'copper')
    place('pressure line union', 0, (1.82, y - 0.17, z), what='connection')
    lug = FEET[0]
    tube([(-1.72, -0.80, 0.47), (-1.95, -0.95, 0.50), (-2.25, -1.0, 0.20), (-2.8, -0.7, 0.05), (-3.6, -0.9, 0.05)], 0.045, 'earth')
    bevel(solid('lug', [box(0.26, 0.14, 0.03, (-1.62, -0.76, 0.435)), cyl(0.06, 0.16, (-1.76, -0.80, 0.47), 'X', 24)], 'copper', False), 0.006)
    fit('earth', 1, (-1.60, -0.76, 0.45), 6, facing=UP, material='brass')
    place('earth lead', 0, (-1.60, -0.76, 0.52), what='connection')


def rag_in_inlet():
    """The open port stopped with a rag: a temporary that must come out."""
    import bmesh
    from mathutils import noise
    group('casing')
    ball = bmesh.new()
    bmesh.ops.create_uvsphere(ball, u_segments=120, v_segments=80, radius=0.46)
    for v in ball.verts:
        d = v.co.normalized()
        fold = abs(noise.noise(d * 2.2 + Vector((3, 1, 7)))) * 0.45 + abs(noise.noise(d * 5.0)) * 0.16
        v.co = d * (0.42 + fold)
        v.co.z = v.co.z * 0.62
    rag = solid('rag', [ball], 'rag')
    rag.location = (0, 0, INLET_Z + 0.10)
    place('rag in inlet', 0, (0, -0.2, INLET_Z + 0.3), what='temporary')
