"""The drive end, built facing -Y like the gear end and turned about afterwards: end plate, caps 3 and 4, pulley."""

import math




from casing import HALF, Z0
from fasteners import MM, fit
from gearend import bearing
from shapes import (bevel, box, cast, cut, cyl, group, lathe, obround, place, prism, round_obround, solid, words)

PLATE = -1.24
HOLES = round_obround(14, 0.97, HALF, Z0, -1.5)
SHAFT_X, BLIND_X = -HALF, HALF


def cap_holes(cx):
    return [(cx + 0.385 * math.cos(a), Z0 + 0.385 * math.sin(a)) for a in (math.radians(120 - 60 * i) for i in range(6))]


def end_plate(look, bolt, mark=None):
    group('drive')
    parts = [prism(obround(1.09, HALF, Z0), -1.16, -0.95), prism(obround(0.80, HALF, Z0), -1.22, -1.0)]
    parts += [cyl(0.19, 0.22, (x, -1.06, z), sides=40) for x, z in HOLES]
    parts += [cyl(0.50, 0.28, (x, -1.10, Z0)) for x in (SHAFT_X, BLIND_X)]
    parts += [box(0.10, 0.16, 0.42, (0, -1.16, Z0 + s * 0.52)) for s in (1, -1)]
    skin = cast(solid('end plate', parts, look), 0.016, 5)
    cut(skin, [cyl(0.337, 1.0, (x, -1.3, Z0)) for x in (SHAFT_X, BLIND_X)], exact=True)
    for n, (x, z) in enumerate(HOLES, 1):
        if n == 8:
            place('end-plate', n, (x, -1.17, z), what='fastener', hidden=True)
            bevel(solid('tensioner bracket', [box(0.34, 0.05, 0.40, (x + 0.02, -1.50, z - 0.02)), box(0.05, 0.42, 0.40, (x + 0.19, -1.30, z - 0.02)),
                                              box(0.34, 0.34, 0.05, (x + 0.02, -1.34, z - 0.22))], 'frame', False), 0.012)
            continue
        fit('end-plate', n, (x, -1.17, z), 10, ring=False, material=bolt, mark=mark)
    for x, z in ((-1.32, Z0 + 0.62), (1.32, Z0 - 0.62)):
        solid('dowel', [cyl(0.06, 0.06, (x, -1.17, z), sides=32)], 'ground', True, 0.5)


def cap_body(cx, number, look):
    """A bearing cap with its number; 3 has the shaft through it."""
    parts = [cyl(0.475, 0.10, (cx, PLATE - 0.05, Z0)), cyl(0.30, 0.24, (cx, PLATE - 0.12, Z0))]
    parts += [cyl(0.125, 0.12, (x, PLATE - 0.06, z), sides=40) for x, z in cap_holes(cx)]
    cap = cast(solid('cap ' + number, parts, look), 0.0125, 5)
    tools = [cyl(3.3 * MM, 0.8, (x, PLATE, z), sides=24) for x, z in cap_holes(cx)]
    if number == '3':
        tools.append(cyl(0.235, 1, (cx, PLATE - 0.4, Z0)))
    cut(cap, tools, exact=True)
    if number == '3':
        solid('seal', [lathe([(0.165, -0.015), (0.18, -0.03), (0.205, 0.0), (0.225, -0.02), (0.236, -0.02), (0.236, 0.06), (0.16, 0.06), (0.165, -0.015)], (cx, PLATE - 0.20, Z0))], 'seal', True, 0.6)
        words(number, 0.15, (cx, PLATE - 0.245 + 0.145, Z0 + 0.385 - 0.0), look, 0.008)
    else:
        words(number, 0.24, (cx, PLATE - 0.242, Z0), look, 0.012)
    return cap


def caps(look, bolt, mark=None):
    group('drive')
    for cx, number in ((SHAFT_X, '3'), (BLIND_X, '4')):
        solid('shims ' + number, [lathe([(0.41, 0), (0.468, 0), (0.468, 0.018), (0.41, 0.018)], (cx, PLATE - 0.016, Z0))], 'brass', True, 0.5)
        cap_body(cx, number, look)
        for n, (x, z) in enumerate(cap_holes(cx), 1):
            fit('cap-' + number, n, (x, PLATE - 0.125, z), 6, material=bolt, mark=mark)
        place('bearing cap ' + number, 0, (cx + 0.1, PLATE - 0.24, Z0 - 0.22), what='part')


def shaft():
    group('drive')
    length = 1.05
    body = solid('shaft', [lathe([(0, -length), (0.14, -length), (0.16, -length + 0.03), (0.16, -0.05), (0.16, 0.3)], (SHAFT_X, PLATE - 0.1, Z0))], 'ground', True, 0.5)
    cut(body, [box(0.08, 0.6, 0.14, (SHAFT_X, PLATE - 0.80, Z0 + 0.16)), cyl(0.04, 0.2, (SHAFT_X, PLATE - 0.1 - length, Z0), sides=32)])
    place('shaft, key seat', 0, (SHAFT_X, PLATE - 0.85, Z0 + 0.16), what='part')


