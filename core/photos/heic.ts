import decode from 'heic-decode';
import { uprightSize, turnOf } from './turn.ts';
import { PictureProblem } from './protocol.ts';

interface Wanted {
  readonly width: number;
  readonly height: number;
  readonly turn: number;
}

/**
 * The decoder looks at the first four letters only; makers write letters of their own there and name the common
 * ones after them. In a copy in memory the common ones come first; nothing on disk is touched.
 */
function withCommonBrand(file: Buffer): Buffer {
  const copy = Buffer.from(file);
  copy.write('heic', 8, 'latin1');
  return copy;
}

/** Pixels of the primary picture, upright as its container says. Files may hold others beside it. */
export async function heicPixels(file: Buffer, wanted: Wanted) {
  const size = uprightSize(wanted.width, wanted.height, turnOf(wanted.turn));
  try {
    const all = await decode.all({ buffer: withCommonBrand(file) });
    try {
      const primary = all.find((one) => one.width === size.width && one.height === size.height) ?? all[0];
      if (!primary) throw new Error('no picture in it');
      return await primary.decode();
    } finally {
      all.dispose();
    }
  } catch (error) {
    if (error instanceof PictureProblem) throw error;
    throw new PictureProblem(
      'damaged',
      `Expected a HEIC that can be unpacked, got one that cannot: ${reason(error)}.`,
    );
  }
}

/** The decoder throws what it likes: errors, text, numbers of its own. */
function reason(error: unknown): string {
  if (!(error instanceof Error)) return 'the decoder gave up';
  return /HEIF processing error/.test(error.message)
    ? 'its pixels are damaged'
    : error.message.replace(/\.$/, '');
}
