"""Short ways to build shader nodes. Everything procedural: no picture is read from anywhere."""

import bpy


def new_material(name):
    """A material with its node tree and its main shader node."""
    material = bpy.data.materials.new(name)
    material.use_nodes = True
    tree = material.node_tree
    return material, tree, tree.nodes['Principled BSDF']


def node(tree, kind, **values):
    """A node of a kind; values are inputs where an input has that name, else attributes."""
    made = tree.nodes.new(kind)
    for key, value in values.items():
        if key in made.inputs.keys():
            made.inputs[key].default_value = value
        else:
            setattr(made, key, value)
    return made


def link(tree, source, target):
    tree.links.new(source, target)


def coordinates(tree, stretch=None, shift=True):
    """Object coordinates, moved by a random amount per object so that no two parts look alike."""
    source = node(tree, 'ShaderNodeTexCoord').outputs['Object']
    if shift:
        info = node(tree, 'ShaderNodeObjectInfo')
        scale = node(tree, 'ShaderNodeMath', operation='MULTIPLY')
        link(tree, info.outputs['Random'], scale.inputs[0])
        scale.inputs[1].default_value = 37.0
        add = node(tree, 'ShaderNodeVectorMath', operation='ADD')
        link(tree, source, add.inputs[0])
        link(tree, scale.outputs[0], add.inputs[1])
        source = add.outputs[0]
    if stretch:
        mapping = node(tree, 'ShaderNodeMapping')
        mapping.inputs['Scale'].default_value = stretch
        link(tree, source, mapping.inputs[0])
        source = mapping.outputs[0]
    return source


def noise(tree, scale, detail=5, rough=0.6, stretch=None, distort=0.0):
    made = node(tree, 'ShaderNodeTexNoise', Scale=scale, Detail=detail, Roughness=rough, Distortion=distort)
    link(tree, coordinates(tree, stretch), made.inputs['Vector'])
    return made.outputs['Fac']


def cells(tree, scale, stretch=None):
    made = node(tree, 'ShaderNodeTexVoronoi', Scale=scale)
    link(tree, coordinates(tree, stretch), made.inputs['Vector'])
    return made.outputs['Distance']


def ramp(tree, source, stops):
    """A colour ramp; a stop is (place, grey) or (place, (r, g, b))."""
    made = node(tree, 'ShaderNodeValToRGB')
    elements = made.color_ramp.elements
    while len(elements) < len(stops):
        elements.new(0.5)
    for i, (place, colour) in enumerate(stops):
        elements[i].position = place
        elements[i].color = (colour, colour, colour, 1) if isinstance(colour, (int, float)) else (*colour, 1)
    link(tree, source, made.inputs[0])
    return made.outputs[0]


def mix(tree, factor, first, second, mode='MIX'):
    """Mix two of: a socket, a grey value, a colour."""
    made = node(tree, 'ShaderNodeMixRGB', blend_type=mode)
    for i, value in enumerate((factor, first, second)):
        if isinstance(value, (int, float)):
            made.inputs[i].default_value = value if i == 0 else (value, value, value, 1)
        elif isinstance(value, tuple):
            made.inputs[i].default_value = (*value, 1)
        else:
            link(tree, value, made.inputs[i])
    return made.outputs[0]


def maths(tree, operation, first, second):
    made = node(tree, 'ShaderNodeMath', operation=operation)
    for i, value in enumerate((first, second)):
        if isinstance(value, (int, float)):
            made.inputs[i].default_value = value
        else:
            link(tree, value, made.inputs[i])
    return made.outputs[0]


def bump(tree, *layers):
    """Bumps on top of each other; a layer is (height socket, strength, distance)."""
    below = None
    for height, strength, distance in layers:
        made = node(tree, 'ShaderNodeBump', Strength=strength, Distance=distance)
        link(tree, height, made.inputs['Height'])
        if below is not None:
            link(tree, below, made.inputs['Normal'])
        below = made.outputs[0]
    return below


def pointiness(tree):
    """Convex above 0.5, concave below: wear and dirt for dense castings, at no cost in rays."""
    return node(tree, 'ShaderNodeNewGeometry').outputs['Pointiness']


def occlusion(tree, distance):
    made = node(tree, 'ShaderNodeAmbientOcclusion', Distance=distance)
    made.samples = 1
    return made.outputs['AO']


def upward(tree):
    """How far a face looks up, 0 to 1: where dust and oil come to lie."""
    parts = node(tree, 'ShaderNodeSeparateXYZ')
    link(tree, node(tree, 'ShaderNodeNewGeometry').outputs['Normal'], parts.inputs[0])
    return ramp(tree, parts.outputs['Z'], [(0.3, 0), (0.95, 1)])
