"""Hex bolts, socket heads, washers: one mesh per size, used many times. 1 unit = 75 mm."""

import math
import random

import bmesh
import bpy
from mathutils import Matrix

from shapes import BOOK, bake, bevel, box, cut, cyl, lathe, place, put, solid

MM = 1 / 75
HEX = {6: (10, 4.0), 8: (13, 5.3), 10: (16, 6.4), 12: (18, 7.5)}
SOCKET = {6: (10, 6.0, 5), 8: (13, 8.0, 6), 10: (16, 10.0, 8)}
WASHER = {6: (12, 1.6), 8: (16, 1.6), 10: (20, 2.0), 12: (24, 2.5)}
PITCH = {6: 1.0, 8: 1.25, 10: 1.5, 12: 1.75}
MESHES = {}


def _take(thing):
    """Keep the mesh, drop the object that it was built on."""
    bake(thing)
    mesh = thing.data
    for members in BOOK['groups'].values():
        if thing in members:
            members.remove(thing)
    bpy.data.objects.remove(thing)
    mesh.materials.clear()
    mesh.use_auto_smooth, mesh.auto_smooth_angle = True, 0.55
    return mesh


def _thread(size, start, end):
    """Rings, not a helix: nobody can tell at this size."""
    major, pitch = size * MM / 2, PITCH[size] * MM
    profile, along = [], start
    while along < end - pitch:
        profile += [(major * 0.86, along), (major, along + pitch / 2)]
        along += pitch
    profile += [(major * 0.84, end - pitch / 2), (major * 0.72, end), (0, end)]
    return lathe(profile, sides=32)


def hex_head(size, length=0):
    """Head towards -Y, seat at y = 0, shank (mm) towards +Y."""
    key = ('hex', size, length)
    if key not in MESHES:
        flats, height = HEX[size][0] * MM, HEX[size][1] * MM
        corner = flats / math.sqrt(3)
        head = solid('head', [cyl(corner, height, (0, -height / 2, 0), sides=6)], None, False)
        cone = cyl(flats / 2 * 0.97 + height * 1.7, height, (0, -height / 2, 0), sides=72, radius2=flats / 2 * 0.97)
        # radius2 must lie at -Y: the chamfer is on the outer face
        if max(v.co.y for v in cone.verts if abs(math.hypot(v.co.x, v.co.z) - flats / 2 * 0.97) < 1e-4) > -height / 2:
            bmesh.ops.transform(cone, matrix=Matrix.Translation((0, -height, 0)) @ Matrix.Rotation(math.pi, 4, 'Z'), verts=cone.verts)
        cut(head, [cone], 'INTERSECT', 0.4)
        bevel(head, 0.005, 2)
        bake(head)
        if length:
            plain = max(0.0, length - (2 * size + 6)) * MM
            shank = [lathe([(size * MM / 2, 0), (size * MM / 2, plain)], sides=32), _thread(size, plain, length * MM)]
            body = solid('shank', shank, None, True, 0.5)
            head.data.materials.clear()
            body.data.materials.clear()
            joined = bmesh.new()
            joined.from_mesh(head.data)
            joined.from_mesh(body.data)
            joined.to_mesh(head.data)
            joined.free()
            _take(body)
        MESHES[key] = _take(head)
    return MESHES[key]


def socket_head(size, length=0):
    key = ('socket', size, length)
    if key not in MESHES:
        dia, height, hexagon = (v * MM for v in SOCKET[size])
        head = solid('head', [cyl(dia / 2, height, (0, -height / 2, 0), sides=64)], None, False)
        cut(head, [cyl(hexagon / math.sqrt(3), height, (0, -height * 0.95, 0), sides=6)], angle=0.4)
        bevel(head, 0.006, 2)
        MESHES[key] = _take(head)
    return MESHES[key]


def washer(size):
    key = ('washer', size)
    if key not in MESHES:
        outer, thick = WASHER[size][0] * MM / 2, WASHER[size][1] * MM
        hole = (size * 1.07) * MM / 2
        ring = solid('ring', [lathe([(hole, 0), (hole, -thick), (outer * 0.97, -thick), (outer, -thick * 0.6), (outer, 0), (hole, 0)], sides=64)], None, True, 0.5)
        MESHES[key] = _take(ring)
    return MESHES[key]


def fit(set_name, number, point, size, kind='hex', ring=True, material='bolt', washer_material='washer', facing=None, mark=None, length=0):
    """A fastener in its hole, head towards -Y of `facing` (identity: towards the viewer); its place is booked."""
    facing = facing or Matrix.Identity(4)
    at = Matrix.Translation(point) @ facing
    lift = 0.0
    if ring:
        put(washer(size), washer_material, at @ Matrix.Translation((random.uniform(-0.006, 0.006), 0, random.uniform(-0.006, 0.006))))
        lift = WASHER[size][1] * MM
    mesh = hex_head(size, length) if kind == 'hex' else socket_head(size, length)
    spin = random.uniform(0, 6.28)
    put(mesh, material, at @ Matrix.Translation((0, -lift, 0)) @ Matrix.Rotation(spin, 4, 'Y'))
    top = lift + (HEX if kind == 'hex' else SOCKET)[size][1] * MM
    if mark:
        stripe(at, size, top, mark)
    place(set_name, number, (at @ Matrix.Translation((0, -top, 0))).to_translation(), what='fastener',
          rim=(at @ Matrix.Translation((0, -lift, 0))).to_translation())


def stripe(at, size, top, material):
    """A paint mark over head and washer: this one has been checked."""
    mark = solid('mark', [box(size * 0.28 * MM, 0.004, size * 0.95 * MM, (0, -top - 0.001, size * 0.36 * MM))], material, False)
    mark.matrix_world = at @ Matrix.Rotation(random.uniform(-0.5, 0.5), 4, 'Y')


def lying(size, length, x, y, spin, material='bolt', z=0.0):
    """A loose hex bolt on the bench, resting on its head's corner and its tip."""
    corner = HEX[size][0] * MM / 2
    tilt = math.atan2(corner - size * MM / 2, max(length, 8) * MM)
    matrix = (Matrix.Translation((x, y, z + corner)) @ Matrix.Rotation(spin, 4, 'Z') @ Matrix.Rotation(-tilt, 4, 'X')
              @ Matrix.Rotation(random.choice((0, 1, 2)) * math.pi / 3, 4, 'Y'))
    return put(hex_head(size, length), material, matrix)
