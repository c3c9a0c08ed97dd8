import { PAPER, type Pen } from './pen.ts';

/** The content beside the depth line: 634 px of the width of A4. */
export const LEFT = 122;
export const WIDTH = 634;
export const LINE_LEFT = 38;
export const TOP = 78;
export const BOTTOM = PAPER.height - 92;

/** A piece of a page that is never broken. */
export interface Block {
  readonly height: number;
  /** Not left alone at the foot of a page. */
  readonly keep?: boolean;
  /** Drawn again before this block where a page begins with it: the heads of a table's columns. */
  readonly again?: Block;
  readonly draw: (y: number) => void;
}

export const gap = (height: number): Block => ({ height, draw: () => undefined });

export const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block) => sum + block.height, 0);

/** Puts blocks under each other and begins pages. */
export class Flow {
  private y = BOTTOM;
  /** Pages begun so far. */
  pages = 0;
  private readonly pen: Pen;
  private readonly onPage: (page: number) => void;

  constructor(pen: Pen, onPage: (page: number) => void) {
    this.pen = pen;
    this.onPage = onPage;
  }

  /** Height that is left on this page for a whole with so much space over it; of a fresh page where none is begun. */
  room(space: number): number {
    return this.pages === 0 ? BOTTOM - TOP : BOTTOM - this.y - (this.y === TOP ? 0 : space);
  }

  /** A whole that stays on one page where it can; `goesOn` heads the pages it goes on to. */
  whole(blocks: readonly Block[], goesOn: Block, space: number): void {
    const height = heightOf(blocks);
    const fresh = this.pages > 0 && this.y === TOP;
    if (this.pages === 0 || (!fresh && this.y + space + height > BOTTOM)) this.begin();
    else if (!fresh) this.y += space;
    for (let i = 0; i < blocks.length; ) {
      const end = groupEnd(blocks, i);
      const group = blocks.slice(i, end);
      if (this.y + heightOf(group) > BOTTOM && this.y > TOP) {
        this.begin();
        this.put(goesOn);
        const { again } = group[0] as Block;
        if (again !== undefined) this.put(again);
      }
      for (const block of group) this.put(block);
      i = end;
    }
  }

  private begin(): void {
    this.pen.page();
    this.pages += 1;
    this.y = TOP;
    this.onPage(this.pages - 1);
  }

  private put(block: Block): void {
    block.draw(this.y);
    this.y += block.height;
  }
}

/** Blocks that keep to the next one move together with it. */
function groupEnd(blocks: readonly Block[], from: number): number {
  let end = from + 1;
  while (end < blocks.length && blocks[end - 1]?.keep === true) end += 1;
  return end;
}
