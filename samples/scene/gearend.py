"""The gear end, facing -Y: gear case, gear cover, timing gears."""

import math

import bmesh
from mathutils import Matrix, Vector

from casing import HALF, Z0
from fasteners import MM, fit
from shapes import (bake, bevel, box, cast, cut, cyl, group, lathe, obround, place, prism, round_obround, solid, tube, words)

COUNT, FACE, FRONT = 14, -1.78, -1.99
HOLES = round_obround(COUNT, 0.93, HALF, Z0, -1.5)
LENGTHS = {3: 40, 10: 40, 13: 40, 14: 40, 6: 50, 7: 50}
SCREWS = round_obround(10, 0.635, HALF, Z0, 0.5)
TEETH, PITCH_R = 22, HALF
LOCAL_TEETH_HEIGHT = 0.052


def rim(extra=0.0):
    return obround(1.0 + extra, HALF, Z0)


def gear_case(look, hollow=False):
    group('gear')
    parts = [prism(rim(), FACE, -0.90), prism(obround(1.09, HALF, Z0), -1.10, -0.93)]
    parts += [cyl(0.155, 0.30, (x, FACE + 0.15, z), sides=40) for x, z in HOLES]
    parts += [cyl(0.20, 0.36, (-0.75, -1.38, Z0 + 0.98), 'Z', 48), cyl(0.20, 0.30, (0.30, -1.40, Z0 - 0.98), 'Z', 48)]
    skin = cast(solid('gear case', parts, look), 0.016, 5)
    cut(skin, [cyl(4 * MM, 0.36, (x, FACE, z), sides=32) for x, z in HOLES])
    if hollow:
        cut(skin, [prism(obround(0.80, HALF, Z0), FACE - 0.3, -1.06)], exact=True)
    inner = solid('inside', [prism(obround(0.80, HALF, Z0, 60), -1.09, -1.055)], 'cast-inside', False)
    cut(inner, [cyl(0.40, 0.4, (x, -1.07, Z0)) for x in (-HALF, HALF)])
    breather = [(0.0, 0.42), (0.15, 0.42), (0.17, 0.38), (0.17, 0.22), (0.10, 0.20), (0.10, 0.0)]
    solid('breather', [lathe(breather, (-0.75, -1.38, Z0 + 1.16), 'Z', 48)], 'brass', True, 0.5)
    bevel(solid('breather hex', [cyl(0.15, 0.08, (-0.75, -1.38, Z0 + 1.20), 'Z', 6)], 'brass', False), 0.008)
    place('breather', 0, (-0.75, -1.55, Z0 + 1.45), what='part')


def lining():
    """Oil-varnished wall of the gear case."""
    group('gear')
    outline = obround(0.797, HALF, Z0, 60)
    wall = bmesh.new()
    front = [wall.verts.new((x, FACE + 0.03, z)) for x, z in outline]
    back = [wall.verts.new((x, -1.06, z)) for x, z in outline]
    for i in range(len(outline)):
        j = (i + 1) % len(outline)
        wall.faces.new((front[i], front[j], back[j], back[i]))
    solid('lining', [wall], 'cast-inside')


