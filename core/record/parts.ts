import { type Block, gap, LEFT, WIDTH } from './flow.ts';
import { INK, INK_2, leadingOf, type Pen, type Type, WHITE } from './pen.ts';
import type { SheetBox, SheetGate, SheetPoint } from './sheet-data.ts';
import { words } from './words.ts';

const TEXT: Type = { face: 'sans', size: 15, leading: 1.3 };
const STRONG: Type = { ...TEXT, face: 'sans-bold' };
const SMALL: Type = { face: 'sans', size: 14, leading: 1.25, colour: INK_2 };
/** What people wrote, large. */
const SAID: Type = { face: 'serif', size: 19, leading: 1.3 };

/** A paragraph, one block a line, so that a long one may go on overleaf. */
function text(pen: Pen, said: string, type: Type): Block[] {
  return pen.lines(said, type, WIDTH).map((line) => ({
    height: leadingOf(type),
    draw: (y) => pen.text(line, LEFT, y, type),
  }));
}

export function notes(pen: Pen, said: readonly string[]): Block[] {
  return said.flatMap((note) => [gap(10), ...text(pen, note, SAID)]);
}

export const about = (pen: Pen, said: string): Block[] =>
  said === '' ? [] : [gap(10), ...text(pen, said, SMALL)];

/** Why a step cannot go ahead, or that it has no photo. */
export const remark = (pen: Pen, said: string): Block[] =>
  said === '' ? [] : [gap(8), ...text(pen, said, SMALL)];

/** A word in a block, and beside it what is said: a stop is ink, everything else the same block in outline. */
function plated(pen: Pen, word: string, ink: boolean, strong: string, plain: string): Block[] {
  const plate = 74;
  const x = LEFT + plate + 14;
  const width = WIDTH - plate - 14;
  const strongLines = strong === '' ? [] : pen.lines(strong, STRONG, width);
  const plainLines = plain === '' ? [] : pen.lines(plain, TEXT, width);
  const line = leadingOf(TEXT);
  const height = Math.max(28, (strongLines.length + plainLines.length) * line);
  return [
    gap(10),
    {
      height,
      draw: (y) => {
        pen.doc
          .rect(LEFT + 1, y + 1, plate - 2, 26)
          .lineWidth(2)
          .fillAndStroke(ink ? INK : WHITE, INK);
        pen.text(word, LEFT + plate / 2, y + 4, { ...STRONG, colour: ink ? WHITE : INK }, 'middle');
        const shift = strongLines.length + plainLines.length === 1 ? 4 : 0;
        strongLines.forEach((one, i) => pen.text(one, x, y + shift + i * line, STRONG));
        plainLines.forEach((one, i) => pen.text(one, x, y + shift + (strongLines.length + i) * line, TEXT));
      },
    },
  ];
}

export function points(pen: Pen, list: readonly SheetPoint[]): Block[] {
  return list.flatMap(({ grave, sentence, clears }) =>
    plated(pen, words.grave[grave], grave === 'stop', sentence, clears),
  );
}

export function cautions(pen: Pen, list: readonly string[]): Block[] {
  return list.flatMap((one) => plated(pen, words.caution, false, one, ''));
}

const BOX = 20;
const WRITE = 90;

interface Item {
  readonly box: SheetBox;
  readonly lines: readonly string[];
  readonly width: number;
}

/** Boxes to tick, several in a row where they are short; in the order in which they are done. */
export function boxes(pen: Pen, list: readonly SheetBox[]): Block[] {
  const items: Item[] = list.map((box) => {
    const room = WIDTH - BOX - 8 - (box.write ? WRITE + 10 : 0);
    const lines = pen.lines(box.text, TEXT, room);
    const longest = Math.max(...lines.map((line) => pen.width(line, TEXT)));
    return { box, lines, width: BOX + 8 + longest + (box.write ? WRITE + 10 : 0) };
  });
  const rows: Item[][] = [];
  let used = 0;
  for (const item of items) {
    const last = rows.at(-1);
    if (last !== undefined && used + 28 + item.width <= WIDTH) {
      last.push(item);
      used += 28 + item.width;
    } else {
      rows.push([item]);
      used = item.width;
    }
  }
  return rows.map((row) => ({
    height: 10 + Math.max(...row.map((item) => Math.max(BOX, item.lines.length * leadingOf(TEXT)))),
    draw: (y) => {
      let x = LEFT;
      for (const item of row) {
        drawBox(pen, item, x, y + 10);
        x += item.width + 28;
      }
    },
  }));
}

function drawBox(pen: Pen, { box, lines, width }: Item, x: number, y: number): void {
  pen.box(x + 1, y + 1, BOX - 2, box.done);
  lines.forEach((line, i) => pen.text(line, x + BOX + 8, y + 0.5 + i * leadingOf(TEXT), TEXT));
  if (box.write) pen.rule(x + width - WRITE, y + BOX - 1, WRITE, 1.5);
}

/** A check: a bar with two posts right across, as on the depth line, with what holds it and who passed it. */
export function gate(pen: Pen, one: SheetGate): Block[] {
  const title: Type = { face: 'sans-bold', size: 20, leading: 1.2 };
  return [
    {
      height: 64,
      keep: true,
      draw: (y) => {
        const { doc } = pen;
        doc.rect(LEFT, y + 8, WIDTH, 10).fill(INK);
        doc.rect(LEFT, y, 5, 26).fill(INK);
        doc.rect(LEFT + WIDTH - 5, y, 5, 26).fill(INK);
        pen.text(one.title, LEFT, y + 36, title);
        const x = LEFT + WIDTH - 200;
        pen.text(words.passed, x - 10, y + 39, SMALL, 'right');
        pen.rule(x, y + 59, 200, 1.5);
      },
    },
    ...points(pen, one.points),
    ...boxes(
      pen,
      one.notYet.map((said) => ({ text: said, done: false, write: false })),
    ),
    gap(22),
  ];
}
