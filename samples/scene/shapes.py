"""Meshes: solids, castings with fillets, threads, fasteners; and the book of places that markers will need."""

import math

import bmesh
import bpy
from mathutils import Matrix, Vector

BOOK = {'group': 'bench', 'groups': {}, 'places': [], 'materials': {}}


def group(name):
    """From here on, what is made belongs to this group, which is later moved as one."""
    BOOK['group'] = name
    BOOK['groups'].setdefault(name, [])


def keep(thing, material):
    bpy.context.collection.objects.link(thing)
    if material:
        thing.data.materials.clear()
        thing.data.materials.append(BOOK['materials'][material])
    BOOK['groups'].setdefault(BOOK['group'], []).append(thing)
    return thing


def place(set_name, number, point, **more):
    """Remember where something is (in the group's own frame)."""
    BOOK['places'].append({'set': set_name, 'n': number, 'group': BOOK['group'], 'at': Vector(point), **more})


def turn_to(axis):
    return {'Y': Matrix.Rotation(math.pi / 2, 4, 'X'), 'X': Matrix.Rotation(math.pi / 2, 4, 'Y'), 'Z': Matrix.Identity(4)}[axis]


def cyl(radius, depth, at, axis='Y', sides=96, radius2=None):
    made = bmesh.new()
    bmesh.ops.create_cone(made, cap_ends=True, segments=sides, radius1=radius, radius2=radius if radius2 is None else radius2, depth=depth)
    bmesh.ops.transform(made, matrix=Matrix.Translation(at) @ turn_to(axis), verts=made.verts)
    return made


def box(sx, sy, sz, at, spin=None):
    made = bmesh.new()
    bmesh.ops.create_cube(made, size=1)
    turned = Matrix.Rotation(spin[0], 4, spin[1]) if spin else Matrix.Identity(4)
    bmesh.ops.transform(made, matrix=Matrix.Translation(at) @ turned @ Matrix.Diagonal((sx, sy, sz, 1)), verts=made.verts)
    return made


def prism(outline, y0, y1):
    """A closed outline of (x, z), drawn out along Y."""
    made = bmesh.new()
    face = made.faces.new([made.verts.new((x, y0, z)) for x, z in outline])
    out = bmesh.ops.extrude_face_region(made, geom=[face])
    bmesh.ops.translate(made, vec=(0, y1 - y0, 0), verts=[v for v in out['geom'] if isinstance(v, bmesh.types.BMVert)])
    bmesh.ops.recalc_face_normals(made, faces=made.faces)
    return made


def lathe(profile, at=(0, 0, 0), axis='Y', sides=96):
    """Turn a profile of (radius, along) about an axis; along grows away from the viewer for Y."""
    made = bmesh.new()
    rings = []
    for radius, along in profile:
        rings.append([made.verts.new((radius * math.cos(a), radius * math.sin(a), along)) for a in
                      (2 * math.pi * i / sides for i in range(sides))] if radius > 1e-6 else [made.verts.new((0, 0, along))])
    for one, two in zip(rings, rings[1:]):
        for i in range(sides):
            corners = [one[i % len(one)], one[(i + 1) % len(one)], two[(i + 1) % len(two)], two[i % len(two)]]
            unique = list(dict.fromkeys(corners))
            if len(unique) > 2:
                made.faces.new(unique)
    turned = Matrix.Rotation(-math.pi / 2, 4, 'X') if axis == 'Y' else turn_to(axis)
    bmesh.ops.transform(made, matrix=Matrix.Translation(at) @ turned, verts=made.verts)
    bmesh.ops.recalc_face_normals(made, faces=made.faces)
    return made


def solid(name, parts, material, smooth=True, angle=None):
    """One object of several solids. With an angle (radians) sharper edges stay sharp."""
    mesh, joined = bpy.data.meshes.new(name), bmesh.new()
    for part in parts:
        scratch = bpy.data.meshes.new('scratch')
        part.to_mesh(scratch)
        joined.from_mesh(scratch)
        part.free()
        bpy.data.meshes.remove(scratch)
    joined.to_mesh(mesh)
    joined.free()
    for face in mesh.polygons:
        face.use_smooth = smooth
    made = keep(bpy.data.objects.new(name, mesh), material)
    if angle:
        mesh.use_auto_smooth, mesh.auto_smooth_angle = True, angle
    return made


def bake(thing):
    """Make the modifiers' result the mesh."""
    graph = bpy.context.evaluated_depsgraph_get()
    mesh = bpy.data.meshes.new_from_object(thing.evaluated_get(graph))
    thing.modifiers.clear()
    thing.data = mesh
    return thing


