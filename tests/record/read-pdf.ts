import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as it is read back: its words, and every place where something is drawn, in points from the lower left corner. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  /** All text, pieces of one line joined. */
  readonly text: string;
  /** Corners of all texts and shapes outside of clipped pictures. */
  readonly reach: {
    readonly left: number;
    readonly right: number;
    readonly low: number;
    readonly high: number;
  };
  readonly pictures: number;
  /** Height of each text, points. */
  readonly sizes: readonly { readonly text: string; readonly size: number }[];
}

type Matrix = readonly [number, number, number, number, number, number];

const multiply = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
];

const apply = (m: Matrix, x: number, y: number): readonly [number, number] => [
  m[0] * x + m[2] * y + m[4],
  m[1] * x + m[3] * y + m[5],
];

interface Shapes {
  readonly points: (readonly [number, number])[];
  readonly pictures: number;
}

/** Follows the transforms through the page's drawing; what is clipped is left out, since it cannot reach further. */
function shapesOf(fnArray: readonly number[], argsArray: readonly unknown[]): Shapes {
  const points: (readonly [number, number])[] = [];
  const stack: { m: Matrix; clipped: boolean }[] = [];
  let now: { m: Matrix; clipped: boolean } = { m: [1, 0, 0, 1, 0, 0], clipped: false };
  let pictures = 0;
  fnArray.forEach((fn, i) => {
    const args = argsArray[i];
    if (fn === OPS.save) stack.push(now);
    else if (fn === OPS.restore) now = stack.pop() ?? now;
    else if (fn === OPS.transform) now = { ...now, m: multiply(now.m, args as unknown as Matrix) };
    else if (fn === OPS.clip) now = { ...now, clipped: true };
    else if (fn === OPS.paintImageXObject) pictures += 1;
    else if (fn === OPS.constructPath && !now.clipped) {
      const box = (args as readonly unknown[])[2] as ArrayLike<number> | null;
      if (box) points.push(apply(now.m, box[0] ?? 0, box[1] ?? 0), apply(now.m, box[2] ?? 0, box[3] ?? 0));
    }
  });
  return { points, pictures };
}

/** Reads a PDF back with a reader that has nothing to do with what wrote it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPage[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= document.numPages; n += 1) {
    const page = await document.getPage(n);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
    const { fnArray, argsArray } = await page.getOperatorList();
    const shapes = shapesOf(fnArray, argsArray);
    const corners = texts.flatMap(({ transform, width: wide }) => {
      const [x, y] = [transform[4] as number, transform[5] as number];
      return [[x, y] as const, [x + wide, y] as const];
    });
    const all = [...shapes.points, ...corners];
    pages.push({
      width,
      height,
      text: items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')).join(''),
      reach: {
        left: Math.min(...all.map(([x]) => x)),
        right: Math.max(...all.map(([x]) => x)),
        low: Math.min(...all.map(([, y]) => y)),
        high: Math.max(...all.map(([, y]) => y)),
      },
      pictures: shapes.pictures,
      sizes: texts.map(({ str, transform }) => ({
        text: str,
        size: Math.hypot(transform[2] as number, transform[3] as number),
      })),
    });
  }
  await task.destroy();
  return pages;
}