def face(material, torn=False):
    """The joint face, bare or with what is left of the gasket."""
    group('gear')
    ring = solid('face', [prism(rim(0.004), FACE - 0.006, FACE + 0.004)] + [cyl(0.150, 0.010, (x, FACE - 0.001, z), sides=40) for x, z in HOLES], material, False)
    skin = ring.modifiers.new('skin', 'REMESH')
    skin.mode, skin.voxel_size = 'VOXEL', 0.006
    bake(ring)
    cut(ring, [prism(obround(0.80, HALF, Z0), FACE - 0.3, FACE + 0.3)] + [cyl(4 * MM, 0.5, (x, FACE, z), sides=32) for x, z in HOLES])
    for polygon in ring.data.polygons:
        polygon.use_smooth = False
    if torn:
        old = solid('old gasket', [prism(obround(0.985, HALF, Z0, 60), FACE - 0.016, FACE - 0.004)], 'gasket', False)
        bites = [cyl(r, 0.4, (x, FACE, z), sides=9) for r, x, z in
                 ((0.34, -1.3, Z0 + 0.35), (0.30, 0.30, Z0 - 1.0), (0.24, 1.40, Z0 + 0.42), (0.2, 1.30, Z0 + 0.60), (0.22, 0.0, Z0 + 1.0))]
        cut(old, [prism(obround(0.815, HALF, Z0), FACE - 0.3, FACE + 0.3)] + bites + [cyl(5.4 * MM, 0.5, (x, FACE, z), sides=24) for x, z in HOLES])
    for n, (x, z) in enumerate(HOLES, 1):
        place('gear-cover', n, (x, FACE - 0.01, z), what='hole')


def cover_casting(look, closed=True):
    """The gear cover alone, in place, with its sight glass, fill plug and drain plug."""
    parts = [prism(rim(), FRONT + 0.05, FACE - 0.03)] + [cyl(0.165, FACE - FRONT - 0.03, (x, (FRONT + FACE - 0.03) / 2, z), sides=40) for x, z in HOLES]
    parts += [prism(obround(0.70, HALF, Z0), FRONT - 0.14, FACE - 0.05)]
    parts += [cyl(0.47, 0.10, (x, FRONT - 0.17, Z0), sides=64) for x in (-HALF, HALF)]
    parts += [cyl(0.235, 0.16, (0, FRONT - 0.16, Z0 - 0.28), sides=48), cyl(0.17, 0.18, (0, FRONT - 0.15, Z0 + 0.50), sides=48)]
    parts += [cyl(0.18, 0.22, (0, FRONT - 0.07, Z0 - 0.76), sides=48)]
    for x, z in HOLES:
        centre = Vector((max(-HALF, min(HALF, x)), Z0))
        out = Vector((x, z)) - centre
        at = centre + out * 0.735
        angle = math.atan2(out.y, out.x)
        parts.append(box(0.22, 0.16, 0.07, (at.x, FRONT + 0.01, at.y), (-angle, 'Y')))
    skin = cast(solid('gear cover', parts, look), 0.0135, 6)
    cut(skin, [cyl(4.5 * MM, 0.8, (x, FRONT, z), sides=32) for x, z in HOLES])
    words('2471', 0.17, (HALF, FRONT - 0.225, Z0 - 0.02), look, 0.012)
    words('220', 0.09, (0.26, FRONT - 0.148, Z0 + 0.56), look, 0.008)
    glass_at = (0, FRONT - 0.245, Z0 - 0.28)
    solid('sight ring', [lathe([(0.125, -0.015), (0.13, -0.05), (0.19, -0.05), (0.21, -0.03), (0.21, 0.02), (0.125, 0.02)], glass_at)], 'brass', True, 0.5)
    solid('sight glass', [cyl(0.128, 0.02, (0, FRONT - 0.245, Z0 - 0.28))], 'amber')
    plug((0, FRONT - 0.25, Z0 + 0.50), 'fill plug')
    plug((0, FRONT - 0.19, Z0 - 0.76), 'drain plug')
    place('sight glass', 0, (0, FRONT - 0.29, Z0 - 0.28), what='part')
    place('fill plug', 0, (0, FRONT - 0.40, Z0 + 0.50), what='part')
    place('drain plug', 0, (0, FRONT - 0.34, Z0 - 0.76), what='part')


def plug(at, name):
    x, y, z = at
    solid(name + ' washer', [cyl(0.145, 0.02, (x, y, z), sides=64)], 'copper', True, 0.5)
    bevel(solid(name + ' flange', [cyl(0.135, 0.03, (x, y - 0.02, z), sides=64)], 'brass'), 0.008)
    bevel(solid(name, [cyl(0.11, 0.11, (x, y - 0.08, z), sides=6)], 'brass', False), 0.008)


