/** Figures taken from a small upright grey picture: one byte a pixel, row by row, without gaps. */
export interface Grey {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Packed pixels, `channels` bytes each, row by row, without gaps: grey first, or red, green and blue. */
export interface Packed {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly channels: number;
}

/** Brightness as the eye weighs it, of 256: red, green, blue. Source: ITU-R BT.601. */
const [RED, GREEN, BLUE] = [77, 150, 29] as const;

/**
 * The picture at half its size, as brightness: each pixel the mean of two of four, those that lie crosswise; all four
 * take twice the time and say no more about edges. At least 2 pixels either way.
 */
export function halfGrey({ data, width, height, channels }: Packed): Grey {
  const [w, h] = [width >> 1, height >> 1];
  const half = new Uint8Array(w * h);
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2];
  const across = (width + 1) * channels;
  for (let y = 0, to = 0; y < h; y++) {
    let at = 2 * y * width * channels;
    for (let x = 0; x < w; x++, at += 2 * channels) {
      const other = at + across;
      const r = (data[at] as number) + (data[other] as number);
      const g = (data[at + green] as number) + (data[other + green] as number);
      const b = (data[at + blue] as number) + (data[other + blue] as number);
      half[to++] = (RED * r + GREEN * g + BLUE * b + 256) >> 9;
    }
  }
  return { data: half, width: w, height: h };
}

/** The picture as brightness, pixel by pixel. */
export function fullGrey({ data, width, height, channels }: Packed): Grey {
  const grey = new Uint8Array(width * height);
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2];
  for (let to = 0, at = 0; to < grey.length; to++, at += channels) {
    const [r, g, b] = [data[at] as number, data[at + green] as number, data[at + blue] as number];
    grey[to] = (RED * r + GREEN * g + BLUE * b + 128) >> 8;
  }
  return { data: grey, width, height };
}

/** The picture squeezed to another size by means over its area, whatever its shape; larger pictures only get smaller. */
export function squeezed({ data, width, height }: Grey, toWidth: number, toHeight: number): Grey {
  const small = new Uint8Array(toWidth * toHeight);
  for (let v = 0; v < toHeight; v++) {
    const top = Math.floor((v * height) / toHeight);
    const bottom = Math.max(top + 1, Math.floor(((v + 1) * height) / toHeight));
    for (let u = 0; u < toWidth; u++) {
      const left = Math.floor((u * width) / toWidth);
      const right = Math.max(left + 1, Math.floor(((u + 1) * width) / toWidth));
      let sum = 0;
      for (let y = top; y < bottom; y++)
        for (let at = y * width + left; at < y * width + right; at++) sum += data[at] as number;
      small[v * toWidth + u] = Math.round(sum / ((bottom - top) * (right - left)));
    }
  }
  return { data: small, width: toWidth, height: toHeight };
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
export function lightOf({ data }: Pick<Grey, 'data'>): { mean: number; bright: number } {
  const counts = new Uint32Array(256);
  let sum = 0;
  for (let at = 0; at < data.length; at++) {
    const value = data[at] as number;
    counts[value] = (counts[value] as number) + 1;
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

/** Side of the picture that is hashed, in pixels. */
export const HASH_SIDE = 32;
const SIDE = HASH_SIDE;
const KEPT = 8;
const COSINES = Float64Array.from({ length: KEPT * SIDE }, (_, i) =>
  Math.cos(((2 * (i % SIDE) + 1) * Math.floor(i / SIDE) * Math.PI) / (2 * SIDE)),
);

/**
 * 64 bits as 16 hex digits from a grey picture of 32 × 32: the lowest 8 × 8 frequencies of its cosine transform, each
 * one bit for above or below their median. Alike pictures differ in few bits.
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
