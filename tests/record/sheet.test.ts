import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { putBackSheet } from '../../core/record/sheet.ts';
import type { SheetData, SheetStep } from '../../core/record/sheet-data.ts';
import { PicturePool } from '../../core/photos/pool.ts';
import { originalPath } from '../../core/store/check.ts';
import { places } from '../../core/store/workshop.ts';
import { addPhoto } from '../../core/usecases/photos.ts';
import { type SheetInput, sheetPdf } from '../../core/usecases/sheet.ts';
import { patches } from '../photos/make.ts';
import { command, good, named } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';
import { tempFolder } from '../support/workshop.ts';
import { type ReadPage, readPdf } from './read-pdf.ts';

const pool = new PicturePool();
afterAll(async () => pool.close());

type Box = Awaited<ReturnType<typeof gearbox>>;

async function sheetOf(job: Box, input: Partial<SheetInput> = {}): Promise<ReadPage[]> {
  const made = await sheetPdf({ workshop: job.workshop, actor: null }, pool, {
    jobId: job.jobId,
    steps: null,
    light: false,
    ...input,
  });
  if (!made.ok) throw new Error(made.fault.sentence);
  return readPdf(made.value);
}

const LINES = [
  'guard, 2 M5x12',
  '6 M8x30 hex 13, class 8.8, 25 Nm, bag 4',
  '+ cover, gasket',
  'gear, own place, stamped L',
];

/** A photo of the cover with its six holes in a ring, marked. */
async function withPhoto(job: Box): Promise<void> {
  const file = join(tempFolder(), 'cover.jpg');
  await patches(800, 600).jpeg().toFile(file);
  const context = { workshop: job.workshop, actor: null };
  const added = await addPhoto(context, pool, {
    jobId: job.jobId,
    path: file,
    fileName: 'cover.jpg',
    batch: command().command,
  });
  const set = job.state().fset.find((one) => one.torqueTyped !== '');
  const ring = job.state().position.filter((hole) => hole.setId === set?.id);
  for (const hole of ring) {
    const angle = (hole.n / ring.length) * 2 * Math.PI;
    const values = {
      photoId: added.photoId,
      thingId: hole.id,
      n: hole.n,
      x: 0.5 + 0.25 * Math.cos(angle),
      y: 0.5 + 0.33 * Math.sin(angle),
    };
    good(await job.client.record.make({ ...job.base(), table: 'marker', values }));
  }
}

/** A micro sign may be read back as the Greek letter that it looks like. */
const all = (pages: readonly ReadPage[]): string =>
  pages.map((page) => page.text.replaceAll('μ', 'µ')).join('\n');

/** A4 is 210 × 297 mm (ISO 216), 595.28 × 841.89 points. Printers leave out up to 6 mm: common practice, no source. */
function holdsToPaper(pages: readonly ReadPage[]): void {
  for (const page of pages) {
    expect(page.width).toBeCloseTo(595.28, 1);
    expect(page.height).toBeCloseTo(841.89, 1);
    const { left, right, low, high } = page.reach;
    expect(left).toBeGreaterThan(17);
    expect(right).toBeLessThan(595 - 17);
    expect(low).toBeGreaterThan(17);
    expect(high).toBeLessThan(842 - 17);
  }
}

