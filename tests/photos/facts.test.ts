import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { turnOf, uprightSize } from '../../core/photos/turn.ts';
import {
  exiftool,
  type ExiftoolFacts,
  exiftoolFacts,
  heicPlain,
  heicTurned,
  heicWide,
  patches,
  put,
  quarters,
  read,
  testPool,
} from './make.ts';

/** The same facts as exiftool (Debian, libimage-exiftool-perl), on files of every kind that is taken. */

const dir = mkdtempSync(join(tmpdir(), 'everybolt-facts-'));
afterAll(() => rmSync(dir, { recursive: true, force: true }));
const pool = testPool();

/** Each kind as a plain file without tags. */
const KINDS: Readonly<Record<string, () => Promise<Buffer>>> = {
  jpg: async () => patches(480, 320).jpeg().toBuffer(),
  png: async () => patches(480, 320).png().toBuffer(),
  webp: async () => patches(480, 320).webp().toBuffer(),
  avif: async () => patches(480, 320).avif({ effort: 0 }).toBuffer(),
  heic: async () => Promise.resolve(heicPlain()),
};

/** Times as cameras write them, each with what the program makes of it. */
const TIMES: readonly { tags: string[]; local: string | null; zone: string | null; utc: number | null }[] = [
  {
    tags: ['-DateTimeOriginal=2026:09:01 14:02:03', '-OffsetTimeOriginal=+02:00', '-SubSecTimeOriginal=45'],
    local: '2026-09-01T14:02:03.45',
    zone: '+02:00',
    utc: Date.UTC(2026, 8, 1, 12, 2, 3, 450),
  },
  { tags: ['-DateTimeOriginal=2026:09:01 23:59:59'], local: '2026-09-01T23:59:59', zone: null, utc: null },
  {
    tags: ['-DateTimeOriginal=2026:03:01 00:10:00', '-OffsetTimeOriginal=-09:30'],
    local: '2026-03-01T00:10:00',
    zone: '-09:30',
    utc: Date.UTC(2026, 2, 1, 9, 40),
  },
  { tags: ['-EXIF:CreateDate=2025:12:31 08:00:00'], local: '2025-12-31T08:00:00', zone: null, utc: null },
  { tags: ['-EXIF:ModifyDate=2025:12:31 08:00:00'], local: null, zone: null, utc: null },
  { tags: [], local: null, zone: null, utc: null },
  { tags: ['-DateTimeOriginal=0000:00:00 00:00:00'], local: null, zone: null, utc: null },
  {
    tags: ['-DateTimeOriginal=2026:09:01 14:02:03', '-OffsetTime=+05:00'],
    local: '2026-09-01T14:02:03',
    zone: null,
    utc: null,
  },
];
const CAMERAS = [
  { tags: ['-Make=Acme', '-Model=Field 2'], camera: 'Acme Field 2' },
  { tags: ['-Make=Acme', '-Model=Acme One'], camera: 'Acme One' },
  { tags: ['-Make=NORDLICHT GmbH', '-Model=K-5 '], camera: 'NORDLICHT GmbH K-5' },
  { tags: ['-Model=Only a model'], camera: 'Only a model' },
  { tags: [], camera: '' },
];
const PLACE = ['-GPSLatitude=48.1', '-GPSLatitudeRef=N', '-GPSLongitude=11.5', '-GPSLongitudeRef=E'];

/** Local time as exiftool says it, in the program's way of writing. */
function clockOf(said: ExiftoolFacts): string | null {
  const time = said['DateTimeOriginal'] ?? said['CreateDate'];
  const sub = said['DateTimeOriginal'] === undefined ? undefined : said['SubSecTimeOriginal'];
  if (typeof time !== 'string' || time.startsWith('0000')) return null;
  return `${time.slice(0, 10).replaceAll(':', '-')}T${time.slice(11, 19)}${sub === undefined ? '' : `.${sub}`}`;
}

