"""What lies on the bench in the photos of parts: in order of removal, in tins and bags, beside a rule."""

import math
import random

import bmesh
from mathutils import Matrix, Vector, noise

import bench
import drive
import gearend
from casing import HALF, Z0
from fasteners import lying, washer
from shapes import BOOK, bevel, box, cyl, group, lathe, place, put, solid, words

FLAT = Matrix.Rotation(-math.pi / 2, 4, 'X')
MOVES = {}


def lay(name, back, x, y, spin=0.0, centre=(0.0, Z0)):
    """Lay a group on its back (the plane y = back comes to lie on the bench) with its centre at x, y."""
    MOVES[name] = (Matrix.Translation((x, y, 0)) @ Matrix.Rotation(spin, 4, 'Z') @ FLAT
                   @ Matrix.Translation((-centre[0], -back, -centre[1])))


def card(text, x, y, spin, size=0.2, wide=0.62, deep=0.36):
    """A paper tag with a number written on it."""
    group('bench')
    sheet = solid('tag', [box(wide, deep, 0.006, (0, 0, 0.004))], 'paper', False)
    sheet.location, sheet.rotation_euler = (x, y, 0.014), (0, random.uniform(-0.02, 0.02), spin)
    ink = words(text, size, (x, y, 0.027), 'ink', 0.001, (0, 0, spin + 0.06))
    return ink


def ring(radius, section, x, y, material='seal', z=0.0):
    group('bench')
    profile = [(radius + section * math.cos(a), section + section * math.sin(a)) for a in (i * math.pi / 8 for i in range(17))]
    made = solid('ring', [lathe(profile, (0, 0, 0), 'Z', 96)], material)
    made.location = (x, y, z)
    for v in made.data.vertices:
        a = math.atan2(v.co.y, v.co.x)
        v.co.x *= 1 + 0.05 * math.sin(2 * a + radius)
        v.co.y *= 1 + 0.05 * math.cos(3 * a)
    return made


def in_order():
    """Cover, gears, caps with their shims, seals, in the order in which they came off."""
    bench.boards()
    bench.light('flat')
    group('cover')
    gearend.cover_casting('alu')
    lay('cover', gearend.FACE - 0.03, -1.75, 0.75, 0.06)
    for side, cx, x, number in (('left', -HALF, 0.75, 'L'), ('right', HALF, 2.15, 'R')):
        group('wheel ' + side)
        gearend.gear(side, plated=False)
        cxs = solid('dot', [cyl(0.026, 0.006, (cx + (0.5 if side == 'left' else -0.5), -1.662, Z0), sides=14)], 'dot-white')
        lay('wheel ' + side, -1.24, x, 1.05, 0.4 if side == 'left' else -0.9, (cx, Z0))
        place('gear ' + side, 0, (cx, -1.67, Z0 + 0.3), what='part')
        card(number, x + 0.15, 0.18, 0.1)
    for number, cx, x, y in (('3', drive.SHAFT_X, 0.55, -1.05), ('4', drive.BLIND_X, 1.85, -1.0)):
        group('cap ' + number)
        drive.cap_body(cx, number, 'paint')
        lay('cap ' + number, drive.PLATE, x, y, 0.2, (cx, Z0))
        place('bearing cap ' + number, 0, (cx, drive.PLATE - 0.24, Z0 + 0.26), what='part')
        group('bench')
        for k in range(2):
            shim = solid('shim', [lathe([(0.41, 0), (0.468, 0), (0.468, 0.01), (0.41, 0.01), (0.41, 0)], (0, 0, 0), 'Z')], 'brass', True, 0.5)
            shim.location, shim.rotation_euler = (x + 0.02 + k * 0.13, y - 0.92 - k * 0.10, 0.012 + k * 0.012), (0, 0.012 * k, 0)
        place('shims ' + number, 0, (x + 0.46, y - 0.92, 0.02), what='part')
        card('shims ' + number, x + 0.12, y - 1.58, -0.08, 0.15, 0.80, 0.28)
    ring(0.42, 0.022, -0.95, -1.35)
    ring(0.42, 0.022, -1.30, -1.60, z=0.0)
    ring(0.22, 0.05, -2.15, -1.25)
    place('O-rings of the caps', 0, (-0.95, -1.77, 0.04), what='part')
    place('shaft seal', 0, (-2.15, -1.25, 0.08), what='part')
    for i, side in enumerate(('left', 'right')):
        plate = bevel(solid('plate', [cyl(0.235, 0.06, (0, 0, 0.03), 'Z')], 'machined', True, 0.5), 0.01)
        plate.location = (-2.9 + i * 0.6, -1.5 - i * 0.12, 0)
        bevel(solid('key', [box(0.30, 0.07, 0.06, (-2.85 + i * 0.6, -2.0 - i * 0.05, 0.03), (0.3 + i, 'Z'))], 'machined', False), 0.008)
    bench.rag(3.7, -0.5, 0.8, 'rag-blue', 0.9, 5.0)
    bench.screwdriver(-3.9, -0.4, 2.95)


def tin(x, y, radius=0.62, height=0.42):
    group('bench')
    wall = [(0, 0.02), (radius - 0.02, 0.02), (radius - 0.02, height), (radius + 0.015, height + 0.012), (radius + 0.02, height - 0.02), (radius, height - 0.03), (radius, 0), (0, 0)]
    solid('tin', [lathe(wall, (x, y, 0), 'Z')], 'tin', True, 0.5)


