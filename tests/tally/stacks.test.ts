import { describe, expect, it } from 'vitest';
import { countLines, countOfSet, piecesOf, poolLines } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

/** Bolt, two washers, nut in each of so many holes, all booked out. */
const stacked = (holes: number) => {
  const job = new TallyJob();
  const set = job.set(holes);
  const washer = job.spec({ kind: 'washer', head: null, drive: null });
  const nut = job.spec({ kind: 'nut', lengthUm: null });
  job.add('stackItem', { setId: set.id, ord: 'a2', what: 'nut', specId: nut });
  job.add('stackItem', { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
  job.add('stackItem', { setId: set.id, ord: 'a1', what: 'washer', specId: washer, qty: 2 });
  const out = (specId: string, qty: number) => job.cameOff({ id: set.id, specId }, qty);
  out(set.specId, holes);
  out(washer, 2 * holes);
  out(nut, holes);
  const line = (specId: string) => countOfSet(job.state, set.id).find((one) => one.specId === specId);
  return { job, set, washer, nut, line };
};

describe('what a hole takes', () => {
  it('is the fastener first, then its stack in order, equal pieces added up', () => {
    const { job, set, washer, nut } = stacked(1);
    job.add('stackItem', { setId: set.id, ord: 'a3', what: 'washer under the nut', specId: washer });
    expect(piecesOf(job.state, set.holes[0] ?? '')).toEqual([
      { specId: set.specId, what: 'bolt', qty: 1, main: true },
      { specId: washer, what: 'washer', qty: 3, main: false },
      { specId: nut, what: 'nut', qty: 1, main: false },
    ]);
  });

  it('takes the fastener of the stack for itself by its size, else by its name, and has it besides where neither fits', () => {
    const job = new TallyJob();
    const named = job.set(1);
    job.add('stackItem', { setId: named.id, ord: 'a0', what: 'washer' });
    job.add('stackItem', { setId: named.id, ord: 'a1', what: 'long stud', qty: 2 });
    expect(
      piecesOf(job.state, named.holes[0] ?? '').map((piece) => [piece.what, piece.qty, piece.main]),
    ).toEqual([
      ['long stud', 2, true],
      ['washer', 1, false],
    ]);
    const other = job.set(1);
    job.add('stackItem', { setId: other.id, ord: 'a0', what: 'bolt', specId: job.spec({ thread: 'M4' }) });
    job.add('stackItem', { setId: other.id, ord: 'a1', what: 'washer' });
    expect(piecesOf(job.state, other.holes[0] ?? '').map((piece) => [piece.what, piece.main])).toEqual([
      ['bolt', true],
      ['bolt', false],
      ['washer', false],
    ]);
    const lost = job.set(1, { specId: job.id() });
    expect(piecesOf(job.state, lost.holes[0] ?? '')).toMatchObject([{ what: 'fastener', qty: 1 }]);
    expect(piecesOf(job.state, job.id())).toEqual([]);
  });
});

describe('a stack is counted piece by piece', () => {
  it('each kind by the hole', () => {
    const { job, set, washer, nut, line } = stacked(3);
    expect(line(washer)).toMatchObject({
      holes: 6,
      perHole: 2,
      emptied: 6,
      toFill: 6,
      main: false,
      short: 0,
    });
    expect(line(nut)).toMatchObject({ holes: 3, perHole: 1, toFill: 3 });
    job.refit({ id: set.id, specId: washer }, 4);
    job.refit(set, 2);
    expect(line(washer)).toMatchObject({ filled: 4, toFill: 2, backIn: 4 });
    expect(line(set.specId)).toMatchObject({ filled: 2, toFill: 1 });
    expect(line(nut)).toMatchObject({ filled: 0, toFill: 3 });
  });

  it('also where every move names its hole', () => {
    const { job, set, washer, nut, line } = stacked(2);
    const own = { homeSetId: set.id, src: 'stow', dst: 'hole', positionId: set.holes[0] ?? '' } as const;
    job.move({ ...own, specId: washer, qty: 2, cause: 'refitted' });
    job.move({ ...own, specId: nut, cause: 'refitted' });
    expect(line(washer)).toMatchObject({ filled: 2, toFill: 2 });
    expect(line(nut)).toMatchObject({ filled: 1, toFill: 1 });
    expect(line(set.specId)).toMatchObject({ filled: 0, toFill: 2 });
  });

  it('a nut of another make in a named hole fills the place of the nut, a thing of no such kind that of the bolt', () => {
    const { job, set, nut, line } = stacked(2);
    const other = job.spec({ kind: 'nut', grade: '10', lengthUm: null });
    job.buy({ id: set.id, specId: other }, 1);
    job.move({
      homeSetId: set.id,
      specId: other,
      src: 'stow',
      dst: 'hole',
      fresh: true,
      positionId: set.holes[0] ?? '',
      cause: 'renewed',
    });
    expect(line(nut)).toMatchObject({ filled: 1, toFill: 1 });
    expect(line(other)).toMatchObject({ backIn: 1, perHole: 0, toFill: 0 });
    const stud = job.spec({ kind: 'stud' });
    job.buy({ id: set.id, specId: stud }, 1);
    job.move({
      homeSetId: set.id,
      specId: stud,
      src: 'stow',
      dst: 'hole',
      fresh: true,
      positionId: set.holes[1] ?? '',
      cause: 'renewed',
    });
    expect(line(set.specId)).toMatchObject({ filled: 1, toFill: 1 });
  });

  it('substitutes without a hole fill the bolts’ holes first, and no more than there are', () => {
    const { job, set, washer, nut, line } = stacked(2);
    const longer = { id: set.id, specId: job.spec({ lengthUm: 40_000 }) };
    job.buy(longer, 3);
    job.refit(longer, 3, null, true);
    expect([set.specId, washer, nut].map((specId) => line(specId)?.toFill)).toEqual([0, 3, 2]);
    job.move({
      homeSetId: set.id,
      specId: longer.specId,
      src: 'hole',
      dst: 'stow',
      qty: 2,
      cause: 'came off again',
    });
    expect([set.specId, washer, nut].map((specId) => line(specId)?.toFill)).toEqual([1, 4, 2]);
  });

  it('a bolt of a size that nobody expected leaves the holes of the set all the same', () => {
    const job = new TallyJob();
    const set = job.set(3);
    const odd = job.spec({ grade: '10.9' });
    job.cameOff(set, 2);
    job.cameOff({ id: set.id, specId: odd }, 1);
    const lines = countOfSet(job.state, set.id);
    expect(lines.map((line) => [line.specId === odd, line.emptied, line.toFill, line.out])).toEqual([
      [false, 3, 3, 2],
      [true, 0, 0, 1],
    ]);
    job.move({ homeSetId: set.id, specId: odd, src: 'stow', dst: 'hole', cause: 'counted' });
    expect(countOfSet(job.state, set.id)[0], 'it had never come off').toMatchObject({
      emptied: 2,
      toFill: 2,
    });
  });

  it('a set that is not numbered has its pieces, and nothing to fill', () => {
    const job = new TallyJob();
    const set = job.set(0);
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'washer' });
    expect(
      countOfSet(job.state, set.id).map((line) => [line.what, line.perHole, line.holes, line.toFill]),
    ).toEqual([
      ['bolt', 1, 0, 0],
      ['washer', 1, 0, 0],
    ]);
  });
});