describe.each(Object.keys(KINDS))('a %s has the same facts as exiftool says', (kind) => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('with orientation %i', async (turn) => {
    const path = put(dir, `${kind}-${turn}.${kind}`, await (KINDS[kind] as () => Promise<Buffer>)());
    const time = TIMES[turn - 1] as (typeof TIMES)[number];
    const camera = CAMERAS[turn % CAMERAS.length] as (typeof CAMERAS)[number];
    const withPlace = turn % 2 === 0;
    exiftool('-q', '-overwrite_original', '-all=', path);
    const tags = [`-Orientation#=${turn}`, ...time.tags, ...camera.tags, ...(withPlace ? PLACE : [])];
    exiftool('-q', '-overwrite_original', ...tags, path);
    const said = exiftoolFacts([path])[0] as ExiftoolFacts;
    const { facts } = await read(pool, dir, path);

    expect({ width: facts.width, height: facts.height }).toEqual({
      width: said['ImageWidth'],
      height: said['ImageHeight'],
    });
    expect(facts.type).toBe(said['MIMEType']);
    expect(said['Orientation'], 'the tag was written').toBe(turn);
    // Containers are turned by their own boxes alone; exiftool calls that Rotation, and there is none in these.
    const container = kind === 'heic' || kind === 'avif';
    expect(facts.turn).toBe(container ? 1 : said['Orientation']);
    expect(facts.takenLocal).toBe(time.local);
    if (kind !== 'png' || time.tags.length > 0) expect(facts.takenLocal).toBe(clockOf(said));
    expect(facts.takenZone).toBe(time.local === null ? null : (said['OffsetTimeOriginal'] ?? null));
    expect(facts.takenUtc).toBe(time.utc);
    expect(facts.camera).toBe(camera.camera);
    for (const name of ['Make', 'Model'] as const)
      expect(facts.camera).toContain(String(said[name] ?? '').trim());
    expect(facts.hasLocation).toBe(said['GPSLatitude'] !== undefined);
    expect(facts.hasLocation).toBe(withPlace);
  });
});