describe('a put-back sheet', () => {
  it('says every step that is left, its holes, torque, seals and boxes, on paper of the right size', async () => {
    const job = await gearbox(LINES);
    const pages = await sheetOf(job);
    holdsToPaper(pages);
    const text = all(pages);
    for (const step of job.plan().steps) expect(text).toContain(step.title);
    expect(text).toMatch(/6 × fastener M8 × 30 mm, hex 13 mm, class 8\.8, from bag 4/);
    expect(text).toContain('25 N·m');
    expect(text).toContain('18.4 lbf·ft');
    expect(text).toMatch(/Round 1 7\.5 N·m Round 2 17\.5 N·m Round 3 25 N·m Once around 25 N·m/);
    expect(text).toContain('Fit new: gasket.');
    expect(text).toContain('Back exactly where it was: gear (L).');
    expect(text).toContain('The maker’s manual comes first');
    expect(text).toContain(`1 of ${pages.length}`);
    // Six holes and two of the guard, a row each.
    expect(text).toContain(
      'Read on the wrench 6 × fastener M8 × 30 mm, hex 13 mm, class 8.8, from bag 4 1 2 3 4 5 6',
    );
  });

  it('shows the torque as the largest thing on its page', async () => {
    const job = await gearbox(LINES);
    const page = (await sheetOf(job)).find((one) => one.text.includes('25 N·m'));
    const [largest] = [...(page?.sizes ?? [])].sort((a, b) => b.size - a.size);
    expect(largest?.text).toBe('25');
  });

  it('prints the photo with its numbered holes, and the rows in the order of tightening', async () => {
    const job = await gearbox(LINES);
    await withPhoto(job);
    for (const light of [false, true]) {
      const pages = await sheetOf(job, { light });
      holdsToPaper(pages);
      expect(pages.reduce((sum, page) => sum + page.pictures, 0)).toBe(1);
      const page = pages.find((one) => one.pictures === 1);
      expect(page?.text).toContain('Cover');
      expect(page?.text).toContain('25 N·m');
      // Crosswise: each hole after the one across from it. Order, then hole.
      expect(page?.text).toMatch(/1 1 2 4 3 \d 4 \d 5 \d 6 \d/);
    }
  });

  it('prints steps of which the photo is gone, and says so', async () => {
    const job = await gearbox(LINES);
    await withPhoto(job);
    const sha = job.state().original[0]?.id ?? '';
    const path = originalPath(places(job.workshop.dir).originals, sha);
    expect(existsSync(path)).toBe(true);
    rmSync(path);
    const pages = await sheetOf(job);
    expect(all(pages)).toContain('The file of this photo is missing.');
    expect(all(pages)).toContain('25 N·m');
  });

  it('prints one step alone, refuses one that is not there, and leaves out what is done', async () => {
    const job = await gearbox(LINES);
    const first = job.plan().steps[0];
    const one = await sheetOf(job, { steps: [1] });
    expect(one).toHaveLength(1);
    expect(one[0]?.text).toContain(first?.title);
    const made = await sheetPdf({ workshop: job.workshop, actor: null }, pool, {
      jobId: job.jobId,
      steps: [99],
      light: false,
    });
    expect(made).toMatchObject({ ok: false, fault: { code: 'not-found' } });
    const gear = named(job.state().part, 'gear');
    good(await job.client.tick.do({ ...job.base(), thingIds: [gear.removalId ?? ''], what: 'done' }));
    expect(all(await sheetOf(job))).not.toContain('Back exactly where it was: gear (L).');
  });

  it('says notes for the way back larger than its own words, and cautions in words', async () => {
    const job = await gearbox(['cover, gasket', 'gear']);
    const cover = named(job.state().removal, 'cover');
    const note = 'Rock it gently: the dowels bind — größer als gedacht, Ø 8, 5 µm, 3 × …';
    good(
      await job.client.record.change({
        ...job.base(),
        table: 'removal',
        id: cover.id,
        values: { noteBack: note, caution: 'Sharp edges' },
      }),
    );
    const pages = await sheetOf(job);
    const sizes = pages.flatMap((page) => page.sizes);
    const sizeOf = (part: string) => sizes.find((one) => one.text.includes(part))?.size ?? 0;
    expect(all(pages)).toContain(note);
    expect(sizeOf('Rock it gently')).toBeGreaterThan(sizeOf('Fit: cover') * 1.2);
    expect(all(pages)).toContain('Caution Sharp edges');
  });

  it('says what stops the way back as a stop, at the check that it holds', async () => {
    const job = await gearbox(LINES);
    const bag = job.state().stow.find((stow) => stow.label === '4');
    good(await job.client.piece.count({ ...job.base(), stowId: bag?.id ?? '', counted: 5 }));
    const stops = job.plan().findings.filter((one) => one.severity === 'stop');
    expect(stops.length).toBeGreaterThan(0);
    const text = all(await sheetOf(job));
    for (const { sentence, clears } of stops) expect(text).toContain(`Stop ${sentence} ${clears}`);
  });

  it('says so where nothing is left', async () => {
    const job = await gearbox([]);
    expect(all(await sheetOf(job))).toContain('Nothing is left to put back.');
  });
});