def bracket():
    """Hose bracket on holes 6 and 7: the bolts there hold cover and bracket."""
    a, b = (Vector((x, 0, z)) for x, z in (HOLES[5], HOLES[6]))
    middle, along = (a + b) / 2, (b - a)
    angle = math.atan2(along.z, along.x)
    y = FRONT - 0.02
    plate = [cyl(0.165, 0.04, (p.x, y, p.z), sides=40) for p in (a, b)] + [box(along.length, 0.04, 0.26, (middle.x, y, middle.z), (-angle, 'Y'))]
    out = Vector((along.z, 0, -along.x)).normalized()
    if out.x < 0:
        out = -out
    tip = middle + out * 0.42
    plate += [box(0.5, 0.04, 0.20, (middle.x + out.x * 0.22, y, middle.z + out.z * 0.22), (-math.atan2(out.z, out.x), 'Y'))]
    skin = cast(solid('bracket', plate, 'frame'), 0.012, 3)
    cut(skin, [cyl(4.5 * MM, 0.4, (p.x, y, p.z), sides=32) for p in (a, b)])
    solid('clip', [lathe([(0.085, -0.10), (0.105, -0.10), (0.105, 0.10), (0.085, 0.10)], (tip.x, y - 0.02, tip.z), 'Z', 40)], 'tin', True, 0.5)
    tube([(tip.x - 0.05, y + 0.6, tip.z + 1.5), (tip.x, y - 0.02, tip.z + 0.75), (tip.x, y - 0.02, tip.z), (tip.x + 0.02, y - 0.02, tip.z - 0.5), (tip.x + 0.3, y - 0.2, 0.10), (tip.x + 1.3, y - 0.5, 0.085)], 0.085, 'rubber')
    place('hose bracket', 0, (middle.x + out.x * 0.15, y - 0.04, middle.z + out.z * 0.15), what='part')


def cover_on(look, bolt, washer_material, missing=(), mark=None, gasket='gasket'):
    group('gear')
    solid('cover gasket', [prism(rim(0.008), FACE - 0.032, FACE)] + [cyl(0.172, 0.032, (x, FACE - 0.016, z), sides=40) for x, z in HOLES], gasket, False)
    cover_casting(look)
    bracket()
    for n, (x, z) in enumerate(HOLES, 1):
        seat = FRONT - (0.045 if n in (6, 7) else 0.005)
        if n in missing:
            place('gear-cover', n, (x, seat, z), what='hole', found='empty')
            continue
        fit('gear-cover', n, (x, seat, z), 8, material=bolt, washer_material=washer_material, mark=mark)


def gear_solid(cx, phase, depth=0.42):
    """Spur gear; the flanks are straight lines, near enough at this size."""
    outer, root = PITCH_R + LOCAL_TEETH_HEIGHT * 0.92, PITCH_R - LOCAL_TEETH_HEIGHT * 1.1
    line = []
    for i in range(TEETH):
        for step, radius in ((-0.36, root), (-0.245, PITCH_R), (-0.13, outer), (0.13, outer), (0.245, PITCH_R), (0.36, root)):
            a = phase + (i + step) * 2 * math.pi / TEETH
            line.append((cx + radius * math.cos(a), Z0 + radius * math.sin(a)))
    return prism(line, -1.66, -1.66 + depth)


def gear(side, material='gear', plated=True):
    cx, phase = (-HALF, 0.0) if side == 'left' else (HALF, math.pi + math.pi / TEETH)
    wheel = solid('gear ' + side, [gear_solid(cx, phase)], material, False)
    cut(wheel, [lathe([(0.24, -0.1), (0.42, -0.1), (0.40, 0.09), (0.26, 0.09), (0.24, -0.1)], (cx, -1.66, Z0)), cyl(0.15, 2, (cx, -1.6, Z0))], angle=0.35)
    bevel(wheel, 0.006, 2)
    if not plated:
        return
    retain = solid('plate ' + side, [cyl(0.235, 0.06, (cx, -1.69, Z0))], 'machined', True, 0.5)
    bevel(retain, 0.01)
    solid('end ' + side, [cyl(0.06, 0.02, (cx, -1.722, Z0), sides=40)], 'bore', True, 0.5)
    for n in range(3):
        a = math.pi / 2 - n * 2 * math.pi / 3
        fit('gear-' + side, n + 1, (cx + 0.15 * math.cos(a), -1.72, Z0 + 0.15 * math.sin(a)), 6, 'socket', False, 'black')