describe('renditions', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'of a JPEG, PNG and WebP with orientation %i stand upright, at most 2048 and 320 pixels long',
    async (turn) => {
      const stored = await patches(2600, 1300).png().toBuffer();
      const upright = await sharp(stored).jpeg().withMetadata({ orientation: turn }).toBuffer();
      const wanted = await quarters(await sharp(upright).autoOrient().toBuffer());
      for (const kind of ['jpeg', 'png', 'webp'] as const) {
        const path = join(dir, `upright-${turn}.${kind}`);
        await sharp(stored).toFormat(kind).withMetadata({ orientation: turn }).toFile(path);
        const { facts, large, small } = await read(pool, dir, path);
        expect(facts.turn).toBe(turn);
        const size = uprightSize(2048, 1024, turnOf(turn));
        for (const [file, longest] of [
          [large, 2048],
          [small, 320],
        ] as const) {
          const meta = await sharp(file).metadata();
          expect({ width: meta.width, height: meta.height }).toEqual({
            width: (size.width * longest) / 2048,
            height: (size.height * longest) / 2048,
          });
          expect(meta.orientation, 'nothing is left to turn').toBeUndefined();
          expect(await quarters(file)).toBe(wanted);
        }
      }
    },
  );

  it('of a HEIC are turned by its container once, and not again by its EXIF', async () => {
    const turned = put(dir, 'turned.heic', heicTurned());
    const said = exiftoolFacts([turned])[0] as ExiftoolFacts;
    expect(said['Rotation'], 'the container turns it').toBe(270);
    const { facts, large } = await read(pool, dir, turned);
    expect(facts).toMatchObject({ type: 'image/heic', width: 320, height: 240, turn: 6 });
    expect(await sharp(large).metadata()).toMatchObject({ width: 240, height: 320 });
    const plain = await read(pool, dir, put(dir, 'plain.heic', heicPlain()));
    expect(plain.facts).toMatchObject({ width: 320, height: 240, turn: 1 });
    expect(await sharp(plain.large).metadata()).toMatchObject({ width: 320, height: 240 });
    // The same picture inside: turned a quarter, one is the other.
    const again = await sharp(plain.large).rotate(90).raw().toBuffer();
    const once = await sharp(large).raw().toBuffer();
    const apart =
      once.reduce((sum, value, i) => sum + Math.abs(value - (again[i] as number)), 0) / once.length;
    expect(apart).toBeLessThan(12);
  });

  it('carry no location and no other tag, while the original keeps them', async () => {
    const path = put(dir, 'place.jpg', await patches(640, 480).jpeg().toBuffer());
    exiftool('-q', '-overwrite_original', ...PLACE, '-Make=Acme', '-XMP:GPSLatitude=48.1', path);
    const { facts, large, small } = await read(pool, dir, path);
    expect(facts.hasLocation).toBe(true);
    for (const said of exiftoolFacts([large, small])) {
      expect(Object.keys(said).filter((name) => /GPS|Make|XMP|Exif[^T]/.test(name))).toEqual([]);
    }
    const kept = exiftoolFacts([path])[0] as ExiftoolFacts;
    expect(kept['GPSLatitude']).toBe(48.1);
  });

  it.each(['png', 'heic'])('of a %s in the wide P3 colours are in sRGB and look the same', async (kind) => {
    // #cc8844 written in P3: other numbers (194, 140, 80), the same look.
    const colour = sharp({ create: { width: 64, height: 64, channels: 3, background: '#cc8844' } });
    const rgb = await colour.png().toBuffer();
    const wide = kind === 'heic' ? heicWide() : await sharp(rgb).withIccProfile('p3').png().toBuffer();
    const path = put(dir, `wide.${kind}`, wide);
    expect((await sharp(path).metadata()).hasProfile).toBe(true);
    const { large } = await read(pool, dir, path);
    expect((await sharp(large).metadata()).hasProfile).toBe(false);
    const shown = [...(await sharp(large).raw().toBuffer()).subarray(0, 3)];
    for (const [i, value] of [0xcc, 0x88, 0x44].entries())
      expect(Math.abs((shown[i] as number) - value), `channel ${i} of ${shown.join(', ')}`).toBeLessThan(4);
  });
});

describe('tags from elsewhere', () => {
  it('a time and camera in XMP alone are taken, as exiftool takes them', async () => {
    const path = put(dir, 'xmp.webp', await patches(320, 200).webp().toBuffer());
    exiftool(
      '-q',
      '-overwrite_original',
      '-XMP-exif:DateTimeOriginal=2026:04:05 06:07:08+01:00',
      '-XMP-tiff:Make=Acme',
      '-XMP-tiff:Model=Panel',
      path,
    );
    const said = exiftoolFacts([path])[0] as ExiftoolFacts;
    expect(said['DateTimeOriginal']).toBe('2026:04:05 06:07:08+01:00');
    const { facts } = await read(pool, dir, path);
    expect(facts).toMatchObject({
      takenLocal: '2026-04-05T06:07:08',
      takenZone: '+01:00',
      takenUtc: Date.UTC(2026, 3, 5, 5, 7, 8),
      camera: 'Acme Panel',
    });
  });

  it('that are broken are no reason to refuse a photo', async () => {
    const whole = put(dir, 'tags.jpg', await patches(320, 200).jpeg().toBuffer());
    exiftool('-q', '-overwrite_original', '-Make=Acme', '-DateTimeOriginal=2026:09:01 14:02:03', whole);
    const bytes = readFileSync(whole);
    const head = bytes.indexOf('Exif\0\0', 0, 'latin1') + 6;
    // Every place that the tags point at is nonsense now; the picture itself is whole.
    for (let at = head + 8; at < head + 60; at++) bytes[at] = 0xff;
    const { facts } = await read(pool, dir, put(dir, 'broken-tags.jpg', bytes));
    expect(facts).toMatchObject({ width: 320, height: 200, turn: 1, takenLocal: null, camera: '' });
  });
});
