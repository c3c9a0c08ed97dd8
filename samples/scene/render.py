"""Render photos of one scene, upright, with what the denoiser needs; and book the true places.

blender -b -P render.py -- IMG_0412,IMG_0414 WIDTH SAMPLES OUT_FOLDER [THREADS]
All photos named must have the same build and light. With 0 samples only the places are written.
Writes OUT_FOLDER/IMG_0412.npz (colour, albedo, normal as float arrays) and OUT_FOLDER/IMG_0412.json.
"""

import json
import math
import os
import sys
import time

import bpy
import numpy as np
from bpy_extras.object_utils import world_to_camera_view
from mathutils import Vector

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))

import build  # noqa: E402
import layout  # noqa: E402
import materials  # noqa: E402
import shapes  # noqa: E402
from shots import SHOTS  # noqa: E402


def camera(shot):
    lens = bpy.data.cameras.new('camera')
    made = bpy.data.objects.new('camera', lens)
    bpy.context.collection.objects.link(made)
    bpy.context.scene.camera = made
    at, to = Vector(shot['at']), Vector(shot['to'])
    made.location = at
    made.rotation_euler = (to - at).to_track_quat('-Z', 'Y').to_euler()
    made.rotation_euler.rotate_axis('Z', math.radians(shot['roll']))
    lens.lens, lens.sensor_width, lens.sensor_fit = shot['lens'], 36, 'HORIZONTAL'
    if shot.get('tall'):
        lens.sensor_fit, lens.sensor_width, lens.sensor_height = 'VERTICAL', 27, 36
    lens.dof.use_dof, lens.dof.aperture_fstop = True, shot['stop'] * 0.55
    lens.dof.focus_distance = (at - Vector(shot['focus'])).length
    return made


def move_groups():
    """Move each group as one, and the booked places with it."""
    bpy.context.view_layer.update()
    for name, matrix in layout.MOVES.items():
        for thing in shapes.BOOK['groups'].get(name, []):
            thing.matrix_world = matrix @ thing.matrix_world
        for booked in shapes.BOOK['places']:
            if booked['group'] == name:
                for key in ('at', 'rim'):
                    if key in booked:
                        booked[key] = matrix @ booked[key]
    bpy.context.view_layer.update()


def settings(width, height, samples, folder, threads):
    scene = bpy.context.scene
    scene.render.engine = 'CYCLES'
    cycles = scene.cycles
    cycles.device, cycles.samples, cycles.use_denoising = 'CPU', samples, False
    cycles.use_adaptive_sampling = False
    cycles.max_bounces, cycles.glossy_bounces, cycles.diffuse_bounces = 5, 3, 2
    cycles.transparent_max_bounces = 6
    cycles.sample_clamp_indirect, cycles.sample_clamp_direct, cycles.blur_glossy, cycles.caustics_reflective = 1.2, 8, 0.8, False
    cycles.use_auto_tile = False
    scene.render.threads_mode, scene.render.threads = 'FIXED', threads
    scene.render.resolution_x, scene.render.resolution_y, scene.render.resolution_percentage = width, height, 100
    layer = bpy.context.view_layer
    layer.cycles.denoising_store_passes = True
    scene.use_nodes = True
    tree = scene.node_tree
    tree.nodes.clear()
    source, out = tree.nodes.new('CompositorNodeRLayers'), tree.nodes.new('CompositorNodeOutputFile')
    out.base_path, out.format.file_format, out.format.color_depth = folder, 'OPEN_EXR', '32'
    out.format.color_mode = 'RGB'
    out.file_slots.clear()
    for name, socket in (('colour', 'Image'), ('albedo', 'Denoising Albedo'), ('normal', 'Denoising Normal')):
        out.file_slots.new(name + '_')
        tree.links.new(source.outputs[socket], out.inputs[-1])


def places(scene, width, height):
    """Where each booked place is in the upright picture (fractions, from top left) and whether it can be seen."""
    graph = bpy.context.evaluated_depsgraph_get()
    eye = scene.camera.matrix_world.translation
    rows = []
    for booked in shapes.BOOK['places']:
        at = booked['at']
        seen = world_to_camera_view(scene, scene.camera, at)
        x, y = seen.x, 1 - seen.y
        inside = 0.005 < x < 0.995 and 0.005 < y < 0.995 and seen.z > 0
        way = at - eye
        hit, where, *_ = scene.ray_cast(graph, eye, way.normalized())
        # a head may hide the middle of its own top face, but is seen all the same
        blocked = hit and (where - eye).length < way.length - (0.16 if booked['what'] == 'fastener' else 0.09)
        row = {'set': booked['set'], 'x': round(x, 4), 'y': round(y, 4), 'what': booked['what'],
               'visible': bool(inside and not blocked and not booked.get('hidden'))}
        if booked['n']:
            row['n'] = booked['n']
        for key in ('found', 'hidden', 'length'):
            if key in booked:
                row[key] = booked[key]
        if 'rim' in booked:
            rim = world_to_camera_view(scene, scene.camera, booked['rim'])
            row['seat'] = [round(rim.x, 4), round(1 - rim.y, 4)]
        rows.append(row)
    return rows


def load(folder, name, width, height):
    path = os.path.join(folder, name + '_0001.exr')
    picture = bpy.data.images.load(path)
    picture.colorspace_settings.name = 'Non-Color'
    values = np.empty(width * height * picture.channels, np.float32)
    picture.pixels.foreach_get(values)
    os.remove(path)
    return values.reshape(height, width, -1)[::-1, :, :3]


def shoot(name, width, samples, folder, threads):
    """One photo of the scene as it stands."""
    shot = SHOTS[name]
    height = width * 3 // 4
    if shot.get('tall'):
        width, height = height, width
    camera(shot)
    scratch = os.path.join(folder, name + '.parts')
    os.makedirs(folder, exist_ok=True)
    settings(width, height, samples, scratch, threads)
    bpy.context.view_layer.update()
    rows = places(bpy.context.scene, width, height)
    with open(os.path.join(folder, name + '.json'), 'w', encoding='utf-8') as file:
        json.dump(rows, file, indent=1)
    if samples == 0:
        return
    started = time.time()
    bpy.ops.render.render()
    arrays = {key: load(scratch, key, width, height) for key in ('colour', 'albedo', 'normal')}
    kept = os.path.join(folder, name + '.npz')
    np.savez(kept + '.part.npz', **{key: value.astype(np.float16 if key != 'colour' else np.float32) for key, value in arrays.items()})
    os.replace(kept + '.part.npz', kept)
    os.rmdir(scratch)
    print(name, 'SECONDS', round(time.time() - started, 1), flush=True)


def main():
    names, width, samples, folder, *rest = sys.argv[sys.argv.index('--') + 1:]
    names = names.split(',')
    started = time.time()
    bpy.ops.wm.read_factory_settings(use_empty=True)
    shapes.BOOK['materials'] = materials.make_all()
    build.build(SHOTS[names[0]])
    move_groups()
    print('BUILD SECONDS', round(time.time() - started, 1), flush=True)
    for name in names:
        shoot(name, int(width), int(samples), folder, int(rest[0]) if rest else 1)


main()
