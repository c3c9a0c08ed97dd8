"""The workshop: bench, wall, window, shelf, lamps; and what always lies about."""

import math
import random

import bmesh
import bpy
from mathutils import Matrix, Vector, noise

from fasteners import lying, washer
from shapes import bevel, box, cast, cut, cyl, group, lathe, put, solid, tube



def boards():
    group('bench')
    for k in range(11):
        plank = solid('plank', [box(18, 0.86, 0.3, (random.uniform(-3, 3), 0, 0))], 'wood', False)
        plank.location = (0, -5.6 + k * 0.873, -0.15 + random.uniform(-0.010, 0.010))
        plank.rotation_euler = (0, random.uniform(-0.002, 0.002), 0)
        bevel(plank, 0.022, 3)
    bevel(solid('edge', [box(18, 0.12, 0.5, (0, 4.05, -0.02))], 'wood', False), 0.02)


def room():
    group('room')
    solid('wall', [box(40, 0.2, 20, (0, 7.5, 4))], 'wall')
    bevel(solid('shelf', [box(16, 1.0, 0.12, (2.5, 6.8, 3.9))], 'wood', False), 0.02)
    chance = random.Random(11)
    x = -4.2
    for material in ('blue', 'cream', 'red', 'dark', 'green', 'grey', 'tin', 'yellow', 'blue', 'cream', 'dark', 'green', 'orange'):
        radius, height = chance.uniform(0.28, 0.55), chance.uniform(0.6, 1.6)
        x += radius + 0.12
        bevel(solid('can', [lathe([(0, 0), (radius, 0), (radius, height), (radius * 0.86, height + 0.03), (0, height + 0.02)], (x, 6.7, 3.96), 'Z', 48)], material, True, 0.5), 0.02)
        if chance.random() < 0.6:
            solid('label', [lathe([(radius + 0.004, height * 0.2), (radius + 0.004, height * 0.75)], (x, 6.7, 3.96), 'Z', 48)], 'paper')
        x += radius + chance.uniform(0.0, 0.5)
    # hand tools on the wall, far out of focus
    for i in range(7):
        length = chance.uniform(1.0, 2.2)
        solid('tool', [box(0.13, 0.06, length, (-6.3 + i * 0.42, 7.3, 2.9 - length / 2)), cyl(0.17, 0.08, (-6.3 + i * 0.42, 7.3, 2.9), 'Y', 24)], chance.choice(('bolt', 'tin', 'red', 'dark')), False)
    window = solid('window', [box(1.7, 0.02, 1.5, (-8.2 + i * 1.85, 7.36, 4.2 + j * 1.65)) for i in range(2) for j in range(2)], 'window', False)
    window.visible_diffuse = False
    bevel(solid('switch box', [box(0.9, 0.3, 1.3, (6.4, 7.3, 2.2))], 'grey', False), 0.04)
    bevel(solid('switch', [box(0.16, 0.3, 0.5, (6.4, 7.1, 2.2), (0.7, 'Y'))], 'red', False), 0.02)
    tube([(6.4, 7.3, 2.9), (6.4, 7.3, 6), (6.4, 7.3, 12)], 0.09, 'grey')


def clutter(seed=1):
    """On the bench behind the work."""
    group('bench')
    chance = random.Random(seed)
    for x, y, r, h, m in ((-4.4, 2.9, 0.52, 1.6, 'blue'), (-3.3, 3.3, 0.40, 1.0, 'cream'), (4.6, 3.1, 0.62, 1.3, 'dark'), (-5.9, 2.3, 0.45, 0.9, 'tin')):
        bevel(solid('can', [lathe([(0, 0), (r, 0), (r, h), (r * 0.9, h + 0.02), (r * 0.86, h - 0.08), (0, h - 0.08)], (x, y, 0), 'Z', 64)], m, True, 0.5), 0.015)
        solid('can rim', [lathe([(r, h - 0.02), (r + 0.02, h), (r, h + 0.02), (r - 0.02, h)], (x, y, 0), 'Z', 64)], 'tin')
    crate = solid('crate', [box(2.2, 1.1, 0.08, (5.6, 1.6, 0.04))] + [box(2.2, 0.07, 0.8, (5.6, 1.6 + s * 0.55, 0.4)) for s in (1, -1)] + [box(0.07, 1.1, 0.8, (5.6 + s * 1.1, 1.6, 0.4)) for s in (1, -1)], 'box', False)
    bevel(crate, 0.02)
    for _ in range(6):
        lying(10, chance.choice((40, 60)), chance.uniform(4.8, 6.3), chance.uniform(1.3, 1.9), chance.uniform(0, 6.28), z=0.1 + chance.random() * 0.5)


def rag(x, y, spin, material='rag', size=1.1, seed=3.0):
    group('bench')
    sheet = bmesh.new()
    bmesh.ops.create_grid(sheet, x_segments=170, y_segments=170, size=1.0)
    for v in sheet.verts:
        u, w = v.co.x, v.co.y
        swirl = Vector((noise.noise(Vector((u * 0.9, w * 0.9, seed))), noise.noise(Vector((u * 0.9, w * 0.9, seed + 9))), 0))
        fold = 1 - abs(noise.noise(Vector((u * 1.6 + swirl.x * 2, w * 1.2 + swirl.y * 2, seed + 4))) * 1.9)
        fine = 1 - abs(noise.noise(Vector((u * 3.5 + swirl.x * 3, w * 3.2, seed + 14))) * 1.6)
        edge = max(abs(u), abs(w))
        height = max(0.0, fold) ** 2.2 * 0.34 + max(0.0, fine) ** 3 * 0.07
        v.co = Vector((u * (0.80 + 0.1 * noise.noise(Vector((w * 2, seed, 0)))) + swirl.x * 0.55, w * 0.72 + swirl.y * 0.55, 0.012 + height * (1 - 0.7 * edge ** 4)))
    cloth = solid('rag', [sheet], material)
    thick = cloth.modifiers.new('thick', 'SOLIDIFY')
    thick.thickness = 0.02
    cloth.location, cloth.rotation_euler, cloth.scale = (x, y, 0), (0, 0, spin), (size, size, size)
    return cloth


