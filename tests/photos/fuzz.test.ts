import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { good, quarters, scene, tag, tried } from './made.ts';
import { heicPlain } from './make.ts';

/** Files broken on purpose, hundreds of them, through real picture processes: each gets its answer in words. */

const KINDS = {
  jpeg: async () => scene(96, 72).jpeg().toBuffer(),
  progressive: async () => scene(96, 72).jpeg({ progressive: true }).toBuffer(),
  png: async () => scene(96, 72).png().toBuffer(),
  webp: async () => scene(96, 72).webp().toBuffer(),
  avif: async () => scene(96, 72).avif({ effort: 0 }).toBuffer(),
  heic: async () => Promise.resolve(heicPlain()),
} as const;

type Harm = readonly [kind: 'flip' | 'cut' | 'zeros' | 'double' | 'drop', at: number, more: number];

function harmed(bytes: Buffer, harms: readonly Harm[]): Buffer {
  let now = Buffer.from(bytes);
  for (const [kind, share, more] of harms) {
    const at = Math.floor(share * now.length);
    const to = Math.min(now.length, at + more);
    if (kind === 'flip' && at < now.length) now[at] = (now[at] as number) ^ (1 + (more % 255));
    else if (kind === 'cut') now = now.subarray(0, at);
    else if (kind === 'zeros') now.fill(0, at, to);
    else if (kind === 'double') now = Buffer.concat([now.subarray(0, to), now.subarray(at)]);
    else if (kind === 'drop') now = Buffer.concat([now.subarray(0, at), now.subarray(to)]);
  }
  return now;
}

const harm: fc.Arbitrary<Harm> = fc.tuple(
  fc.constantFrom('flip', 'flip', 'flip', 'cut', 'zeros', 'double', 'drop'),
  fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
  fc.integer({ min: 1, max: 400 }),
);