def heap(x, y, radius, size, lengths, count, seed, material='bolt', rings=True):
    chance = random.Random(seed)
    group('bench')
    for i in range(count):
        a, d = chance.uniform(0, 6.28), radius * math.sqrt(chance.random()) * 0.7
        z = 0.03 + 0.09 * (i // 5) if rings else 0.01 + 0.04 * (i // 3)
        length, spin = chance.choice(lengths), chance.uniform(0, 6.28)
        half = length / 150
        lying(size, length, x + d * math.cos(a) + half * math.sin(spin), y + d * math.sin(a) - half * math.cos(spin), spin, material, z)
        if rings and chance.random() < 0.6:
            b = chance.uniform(0, 6.28)
            put(washer(size), 'washer', Matrix.Translation((x + radius * 0.6 * math.cos(b), y + radius * 0.6 * math.sin(b), z + 0.02))
                @ Matrix.Rotation(-math.pi / 2 + chance.uniform(-0.3, 0.3), 4, 'X') @ Matrix.Rotation(chance.uniform(-0.3, 0.3), 4, 'Z'))


def bag(x, y, spin, wide, deep, seed):
    """A clear plastic bag with a closing strip, creased over what is in it."""
    group('bench')
    sheet = bmesh.new()
    bmesh.ops.create_grid(sheet, x_segments=150, y_segments=150, size=1.0)
    for v in sheet.verts:
        u, w = v.co.x, v.co.y
        crease = abs(noise.noise(Vector((u * 2.1, w * 2.4, seed)))) + 0.5 * abs(noise.noise(Vector((u * 5, w * 5, seed + 5))))
        body = max(0.0, 1 - (u * u + (w + 0.15) ** 2)) ** 0.7
        v.co = Vector((u * wide / 2, w * deep / 2, 0.03 + body * 0.34 + crease * 0.11 * (0.3 + body)))
    skin = solid('bag', [sheet], 'film')
    skin.location, skin.rotation_euler = (x, y, 0), (0, 0, spin)
    strip = bevel(solid('strip', [box(wide, 0.05, 0.03, (0, deep * 0.40, 0.075)), box(wide, 0.02, 0.02, (0, deep * 0.45, 0.07))], 'red', False), 0.006)
    strip.location, strip.rotation_euler = (x, y, 0), (0, 0, spin)


def bags_and_tins():
    bench.boards()
    bench.light('evening')
    for n, x, y, size, lengths, count in (('4', -2.1, 0.75, 10, (35,), 8), ('7', -0.55, 0.95, 8, (30, 30, 40, 50), 13), ('9', 1.05, 0.80, 6, (20,), 12)):
        tin(x, y)
        heap(x, y, 0.42, size, lengths, count, int(n) * 7)
        card(n, x + 0.25, y - 0.95, 0.1, 0.26, 0.5, 0.4)
        place('tin ' + n, 0, (x, y - 0.2, 0.3), what='stow')
    for n, x, y, spin, size, lengths, count in (('5', -1.9, -1.35, 0.12, 10, (30,), 4), ('11', 0.15, -1.45, -0.10, 10, (45,), 7), ('12', 2.2, -1.20, 0.20, 12, (70,), 4)):
        heap(x, y - 0.12, 0.24, size, lengths, count, int(n) * 3, rings=False)
        bag(x, y, spin, 1.75, 1.55, float(n))
        card(n, x - 0.35, y + 0.30, spin, 0.22, 0.42, 0.30).location.z += 0.21
        BOOK['groups']['bench'][-2].location.z += 0.21
        place('bag ' + n, 0, (x, y, 0.3), what='stow')
    bench.spanner(3.35, 0.7, 1.2)
    bench.rag(-4.0, -0.3, 0.3, 'rag', 0.9, 8.0)


def lengths_beside_rule():
    """The thirteen bolts of the gear cover, sorted by length, and a steel rule with millimetres."""
    bench.boards()
    bench.light('day')
    group('bench')
    chance = random.Random(5)
    order = [30] * 7 + [40] * 4 + [50] * 2
    holes = [1, 2, 4, 5, 8, 9, 12, 3, 10, 13, 14, 6, 7]
    for i, (length, hole) in enumerate(zip(order, holes)):
        x, y = -1.86 + i * 0.295 + (i > 6) * 0.16 + (i > 10) * 0.16, 0.42 + chance.uniform(-0.02, 0.02)
        lying(8, length, x, y, math.pi + chance.uniform(-0.07, 0.07))
        place('gear-cover', hole, (x, y, 0.17), what='piece', length=length)
    rule = bevel(solid('rule', [box(4.1, 0.36, 0.014, (0, 0, 0))], 'ground', False), 0.003)
    rule.location = (0.0, 0.76, 0.02)
    marks = []
    for mm in range(0, 301):
        deep = 0.15 if mm % 10 == 0 else 0.11 if mm % 5 == 0 else 0.07
        marks.append(box(0.0042, deep, 0.001, (-2.0 + mm / 75, 0.58 + deep / 2, 0.0278)))
    solid('marks', marks, 'ink', False)
    for cm in range(1, 30):
        words(str(cm * 10), 0.075, (-2.0 + cm * 10 / 75, 0.80, 0.028), 'ink', 0.0005, (0, 0, 0))
    for i in range(13):
        x, y = -1.7 + (i % 7) * 0.34 + chance.uniform(-0.06, 0.06), -0.62 - (i // 7) * 0.34 + chance.uniform(-0.05, 0.05)
        put(washer(8), 'washer', Matrix.Translation((x, y, 0.002)) @ Matrix.Rotation(-math.pi / 2, 4, 'X'))
    card('7  gear cover', 1.25, -0.78, -0.12, 0.16, 1.25, 0.36)
