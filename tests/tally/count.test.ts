import { describe, expect, it } from 'vitest';
import { bookDifference, countOfSet, piecesOf } from '../../core/tally/index.ts';
import type { CountLine } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const only = (job: TallyJob, setId: string): CountLine => {
  const [line, ...rest] = countOfSet(job.state, setId);
  expect(rest).toEqual([]);
  return line as CountLine;
};

describe('the count of a set', () => {
  it('closes over every place a piece can be in', () => {
    const job = new TallyJob();
    const set = job.set(8);
    const own = { homeSetId: set.id, specId: set.specId };
    job.cameOff(set, 8);
    job.buy(set, 2);
    job.refit(set, 2);
    job.move({ ...own, src: 'stow', dst: 'away', cause: 'sent out' });
    job.move({ ...own, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    job.move({ ...own, src: 'stow', dst: 'unknown', qty: 2, cause: 'counted' });
    job.move({ ...own, src: 'unknown', dst: 'lost', cause: 'written off' });
    job.move({ ...own, src: 'stow', dst: 'stock', cause: 'to stock' });
    const line = only(job, set.id);
    expect(line).toMatchObject({ out: 8, got: 2, inBag: 3, away: 1, backIn: 2, scrapped: 1 });
    expect(line).toMatchObject({
      lost: 1,
      unknown: 1,
      toStock: 1,
      newInBag: 2,
      usable: 3,
      toFill: 6,
      short: 3,
    });
    expect(bookDifference(line)).toBe(0);
  });

  it('says what has to be bought without what is only away', () => {
    const job = new TallyJob();
    const set = job.set(4);
    job.cameOff(set, 4);
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'away', qty: 4, cause: 'sent out' });
    expect(only(job, set.id)).toMatchObject({ short: 4, toGet: 0 });
  });

  it('tells old pieces left over from bought ones to spare', () => {
    const job = new TallyJob();
    const set = job.set(3);
    job.cameOff(set, 3);
    job.buy(set, 2);
    expect(only(job, set.id)).toMatchObject({ leftOver: 0, spare: 2, short: 0 });
    job.refit(set, 2, null, true);
    job.refit(set, 1);
    expect(only(job, set.id)).toMatchObject({ toFill: 0, leftOver: 2, spare: 0 });
  });

  it('counts a slackened set as loose on the machine, neither in hand nor short', () => {
    const job = new TallyJob();
    const set = job.set(4, { how: 'slackened' });
    expect(only(job, set.id)).toMatchObject({ slackened: 4, inBag: 0, usable: 0, toFill: 0, short: 0 });
    job.deed(set.holes[0] as string, 'tightened');
    expect(only(job, set.id).slackened).toBe(3);
  });

  it('lists blocked holes apart, and their bolt is not left over', () => {
    const job = new TallyJob();
    const set = job.set(3);
    job.cameOff(set, 3);
    job.change('position', set.holes[2] as string, { fate: 'blocked', fateWhy: 'bad thread' });
    job.refit(set, 2);
    expect(only(job, set.id)).toMatchObject({ blocked: 1, toFill: 0, short: 0, leftOver: 0 });
    job.deed(set.holes[2] as string, 'repaired');
    expect(only(job, set.id)).toMatchObject({ blocked: 0, toFill: 1, usable: 1, short: 0 });
  });

  it('wants a new bolt for a hole whose broken stud was drilled out, though nothing came out of it', () => {
    const job = new TallyJob();
    const set = job.set(4);
    for (const positionId of set.holes.slice(0, 3))
      job.move({
        src: 'hole',
        dst: 'stow',
        cause: 'came off',
        homeSetId: set.id,
        specId: set.specId,
        positionId,
      });
    job.change('position', set.holes[3] as string, {
      fate: 'blocked',
      condition: 'snapped',
      fateWhy: 'snapped',
    });
    expect(only(job, set.id)).toMatchObject({ out: 3, damaged: 0, blocked: 1, toFill: 3, short: 0 });
    job.deed(set.holes[3] as string, 'repaired');
    expect(only(job, set.id)).toMatchObject({ toFill: 4, short: 1, blocked: 0 });
  });

  it('takes another size for a repaired hole without asking for the old size too', () => {
    const job = new TallyJob();
    const set = job.set(3);
    for (const positionId of set.holes)
      job.move({
        src: 'hole',
        dst: 'stow',
        cause: 'came off',
        homeSetId: set.id,
        specId: set.specId,
        positionId,
      });
    const bigger = job.spec({ thread: 'M10' });
    job.change('position', set.holes[0] as string, { specId: bigger });
    const lines = countOfSet(job.state, set.id);
    expect(lines.map((line) => [line.specId === bigger, line.toFill, line.short])).toEqual([
      [true, 1, 1],
      [false, 2, 0],
    ]);
  });

  it('does the same where nobody said which hole each piece came out of', () => {
    const job = new TallyJob();
    const set = job.set(3);
    job.cameOff(set, 3);
    const bigger = job.spec({ thread: 'M10' });
    job.change('position', set.holes[0] as string, { specId: bigger });
    job.buy({ id: set.id, specId: bigger }, 1);
    job.refit({ id: set.id, specId: bigger }, 1, null, true);
    job.refit(set, 2);
    expect(
      countOfSet(job.state, set.id).map((line) => [line.specId === bigger, line.toFill, line.leftOver]),
    ).toEqual([
      [true, 0, 0],
      [false, 0, 1],
    ]);
  });

  it('lets a substitute of another size fill a hole without a number', () => {
    const job = new TallyJob();
    const set = job.set(2);
    const longer = { id: set.id, specId: job.spec({ lengthUm: 30_000 }) };
    job.cameOff(set, 2);
    job.buy(longer, 1);
    job.refit(longer, 1, null, true);
    const lines = countOfSet(job.state, set.id);
    expect(lines.map((line) => [line.perHole, line.toFill, line.backIn])).toEqual([
      [1, 1, 0],
      [0, 0, 1],
    ]);
  });

  it('takes missing as found for neither lost nor short until somebody wants the hole filled', () => {
    const job = new TallyJob();
    const set = job.set(5);
    job.change('position', set.holes[4] as string, { found: 'empty' });
    job.cameOff(set, 4);
    expect(only(job, set.id)).toMatchObject({ out: 4, foundEmpty: 1, lost: 0, toFill: 4, short: 0 });
    job.change('position', set.holes[4] as string, { fate: 'fill', fateWhy: 'fill it this time' });
    expect(only(job, set.id)).toMatchObject({ foundEmpty: 0, newHoles: 1, toFill: 5, short: 1 });
  });

  it('takes a hole off the list when it is left out, not before it was emptied', () => {
    const job = new TallyJob();
    const set = job.set(3);
    job.change('position', set.holes[0] as string, { fate: 'leave out', fateWhy: 'not needed' });
    expect(only(job, set.id)).toMatchObject({ leftOut: 0, toFill: 0 });
    job.cameOff(set, 3);
    expect(only(job, set.id)).toMatchObject({ leftOut: 1, toFill: 2 });
  });

  it('does not take a count that was not recorded for none', () => {
    const job = new TallyJob();
    const set = job.set(0, { countKnown: false });
    expect(only(job, set.id)).toMatchObject({
      holes: null,
      toFill: null,
      short: null,
      leftOver: null,
      toGet: null,
    });
  });

  it('counts each length of one joint by itself', () => {
    const job = new TallyJob();
    const set = job.set(3);
    const long = job.spec({ lengthUm: 45_000 });
    job.change('position', set.holes[2] as string, { specId: long });
    job.cameOff(set, 2);
    job.cameOff({ id: set.id, specId: long }, 1);
    job.move({ homeSetId: set.id, specId: long, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    const short = Object.fromEntries(countOfSet(job.state, set.id).map((line) => [line.specId, line.short]));
    expect(short).toEqual({ [set.specId]: 0, [long]: 1 });
  });

  it('counts the washers and nuts of a stack by the hole', () => {
    const job = new TallyJob();
    const set = job.set(4);
    const washer = job.spec({ kind: 'washer' });
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
    job.add('stackItem', { setId: set.id, ord: 'a1', what: 'washer', specId: washer, qty: 2 });
    job.cameOff(set, 4);
    job.cameOff({ id: set.id, specId: washer }, 7);
    const lines = countOfSet(job.state, set.id);
    expect(lines.map((l) => [l.what, l.main, l.perHole, l.holes])).toEqual([
      ['bolt', true, 1, 4],
      ['washer', false, 2, 8],
    ]);
  });

  it('adds up washers of one kind under head and nut', () => {
    const job = new TallyJob();
    const set = job.set(1);
    const washer = job.spec({ kind: 'washer' });
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'washer under the head', specId: washer });
    job.add('stackItem', { setId: set.id, ord: 'a1', what: 'washer under the nut', specId: washer, qty: 2 });
    expect(
      piecesOf(job.state, set.holes[0] as string).map((piece) => [piece.specId, piece.qty, piece.main]),
    ).toEqual([
      [set.specId, 1, true],
      [washer, 3, false],
    ]);
    expect(piecesOf(job.state, set.id)).toEqual([]);
  });

  it('counts nothing of a removal that is planned or void', () => {
    for (const phase of ['planned', 'void'] as const) {
      const job = new TallyJob();
      const set = job.set(4, { removalId: job.removal({ phase }) });
      job.change('position', set.holes[0] as string, { found: 'new hole' });
      job.change('position', set.holes[1] as string, { fate: 'blocked' });
      expect(only(job, set.id)).toMatchObject({
        holes: 0,
        toFill: 0,
        short: 0,
        emptied: 0,
        newHoles: 0,
        blocked: 0,
      });
    }
  });

  it('keeps the pieces of a void removal in the books: they still have to go somewhere', () => {
    const job = new TallyJob();
    const set = job.set(4, { removalId: job.removal({ phase: 'void' }) });
    job.cameOff(set, 4);
    expect(only(job, set.id)).toMatchObject({ inBag: 4, toFill: 0, leftOver: 4 });
  });

  it('takes a correction of what came off for no refit', () => {
    const job = new TallyJob();
    const set = job.set(5);
    job.cameOff(set, 6);
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'hole', cause: 'counted' });
    expect(only(job, set.id)).toMatchObject({ out: 5, inBag: 5, backIn: 0, toFill: 5, short: 0 });
  });
});
