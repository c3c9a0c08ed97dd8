import { stat, open } from 'node:fs/promises';
import { PictureProblem } from './protocol.ts';
import type { PictureType } from './sniff.ts';

/** The picture library's complaints, in words that help at the machine. */

export function damaged(reason: string): PictureProblem {
  return new PictureProblem('damaged', `Expected a picture that can be read, got a damaged one: ${reason}.`);
}

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
  if (/exceeds pixel limit|image dimensions? (too large|exceed)|too large|exceeds? .*limit/i.test(said))
    return new PictureProblem(
      'too-many-pixels',
      'Expected at most 250 million pixels, got a picture that says it is larger.',
    );
  if (/premature end|unexpected end/i.test(said) && !/premature end of data segment/i.test(said))
    return new PictureProblem('cut-off', CUT_OFF);
  if (await breaksOff(path, type)) return new PictureProblem('cut-off', CUT_OFF);
  return damaged(reasonOf(said));
}

/** The first complaint, without paths and library names; they help nobody at the machine. */
function reasonOf(said: string): string {
  const first = said.split('\n')[0] ?? '';
  const plain = first
    .replace(/^Input (file|buffer) (has corrupt header|contains): ?/i, '')
    .replace(/(^|\s)\S*\/\S+/g, '')
    .replace(/^\w+: /, '')
    .replace(/\.$/, '')
    .trim();
  return plain === '' ? 'its pixels cannot be unpacked' : plain.slice(0, 200);
}
