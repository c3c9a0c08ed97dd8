import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { good, quarters, scene, tried } from './made.ts';

/** Files that are not as they should be: each works, or says in words of its own why not. */

const UPRIGHT = ['red', 'grey', 'grey', 'blue'];

/** A PNG that says it is enormous: 30 000 × 30 000 in a few hundred bytes (PNG specification, 11.2.1). */
function bomb(): Buffer {
  const crcOf = (bytes: Buffer): number => {
    let crc = 0xffffffff;
    for (const byte of bytes) {
      crc ^= byte;
      for (let k = 0; k < 8; k++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
    }
    return (crc ^ 0xffffffff) >>> 0;
  };
  const chunk = (type: string, body: Buffer): Buffer => {
    const inner = Buffer.concat([Buffer.from(type, 'latin1'), body]);
    const ends = Buffer.alloc(8);
    ends.writeUInt32BE(body.length, 0);
    ends.writeUInt32BE(crcOf(inner), 4);
    return Buffer.concat([ends.subarray(0, 4), inner, ends.subarray(4)]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(30_000, 0);
  head.writeUInt32BE(30_000, 4);
  head.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.alloc(90_001))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

describe('pictures of other kinds work', () => {
  it.each([
    ['four inks', async () => scene().toColourspace('cmyk').jpeg().toBuffer()],
    ['sixteen bits', async () => scene().toColourspace('rgb16').png().toBuffer()],
    ['a wide profile', async () => scene().withIccProfile('p3').jpeg().toBuffer()],
    ['colours from a table', async () => scene().png({ palette: true }).toBuffer()],
    ['line by line, coarse first', async () => scene().jpeg({ progressive: true }).toBuffer()],
    ['an AVIF', async () => scene().avif().toBuffer()],
  ] as const)('%s', async (_name, make) => {
    const at = tried();
    const path = at.write('odd', await make());
    good(await at.read(path));
    const shown = at.rendition(path, '2048');
    expect(await quarters(shown)).toEqual(UPRIGHT);
    const meta = await sharp(shown).metadata();
    expect({ space: meta.space, depth: meta.depth, icc: meta.icc }).toEqual({
      space: 'srgb',
      depth: 'uchar',
      icc: undefined,
    });
  });

  it('grey alone', async () => {
    const at = tried();
    const path = at.write('grey.jpg', await scene().greyscale().jpeg().toBuffer());
    good(await at.read(path));
    expect((await quarters(at.rendition(path, '320')))[1]).toBe('grey');
  });

  it('a moving picture is taken by its first frame, and it is said', async () => {
    const at = tried();
    const frames = [await scene().png().toBuffer(), await scene().negate().png().toBuffer()];
    const path = at.write(
      'moving.webp',
      await sharp(frames, { join: { animated: true } })
        .webp({ loop: 0 })
        .toBuffer(),
    );
    const facts = good(await at.read(path));
    expect(facts.notices.join(' ')).toContain('first of 2 frames');
    expect(facts).toMatchObject({ width: 400, height: 300 });
    expect(await quarters(at.rendition(path, '2048'))).toEqual(UPRIGHT);
  });

  it('a see-through picture stands on white', async () => {
    const at = tried();
    const clear = sharp({ create: { width: 50, height: 50, channels: 4, background: '#00000000' } });
    const path = at.write('clear.png', await clear.png().toBuffer());
    good(await at.read(path));
    expect((await quarters(at.rendition(path, '2048')))[0]).toBe('white');
  });

  it('a picture of one pixel', async () => {
    const at = tried();
    const path = at.write(
      'one.png',
      await sharp({ create: { width: 1, height: 1, channels: 3, background: '#888' } })
        .png()
        .toBuffer(),
    );
    expect(good(await at.read(path))).toMatchObject({ width: 1, height: 1 });
  });
});

describe('files that are refused say why', () => {
  const heic = readFileSync(join(import.meta.dirname, 'data', 'turned-by-container.heic'));
  it.each([
    ['a JPEG cut off', async () => cut(await scene(1200, 900).jpeg().toBuffer(), 0.6), /breaks off/],
    ['a PNG cut off', async () => cut(await scene().png().toBuffer(), 0.6), /breaks off/],
    ['a WebP cut off', async () => cut(await scene().webp().toBuffer(), 0.6), /breaks off/],
    ['a HEIC cut off', async () => Promise.resolve(cut(heic, 0.7)), /breaks off/],
    ['an AVIF cut off', async () => cut(await scene().avif().toBuffer(), 0.7), /breaks off/],
    ['a text', async () => Promise.resolve(Buffer.from('no picture at all')), /none inside/],
    ['an SVG', async () => Promise.resolve(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')), /SVG/],
    ['a GIF', async () => scene().gif().toBuffer(), /GIF/],
    ['a TIFF', async () => scene().tiff().toBuffer(), /TIFF/],
    ['a bomb', async () => Promise.resolve(bomb()), /at most 250 million pixels/],
    ['only a head', async () => Promise.resolve(Buffer.from([0xff, 0xd8, 0xff, 0xe0])), /Expected .*got/],
  ] as const)('%s', async (_name, make, why) => {
    const at = tried();
    const outcome = await at.read(at.write('file.jpg', await make()));
    expect(outcome.ok ? 'taken' : outcome.fault.sentence).toMatch(why);
    // Nothing of it stays, and the same process goes on.
    const pids = at.pool.pids();
    good(await at.read(at.write('good.jpg', await scene().jpeg().toBuffer())));
    expect(at.pool.pids()).toEqual(expect.arrayContaining(pids));
  });

  it('a file with holes burnt into its middle is taken or refused, never left without an answer', async () => {
    const at = tried();
    const whole = await scene(1200, 900).jpeg().toBuffer();
    for (let n = 0; n < 22; n++) {
      const burnt = Buffer.from(whole);
      burnt.fill((n * 37) & 255, 20 + n * 400, 20 + n * 400 + 40);
      const outcome = await at.read(at.write(`burnt-${n}.jpg`, burnt));
      if (!outcome.ok) expect(outcome.fault.sentence).toMatch(/^Expected .+ got .+\.$/);
    }
  });
});

function cut(bytes: Buffer, share: number): Buffer {
  return bytes.subarray(0, Math.floor(bytes.length * share));
}
