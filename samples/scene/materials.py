"""The materials: paint on cast iron, cast aluminium, machined and rusted steel, wood, and what lies about."""

from nodes import (bump, cells, link, maths, mix, new_material, noise, node, occlusion, pointiness, ramp, upward)

GRIME = (0.016, 0.012, 0.008)


def paint(name, low, high, chipping=0.0, clean=False):
    """Old paint on cast iron: chipped on edges, filled with dirt in corners, oil run down, dust on top."""
    material, tree, shader = new_material(name)
    cloud, mid, fine = noise(tree, 2.4, 7, 0.65), noise(tree, 17, 6, 0.72), noise(tree, 85, 3, 0.6)
    base = mix(tree, ramp(tree, cloud, [(0.35, 0), (0.7, 1)]), low, high)
    edge = ramp(tree, pointiness(tree), [(0.505, 0), (0.56, 1)])
    wear = maths(tree, 'ADD', maths(tree, 'MULTIPLY', edge, 0.23), mid)
    chip = ramp(tree, wear, [(0.70 - chipping, 0), (0.715 - chipping, 1)])
    iron = mix(tree, ramp(tree, fine, [(0.4, 0), (0.6, 1)]), (0.060, 0.040, 0.030), (0.21, 0.185, 0.165))
    primer = ramp(tree, wear, [(0.682 - chipping, 0), (0.695 - chipping, 1)])
    colour = mix(tree, primer, base, (0.17, 0.075, 0.05))
    colour = mix(tree, chip, colour, iron)
    streak = ramp(tree, noise(tree, 2.2, 6, 0.65, (3.2, 3.2, 0.45)), [(0.52, 0), (0.72, 0.35 if clean else 0.8)])
    colour = mix(tree, streak, colour, (0.022, 0.018, 0.012))
    corner = ramp(tree, occlusion(tree, 0.35), [(0.25, 0), (0.9, 1)])
    colour = mix(tree, corner, mix(tree, 0.75, colour, GRIME), colour)
    dust = maths(tree, 'MULTIPLY', upward(tree), ramp(tree, noise(tree, 1.6, 6, 0.7), [(0.4, 0), (0.7, 0.25 if clean else 0.65)]))
    colour = mix(tree, dust, colour, (0.23, 0.205, 0.16))
    link(tree, colour, shader.inputs['Base Color'])
    rough = mix(tree, streak, ramp(tree, cloud, [(0.3, 0.30), (0.7, 0.55)]), 0.22)
    link(tree, mix(tree, dust, rough, 0.9), shader.inputs['Roughness'])
    link(tree, mix(tree, chip, 0, 0.65), shader.inputs['Metallic'])
    flat = bump(tree, (noise(tree, 8, 4, 0.5), 0.22, 0.03), (mix(tree, 0.45, fine, chip), 0.32, 0.012))
    link(tree, flat, shader.inputs['Normal'])
    return material


def aluminium(name, clean=False):
    """Sand-cast aluminium, stained by hot oil, polished where hands and tools go."""
    material, tree, shader = new_material(name)
    cloud, mid, fine = noise(tree, 2.0, 8, 0.65), noise(tree, 48, 6, 0.7), noise(tree, 130, 3, 0.6)
    light = 1.25 if clean else 1.0
    low, high = tuple(v * light for v in (0.30, 0.295, 0.28)), tuple(v * light for v in (0.52, 0.515, 0.50))
    colour = mix(tree, ramp(tree, cloud, [(0.3, 0), (0.72, 1)]), low, high)
    stain = ramp(tree, noise(tree, 1.5, 9, 0.72), [(0.50, 0), (0.66, 0.25 if clean else 0.85)])
    colour = mix(tree, stain, colour, (0.15, 0.105, 0.065))
    run = ramp(tree, noise(tree, 2.6, 6, 0.6, (3.5, 3.5, 0.4)), [(0.55, 0), (0.70, 0.15 if clean else 0.8)])
    colour = mix(tree, run, colour, (0.045, 0.032, 0.02))
    corner = ramp(tree, occlusion(tree, 0.25), [(0.3, 0), (0.92, 1)])
    colour = mix(tree, corner, mix(tree, 0.6 if clean else 0.9, colour, GRIME), colour)
    edge = ramp(tree, pointiness(tree), [(0.51, 0), (0.56, 0.7)])
    colour = mix(tree, edge, colour, (0.74, 0.73, 0.71))
    link(tree, colour, shader.inputs['Base Color'])
    link(tree, mix(tree, corner, 0.3, 0.88), shader.inputs['Metallic'])
    rough = mix(tree, stain, ramp(tree, cloud, [(0.3, 0.36), (0.7, 0.54)]), 0.30)
    link(tree, mix(tree, run, rough, 0.16), shader.inputs['Roughness'])
    flat = bump(tree, (noise(tree, 6, 4, 0.5), 0.18, 0.03), (mix(tree, 0.5, mid, fine), 0.34, 0.010))
    link(tree, flat, shader.inputs['Normal'])
    return material


