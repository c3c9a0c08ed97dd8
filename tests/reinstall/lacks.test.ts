import { describe, expect, test } from 'vitest';
import { type Lack, planJob, type Step } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const MINUTE = 60_000;
const BOLT = 'bolt M8 × 1.25 × 30 mm, hex 13 mm, class 8.8';
const step = (job: JobBuilder, kind: Step['kind'] = 'S', at = job.at): Step | undefined =>
  planJob(job.state(), at).steps.find((one) => one.kind === kind);
const lacks = (job: JobBuilder, kind: Step['kind'] = 'S', at = job.at): readonly Lack[] =>
  step(job, kind, at)?.lacks ?? [];

describe('what a step waits for', () => {
  test('what is away, with whom and until when', () => {
    const job = build();
    const head = job.removal('Head').part('Head', { stowId: job.bag() });
    const away = job.away(head, { toWhom: 'the machinist', due: 777 });
    expect(lacks(job)).toEqual([
      { code: 'away', thingId: head, qty: 1, until: 777, sentence: 'Head is away, with the machinist.' },
    ]);
    expect(step(job)).toMatchObject({ state: 'waiting', why: 'Head is away, with the machinist.' });
    job.set('away', away, { toWhom: '' });
    job.set('part', head, { name: '' });
    expect(lacks(job)[0]?.sentence).toBe('A part of this step is away.');
    job.set('away', away, { backAt: job.at });
    expect(step(job)).toMatchObject({ state: 'ready', why: '', lacks: [] });
  });

  test('a repair, with its reason', () => {
    const job = build();
    const hole = job.removal('Cover').set(2).holes[1] ?? '';
    job.set('position', hole, { fate: 'blocked', fateWhy: 'broken stud' });
    expect(lacks(job)).toEqual([
      {
        code: 'repair',
        thingId: hole,
        qty: 1,
        until: null,
        sentence: 'bolts, hole 2 is blocked: broken stud. It waits for its repair.',
      },
    ]);
    job.set('position', hole, { fateWhy: '', condition: 'bad thread' });
    job.set('fset', job.rows.fset[0]?.id ?? '', { name: '' });
    expect(lacks(job)[0]?.sentence).toBe(
      'Fasteners, hole 2 is blocked: bad thread. It waits for its repair.',
    );
    job.set('position', hole, { condition: '' });
    expect(lacks(job)[0]?.sentence).toContain('no reason given');
    job.deed(hole, 'repaired');
    expect(lacks(job)).toEqual([]);
  });

  test('a new part, and what is carried over to it waits at the bench as well', () => {
    const job = build();
    const off = job.removal('Pump');
    const pump = off.part('Pump', { renew: 'must', qty: 2 });
    const elbow = off.part('Elbow', { fate: 'carry over', carryToId: pump });
    const lack = {
      code: 'to get',
      thingId: pump,
      qty: 2,
      until: null,
      sentence: 'Pump must be new: 2 to get.',
    };
    expect(lacks(job)).toEqual([lack]);
    expect(lacks(job, 'B')).toEqual([lack]);
    expect(elbow).not.toBe('');
    job.want(pump, 'ordered', { promisedAt: 90 });
    job.want(pump, 'ordered', { promisedAt: 70 });
    job.want(pump, 'ordered');
    job.want(pump, 'needed', { promisedAt: 10 });
    job.want(null, 'ordered', { promisedAt: 5 });
    expect(lacks(job)[0]?.until).toBe(90);
    job.move({ partId: pump, qty: 2, src: 'supply', dst: 'stow', fresh: true, cause: 'received' });
    expect(lacks(job)).toEqual([]);
  });

  test('bolts that are short, by how many, and nothing any more once its step is done', () => {
    const job = build();
    const cover = job.removal('Cover');
    const set = cover.set(3, { name: 'cover bolts' });
    job.move({ specId: set.specId, homeSetId: set.id, src: 'stow', dst: 'scrap', qty: 2, cause: 'scrapped' });
    expect(lacks(job)).toEqual([
      {
        code: 'short',
        thingId: set.id,
        qty: 2,
        until: null,
        sentence: `${BOLT} (cover bolts): 3 to fill, 1 usable in hand, 2 short.`,
      },
    ]);
    job.set('fset', set.id, { name: '' });
    expect(lacks(job)[0]?.sentence).toBe(`${BOLT}: 3 to fill, 1 usable in hand, 2 short.`);
    job.want(set.id, 'ordered', { promisedAt: 40 });
    expect(lacks(job)[0]?.until).toBeNull();
    job.want(set.id, 'ordered', { promisedAt: 50 });
    expect(lacks(job)[0]?.until).toBe(50);
    job.deed(cover.id, 'done');
    expect(lacks(job)).toEqual([]);
  });

  test('new bolts, where old ones will not do', () => {
    const job = build();
    const set = job.removal('Head').set(2, { name: 'head bolts', renew: 'must' });
    expect(lacks(job)).toEqual([
      {
        code: 'to get',
        thingId: set.id,
        qty: 2,
        until: null,
        sentence: `${BOLT} (head bolts) must be new: 2 to get.`,
      },
    ]);
  });

  test('what one set has too many of goes to a short one of the same pool, first in the list first', () => {
    const job = build();
    const key = { poolKey: 'M8' };
    const one = job.removal('One').set(2, { name: 'one' }, key);
    const two = job.removal('Two').loose().set(2, { name: 'two' }, key);
    const lots = job.removal('Lots').loose().set(1, { name: 'lots' }, key);
    for (const set of [one, two])
      job.move({ specId: set.specId, homeSetId: set.id, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    const byTitle = () =>
      planJob(job.state(), job.at).steps.map((found) => [found.title, found.lacks.map((lack) => lack.qty)]);
    expect(byTitle()).toEqual([
      ['Lots', []],
      ['Two', [1]],
      ['One', [1]],
    ]);
    job.move({
      specId: lots.specId,
      homeSetId: lots.id,
      src: 'supply',
      dst: 'stow',
      fresh: true,
      cause: 'received',
    });
    expect(byTitle()).toEqual([
      ['Lots', []],
      ['Two', []],
      ['One', [1]],
    ]);
    for (const more of [{ ownPlace: true }, { renew: 'must' as const }])
      for (const set of [one, two]) {
        job.set('fset', set.id, more);
      }
    expect(byTitle()[1]?.[1], 'own places and new ones are never pooled').not.toEqual([]);
  });

  test('where only the shared holes of a set are open, it is they that wait', () => {
    const job = build();
    const bracket = job.removal('Bracket');
    const set = bracket.set(2);
    job.holds(set.holes[1] ?? '', job.removal('Pipe').loose().part('Clip', { stowId: job.bag() }));
    job.move({ specId: set.specId, homeSetId: set.id, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    const waits = () =>
      planJob(job.state(), job.at)
        .steps.filter((one) => one.lacks.length > 0)
        .map((one) => one.id);
    expect(waits()).toEqual([`S:${bracket.id}`]);
    job.deed(set.holes[0] ?? '', 'tightened');
    expect(waits()).toEqual([`F:${set.holes[1]}`]);
  });
});

describe('what ends by itself', () => {
  const sealed = (before: 'fill' | 'run' | null, cureMinutes: number | null = 60) => {
    const job = build();
    const energies = (['electricity', 'ignition', 'pressure', 'motion', 'load', 'spring'] as const).map(
      (energy) => job.removal(energy, { did: 'safe' }).isolation(energy),
    );
    const sump = job.removal('Sump');
    const fluid = job.fluid('Oil', [sump.part('Sump')], { bleed: true, liveEnergy: 'motion' });
    const own = job.ownStep('Try it', { liveEnergy: 'electricity' });
    job.ownStep('Grease');
    job.consumable(sump.id, { name: 'Sealant', cureMinutes, cureBefore: before, putAt: job.at });
    const waits = (minutes: number) =>
      planJob(job.state(), job.at + minutes * MINUTE)
        .steps.filter((one) => one.lacks.some((lack) => lack.code === 'cure'))
        .map((one) => one.id)
        .sort();
    return { job, energies, fluid, own, sump, waits };
  };

  test('a sealant cures before it is filled: the fill waits, minute by minute', () => {
    const { job, fluid, sump, waits } = sealed('fill');
    expect(waits(0)).toEqual([`C1:${fluid}`]);
    const [lack] = lacks(job, 'C1', job.at + 30.5 * MINUTE);
    expect(lack).toEqual({
      code: 'cure',
      thingId: sump.id,
      qty: 0,
      until: job.at + 60 * MINUTE,
      sentence: 'Sealant is still curing: 30 minutes to go.',
    });
    expect(waits(60)).toEqual([]);
  });

  test('or before it runs: whatever brings energy to run with waits, and what is done with it', () => {
    const { energies, fluid, own, waits } = sealed('run');
    expect(waits(59)).toEqual(
      [...energies.slice(0, 4).map((id) => `I:${id}`), `C2:${fluid}`, `U:${own}`].sort(),
    );
    expect(waits(60)).toEqual([]);
  });

  test('a paste that holds up nothing, or of which no time is known, holds up nothing', () => {
    expect(sealed(null).waits(0)).toEqual([]);
    expect(sealed('fill', null).waits(0)).toEqual([]);
    const { job, waits } = sealed('fill');
    job.set('consumable', job.rows.consumable[0]?.id ?? '', { putAt: null });
    expect(waits(0)).toEqual([]);
  });

  test('a re-check waits until the job is closed', () => {
    const job = build({ recheckDue: 4242 });
    const set = job.removal('Wheel').set(5, { recheck: true });
    expect(lacks(job, 'K')).toEqual([
      {
        code: 'after closing',
        thingId: set.id,
        qty: 0,
        until: 4242,
        sentence: 'It comes after the job is closed.',
      },
    ]);
    job.rows.job = { ...job.rows.job, phase: 'closed' };
    expect(lacks(job, 'K')).toEqual([]);
  });
});