describe('files broken on purpose', () => {
  it.each(Object.keys(KINDS) as (keyof typeof KINDS)[])(
    '%s: taken or refused with a sentence, whatever is done to them; the next whole one is read',
    { timeout: 60_000 },
    async (kind) => {
      const at = tried({ timeoutMs: 20_000 });
      const whole = await KINDS[kind]();
      let n = 0;
      await fc.assert(
        fc.asyncProperty(fc.array(harm, { minLength: 1, maxLength: 4 }), async (harms) => {
          const outcome = await at.read(at.write(`broken-${n++}`, harmed(whole, harms)));
          if (outcome.ok) expect(outcome.value.width * outcome.value.height).toBeGreaterThan(0);
          else {
            expect(outcome.fault.sentence).toMatch(/^Expected [^\n]+ got [^\n]+\.$/);
            expect(outcome.fault.sentence).not.toMatch(/failOn|VipsJpeg|tmp|\/[a-z]+\//);
            expect(outcome.fault.code).not.toBe('too-slow');
          }
        }),
        { numRuns: 40, seed: 3 },
      );
      good(await at.read(at.write('whole', whole)));
    },
  );

  it('a JPEG cut behind any of its markers is refused as one that breaks off, or as damaged', async () => {
    const at = tried();
    const whole = await scene(96, 72).jpeg().toBuffer();
    const ends = [...whole.keys()].filter((i) => whole[i] === 0xff && (whole[i + 1] ?? 0) >= 0xc0);
    expect(ends.length).toBeGreaterThan(6);
    for (const [n, end] of ends.entries()) {
      const outcome = await at.read(at.write(`cut-${n}.jpg`, whole.subarray(0, end + 2)));
      if (end === ends.at(-1)) good(outcome);
      else expect(outcome.ok ? 'taken' : outcome.fault.sentence).toMatch(/^Expected .+ got .+\.$/);
    }
  });

  it('a JPEG that broke off and was filled up with zeros is refused; zeros behind a whole one do no harm', async () => {
    const at = tried();
    for (const options of [{}, { progressive: true }]) {
      const whole = await scene(1200, 900).jpeg(options).toBuffer();
      const half = Buffer.from(whole).fill(0, Math.floor(whole.length * 0.6));
      const outcome = await at.read(at.write('half.jpg', half));
      expect(outcome.ok ? 'taken' : outcome.fault.sentence).toContain('breaks off');
      good(await at.read(at.write('tail.jpg', Buffer.concat([whole, Buffer.alloc(200_000)]))));
    }
  });

  it('a second picture or a film behind the first is passed over, as phones write them', async () => {
    const at = tried();
    const whole = await scene().jpeg().toBuffer();
    const second = await scene().negate().jpeg().toBuffer();
    const film = Buffer.concat([Buffer.from('\0\0\0\x18ftypmp42', 'latin1'), Buffer.alloc(90_000, 7)]);
    for (const behind of [second, film]) {
      const path = at.write('two.jpg', Buffer.concat([whole, behind]));
      expect(good(await at.read(path))).toMatchObject({ width: 400, height: 300 });
      expect(await quarters(at.rendition(path, '2048'))).toEqual(['red', 'grey', 'grey', 'blue']);
    }
  });

  it('a PNG with a wrong check sum beside its pixels is taken: they are whole', async () => {
    const at = tried();
    const whole = await scene().png().toBuffer();
    const body = Buffer.from('tEXtSoftware\0camera', 'latin1');
    const chunk = Buffer.alloc(body.length + 8);
    chunk.writeUInt32BE(body.length - 4, 0);
    body.copy(chunk, 4);
    chunk.writeUInt32BE(0x1234, body.length + 4);
    const path = at.write('sum.png', Buffer.concat([whole.subarray(0, 33), chunk, whole.subarray(33)]));
    good(await at.read(path));
    expect(await quarters(at.rendition(path, '2048'))).toEqual(['red', 'grey', 'grey', 'blue']);
  });

  it('a PNG whose head has a wrong check sum is refused in words that speak of the picture', async () => {
    const at = tried();
    const bytes = await scene().png().toBuffer();
    bytes[29] = (bytes[29] as number) ^ 0xff;
    const outcome = await at.read(at.write('head.png', bytes));
    expect(outcome.ok ? 'taken' : outcome.fault.sentence).toMatch(
      /^Expected .+ a damaged one: (?!.*failOn).+\.$/,
    );
  });

  it('a JPEG that says it is larger than any is refused for its size', async () => {
    const at = tried();
    const bytes = await scene().jpeg().toBuffer();
    const frame = bytes.indexOf(Buffer.from([0xff, 0xc0]));
    bytes.writeUInt16BE(65_535, frame + 5);
    bytes.writeUInt16BE(65_535, frame + 7);
    const outcome = await at.read(at.write('huge.jpg', bytes));
    expect(outcome.ok ? 'taken' : outcome.fault.code).toBe('too-many-pixels');
  });
});

/** What exiftool says of the time, beside what is taken for it here: null where no clock shows it. */
const TIMES: readonly (readonly [tags: readonly string[], taken: string | null])[] = [
  [
    ['-exifbyteorder=MM', 'DateTimeOriginal=2025:05:06 07:08:09', 'OffsetTimeOriginal=-03:30'],
    '2025-05-06T07:08:09-03:30',
  ],
  [
    ['-exifbyteorder=II', 'DateTimeOriginal=2025:05:06 07:08:09', 'SubSecTimeOriginal=123'],
    '2025-05-06T07:08:09.123',
  ],
  // The offset of the last change says nothing about the exposure (EXIF 2.31, OffsetTime).
  [['DateTimeOriginal=2025:05:06 07:08:09', 'OffsetTime=+02:00'], '2025-05-06T07:08:09'],
  [['EXIF:CreateDate=2025:05:06 07:08:09', 'OffsetTimeDigitized=+01:00'], '2025-05-06T07:08:09+01:00'],
  [['EXIF:ModifyDate=2025:05:06 07:08:09', 'OffsetTime=+01:00'], null],
  [['GPSDateStamp=2025:05:06', 'GPSTimeStamp=07:08:09'], null],
  [['XMP-xmp:CreateDate=2025:05:06 07:08:09.5+02:00'], '2025-05-06T07:08:09.5+02:00'],
  [['XMP-exif:DateTimeDigitized=2025:05:06 07:08:09'], '2025-05-06T07:08:09'],
  [['DateTimeOriginal=2025:05:06 07:08:09', 'OffsetTimeOriginal=+0200'], '2025-05-06T07:08:09+02:00'],
  [['DateTimeOriginal=2025:05:06 07:08:09', 'OffsetTimeOriginal=+99:99'], '2025-05-06T07:08:09'],
  [['DateTimeOriginal=0000:00:00 00:00:00'], null],
  [['DateTimeOriginal=    :  :     :  :  '], null],
  [['DateTimeOriginal=2025:05:06 24:00:00'], null],
];

describe('times as cameras and programs write them', () => {
  it.each(['jpg', 'png', 'webp', 'avif'] as const)('in a %s', { timeout: 60_000 }, async (kind) => {
    const at = tried();
    const format = kind === 'jpg' ? 'jpeg' : kind;
    const bytes = await scene(64, 48).toFormat(format, { effort: 1 }).toBuffer();
    for (const [n, [tags, taken]] of TIMES.entries()) {
      const path = at.write(`time-${n}.${kind}`, bytes);
      tag(path, ...tags.map((one) => one.replace(/^-/, '')));
      const { takenLocal, takenZone } = good(await at.read(path));
      expect(takenLocal === null ? null : `${takenLocal}${takenZone ?? ''}`, tags.join(' ')).toBe(taken);
    }
  });

  it.each([0, 9, 255])('an orientation of %i, which is none, leaves the picture as it lies', async (turn) => {
    const at = tried();
    const path = at.write('turn.jpg', await scene().jpeg().toBuffer());
    tag(path, `Orientation=${turn}`);
    const said = execFileSync('exiftool', ['-n', '-s3', '-Orientation', path], { encoding: 'utf8' });
    expect(Number(said)).toBe(turn);
    expect(good(await at.read(path)).turn).toBe(1);
  });
});
