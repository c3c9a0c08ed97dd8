"""From a render to a photo: denoise, enlarge, lens and sensor, JPEG with turned pixels, EXIF, true places.

python3 finish.py FOLDER_OF_RENDERS FOLDER_OF_PHOTOS [LONG_SIDE] [NAME ...]     (needs numpy, Pillow, exiftool)
"""

import json
import os
import random
import subprocess
import sys

import numpy as np
from PIL import Image, ImageFilter

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))

from shots import SHOTS  # noqa: E402

TURN = {6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270, 3: Image.Transpose.ROTATE_180}


def blur(plane, reach=1):
    """Box mean over a small window, along both axes."""
    for axis in (0, 1):
        total = plane.copy()
        for step in range(1, reach + 1):
            total += np.roll(plane, step, axis) + np.roll(plane, -step, axis)
        plane = total / (2 * reach + 1)
    return plane


def despeckle(plane):
    """Hold each value to what its neighbours reach (third highest and third lowest of eight)."""
    near = np.stack([np.roll(plane, (dy, dx), (0, 1)) for dy in (-1, 0, 1) for dx in (-1, 0, 1) if dy or dx])
    near.partition((2, 5), axis=0)
    return np.clip(plane, near[2], near[5])


def guided_mean(light, guide, reach):
    """Mean over a window, counting only neighbours whose guide is alike."""
    height, width = light.shape[:2]
    pad = ((reach, reach), (reach, reach), (0, 0))
    wide_light, wide_guide = np.pad(light, pad, 'edge'), np.pad(guide, pad, 'edge')
    total, weights = np.zeros_like(light), np.zeros((height, width), np.float32)
    for dy in range(2 * reach + 1):
        for dx in range(2 * reach + 1):
            near = (slice(dy, dy + height), slice(dx, dx + width))
            apart = guide - wide_guide[near]
            far = ((dx - reach) ** 2 + (dy - reach) ** 2) / (reach * reach * 0.9)
            weight = np.exp(-np.einsum('ijk,ijk->ij', apart, apart) - far)
            total += wide_light[near] * weight[..., None]
            weights += weight
    return total / weights[..., None]


def denoise(colour, albedo, normal):
    """Smooth the light without the surface colour, inside like surfaces (albedo, normal) and like light (a first, coarse pass)."""
    surface = np.clip(albedo, 0.0, None) + 0.12
    light = np.log1p(np.clip(colour / surface, 0, 60))
    guide = np.dstack([blur(albedo).mean(2) / 0.05, *np.moveaxis(blur(normal) / 0.2, 2, 0)]).astype(np.float32)
    calm = despeckle(light)
    pilot = guided_mean(calm, guide, 2)
    error = np.sqrt(blur(((calm - pilot) ** 2).mean(2), 5))[..., None] + 0.01
    light = np.clip(light, pilot - 1.8 * error, pilot + 1.8 * error)
    shade = pilot.mean(2) / (1.1 * error[..., 0] + 0.02)
    smooth = guided_mean(light, np.dstack([guide, shade]).astype(np.float32), 5)
    return np.expm1(smooth) * surface


def tone(linear, exposure=1.0):
    """Film-like curve (shoulder and toe), then display gamma."""
    x = np.clip(linear, 0, None) * exposure
    curve = (x * (2.51 * x + 0.03)) / (x * (2.43 * x + 0.59) + 0.14)
    return np.clip(curve, 0, 1) ** (1 / 2.2)


def shake(picture, chance):
    """A camera moved while it was open: the mean along a short crooked path."""
    height, width = picture.shape[:2]
    x = y = 0.0
    total = np.zeros_like(picture)
    steps = 26
    for i in range(steps):
        x += width * (0.0011 + 0.0004 * chance.random())
        y += width * (0.0006 * np.sin(i / 5) + 0.0004 * chance.random())
        total += np.roll(picture, (int(round(y)), int(round(x))), (0, 1))
    return np.roll(total / steps, (-int(round(y / 2)), -int(round(x / 2))), (0, 1))


