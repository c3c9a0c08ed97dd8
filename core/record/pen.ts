import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';

/** The sheet in the pixels of the screens, 96 to the inch: A4 is 794 by 1123. */
export const PAPER = { width: 793.7, height: 1122.5 } as const;
/** Points of the PDF (72 to the inch) for a pixel. */
const SCALE = 0.75;

export const INK = '#000000';
export const INK_2 = '#333333';
export const RULE = '#999999';
export const WHITE = '#ffffff';

export type Face = 'sans' | 'sans-bold' | 'figure' | 'serif';
const FACES: readonly Face[] = ['sans', 'sans-bold', 'figure', 'serif'];
/** Where a face lacks a letter, the next one that has it. */
const INSTEAD: Readonly<Record<Face, readonly Face[]>> = {
  sans: ['sans', 'serif'],
  'sans-bold': ['sans-bold', 'serif'],
  figure: ['figure', 'sans-bold', 'serif'],
  serif: ['serif', 'sans'],
};

export interface Type {
  readonly face: Face;
  /** px */
  readonly size: number;
  /** Of a line, times the size. */
  readonly leading?: number;
  readonly colour?: string;
}

interface Run {
  readonly face: Face;
  readonly text: string;
}

/** The letters that a face has, as pdfkit's font reader tells. */
interface Letters {
  readonly font: { hasGlyphForCodePoint(code: number): boolean };
}

/** Draws on pages: pixels from the upper left corner, lines broken here, so that every height is known beforehand. */
export class Pen {
  readonly doc: PDFKit.PDFDocument;
  private readonly chunks: Buffer[] = [];
  private readonly widths = new Map<string, number>();
  private readonly letters = new Map<Face, Letters['font']>();

  constructor(title: string) {
    this.doc = new PDFDocument({
      size: [PAPER.width * SCALE, PAPER.height * SCALE],
      margin: 0,
      autoFirstPage: false,
      bufferPages: true,
      lang: 'en',
      displayTitle: true,
      info: { Title: title, Producer: 'Everybolt', Creator: 'Everybolt' },
    });
    this.doc.on('data', (chunk: Buffer) => this.chunks.push(chunk));
    for (const face of FACES) {
      this.doc.registerFont(face, readFileSync(join(import.meta.dirname, 'fonts', `${face}.ttf`)));
      this.doc.font(face);
      // Which letters a face has is known inside the library only.
      this.letters.set(face, (this.doc as unknown as { _font: Letters })._font.font);
    }
  }

  page(): void {
    this.doc.addPage();
    this.doc.scale(SCALE);
  }

  /** Goes back to a page already drawn; what is drawn then lies on top. */
  turnTo(page: number): void {
    this.doc.switchToPage(page);
  }

  /** Ends the document and gives its bytes. */
  async end(): Promise<Buffer> {
    const ended = new Promise<void>((done) => this.doc.once('end', done));
    this.doc.end();
    await ended;
    return Buffer.concat(this.chunks);
  }

  width(text: string, type: Type): number {
    return this.runs(text, type.face).reduce((sum, run) => sum + this.runWidth(run, type.size), 0);
  }

  /** Measured once for each word and face: laying out with features is slow. */
  private runWidth({ face, text }: Run, size: number): number {
    const key = `${face} ${text}`;
    let em = this.widths.get(key);
    if (em === undefined) {
      this.doc.font(face).fontSize(1000);
      em = this.doc.widthOfString(text, featuresFor(text)) / 1000;
      this.widths.set(key, em);
    }
    return em * size;
  }

  /** Breaks a text into lines; a word too long for a line is broken inside. Line ends in the text stay. */
  lines(text: string, type: Type, width: number): string[] {
    const space = this.width(' ', type);
    return text.split('\n').flatMap((paragraph) => {
      const made: string[] = [];
      let line = '';
      let used = 0;
      for (const word of paragraph.split(/[ \t]+/).flatMap((one) => this.broken(one, type, width))) {
        const wide = this.width(word, type);
        if (line !== '' && used + space + wide > width) {
          made.push(line);
          line = '';
        }
        used = line === '' ? wide : used + space + wide;
        line = line === '' ? word : `${line} ${word}`;
      }
      return [...made, line];
    });
  }