def spanner(x, y, spin, size=0.21, length=2.6):
    """Combination spanner: ring at one end, jaw at the other."""
    group('bench')
    half = length / 2
    body = [box(length, 0.15 + size * 0.4, 0.085, (0, 0, 0)), cyl(size * 1.75, 0.16, (half, 0, 0), 'Z'), cyl(size * 1.95, 0.14, (-half, 0, 0), 'Z')]
    tool = cast(solid('spanner', body, 'ground'), 0.015, 6)
    cut(tool, [cyl(size, 0.6, (half, 0, 0), 'Z', 12), box(size * 2.6, size * 1.62, 0.6, (-half - size, 0.05, 0), (0.0, 'Z'))], angle=0.6)
    tool.location, tool.rotation_euler = (x, y, 0.09), (0, 0, spin)
    return tool


def screwdriver(x, y, spin):
    group('bench')
    handle = lathe([(0, 0), (0.10, 0.02), (0.16, 0.12), (0.17, 0.5), (0.15, 0.85), (0.11, 1.0), (0.13, 1.1), (0.06, 1.12)], sides=10)
    tool = solid('driver', [handle], 'red', True, 0.7)
    blade = solid('blade', [lathe([(0.055, 1.1), (0.055, 2.6), (0.03, 2.75), (0, 2.75)], sides=24)], 'ground', True, 0.5)
    for thing in (tool, blade):
        thing.location, thing.rotation_euler = (x, y, 0.17), (0, 0, spin)


def loose(seed, spots, size=8, length=30, material='bolt'):
    chance = random.Random(seed)
    group('bench')
    for x, y in spots:
        lying(size, length, x, y, chance.uniform(0, 6.28), material)
        if chance.random() < 0.7:
            put(washer(size), 'washer', Matrix.Translation((x + chance.uniform(-0.4, 0.4), y - chance.uniform(0.2, 0.4), 0.001)) @ Matrix.Rotation(-math.pi / 2, 4, 'X'))


def area(at, target, sx, sy, energy, colour):
    lamp = bpy.data.lights.new('lamp', 'AREA')
    lamp.shape, lamp.size, lamp.size_y, lamp.energy, lamp.color = 'RECTANGLE', sx, sy, energy, colour
    made = bpy.data.objects.new('lamp', lamp)
    made.location = at
    made.rotation_euler = (Vector(target) - Vector(at)).to_track_quat('-Z', 'Y').to_euler()
    bpy.context.collection.objects.link(made)


def light(kind):
    """'day': window from the left; 'evening': the bench lamp carries it; 'flat': a grey day."""
    world = bpy.data.worlds.new('world')
    bpy.context.scene.world = world
    world.use_nodes = True
    tree = world.node_tree
    sky = tree.nodes.new('ShaderNodeTexEnvironment')
    sky.image = bpy.data.images.load(bpy.utils.system_resource('DATAFILES') + '/studiolights/world/interior.exr')
    mapping, coords = tree.nodes.new('ShaderNodeMapping'), tree.nodes.new('ShaderNodeTexCoord')
    tree.links.new(coords.outputs['Generated'], mapping.inputs[0])
    tree.links.new(mapping.outputs[0], sky.inputs[0])
    mapping.inputs['Rotation'].default_value = (0, 0, {'day': 2.2, 'evening': 0.6, 'flat': 3.4}[kind])
    tree.links.new(sky.outputs[0], tree.nodes['Background'].inputs[0])
    tree.nodes['Background'].inputs[1].default_value = {'day': 0.38, 'evening': 0.22, 'flat': 0.5}[kind]
    if kind == 'day':
        area((-6.5, -2.0, 6.0), (0, -0.8, 1.6), 3.4, 2.6, 640, (0.90, 0.96, 1.0))
        area((-2.0, -3.5, 7.5), (0, -0.8, 1.4), 5.5, 0.30, 330, (1, 0.97, 0.92))
        area((4.6, -2.6, 4.0), (0, -1, 1.6), 0.5, 0.5, 75, (1, 0.72, 0.45))
    elif kind == 'evening':
        area((-3.4, -3.6, 6.6), (0, -0.8, 1.4), 5.0, 0.32, 430, (1, 0.95, 0.86))
        area((3.6, -2.8, 4.6), (0, -1.2, 1.6), 0.7, 0.7, 230, (1, 0.70, 0.42))
        area((-7, 1, 5), (0, 0, 2), 2.5, 2, 110, (0.75, 0.86, 1.0))
    else:
        area((5.5, -3.0, 7.0), (0, -0.8, 1.2), 4.0, 2.2, 620, (0.96, 0.98, 1.0))
        area((-5.0, -2.4, 5.6), (0, -0.8, 1.2), 3.0, 0.4, 240, (1, 0.95, 0.88))
    area((1, 4, 8), (0, 7, 3), 7, 0.5, 190, (0.9, 0.95, 1))
