/** Pixels. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** What is known of a picture besides its bytes; see the row of an original. */
export interface PhotoFacts extends Extent {
  readonly type: string;
  /** 1 to 8 as in EXIF; `width` and `height` are those of the stored picture, before it is turned. */
  readonly turn: number;
  /** "2026-05-03T10:44:12": the camera's clock. */
  readonly takenLocal: string | null;
  /** "+02:00"; null where the file does not say. */
  readonly takenZone: string | null;
  /** UTC milliseconds; only with an offset in the file. */
  readonly takenUtc: number | null;
  readonly camera: string;
  /** Variance of the Laplacian of the 2048 px picture's brightness: only compared within one camera. */
  readonly sharpness: number;
  /** 64 bits of the lowest frequencies, as 16 hex digits: alike pictures differ in few bits. */
  readonly phash: string;
  readonly hasLocation: boolean;
  /** Mean brightness 0 to 255. */
  readonly brightness: number;
  /** More than one picture in the file: the first is taken. */
  readonly pictures: number;
}

/** Tags as the file says them, not yet believed. */
export interface Tags {
  readonly make?: unknown;
  readonly model?: unknown;
  readonly taken?: unknown;
  readonly offset?: unknown;
  readonly fraction?: unknown;
  readonly hasLocation: boolean;
}

const text = (value: unknown): string =>
  // Cameras fill their names up with NUL.
  typeof value === 'string'
    ? value
        .replace(/[^\x20-\x7e\u00a0-\uffff]/g, ' ')
        .replace(/\s+/g, ' ')
        .trim()
    : '';

/** "Make Model", the make only once. At most 300 characters. */
export function cameraOf({ make, model }: Tags): string {
  const [maker, name] = [text(make), text(model)];
  const whole = name.toLowerCase().startsWith(maker.toLowerCase()) ? name : `${maker} ${name}`;
  return whole.trim().slice(0, 300);
}

/** Capture time: local always as the camera's clock said it; UTC only with an offset, never guessed. */
export function takenOf({
  taken,
  offset,
  fraction,
}: Tags): Pick<PhotoFacts, 'takenLocal' | 'takenZone' | 'takenUtc'> {
  const none = { takenLocal: null, takenZone: null, takenUtc: null };
  const parts = /^(\d{4})[:/-](\d\d)[:/-](\d\d)[ T](\d\d):(\d\d)(?::(\d\d))?/.exec(text(taken));
  if (!parts) return none;
  const [, year, month, day, hour, minute, second = '00'] = parts;
  const takenLocal = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const asUtc = Date.parse(`${takenLocal}Z`);
  // A day that is not in the calendar would come back as another one.
  if (Number.isNaN(asUtc) || new Date(asUtc).toISOString().slice(0, 19) !== takenLocal) return none;
  const zone = zoneOf(text(offset));
  if (zone === null) return { takenLocal, takenZone: null, takenUtc: null };
  const ms = Number(`0.${/^\d{1,9}/.exec(text(fraction))?.[0] ?? '0'}`) * 1000;
  const takenUtc = asUtc - zone.minutes * 60_000 + Math.floor(ms);
  return { takenLocal, takenZone: zone.text, takenUtc: takenUtc < 0 ? null : takenUtc };
}

function zoneOf(offset: string): { text: string; minutes: number } | null {
  if (/^(Z|UTC)$/i.test(offset)) return { text: '+00:00', minutes: 0 };
  const parts = /^([+-])(\d\d):?(\d\d)$/.exec(offset);
  if (!parts) return null;
  const minutes = Number(parts[2]) * 60 + Number(parts[3]);
  if (minutes > 14 * 60 || Number(parts[3]) > 59) return null;
  return { text: `${parts[1]}${parts[2]}:${parts[3]}`, minutes: parts[1] === '-' ? -minutes : minutes };
}

/**
 * Variance of the Laplacian over every second row: high where edges are crisp.
 * `grey` is one byte a pixel, row by row.
 */
export function sharpnessOf(grey: Uint8Array, { width, height }: Extent): number {
  let [sum, squares, count] = [0, 0, 0];
  for (let y = 1; y < height - 1; y += 2) {
    const row = y * width;
    for (let x = 1; x < width - 1; x++) {
      const at = row + x;
      const edge =
        4 * (grey[at] as number) -
        (grey[at - 1] as number) -
        (grey[at + 1] as number) -
        (grey[at - width] as number) -
        (grey[at + width] as number);
      sum += edge;
      squares += edge * edge;
      count++;
    }
  }
  if (count === 0) return 0;
  const mean = sum / count;
  return Math.round((squares / count - mean * mean) * 100) / 100;
}

/** Side of the small grey picture that the perceptual hash is made of, px. */
export const HASH_SIDE = 32;

/** Low-frequency half of a discrete cosine transform, each of 64 values against their median. */
export function phashOf(grey: Uint8Array): string {
  const wave = (u: number, x: number) => Math.cos(((2 * x + 1) * u * Math.PI) / (2 * HASH_SIDE));
  const rows = Array.from({ length: HASH_SIDE }, (_, y) =>
    Array.from({ length: 8 }, (__, u) => {
      let sum = 0;
      for (let x = 0; x < HASH_SIDE; x++) sum += (grey[y * HASH_SIDE + x] as number) * wave(u, x);
      return sum;
    }),
  );
  const values = Array.from({ length: 64 }, (_, i) => {
    let sum = 0;
    for (let y = 0; y < HASH_SIDE; y++) sum += (rows[y]?.[i % 8] as number) * wave(Math.floor(i / 8), y);
    return sum;
  });
  // The first is the mean brightness: left out of the median, or a flash would change half of the bits.
  const sorted = values.slice(1).sort((a, b) => a - b);
  const median = ((sorted[31] as number) + (sorted[30] as number)) / 2;
  let hex = '';
  for (let i = 0; i < 64; i += 4) {
    let digit = 0;
    for (let k = 0; k < 4; k++) digit = digit * 2 + ((values[i + k] as number) > median ? 1 : 0);
    hex += digit.toString(16);
  }
  return hex;
}

/** In how many of 64 bits two hashes differ. */
export function hashDistance(a: string, b: string): number {
  let bits = BigInt(`0x${a}`) ^ BigInt(`0x${b}`);
  let count = 0;
  for (; bits > 0n; bits >>= 1n) if (bits & 1n) count++;
  return count;
}
