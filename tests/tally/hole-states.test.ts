import { describe, expect, it } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { countOfSet, damagesPiece } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

describe('where a hole stands', () => {
  const hole = () => {
    const job = new TallyJob();
    const set = job.set(1, { how: 'slackened' });
    const slack = () => countOfSet(job.state, set.id)[0]?.slackened;
    return { job, id: set.holes[0] ?? '', set, slack };
  };

  it.each(['tightened', 'paint-checked', 'done'] as const)('%s is tight, and started is not', (what) => {
    const { job, id, slack } = hole();
    job.deed(id, 'started');
    expect(slack()).toBe(1);
    job.deed(id, what);
    expect(slack()).toBe(0);
  });

  const empty = (more: Partial<Row<'position'>> = {}) => {
    const job = new TallyJob();
    const set = job.set(1);
    const id = set.holes[0] ?? '';
    job.change('position', id, { found: 'empty', ...more });
    return { job, id, line: () => countOfSet(job.state, set.id)[0] };
  };

  it('found empty stays empty until somebody wants it filled: by a reason, by the list to get, or by filling it', () => {
    expect(empty().line()).toMatchObject({ foundEmpty: 1, newHoles: 0 });
    expect(empty({ fateWhy: 'fill it' }).line()).toMatchObject({ foundEmpty: 0, newHoles: 1 });
    expect(empty({ fate: 'leave out', fateWhy: 'not used' }).line()).toMatchObject({
      foundEmpty: 1,
      newHoles: 0,
    });
    expect(empty({ fate: 'blocked', fateWhy: 'broken stud' }).line()).toMatchObject({
      foundEmpty: 0,
      blocked: 1,
    });
    const wanted = empty();
    const want = wanted.job.add('want', { thingId: wanted.id, what: 'bolt' });
    expect(wanted.line()).toMatchObject({ foundEmpty: 0, newHoles: 1 });
    wanted.job.change('want', want.id, { state: 'dropped' });
    expect(wanted.line()).toMatchObject({ foundEmpty: 1 });
    wanted.job.add('want', { what: 'other' });
    expect(wanted.line()).toMatchObject({ foundEmpty: 1 });
    for (const what of ['started', 'fitted', 'tightened'] as const) {
      const filled = empty();
      filled.job.deed(filled.id, what);
      expect(filled.line(), what).toMatchObject({ foundEmpty: 0, newHoles: 1 });
    }
  });

  it('left out by a deed is left out, and one that was filled after all is not', () => {
    const job = new TallyJob();
    const set = job.set(2);
    const id = set.holes[0] ?? '';
    job.cameOff(set, 2);
    job.deed(id, 'left out');
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ leftOut: 1, toFill: 1 });
    job.deed(id, 'started');
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ leftOut: 0 });
  });

  it('a stud that broke off and was drilled out wants a new one, by a repair or by the word of who did it', () => {
    const job = new TallyJob();
    const set = job.set(2);
    job.move({
      src: 'hole',
      dst: 'stow',
      homeSetId: set.id,
      specId: set.specId,
      positionId: set.holes[0] ?? '',
    });
    const broken = set.holes[1] ?? '';
    const toFill = () => countOfSet(job.state, set.id)[0]?.toFill;
    expect(toFill()).toBe(1);
    job.change('position', broken, { condition: 'stud broken off', fateWhy: 'drilled out' });
    expect(toFill()).toBe(2);
    job.change('position', broken, { condition: 'stud broken off', fateWhy: '' });
    expect(toFill()).toBe(1);
    job.change('position', broken, { condition: 'rusty', fateWhy: 'seen to' });
    expect(toFill()).toBe(1);
    job.deed(broken, 'measured');
    expect(toFill()).toBe(1);
    job.deed(broken, 'repaired');
    expect(toFill()).toBe(2);
  });

  it('a piece marked damaged in a hole that was empty is no piece', () => {
    const job = new TallyJob();
    const set = job.set(2);
    job.cameOff(set, 1);
    job.change('position', set.holes[1] ?? '', { found: 'empty', condition: 'bent' });
    expect(countOfSet(job.state, set.id)[0]?.damaged).toBe(0);
    job.change('position', set.holes[0] ?? '', { condition: 'bent' });
    expect(countOfSet(job.state, set.id)[0]?.damaged).toBe(1);
  });

  it('what broke off and is still in its hole is no damaged piece in the bag; once it came out it is', () => {
    const job = new TallyJob();
    const set = job.set(2);
    const out = { src: 'hole', dst: 'stow', homeSetId: set.id, specId: set.specId } as const;
    job.move({ ...out, positionId: set.holes[0] ?? '' });
    const hole = set.holes[1] ?? '';
    job.change('position', hole, { condition: 'snapped', fate: 'blocked', fateWhy: 'snapped' });
    job.move({
      src: 'stow',
      dst: 'stow',
      homeSetId: set.id,
      specId: set.specId,
      positionId: hole,
      dstStowId: job.bag('9'),
    });
    job.move({ src: 'hole', dst: 'stow', positionId: hole, partId: job.add('part', {}).id });
    expect(countOfSet(job.state, set.id)[0]?.damaged).toBe(0);
    job.move({ ...out, positionId: hole });
    expect(countOfSet(job.state, set.id)[0]?.damaged).toBe(1);
  });

  it.each([
    ['cross threaded', true],
    ['crossthreaded', true],
    ['cross-threaded', true],
    ['Bent; rusty', true],
    ['rusty. Head rounded', true],
    ['not bent', false],
    ['no harm, stripped', true],
    ['thread of the hole stripped', false],
    ['insert damaged', false],
    ['rusty', false],
    ['', false],
  ])('“%s” condemns the piece: %s', (condition, harm) => {
    expect(damagesPiece(condition)).toBe(harm);
  });
});
