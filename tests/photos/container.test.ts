import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { boxes, inside } from '../../core/photos/heif-boxes.ts';
import { heifFacts } from '../../core/photos/heif.ts';
import { type ExiftoolFacts, exiftoolFacts, heicPlain, heicTurned, put, read, testPool } from './make.ts';

/** HEIC containers: turned and mirrored in all eight ways, cut, and full of nonsense. */

const dir = mkdtempSync(join(tmpdir(), 'everybolt-container-'));
afterAll(() => rmSync(dir, { recursive: true, force: true }));
const pool = testPool();

const box = (type: string, ...body: number[]): Buffer => {
  const bytes = Buffer.from([0, 0, 0, 8 + body.length, ...Buffer.from(type, 'latin1'), ...body]);
  return bytes;
};
const irot = (quarters: number): Buffer => box('irot', quarters);
const imir = (axis: number): Buffer => box('imir', axis);

/** Puts turning boxes into the first item of a small HEIC as libheif writes it (ISO/IEC 23008-12, 9.3). */
function withBoxes(file: Buffer, added: readonly Buffer[]): Buffer {
  const view = new DataView(file.buffer, file.byteOffset, file.length);
  const meta = inside(boxes(view, 0, file.length), 'meta');
  const parts = meta && boxes(view, meta.start + 4, meta.end);
  const [iprp, iloc] = [parts && inside(parts, 'iprp'), parts && inside(parts, 'iloc')];
  const props = iprp && boxes(view, iprp.start, iprp.end);
  const [ipco, ipma] = [props && inside(props, 'ipco'), props && inside(props, 'ipma')];
  if (!meta || !iprp || !iloc || !ipco || !ipma) throw new Error('Expected a HEIC as libheif writes it.');
  const known = boxes(view, ipco.start, ipco.end).length;
  const countAt = ipma.start + 4 + 4 + 2;
  const count = file.readUInt8(countAt);
  const extra = Buffer.concat(added);
  const links = Buffer.from(added.map((_, i) => 0x80 | (known + 1 + i)));
  const copy = Buffer.from(file);
  copy.writeUInt8(count + added.length, countAt);
  const grow = (start: number, by: number) =>
    copy.writeUInt32BE(copy.readUInt32BE(start - 8) + by, start - 8);
  grow(ipco.start, extra.length);
  grow(ipma.start, links.length);
  grow(iprp.start, extra.length + links.length);
  grow(meta.start, extra.length + links.length);
  // Everything behind the boxes moves by what was put in: the table of places says so too (4 bytes each, as a base).
  const places = file.readUInt16BE(iloc.start + 6);
  for (let i = 0, at = iloc.start + 8; i < places; i++, at += 18)
    copy.writeUInt32BE(copy.readUInt32BE(at + 4) + extra.length + links.length, at + 4);
  const linksAt = countAt + 1 + count;
  return Buffer.concat([
    copy.subarray(0, ipco.end),
    extra,
    copy.subarray(ipco.end, linksAt),
    links,
    copy.subarray(linksAt),
  ]);
}

/** What each EXIF turn does, said with the picture library's own verbs: it mirrors first and turns then. */
const BY_HAND: Readonly<Record<number, (picture: Sharp) => Sharp>> = {
  1: (picture) => picture,
  2: (picture) => picture.flop(),
  3: (picture) => picture.rotate(180),
  4: (picture) => picture.flip(),
  5: (picture) => picture.flop().rotate(270),
  6: (picture) => picture.rotate(90),
  7: (picture) => picture.flop().rotate(90),
  8: (picture) => picture.rotate(270),
};

async function apart(a: Buffer | string, b: Buffer | string): Promise<number> {
  const [first, second] = [await sharp(a).raw().toBuffer(), await sharp(b).raw().toBuffer()];
  if (first.length !== second.length) return Number.POSITIVE_INFINITY;
  return first.reduce((sum, value, i) => sum + Math.abs(value - (second[i] as number)), 0) / first.length;
}

describe('a HEIC turned by its container', () => {
  it.each([
    ['not at all', [], 1],
    ['left and right changed', [imir(1)], 2],
    ['half', [irot(2)], 3],
    ['upside down', [imir(0)], 4],
    ['a quarter left, then upside down', [irot(1), imir(0)], 5],
    ['a quarter right', [irot(3)], 6],
    ['a quarter left, then left and right changed', [irot(1), imir(1)], 7],
    ['a quarter left', [irot(1)], 8],
  ] as const)('%s', async (name, added, turn) => {
    const plain = await read(pool, dir, put(dir, 'plain.heic', heicPlain()));
    const path = put(dir, `${turn}.heic`, added.length === 0 ? heicPlain() : withBoxes(heicPlain(), added));
    const said = exiftoolFacts([path])[0] as ExiftoolFacts;
    const { facts, large } = await read(pool, dir, path);
    expect(facts, name).toMatchObject({
      turn,
      width: said['ImageWidth'],
      height: said['ImageHeight'],
      camera: plain.facts.camera,
    });
    const wanted = await (BY_HAND[turn] as (picture: Sharp) => Sharp)(sharp(plain.large))
      .jpeg({ quality: 95 })
      .toBuffer();
    expect(await apart(large, wanted)).toBeLessThan(6);
    // Every other turn looks different: this test would see it.
    for (const other of Object.keys(BY_HAND)
      .map(Number)
      .filter((one) => one !== turn)) {
      const wrong = await (BY_HAND[other] as (picture: Sharp) => Sharp)(sharp(plain.large)).toBuffer();
      expect(await apart(large, wrong)).toBeGreaterThan(6);
    }
  });
});

describe('a container that is not whole', () => {
  it('is called cut at every length below its own, and never throws', () => {
    const file = heicTurned();
    for (let length = 0; length < file.length; length++) {
      const facts = heifFacts(file.subarray(0, length));
      expect(facts.cut, `cut to ${length}`).toBe(true);
    }
    expect(heifFacts(file)).toMatchObject({ cut: false, width: 320, height: 240, turn: 6 });
  });

  it('with any byte changed gives facts within their ranges, and never throws', () => {
    const file = heicTurned();
    for (let at = 0; at < file.length; at++)
      for (const value of [0x00, 0x7f, 0xff]) {
        const broken = Buffer.from(file);
        broken[at] = value;
        const { turn } = heifFacts(broken);
        expect(turn).toBeGreaterThanOrEqual(1);
        expect(turn).toBeLessThanOrEqual(8);
      }
  });

  it('with bytes changed here and there is read or refused by the picture process, never left without an answer', async () => {
    const file = heicTurned();
    for (let at = 8; at < file.length; at += 61) {
      const broken = Buffer.from(file);
      broken[at] = (broken[at] as number) ^ 0xff;
      const path = put(dir, `broken-${at}.heic`, broken);
      const sha256 = `${String(at).padStart(4, '0')}${'cd'.repeat(30)}`;
      const outcome = await pool.run({ op: 'read', path, sha256, renditions: dir });
      if (!outcome.ok) expect(outcome.fault.sentence).toMatch(/^Expected .+ got .+\.$/);
    }
  });
});