def steel(name, low, high, rough, rust=0.0, oil=0.0, brushed=(1, 1, 8)):
    """Bare steel; rust and oil from 0 to 1 say how far they may spread, each object by its own chance."""
    material, tree, shader = new_material(name)
    info = node(tree, 'ShaderNodeObjectInfo')
    cloud, scratch = noise(tree, 7, 7, 0.65), noise(tree, 42, 4, 0.6, brushed)
    colour = mix(tree, ramp(tree, cloud, [(0.3, 0), (0.7, 1)]), low, high)
    colour = mix(tree, ramp(tree, scratch, [(0.58, 0), (0.66, 0.35)]), colour, tuple(min(1, v * 1.6) for v in high))
    metal, dull = 1.0, ramp(tree, cloud, [(0.3, rough[0]), (0.7, rough[1])])
    if oil:
        film = ramp(tree, noise(tree, 3.1, 7, 0.7), [(0.48, 0), (0.64, oil)])
        colour = mix(tree, film, colour, (0.040, 0.026, 0.014))
        dull = mix(tree, film, dull, 0.14)
    if rust:
        amount = maths(tree, 'ADD', maths(tree, 'MULTIPLY', info.outputs['Random'], 0.14), noise(tree, 8, 9, 0.8))
        spread = ramp(tree, amount, [(0.50, 0), (0.84, rust)])
        tone = mix(tree, noise(tree, 30, 4, 0.7), (0.055, 0.026, 0.016), (0.20, 0.085, 0.036))
        colour = mix(tree, spread, colour, tone)
        metal, dull = mix(tree, spread, 1.0, 0.0), mix(tree, spread, dull, 0.85)
    corner = ramp(tree, occlusion(tree, 0.10), [(0.2, 0), (0.9, 1)])
    link(tree, mix(tree, corner, (0.02, 0.015, 0.01), colour), shader.inputs['Base Color'])
    if isinstance(metal, float):
        shader.inputs['Metallic'].default_value = metal
    else:
        link(tree, metal, shader.inputs['Metallic'])
    link(tree, dull, shader.inputs['Roughness'])
    link(tree, bump(tree, (cloud, 0.10, 0.01), (scratch, 0.13, 0.005)), shader.inputs['Normal'])
    return material


def wood(name):
    material, tree, shader = new_material(name)
    grain, fibre = noise(tree, 2.6, 9, 0.62, (0.4, 8, 8), 0.4), noise(tree, 12, 8, 0.7, (0.28, 9, 9))
    colour = mix(tree, ramp(tree, grain, [(0.3, 0), (0.7, 1)]), (0.105, 0.066, 0.038), (0.29, 0.20, 0.125))
    colour = mix(tree, ramp(tree, fibre, [(0.42, 0.7), (0.58, 0)]), colour, (0.045, 0.028, 0.018))
    stain = ramp(tree, noise(tree, 0.5, 9, 0.7), [(0.50, 0), (0.60, 0.86)])
    colour = mix(tree, stain, colour, (0.020, 0.015, 0.011))
    spots = ramp(tree, cells(tree, 2.3), [(0.045, 0.8), (0.075, 0)])
    colour = mix(tree, spots, colour, (0.02, 0.014, 0.010))
    dents = ramp(tree, noise(tree, 5.5, 3, 0.5, (0.6, 2, 2)), [(0.66, 0), (0.72, 0.6)])
    colour = mix(tree, dents, colour, (0.36, 0.27, 0.18))
    link(tree, colour, shader.inputs['Base Color'])
    link(tree, mix(tree, stain, 0.66, 0.30), shader.inputs['Roughness'])
    link(tree, bump(tree, (mix(tree, 0.5, grain, fibre), 0.5, 0.02), (dents, 0.3, 0.03)), shader.inputs['Normal'])
    return material


