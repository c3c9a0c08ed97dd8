import { stat, open } from 'node:fs/promises';
import { PictureProblem } from './protocol.ts';
import type { PictureType } from './sniff.ts';

/** The picture library's complaints, in words that help at the machine. */

export function damaged(reason: string): PictureProblem {
  return new PictureProblem('damaged', `Expected a picture that can be read, got a damaged one: ${reason}.`);
}

/** End of a JPEG picture (JPEG, B.1.1.3); inside its packed data these two bytes never stand side by side. */
const JPEG_END = Buffer.from([0xff, 0xd9]);
/** Start of its packed data. */
const JPEG_SCAN = Buffer.from([0xff, 0xda]);
/** Most files end with their end, or with little behind it. */
const TAIL = 64 * 1024;

/**
 * Whether a JPEG never ends: a copy that broke off and was filled up with zeros unpacks without complaint, grey from
 * there on. What some cameras and phones write behind the end does not matter.
 */
export async function jpegNeverEnds(path: string): Promise<boolean> {
  const { size } = await stat(path);
  const handle = await open(path, 'r');
  try {
    const tail = Buffer.alloc(Math.min(TAIL, size));
    await handle.read(tail, 0, tail.length, size - tail.length);
    if (tail.includes(JPEG_END) && size > TAIL) return false;
    const whole = size > TAIL ? await handle.readFile() : tail;
    const scan = whole.lastIndexOf(JPEG_SCAN);
    return scan >= 0 && whole.indexOf(JPEG_END, scan) < 0;
  } finally {
    await handle.close();
  }
}

export const cutOff = (): PictureProblem => new PictureProblem('cut-off', CUT_OFF);

const CUT_OFF = 'Expected a whole picture, got a file that breaks off before its end. Copy it again.';

/** Whether a file stops before the end that its own format promises. */
async function breaksOff(path: string, type: PictureType): Promise<boolean> {
  if (type !== 'image/png' && type !== 'image/webp') return false;
  const { size } = await stat(path);
  const handle = await open(path, 'r');
  try {
    const bytes = Buffer.alloc(12);
    const at = type === 'image/webp' ? 0 : Math.max(0, size - 12);
    await handle.read(bytes, 0, 12, at);
    // WebP says its length at the start; a PNG ends with a chunk of its own.
    if (type === 'image/webp') return bytes.readUInt32LE(4) + 8 > size;
    return bytes.toString('latin1', 4, 8) !== 'IEND';
  } finally {
    await handle.close();
  }
}

/** A problem from what the picture library threw. */
export async function problemOf(error: unknown, path: string, type: PictureType): Promise<PictureProblem> {
  if (error instanceof PictureProblem) return error;
  const said = error instanceof Error ? error.message : String(error);
  if (
    /exceeds pixel limit|maximum supported image dimension|image dimensions? (too large|exceed)|too large|exceeds? .*limit/i.test(
      said,
    )
  )
    return new PictureProblem(
      'too-many-pixels',
      'Expected at most 250 million pixels, got a picture that says it is larger.',
    );
  if (/premature end|unexpected end/i.test(said) && !/premature end of data segment/i.test(said))
    return cutOff();
  if (await breaksOff(path, type)) return cutOff();
  return damaged(reasonOf(said));
}

/** The first complaint, without paths and library names; they help nobody at the machine. */
function reasonOf(said: string): string {
  // How strictly it was asked to read is no reason; what it stumbled over stands in a line of its own.
  const first = said.split('\n').find((line) => !/failOn setting/i.test(line)) ?? '';
  const plain = first
    .replace(/^Input (file|buffer) (has corrupt header|contains): ?/i, '')
    .replace(/(^|\s)\S*\/\S+/g, '')
    .replace(/^\w+: /, '')
    .replace(/\.$/, '')
    .trim();
  return plain === '' ? 'its pixels cannot be unpacked' : plain.slice(0, 200);
}