def match_marks():
    """One dot on the left gear between two on the right."""
    for cx, angle, name in ((-HALF, 0.0, 'left'), (HALF, math.pi + math.pi / TEETH, 'right 1'), (HALF, math.pi - math.pi / TEETH, 'right 2')):
        x, z = cx + 0.50 * math.cos(angle), Z0 + 0.50 * math.sin(angle)
        solid('dot', [cyl(0.026, 0.006, (x, -1.662, z), sides=14)], 'dot-white')
        place('match mark ' + name, 0, (x, -1.67, z), what='mark')


def locking_pin():
    z = Z0 - 0.30
    solid('pin', [cyl(0.045, 0.62, (0, -1.72, z), sides=32)], 'brass', True, 0.5)
    solid('pin head', [lathe([(0, -0.03), (0.09, -0.03), (0.10, 0.0), (0.10, 0.10), (0.045, 0.13)], (0, -2.05, z), 'Y', 40)], 'red', True, 0.5)
    place('locking pin', 0, (0, -2.08, z), what='temporary')


def bearing(cx, y, outer=0.40, inner=0.20, balls=10):
    solid('outer race', [lathe([(outer - 0.07, 0), (outer, 0), (outer, 0.16), (outer - 0.07, 0.16), (outer - 0.07, 0)], (cx, y, Z0))], 'ground', True, 0.5)
    solid('inner race', [lathe([(inner - 0.05, 0), (inner + 0.04, 0), (inner + 0.04, 0.16), (inner - 0.05, 0.16), (inner - 0.05, 0)], (cx, y, Z0))], 'ground', True, 0.5)
    middle = (outer - 0.07 + inner + 0.04) / 2
    solid('cage', [lathe([(middle - 0.03, 0.035), (middle + 0.03, 0.035), (middle + 0.03, 0.12), (middle - 0.03, 0.12)], (cx, y, Z0))], 'brass', True, 0.5)
    rolls = []
    for i in range(balls):
        a = 2 * math.pi * i / balls + cx
        ball = bmesh.new()
        bmesh.ops.create_uvsphere(ball, u_segments=24, v_segments=16, radius=0.062)
        ball.transform(Matrix.Translation((cx + middle * math.cos(a), y + 0.07, Z0 + middle * math.sin(a))))
        rolls.append(ball)
    solid('balls', rolls, 'ground')


def bare():
    """Gears off: bearings, shaft stubs with keys, the ten screws of the case."""
    for cx, name in ((-HALF, 'left'), (HALF, 'right')):
        bearing(cx, -1.10)
        shaft = solid('stub', [lathe([(0, -0.50), (0.125, -0.50), (0.15, -0.47), (0.15, 0.1)], (cx, -1.08, Z0))], 'ground', True, 0.5)
        cut(shaft, [cyl(3 * MM, 0.4, (cx + 0.08 * math.cos(a), -1.6, Z0 + 0.08 * math.sin(a)), sides=20) for a in (0.5, 2.6, 4.7)])
        bevel(solid('key', [box(0.07, 0.30, 0.06, (cx, -1.36, Z0 + 0.155))], 'machined', False), 0.008)
        place('shaft ' + name, 0, (cx, -1.58, Z0), what='part')
    for n, (x, z) in enumerate(SCREWS, 1):
        fit('gear-case', n, (x, -1.095, z), 10, 'socket', False, 'black')