def plain(name, colour, rough=0.6, metal=0.0, grain=0.0, spread=0.3, grain_scale=70):
    """One colour, a little uneven."""
    material, tree, shader = new_material(name)
    cloud = noise(tree, 3.5, 7, 0.65)
    low, high = tuple(v * (1 - spread) for v in colour), tuple(min(1, v * (1 + spread * 0.6)) for v in colour)
    link(tree, mix(tree, ramp(tree, cloud, [(0.3, 0), (0.7, 1)]), low, high), shader.inputs['Base Color'])
    shader.inputs['Roughness'].default_value = rough
    shader.inputs['Metallic'].default_value = metal
    if grain:
        link(tree, bump(tree, (noise(tree, grain_scale, 4, 0.6), grain, 0.012)), shader.inputs['Normal'])
    return material


def cloth(name, colour):
    material, tree, shader = new_material(name)
    weave = noise(tree, 60, 3, 0.6)
    oily = ramp(tree, noise(tree, 1.7, 7, 0.7), [(0.48, 0), (0.62, 0.85)])
    body = mix(tree, weave, tuple(v * 0.7 for v in colour), tuple(v * 1.25 for v in colour))
    link(tree, mix(tree, oily, body, (0.03, 0.022, 0.016)), shader.inputs['Base Color'])
    shader.inputs['Roughness'].default_value = 0.95
    shader.inputs['Sheen'].default_value = 0.4
    link(tree, bump(tree, (weave, 0.5, 0.012)), shader.inputs['Normal'])
    return material


def wall(name):
    """Limewashed brick, darker and greasy low down."""
    material, tree, shader = new_material(name)
    bricks = node(tree, 'ShaderNodeTexBrick', Scale=0.62)
    bricks.inputs['Mortar Size'].default_value = 0.018
    bricks.inputs['Mortar Smooth'].default_value = 0.4
    mapping = node(tree, 'ShaderNodeMapping')
    mapping.inputs['Rotation'].default_value = (1.5708, 0, 0)
    link(tree, node(tree, 'ShaderNodeTexCoord').outputs['Object'], mapping.inputs[0])
    link(tree, mapping.outputs[0], bricks.inputs['Vector'])
    cloud = noise(tree, 0.7, 8, 0.7)
    colour = mix(tree, ramp(tree, cloud, [(0.35, 0), (0.65, 1)]), (0.16, 0.15, 0.125), (0.36, 0.345, 0.30))
    colour = mix(tree, ramp(tree, noise(tree, 4, 6, 0.7), [(0.6, 0), (0.68, 0.7)]), colour, (0.20, 0.10, 0.065))
    colour = mix(tree, maths(tree, 'MULTIPLY', bricks.outputs['Fac'], 0.55), colour, (0.09, 0.085, 0.075))
    link(tree, colour, shader.inputs['Base Color'])
    shader.inputs['Roughness'].default_value = 0.85
    link(tree, bump(tree, (bricks.outputs['Fac'], -0.6, 0.05), (noise(tree, 9, 5, 0.6), 0.3, 0.05)), shader.inputs['Normal'])
    return material


def glass(name, colour, rough=0.02):
    material, _, shader = new_material(name)
    shader.inputs['Base Color'].default_value = (*colour, 1)
    shader.inputs['Roughness'].default_value = rough
    shader.inputs['Specular'].default_value = 0.8
    shader.inputs['Clearcoat'].default_value = 1.0
    return material


def film(name):
    """Thin clear plastic: mostly seen through, with glints on its creases."""
    material, tree, shader = new_material(name)
    shader.inputs['Base Color'].default_value = (0.85, 0.87, 0.88, 1)
    shader.inputs['Roughness'].default_value = 0.16
    clear = node(tree, 'ShaderNodeBsdfTransparent')
    facing = node(tree, 'ShaderNodeLayerWeight', Blend=0.35)
    share = ramp(tree, facing.outputs['Facing'], [(0.0, 0.05), (0.9, 0.42)])
    blend = node(tree, 'ShaderNodeMixShader')
    link(tree, share, blend.inputs[0])
    link(tree, clear.outputs[0], blend.inputs[1])
    link(tree, shader.outputs[0], blend.inputs[2])
    link(tree, blend.outputs[0], tree.nodes['Material Output'].inputs['Surface'])
    return material


def glow(name, colour, strength):
    material, tree, _ = new_material(name)
    light = node(tree, 'ShaderNodeEmission', Color=(*colour, 1), Strength=strength)
    link(tree, light.outputs[0], tree.nodes['Material Output'].inputs['Surface'])
    return material


