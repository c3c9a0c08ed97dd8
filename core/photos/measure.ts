/** Figures taken from a small upright grey picture: one byte a pixel, row by row, without gaps. */
export interface Grey {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/**
 * Variance of the Laplacian (4 neighbours): high where there are edges, low where the picture is blurred.
 * Only pictures of the same size are comparable. Null below 3 pixels either way. Unit: grey levels squared.
 * Source: Pech-Pacheco et al., "Diatom autofocusing in brightfield microscopy", 2000.
 */
export function sharpnessOf({ data, width, height }: Grey): number | null {
  if (width < 3 || height < 3) return null;
  let sum = 0;
  let squares = 0;
  for (let y = 1; y < height - 1; y++) {
    const end = y * width + width - 1;
    for (let at = y * width + 1; at < end; at++) {
      const value =
        4 * (data[at] as number) -
        (data[at - 1] as number) -
        (data[at + 1] as number) -
        (data[at - width] as number) -
        (data[at + width] as number);
      sum += value;
      squares += value * value;
    }
  }
  const count = (width - 2) * (height - 2);
  return squares / count - (sum / count) ** 2;
}

/** Mean grey and the grey that 95 of 100 pixels stay under, both 0 (black) to 255. */
export function lightOf({ data }: Grey): { mean: number; bright: number } {
  const counts = new Uint32Array(256);
  let sum = 0;
  for (const value of data) {
    counts[value] = (counts[value] ?? 0) + 1;
    sum += value;
  }
  let left = Math.floor(data.length * 0.95);
  let bright = 0;
  while (bright < 255 && left > (counts[bright] as number)) {
    left -= counts[bright] as number;
    bright++;
  }
  return { mean: data.length === 0 ? 0 : sum / data.length, bright };
}

const SIDE = 32;
const KEPT = 8;
const COSINES = Float64Array.from({ length: KEPT * SIDE }, (_, i) =>
  Math.cos(((2 * (i % SIDE) + 1) * Math.floor(i / SIDE) * Math.PI) / (2 * SIDE)),
);

/**
 * 64 bits as 16 hex digits from a grey picture of 32 × 32: the lowest 8 × 8 frequencies of its cosine transform, each
 * one bit for above or below their median. Alike pictures differ in few bits. The first (the mean) counts for nothing.
 */
export function perceptualHash({ data, width, height }: Grey): string {
  if (width !== SIDE || height !== SIDE)
    throw new Error(`Expected a picture of ${SIDE} × ${SIDE}, got ${width} × ${height}.`);
  const rows = new Float64Array(KEPT * SIDE);
  for (let y = 0; y < SIDE; y++)
    for (let u = 0; u < KEPT; u++) {
      let sum = 0;
      for (let x = 0; x < SIDE; x++)
        sum += (data[y * SIDE + x] as number) * (COSINES[u * SIDE + x] as number);
      rows[u * SIDE + y] = sum;
    }
  const low: number[] = [];
  for (let v = 0; v < KEPT; v++)
    for (let u = 0; u < KEPT; u++) {
      let sum = 0;
      for (let y = 0; y < SIDE; y++)
        sum += (rows[u * SIDE + y] as number) * (COSINES[v * SIDE + y] as number);
      low.push(sum);
    }
  low[0] = 0;
  const sorted = [...low].sort((a, b) => a - b);
  const median = ((sorted[31] as number) + (sorted[32] as number)) / 2;
  let hex = '';
  for (let i = 0; i < 64; i += 4) {
    let nibble = 0;
    for (let bit = 0; bit < 4; bit++) nibble = nibble * 2 + ((low[i + bit] as number) > median ? 1 : 0);
    hex += nibble.toString(16);
  }
  return hex;
}