const WORDS = 'Donaudampfschifffahrtsgesellschaft '.repeat(4);
const longStep = (i: number): SheetStep => ({
  id: `s${i}`,
  removalId: `r${i}`,
  number: i,
  title: i % 7 === 0 ? `Very long name of a part ${i}, ${WORDS}` : `Part ${i}`,
  place: `Step ${i} of 50`,
  why: '',
  figure: i % 2 === 0 ? { value: '1250.5', unit: 'lbf·in + 90°', other: '141 N·m' } : null,
  photo: null,
  noPhoto: 'No photo of this step.',
  gate:
    i % 10 === 0
      ? {
          title: 'Check before covering',
          points: [{ grave: 'stop', sentence: `Rag ${i} is inside.`, clears: 'Take it out.' }],
          notYet: [`Plug ${i}`],
        }
      : null,
  points: [],
  cautions: [],
  notes: i === 3 ? [`${'A long story. '.repeat(400)}The end of it. ${'x'.repeat(300)}`] : [`Note ${i} 你好`],
  before: [{ text: `Clean ${i}. ${WORDS}`, done: false, write: true }],
  rounds: [],
  sets: [
    {
      title: '',
      holes: Array.from({ length: i === 5 ? 80 : 2 }, (_, n) => ({
        order: null,
        text: String(n + 1),
        state: 'out' as const,
        boxes: 'all' as const,
        note: '',
      })),
    },
  ],
  after: [],
  about: '',
});

describe('a long put-back sheet', () => {
  const data: SheetData = {
    job: 'A job whose title is far too long to stand in one line over every page of the sheet'.repeat(2),
    machine: 'Machine',
    owner: '',
    date: 'today',
    line: {
      direction: 'back',
      atId: null,
      items: Array.from({ length: 50 }, (_, i) => ({
        kind: 'removal' as const,
        id: `r${i + 1}`,
        number: i + 1,
        title: '',
        pieces: i % 9,
        did: 'off' as const,
        back: i > 40,
        place: i % 3 === 0 ? 'front' : '',
        note: '',
      })),
    },
    steps: Array.from({ length: 50 }, (_, i) => longStep(50 - i)),
    last: { title: 'Check before handing over', points: [], notYet: [] },
  };

  it('keeps every word of 50 steps, one of 80 holes and one with a long story, on the paper', async () => {
    const pages = await readPdf(await putBackSheet(data));
    holdsToPaper(pages);
    const text = all(pages);
    for (let i = 1; i <= 50; i += 1) expect(text).toContain(`Step ${i} of 50`);
    expect(text.match(/story\./g)).toHaveLength(400);
    expect(text.replaceAll(/\s/g, '')).toContain('x'.repeat(300));
    expect(text).toContain('Rag 10 is inside.');
    expect(text).toContain('Check before handing over');
    pages.forEach((page, i) => expect(page.text).toContain(`${i + 1} of ${pages.length}`));
    // The step of 80 holes: its table is headed again on each page it goes on to.
    const goesOn = pages.filter((page) => page.text.includes('Part 5, continued'));
    expect(goesOn.length).toBeGreaterThan(1);
    for (const page of goesOn) expect(page.text).toContain('Read on the wrench');
  });

  it('says every step whole on one page where a page holds it', async () => {
    const pages = await readPdf(await putBackSheet({ ...data, steps: data.steps.slice(0, 20) }));
    expect(all(pages)).not.toContain('continued');
  });
});
