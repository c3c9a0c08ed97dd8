"""Put the scene of one photo together."""

import math
import random

from mathutils import Matrix

import bench
import casing
import drive
import gearend
import layout

FOUND = {'casting': 'paint', 'inlet': 'bolt'}
CLEAN = {'casting': 'paint-clean', 'inlet': 'bolt-clean'}
ABOUT = Matrix.Rotation(math.pi, 4, 'Z')


def surroundings(light):
    bench.boards()
    bench.room()
    bench.clutter()
    bench.light(light)


def machine(look, set_of, bolt, elbow=True, mark=None):
    casing.casing(look)
    casing.frame()
    casing.feet(bolt, mark)
    casing.inlet(set_of, elbow, mark)
    casing.relief(set_of, mark)


def gear_side(name, light):
    surroundings(light)
    clean = name == 'gear-refit'
    look, parts, bolt = ('paint-clean', CLEAN, 'bolt-clean') if clean else ('paint', FOUND, 'bolt')
    machine(look, parts, bolt, elbow=name != 'gears-off', mark='dot-yellow' if clean else None)
    casing.lines()
    gearend.gear_case(look, hollow=name.startswith('gears'))
    if name == 'gear-found':
        gearend.cover_on('alu', 'bolt', 'washer', missing=(11,))
        drive.guard()
        bench.rag(-3.5, -1.3, 0.5)
        bench.spanner(3.3, -2.6, 0.42)
    elif clean:
        gearend.cover_on('alu-clean', 'bolt-clean', 'washer', mark='dot-yellow', gasket='gasket-new')
        drive.guard()
        bench.rag(-3.3, -1.6, 1.9, 'rag-blue', 0.8, 12.0)
    else:
        gearend.lining()
        if name == 'gears-off':
            gearend.face('machined')
            gearend.bare()
            casing.rag_in_inlet()
            bench.screwdriver(2.2, -2.6, 2.4)
        else:
            gearend.face('machined', torn=True)
            gearend.bare()
            for side in ('left', 'right'):
                gearend.gear(side)
            gearend.match_marks()
            if name == 'gears-pinned':
                gearend.locking_pin()
            bench.rag(-2.7, -2.2, 0.9, 'rag', 0.9, 6.0)
            bench.loose(4, [(1.9, -2.6), (2.4, -2.35), (1.5, -2.9)])
    layout.MOVES['drive'] = ABOUT


def drive_side(name, light):
    surroundings(light)
    clean = name == 'drive-refit'
    look = 'paint-clean' if clean else 'paint'
    machine(look, CLEAN if clean else FOUND, 'bolt-clean' if clean else 'bolt', elbow=name == 'drive-pulley')
    gearend.gear_case(look)
    if name != 'drive-bare':
        drive.caps(look, 'bolt-clean' if clean else 'bolt', 'dot-yellow' if clean else None)
    else:
        drive.bare()
    if name != 'drive-pulley':
        casing.rag_in_inlet()
    drive.end_plate(look, 'bolt-clean' if clean else 'bolt')
    drive.shaft()
    if name == 'drive-pulley':
        drive.pulley()
        bench.rag(-3.0, -1.9, 0.5)
    elif name == 'drive-caps':
        bench.loose(9, [(1.7, -2.3), (2.2, -2.0)], 10, 20, 'black')
        bench.spanner(-2.9, -2.2, 2.6, 0.17, 2.1)
    elif name == 'drive-bare':
        bench.loose(3, [(-1.9, -2.3), (-1.5, -2.5), (-2.2, -2.55), (-1.7, -2.75)], 6, 20)
        bench.rag(2.9, -1.6, 2.0, 'rag-blue', 0.8, 9.0)
    for group_name in ('casing', 'gear'):
        layout.MOVES[group_name] = ABOUT


def build(shot):
    """Build the scene of a photo; afterwards layout.MOVES says how each group is to be moved."""
    random.seed(7)
    layout.MOVES.clear()
    name = shot['build']
    if name == 'in-order':
        layout.in_order()
    elif name == 'bags':
        layout.bags_and_tins()
    elif name == 'lengths':
        layout.lengths_beside_rule()
    elif name.startswith('drive'):
        drive_side(name, shot['light'])
    else:
        gear_side(name, shot['light'])