def lens(picture, seed):
    """Light bloom, falling off to the corners, sharpening as phones do, grain stronger in the dark."""
    height, width = picture.shape[:2]
    image = Image.fromarray((picture * 255).astype(np.uint8))
    glow = np.asarray(image.resize((width // 8, height // 8)).filter(ImageFilter.GaussianBlur(width / 500)).resize((width, height), Image.Resampling.BICUBIC), np.float32) / 255
    picture = picture + np.clip(glow - 0.72, 0, 1) * 0.35
    local = np.asarray(image.resize((width // 8, height // 8)).filter(ImageFilter.GaussianBlur(width / 250)).resize((width, height), Image.Resampling.BICUBIC), np.float32) / 255
    picture = picture + (picture - local) * 0.12
    v, u = np.mgrid[-1:1:height * 1j, -1:1:width * 1j].astype(np.float32)
    picture *= (1 - 0.22 * np.clip((u * u + v * v) / 2, 0, 1) ** 1.3)[..., None]
    chance = np.random.default_rng(seed)
    grain = chance.normal(0, 1, (height, width)).astype(np.float32)
    grain = 0.6 * grain + 0.8 * blur(chance.normal(0, 1, (height, width)).astype(np.float32), 1)
    tint = blur(chance.normal(0, 1, (height // 2 + 1, width // 2 + 1, 3)).astype(np.float32), 1).repeat(2, 0).repeat(2, 1)[:height, :width]
    strength = 0.011 + 0.012 * (1 - picture.mean(2))
    return picture + (grain * strength)[..., None] + tint * (strength * 0.8)[..., None]


def write(name, shot, picture, folder, quality):
    path = os.path.join(folder, name + '.jpg')
    image = Image.fromarray((np.clip(picture, 0, 1) * 255 + 0.5).astype(np.uint8))
    turn = shot.get('orientation', 1)
    if turn in TURN:
        image = image.transpose(TURN[turn])
    image.save(path, quality=quality, optimize=True, subsampling='4:2:0')
    taken, zone = shot['taken'], shot['zone']
    chance = random.Random(name)
    tags = {'Make': 'Halvorn', 'Model': 'Workshop phone 5', 'Software': 'camera 3.2', 'Orientation#': turn, 'DateTimeOriginal': taken,
            'CreateDate': taken, 'ModifyDate': taken, 'SubSecTimeOriginal': chance.randrange(100, 999), 'FNumber': 1.8,
            'FocalLength': 5.4, 'FocalLengthIn35mmFormat': round(shot['lens']), 'ISO': chance.choice((125, 200, 320, 400)),
            'ExposureTime': '1/8' if shot.get('shake') else chance.choice(('1/50', '1/60', '1/100')), 'ColorSpace#': 1,
            'ExifImageWidth': image.width, 'ExifImageHeight': image.height}
    if zone:
        tags.update({'OffsetTimeOriginal': zone, 'OffsetTime': zone, 'OffsetTimeDigitized': zone})
    if shot.get('gps'):
        tags.update({'GPSLatitude': 54.5, 'GPSLatitudeRef': 'N', 'GPSLongitude': 2.5, 'GPSLongitudeRef': 'E', 'GPSAltitude': 41})
    subprocess.run(['exiftool', '-q', '-overwrite_original', *(f'-{key}={value}' for key, value in tags.items()), path], check=True)
    return image


def finish(name, renders, photos, long_side):
    shot = SHOTS[name]
    data = np.load(os.path.join(renders, name + '.npz'))
    colour, albedo, normal = (data[key].astype(np.float32) for key in ('colour', 'albedo', 'normal'))
    clean = denoise(colour, albedo, normal)
    picture = tone(clean, shot.get('exposure', 1.0) * 1.25)
    height, width = picture.shape[:2]
    scale = long_side / max(width, height)
    size = (round(width * scale), round(height * scale))
    image = Image.fromarray((np.clip(picture, 0, 1) * 255).astype(np.uint8)).resize(size, Image.Resampling.LANCZOS)
    image = image.filter(ImageFilter.UnsharpMask(scale * 0.9, 70, 2))
    picture = np.asarray(image, np.float32) / 255
    if shot.get('shake'):
        picture = shake(picture, random.Random(3))
    picture = lens(picture, int(name[-4:]))
    made = write(name, shot, picture, photos, 78)
    print(name, made.size, os.path.getsize(os.path.join(photos, name + '.jpg')) // 1024, 'KiB', flush=True)


def book(renders, photos):
    """places.json: for every photo that is there, where everything is in the upright picture."""
    rows = {}
    for name in SHOTS:
        path = os.path.join(renders, name + '.json')
        if os.path.exists(path) and os.path.exists(os.path.join(photos, name + '.jpg')):
            with open(path, encoding='utf-8') as file:
                rows[name + '.jpg'] = json.load(file)
    with open(os.path.join(photos, 'places.json'), 'w', encoding='utf-8') as file:
        lines = [f'  {json.dumps(name)}: [\n' + ',\n'.join('    ' + json.dumps(row) for row in found) + '\n  ]' for name, found in rows.items()]
        file.write('{\n' + ',\n'.join(lines) + '\n}\n')


def main():
    renders, photos, *rest = sys.argv[1:]
    long_side = int(rest[0]) if rest else 3648
    names = rest[1:] or [name for name in SHOTS if os.path.exists(os.path.join(renders, name + '.npz'))]
    os.makedirs(photos, exist_ok=True)
    for name in names:
        finish(name, renders, photos, long_side)
    book(renders, photos)


main()