def make_all():
    """Every material by the name that the builders use."""
    made = {
        'paint': paint('paint', (0.066, 0.108, 0.098), (0.108, 0.158, 0.140), 0.045),
        'paint-clean': paint('paint-clean', (0.085, 0.140, 0.132), (0.120, 0.185, 0.170), -0.02, True),
        'orange': paint('orange', (0.42, 0.125, 0.018), (0.55, 0.19, 0.03), 0.01),
        'frame': paint('frame', (0.030, 0.032, 0.034), (0.055, 0.056, 0.058), 0.04),
        'box': paint('box', (0.07, 0.10, 0.16), (0.11, 0.15, 0.22), 0.02),
        'alu': aluminium('alu'), 'alu-clean': aluminium('alu-clean', True),
        'bolt': steel('bolt', (0.10, 0.095, 0.088), (0.27, 0.26, 0.245), (0.28, 0.50), 0.85, 0.6),
        'bolt-clean': steel('bolt-clean', (0.25, 0.24, 0.22), (0.43, 0.42, 0.39), (0.24, 0.42), 0.22, 0.15),
        'black': steel('black', (0.030, 0.030, 0.032), (0.085, 0.083, 0.080), (0.28, 0.5), 0.25, 0.4),
        'washer': steel('washer', (0.34, 0.33, 0.31), (0.54, 0.53, 0.51), (0.25, 0.42), 0.35, 0.4),
        'machined': steel('machined', (0.42, 0.41, 0.39), (0.60, 0.59, 0.57), (0.22, 0.40), 0.0, 0.55, (6, 1, 1)),
        'ground': steel('ground', (0.50, 0.49, 0.48), (0.66, 0.65, 0.64), (0.12, 0.26), 0.0, 0.35, (1, 9, 1)),
        'gear': steel('gear', (0.30, 0.29, 0.275), (0.50, 0.48, 0.45), (0.20, 0.38), 0.0, 0.85, (3, 3, 3)),
        'brass': steel('brass', (0.42, 0.28, 0.105), (0.62, 0.43, 0.17), (0.24, 0.44), 0.0, 0.45),
        'copper': steel('copper', (0.40, 0.17, 0.09), (0.60, 0.28, 0.16), (0.24, 0.42), 0.0, 0.3),
        'tin': steel('tin', (0.42, 0.42, 0.41), (0.60, 0.60, 0.59), (0.22, 0.40), 0.3, 0.3),
        'wood': wood('wood'), 'wall': wall('wall'),
        'gasket': plain('gasket', (0.085, 0.070, 0.050), 0.75, 0, 0.3),
        'gasket-new': plain('gasket-new', (0.20, 0.17, 0.12), 0.8, 0, 0.2),
        'seal': plain('seal', (0.018, 0.018, 0.019), 0.42, 0, 0.12), 'rubber': plain('rubber', (0.022, 0.022, 0.023), 0.6, 0, 0.3),
        'bore': plain('bore', (0.012, 0.010, 0.008), 0.35), 'cast-inside': plain('cast-inside', (0.10, 0.055, 0.035), 0.32, 0.2, 0.4),
        'rag': cloth('rag', (0.33, 0.085, 0.06)), 'rag-blue': cloth('rag-blue', (0.07, 0.11, 0.20)),
        'paper': plain('paper', (0.62, 0.59, 0.50), 0.85, 0, 0.15, 0.12), 'card': plain('card', (0.40, 0.29, 0.16), 0.85, 0, 0.2, 0.15),
        'ink': plain('ink', (0.012, 0.014, 0.03), 0.6), 'dot-white': plain('dot-white', (0.80, 0.80, 0.74), 0.5, 0, 0.2, 0.1),
        'dot-yellow': plain('dot-yellow', (0.75, 0.50, 0.02), 0.5, 0, 0.2, 0.1),
        'red': plain('red', (0.36, 0.03, 0.025), 0.35), 'cream': plain('cream', (0.42, 0.38, 0.28), 0.55),
        'blue': plain('blue', (0.06, 0.10, 0.22), 0.4), 'green': plain('green', (0.04, 0.12, 0.06), 0.4),
        'grey': plain('grey', (0.16, 0.165, 0.17), 0.45), 'dark': plain('dark', (0.014, 0.014, 0.014), 0.5),
        'yellow': plain('yellow', (0.55, 0.40, 0.03), 0.45), 'earth': plain('earth', (0.20, 0.34, 0.03), 0.45),
        'amber': glass('amber', (0.16, 0.055, 0.008)), 'film': film('film'),
        'window': glow('window', (0.80, 0.90, 1.0), 5.0), 'tube': glow('tube', (1.0, 0.96, 0.90), 14.0),
    }
    return made