def cast(thing, voxel=0.016, rounds=6):
    """A casting: one skin, every inner corner a fillet."""
    skin = thing.modifiers.new('skin', 'REMESH')
    skin.mode, skin.voxel_size, skin.use_smooth_shade = 'VOXEL', voxel, True
    soften = thing.modifiers.new('soften', 'SMOOTH')
    soften.factor, soften.iterations = 0.5, rounds
    return bake(thing)


def bevel(thing, width=0.012, steps=2):
    rounding = thing.modifiers.new('bevel', 'BEVEL')
    rounding.width, rounding.segments, rounding.limit_method, rounding.angle_limit = width, steps, 'ANGLE', 0.6
    thing.data.use_auto_smooth, thing.data.auto_smooth_angle = True, 0.6
    return thing


def cut(thing, tools, operation='DIFFERENCE', angle=0.5, exact=False):
    """Take solids away from a thing, all in one go."""
    tool = solid('tool', tools, None)
    change = thing.modifiers.new('cut', 'BOOLEAN')
    # the exact solver takes a minute on a dense casting; castings are closed skins, which the fast one can do
    change.operation, change.object = operation, tool
    change.solver = 'FAST' if len(thing.data.polygons) > 4000 and not exact else 'EXACT'
    if change.solver == 'EXACT':
        change.use_self = len(tools) > 1
    bake(thing)
    BOOK['groups'][BOOK['group']].remove(tool)
    bpy.data.objects.remove(tool)
    thing.data.use_auto_smooth, thing.data.auto_smooth_angle = True, angle
    for face in thing.data.polygons:
        face.use_smooth = True
    return thing


def obround(radius, half, centre_z, steps=40):
    """Outline of two half circles about x = -half and +half, joined."""
    line = []
    for i in range(steps + 1):
        a = -math.pi / 2 + math.pi * i / steps
        line.append((half + radius * math.cos(a), centre_z + radius * math.sin(a)))
    for i in range(steps + 1):
        a = math.pi / 2 + math.pi * i / steps
        line.append((-half + radius * math.cos(a), centre_z + radius * math.sin(a)))
    return line


def round_obround(count, radius, half, centre_z, start):
    """Points at equal steps along an obround, clockwise as seen from -Y; start in steps from top centre."""
    length = 2 * math.pi * radius + 4 * half
    points = []
    for i in range(count):
        s = ((start + i) * length / count) % length
        arc = math.pi * radius
        if s < half:
            points.append((s, centre_z + radius))
        elif s < half + arc:
            a = (s - half) / radius
            points.append((half + radius * math.sin(a), centre_z + radius * math.cos(a)))
        elif s < 3 * half + arc:
            points.append((half - (s - half - arc), centre_z - radius))
        elif s < 3 * half + 2 * arc:
            a = (s - 3 * half - arc) / radius
            points.append((-half - radius * math.sin(a), centre_z - radius * math.cos(a)))
        else:
            points.append((-half + (s - 3 * half - 2 * arc), centre_z + radius))
    return points


def put(mesh, material, matrix):
    """Another object of the same mesh."""
    made = bpy.data.objects.new('piece', mesh)
    made.matrix_world = matrix
    if not mesh.materials:
        mesh.materials.append(None)
    bpy.context.collection.objects.link(made)
    made.material_slots[0].link = 'OBJECT'
    made.material_slots[0].material = BOOK['materials'][material]
    BOOK['groups'].setdefault(BOOK['group'], []).append(made)
    return made


def tube(points, radius, material, smooth=True):
    curve = bpy.data.curves.new('tube', 'CURVE')
    curve.dimensions, curve.bevel_depth, curve.bevel_resolution, curve.use_fill_caps = '3D', radius, 6, True
    line = curve.splines.new('BEZIER')
    line.bezier_points.add(len(points) - 1)
    for point, at in zip(line.bezier_points, points):
        point.co = at
        point.handle_left_type = point.handle_right_type = 'AUTO' if smooth else 'VECTOR'
    return keep(bpy.data.objects.new('tube', curve), material)


def words(text, size, at, material, raised=0.012, spin=(math.pi / 2, 0, 0)):
    curve = bpy.data.curves.new('words', 'FONT')
    curve.body, curve.size, curve.extrude, curve.bevel_depth = text, size, raised, raised * 0.3
    curve.align_x = curve.align_y = 'CENTER'
    made = bpy.data.objects.new('words', curve)
    made.rotation_euler, made.location = spin, at
    return keep(made, material)
