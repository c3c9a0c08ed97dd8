import type { RoundFigure } from '../drawing/joint.ts';
import { drawMark } from './draw-mark.ts';
import { type Block, LEFT, WIDTH } from './flow.ts';
import { INK, INK_2, leadingOf, type Pen, RULE, type Type } from './pen.ts';
import type { SheetHole, SheetSet, SheetStep } from './sheet-data.ts';
import { words } from './words.ts';

const HEAD: Type = { face: 'sans', size: 12.5, leading: 1.25 };
const VALUE: Type = { face: 'sans-bold', size: 18, leading: 1.15 };
const NOTE: Type = { face: 'sans', size: 13, leading: 1.2, colour: INK_2 };
const READ = 140;
const NARROW = 56;

interface Column {
  readonly top: string;
  readonly value: string;
  readonly unit: string;
  readonly x: number;
  readonly width: number;
}

/** Columns of boxes: by hand, then the rounds with their figures; without rounds only by hand and tight. */
function boxColumns(rounds: readonly RoundFigure[], from: number): Column[] {
  const heads =
    rounds.length === 0
      ? [
          { top: words.byHand, value: '', unit: '' },
          { top: words.tight, value: '', unit: '' },
        ]
      : rounds.map((round, i) => ({
          top: words.round(i, round.name),
          value: round.value === '' && i > 0 ? words.share(round) : round.value,
          unit: round.unit,
        }));
  const width = (WIDTH - from - READ - 12) / heads.length;
  return heads.map((head, i) => ({ ...head, x: LEFT + from + i * width, width }));
}

/** The table of holes: a row for each in its order, a box for each round, a rule for what was read. */
export function holeTable(pen: Pen, step: Pick<SheetStep, 'rounds' | 'sets'>): Block[] {
  const holes = step.sets.flatMap((set) => set.holes);
  if (holes.length === 0) return [];
  const ordered = holes.some((hole) => hole.order !== null);
  const from = ordered ? NARROW * 2 : NARROW;
  const columns = boxColumns(step.rounds, from);
  const row = holes.length > 10 ? 34 : 39;
  const head = tableHead(pen, columns, ordered);
  return [
    head,
    ...step.sets.flatMap((set) => [
      ...titleOf(pen, set, head),
      ...set.holes.map(
        (hole): Block => ({
          height: row,
          again: head,
          draw: (y) => drawRow(pen, hole, { y, row, ordered, columns }),
        }),
      ),
    ]),
  ];
}

function tableHead(pen: Pen, columns: readonly Column[], ordered: boolean): Block {
  const valued = columns.some((column) => column.value !== '');
  const height = 14 + (valued ? 38 : 16) + 6;
  return {
    height,
    keep: true,
    draw: (y) => {
      const base = y + height - 11;
      const foot = (text: string, x: number) => pen.onBaseline(text, x, base, HEAD, 'middle');
      if (ordered) foot(words.order, LEFT + NARROW / 2);
      foot(words.hole, LEFT + (ordered ? NARROW * 1.5 : NARROW / 2));
      for (const { top, value, unit, x, width } of columns) {
        const middle = x + width / 2;
        if (value === '') foot(top, middle);
        else {
          pen.onBaseline(top, middle, base - 21, HEAD, 'middle');
          const wide = pen.width(value, VALUE) + (unit === '' ? 0 : 4 + pen.width(unit, HEAD));
          pen.onBaseline(value, middle - wide / 2, base, VALUE);
          if (unit !== '') pen.onBaseline(unit, middle + wide / 2, base, HEAD, 'right');
        }
      }
      foot(words.read, LEFT + WIDTH - READ / 2);
      pen.rule(LEFT, y + height - 1, WIDTH, 2);
    },
  };
}

function titleOf(pen: Pen, set: SheetSet, head: Block): Block[] {
  if (set.title === '') return [];
  const type: Type = { face: 'sans-bold', size: 14, leading: 1.25 };
  const lines = pen.lines(set.title, type, WIDTH);
  return [
    {
      height: 8 + lines.length * leadingOf(type) + 2,
      keep: true,
      again: head,
      draw: (y) => lines.forEach((line, i) => pen.text(line, LEFT, y + 8 + i * leadingOf(type), type)),
    },
  ];
}

interface RowPlace {
  readonly y: number;
  readonly row: number;
  readonly ordered: boolean;
  readonly columns: readonly Column[];
}

const STARTED: ReadonlySet<SheetHole['state']> = new Set(['started', 'tightened', 'paint-checked']);
const TIGHT: ReadonlySet<SheetHole['state']> = new Set(['tightened', 'paint-checked']);

function drawRow(pen: Pen, hole: SheetHole, { y, row, ordered, columns }: RowPlace): void {
  const middle = y + row / 2;
  if (ordered && hole.order !== null)
    pen.onBaseline(
      String(hole.order),
      LEFT + NARROW / 2,
      middle + 7,
      { face: 'sans-bold', size: 20 },
      'middle',
    );
  const mark = { kind: 'position', state: hole.state, text: hole.text } as const;
  drawMark(pen, mark, LEFT + (ordered ? NARROW * 1.5 : NARROW / 2), middle, 32);
  const size = 20;
  const shown = hole.boxes === 'none' ? 0 : hole.boxes === 'first' ? 1 : columns.length;
  columns.slice(0, shown).forEach((column, i) => {
    const done = i === 0 ? STARTED.has(hole.state) : TIGHT.has(hole.state);
    pen.box(column.x + (column.width - size) / 2, middle - size / 2, size, done);
  });
  const x = shown === columns.length ? LEFT + WIDTH - READ : (columns[shown]?.x ?? LEFT);
  const lines = pen.lines(hole.note, NOTE, LEFT + WIDTH - x).slice(0, 2);
  lines.forEach((line, i) =>
    pen.text(line, x, middle - (lines.length * leadingOf(NOTE)) / 2 + i * leadingOf(NOTE), NOTE),
  );
  pen.rule(LEFT, y + row - 0.5, WIDTH, 1, RULE);
  if (hole.boxes === 'all') pen.rule(LEFT + WIDTH - READ, y + row - 0.5, READ, 1.5, INK);
}
