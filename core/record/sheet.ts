import { drawDepth } from './draw-line.ts';
import { type Block, BOTTOM, Flow, gap, LEFT, LINE_LEFT, TOP, WIDTH } from './flow.ts';
import { gate } from './parts.ts';
import { INK_2, PAPER, Pen, type Type } from './pen.ts';
import type { SheetData } from './sheet-data.ts';
import { goesOn, stepBlocks } from './step.ts';
import { words } from './words.ts';

/** Space between two steps on one page, px. */
const BETWEEN = 40;

/**
 * The put-back sheet as a PDF: A4, black on white. Steps in the order given, broken between steps and never inside a
 * photo; every page with the depth line, the job, and its number.
 */
export async function putBackSheet(data: SheetData): Promise<Buffer> {
  const pen = new Pen(`Put back: ${data.job}`);
  /** The removal that each page begins with. */
  const at: (string | null)[] = [];
  let atId: string | null = data.line.atId;
  const flow = new Flow(pen, (page) => (at[page] = atId));
  for (const step of data.steps) {
    atId = step.removalId ?? atId;
    flow.whole(stepBlocks(pen, step, flow.room(BETWEEN)), goesOn(pen, step), BETWEEN);
  }
  if (data.steps.length === 0) flow.whole([nothing(pen)], gap(0), 0);
  if (data.last !== null) flow.whole(gate(pen, data.last), gap(0), BETWEEN);
  at.forEach((removalId, page) => {
    pen.turnTo(page);
    frame(pen, data, page, at.length);
    drawDepth(pen, { ...data.line, atId: removalId }, LINE_LEFT, TOP, BOTTOM - TOP);
  });
  return pen.end();
}

function nothing(pen: Pen): Block {
  const type: Type = { face: 'figure', size: 36 };
  return { height: 60, draw: (y) => pen.text(words.nothing, LEFT, y, type) };
}

/** Whose job it is at the head; at the foot the maker's manual, who did it and when, the number of the page. */
function frame(pen: Pen, data: SheetData, page: number, pages: number): void {
  const said: Type = { face: 'serif', size: 17, leading: 1.2 };
  const small: Type = { face: 'sans', size: 14, leading: 1.25, colour: INK_2 };
  const printed = words.printed(data.date);
  const head = [data.job, data.machine, data.owner].filter((text) => text !== '').join(', ');
  pen.text(shortened(pen, head, said, WIDTH - pen.width(printed, small) - 24), LEFT, 36, said);
  pen.text(printed, LEFT + WIDTH, 38, small, 'right');
  const foot = PAPER.height - 70;
  pen.paragraph(words.makerFirst, LEFT, foot, small, 300);
  const sign = (word: string, x: number, width: number) => {
    pen.rule(x, foot + 17, width, 1.5);
    pen.text(word, x, foot + 19, small);
  };
  sign(words.name, LEFT + 328, 140);
  sign(words.date, LEFT + 484, 84);
  pen.text(words.page(page + 1, pages), LEFT + WIDTH, foot + 19, small, 'right');
}

function shortened(pen: Pen, text: string, type: Type, width: number): string {
  if (pen.width(text, type) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && pen.width(`${letters.join('').trimEnd()}…`, type) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