describe('the books in order', () => {
  it('sets as the log has them, pieces of no set last, and none of those where there are none', () => {
    const job = new TallyJob();
    const [late, soon] = [job.removal({ ord: 'b' }), job.removal({ ord: 'a' })];
    const c = job.set(1, { removalId: late });
    const b = job.set(1, { removalId: soon, ord: 'y' });
    const a = job.set(1, { removalId: soon, ord: 'x' });
    expect(countLines(job.state).map((line) => line.setId)).toEqual([a.id, b.id, c.id]);
    const spare = job.spec({ thread: 'M4' });
    job.move({ specId: spare, src: 'supply', dst: 'stow', qty: 2, cause: 'received' });
    job.move({ src: 'supply', dst: 'stow', cause: 'received' });
    expect(countLines(job.state).slice(3)).toMatchObject([
      {
        setId: null,
        removalId: null,
        specId: spare,
        what: 'bolt',
        main: false,
        inBag: 2,
        got: 2,
        toFill: 0,
        countKnown: true,
        ownPlace: false,
      },
      { setId: null, specId: null, what: 'fastener', inBag: 1 },
    ]);
    expect(countLines(job.state)[0]).toMatchObject({ removalId: soon });
  });

  it('parts are in no count of fasteners', () => {
    const job = new TallyJob();
    const set = job.set(1);
    job.cameOff(set, 1);
    job.move({
      partId: job.add('part', {}).id,
      homeSetId: set.id,
      specId: set.specId,
      src: 'hole',
      dst: 'stow',
      qty: 5,
    });
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ out: 1, inBag: 1 });
  });

  it('what was given back to the dealer was not got', () => {
    const job = new TallyJob();
    const set = job.set(1);
    job.buy(set, 3);
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'supply', fresh: true });
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ got: 2, inBag: 2 });
  });

  it('a pool says which size it is, and is as unknown as the least known of its sets', () => {
    const job = new TallyJob();
    const [a, b] = [job.set(2), job.set(3, { specId: job.spec() })];
    job.change('position', b.holes[0] ?? '', { found: 'empty' });
    for (const set of [a, b]) job.cameOff(set, 2);
    const [pool, ...more] = poolLines(job.state);
    expect(more).toEqual([]);
    expect(pool).toMatchObject({
      specId: a.specId,
      countKnown: true,
      holes: 5,
      foundEmpty: 1,
      emptied: 4,
      toFill: 4,
    });
    const alone = new TallyJob();
    for (let i = 0; i < 2; i += 1) alone.set(0, { countKnown: false });
    alone.move({ src: 'supply', dst: 'stow', cause: 'received' });
    expect(
      poolLines(alone.state).map((line) => [line.countKnown, line.holes, line.toFill, line.lines.length]),
    ).toEqual([
      [false, null, null, 1],
      [false, null, null, 1],
      [true, 0, 0, 1],
    ]);
  });

  it('a slackened set that came out after all is slack no more', () => {
    const job = new TallyJob();
    const set = job.set(3, { how: 'slackened' });
    job.cameOff(set, 2);
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ slackened: 1, emptied: 2, toFill: 2 });
  });
});