  private broken(word: string, type: Type, width: number): string[] {
    if (this.width(word, type) <= width) return [word];
    const pieces: string[] = [];
    let piece = '';
    for (const letter of word) {
      if (piece !== '' && this.width(piece + letter, type) > width) {
        pieces.push(piece);
        piece = '';
      }
      piece += letter;
    }
    return [...pieces, piece];
  }

  heightOf(text: string, type: Type, width: number): number {
    return text === '' ? 0 : this.lines(text, type, width).length * leadingOf(type);
  }

  /** Writes a paragraph; gives its height. */
  paragraph(text: string, x: number, y: number, type: Type, width: number): number {
    if (text === '') return 0;
    const lines = this.lines(text, type, width);
    lines.forEach((line, i) => this.text(line, x, y + i * leadingOf(type), type));
    return lines.length * leadingOf(type);
  }

  /** One line whose box begins at `y`; `at` says which edge of it stands at `x`. */
  text(text: string, x: number, y: number, type: Type, at: 'left' | 'middle' | 'right' = 'left'): void {
    const baseline = y + (leadingOf(type) - type.size) / 2 + type.size * 0.8;
    this.onBaseline(text, x, baseline, type, at);
  }

  onBaseline(
    text: string,
    x: number,
    baseline: number,
    type: Type,
    at: 'left' | 'middle' | 'right' = 'left',
  ): void {
    const width = at === 'left' ? 0 : this.width(text, type);
    let left = at === 'left' ? x : at === 'right' ? x - width : x - width / 2;
    for (const run of this.runs(text, type.face)) {
      this.doc
        .font(run.face)
        .fontSize(type.size)
        .fillColor(type.colour ?? INK);
      this.doc.text(run.text, left, baseline, {
        ...featuresFor(run.text),
        lineBreak: false,
        baseline: 'alphabetic',
      });
      left += this.runWidth(run, type.size);
    }
  }

  private runs(text: string, face: Face): Run[] {
    const runs: { face: Face; text: string }[] = [];
    for (const letter of text.replace(/\p{Cc}/gu, ' ')) {
      const code = letter.codePointAt(0) ?? 32;
      const has = INSTEAD[face].find((one) => this.letters.get(one)?.hasGlyphForCodePoint(code));
      const last = runs.at(-1);
      const use = has ?? face;
      // A letter that no face has: a sign that something stands there.
      const shown = has === undefined ? '?' : letter;
      if (last?.face === use) last.text += shown;
      else runs.push({ face: use, text: shown });
    }
    return runs;
  }

  rule(x: number, y: number, width: number, thick = 1, colour: string = INK): void {
    this.doc
      .moveTo(x, y)
      .lineTo(x + width, y)
      .lineWidth(thick)
      .strokeColor(colour)
      .stroke();
  }

  /** A box to be ticked by hand; already ticked where the record says so. */
  box(x: number, y: number, size: number, done: boolean): void {
    this.doc.rect(x, y, size, size).lineWidth(2).fillAndStroke(WHITE, INK);
    if (done)
      this.doc
        .moveTo(x + size * 0.2, y + size * 0.55)
        .lineTo(x + size * 0.42, y + size * 0.78)
        .lineTo(x + size * 0.82, y + size * 0.22)
        .lineWidth(size * 0.14)
        .strokeColor(INK)
        .stroke();
  }
}

/** Figures of one width and lining, so that columns stand under each other. Letters need no asking, and are quicker so. */
function featuresFor(text: string): PDFKit.Mixins.TextOptions {
  const features: PDFKit.Mixins.OpenTypeFeatures[] = ['tnum', 'lnum', 'kern', 'liga'];
  return /\d/.test(text) ? { features } : {};
}

export const leadingOf = (type: Type): number => type.size * (type.leading ?? 1.3);