def bare():
    """Caps off: bearings in their bores, cap holes."""
    group('drive')
    for cx, number in ((SHAFT_X, '3'), (BLIND_X, '4')):
        bearing(cx, PLATE + 0.08, outer=0.335, inner=0.185)
        solid('floor', [cyl(0.336, 0.02, (cx, PLATE + 0.26, Z0))], 'bore')
        if number == '4':
            solid('stub', [lathe([(0, -0.04), (0.12, -0.04), (0.15, -0.01), (0.15, 0.2)], (cx, PLATE + 0.07, Z0))], 'ground', True, 0.5)
            bevel(solid('ring nut', [cyl(0.19, 0.05, (cx, PLATE + 0.03, Z0), sides=8)], 'machined', False), 0.01)
        solid('seat', [lathe([(0.338, 0), (0.497, 0), (0.497, 0.006), (0.338, 0.006)], (cx, PLATE - 0.004, Z0))], 'machined', True, 0.5)
        for n, (x, z) in enumerate(cap_holes(cx), 1):
            solid('hole', [cyl(3 * MM, 0.004, (x, PLATE - 0.006, z), sides=24)], 'bore')
            place('cap-' + number, n, (x, PLATE - 0.01, z), what='hole')
        place('bearing ' + number, 0, (cx + 0.30, PLATE + 0.1, Z0), what='part')


def pulley(at_y=PLATE - 0.42):
    """Two-groove pulley with taper bush; the jacking hole is left empty by design."""
    group('drive')
    groove = [(0.92, 0.0), (0.92, 0.05), (0.78, 0.10), (0.78, 0.15), (0.92, 0.20), (0.92, 0.25), (0.78, 0.30), (0.78, 0.35), (0.92, 0.40), (0.92, 0.45)]
    y = at_y - 0.45
    rim_profile = [(0.72, 0.0)] + groove + [(0.72, 0.45), (0.70, 0.24), (0.70, 0.21), (0.72, 0.0)]
    wheel = [lathe(rim_profile, (SHAFT_X, y, Z0)), lathe([(0.20, 0.02), (0.36, 0.02), (0.38, 0.10), (0.38, 0.42), (0.20, 0.42), (0.20, 0.02)], (SHAFT_X, y, Z0))]
    body = solid('pulley', wheel, 'machined', True, 0.5)
    arms = [box(0.42, 0.10, 0.17, (SHAFT_X + 0.53 * math.cos(a), y + 0.22, Z0 + 0.53 * math.sin(a)), (-a, 'Y')) for a in (0.3 + i * math.pi * 2 / 5 for i in range(5))]
    cast(solid('arms', arms + [lathe([(0.34, 0.16), (0.40, 0.16), (0.40, 0.28), (0.34, 0.28), (0.34, 0.16)], (SHAFT_X, y, Z0)),
                               lathe([(0.66, 0.14), (0.72, 0.14), (0.72, 0.32), (0.66, 0.32), (0.66, 0.14)], (SHAFT_X, y, Z0))], 'orange'), 0.016, 6)
    bush = solid('bush', [lathe([(0.16, -0.03), (0.29, -0.03), (0.26, 0.40), (0.16, 0.40), (0.16, -0.03)], (SHAFT_X, y, Z0))], 'bolt', True, 0.5)
    holes = [(SHAFT_X + 0.245 * math.cos(a), Z0 + 0.245 * math.sin(a)) for a in (math.radians(90 - 120 * i) for i in range(3))]
    cut(bush, [cyl(0.068, 0.4, (x, y, z), sides=32) for x, z in holes])
    for n, (x, z) in enumerate(holes, 1):
        if n < 3:
            screw = solid('screw', [cyl(0.064, 0.2, (x, y + 0.09, z), sides=32)], 'black', True, 0.5)
            cut(screw, [cyl(0.036, 0.3, (x, y, z), sides=6)], angle=0.4)
        place('bush', n, (x, y - 0.03, z), what='fastener' if n < 3 else 'hole', **({} if n < 3 else {'found': 'jacking hole'}))
    place('pulley', 0, (SHAFT_X + 0.55, y, Z0 - 0.45), what='part')


def guard():
    """Sheet steel belt guard, seen from behind in the photos of the whole machine."""
    group('drive')
    shell = prism([(SHAFT_X + 1.15 * math.cos(a), Z0 + 0.1 + 1.15 * math.sin(a)) for a in (math.pi * i / 40 for i in range(41))] + [(SHAFT_X - 1.15, 0.40), (SHAFT_X + 1.15, 0.40)], -2.25, -1.42)
    bevel(solid('guard', [shell], 'orange', False), 0.03, 3)
