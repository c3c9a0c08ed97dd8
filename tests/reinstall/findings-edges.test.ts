import { describe, expect, test } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const of = (job: JobBuilder, code: FindingCode) =>
  planJob(job.state(), job.at).findings.filter((one) => one.code === code);
const BOLT = 'bolt M8 × 1.25 × 30 mm, hex 13 mm, class 8.8';

describe('short, explained or not', () => {
  const scrapOne = (
    job: JobBuilder,
    set: { id: string; specId: string },
    dst: 'scrap' | 'stock' | 'lost' = 'stock',
  ) => job.move({ specId: set.specId, homeSetId: set.id, src: 'stow', dst, cause: 'scrapped' });
  const severity = (
    fill: (job: JobBuilder, set: { id: string; specId: string; holes: readonly string[] }) => void,
  ) => {
    const job = build();
    const set = job.removal('Cover').set(3);
    fill(job, set);
    return of(job, 'fastener.short').map((one) => one.severity);
  };

  test('a lost one, a damaged one, a new hole and a repaired one have their own findings', () => {
    expect(severity(scrapOne)).toEqual(['stop']);
    expect(severity((job, set) => scrapOne(job, set, 'lost'))).toEqual(['note']);
    expect(severity((job, set) => job.set('position', set.holes[0] ?? '', { condition: 'bent' }))).toEqual([
      'note',
    ]);
    expect(
      severity((job, set) =>
        job.add('position', job.thing('position'), { setId: set.id, n: 4, found: 'new hole' }),
      ),
    ).toEqual(['note']);
    expect(
      severity((job, set) => {
        job.set('position', set.holes[0] ?? '', { fate: 'blocked' }).deed(set.holes[0] ?? '', 'repaired');
        scrapOne(job, set);
      }),
    ).toEqual(['note']);
    expect(
      severity((job, set) => {
        const other = job.removal('Other').set(1, {}, { thread: 'M6' });
        job.set('position', other.holes[0] ?? '', { fate: 'blocked' });
        scrapOne(job, set);
      }),
      'a blocked hole of another set explains nothing',
    ).toEqual(['stop']);
  });

  test('pooled sets are said together, on the step of the one that has holes to fill', () => {
    const job = build();
    const one = job.removal('One').set(1, { name: 'one' });
    const two = job.removal('Two').set(1, { name: 'two', specId: one.specId });
    job.move({ specId: one.specId, homeSetId: one.id, src: 'stow', dst: 'hole', cause: 'refitted' });
    job.move({ specId: one.specId, homeSetId: two.id, src: 'stow', dst: 'stock', cause: 'to stock' });
    expect(of(job, 'fastener.short')).toMatchObject([
      {
        subjects: [one.id, two.id],
        stepId: `S:${job.rows.removal[1]?.id}`,
        sentence: `one, two, ${BOLT}: 1 to fill, 0 usable in hand, 1 short.`,
      },
    ]);
  });

  test('washers of a set are a subject of their own, and a set without a name is named by its size', () => {
    const job = build();
    const set = job.removal('Cover').set(2, { name: '' });
    const washer = job.spec({
      kind: 'washer',
      lengthUm: null,
      head: null,
      driveSizeUm: null,
      driveTyped: '',
      drive: null,
      grade: null,
      pitchUm: null,
    });
    job.add('stackItem', job.id('stackItem'), { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
    job.add('stackItem', job.id('stackItem'), { setId: set.id, ord: 'a1', what: 'washer', specId: washer });
    const own = { specId: washer, homeSetId: set.id } as const;
    job.move({ ...own, src: 'hole', dst: 'stow', qty: 2, cause: 'came off' });
    job.move({ ...own, src: 'stow', dst: 'stock', cause: 'to stock' });
    expect(of(job, 'fastener.short')).toMatchObject([
      { subjects: [set.id, washer], sentence: 'washer M8: 2 to fill, 1 usable in hand, 1 short.' },
    ]);
  });

  test('what was bought for no set is nobody’s shortage', () => {
    const job = build();
    job.move({
      specId: job.spec(),
      src: 'supply',
      dst: 'stow',
      qty: 3,
      cause: 'received',
    });
    expect(planJob(job.state(), 0).findings).toEqual([]);
  });

  test('two left over are two, and not while another set of the pool has an open hole', () => {
    const job = build();
    const one = job.removal('One').set(2, { name: 'one' });
    const two = job.removal('Two').set(1, { name: 'two', specId: one.specId });
    for (const [set, qty] of [
      [one, 2],
      [two, 1],
    ] as const) {
      const own = { specId: one.specId, homeSetId: set.id, qty, fresh: true } as const;
      job.move({ ...own, src: 'supply', dst: 'stow', cause: 'received' });
      job.move({ ...own, src: 'stow', dst: 'hole', cause: 'renewed' });
    }
    for (const hole of one.holes) job.deed(hole, 'tightened');
    expect(of(job, 'fastener.left-over')).toEqual([]);
    for (const hole of two.holes) job.deed(hole, 'tightened');
    expect(of(job, 'fastener.left-over')).toMatchObject([
      { sentence: `one, two, ${BOLT}: all holes are filled, and 3 old ones are left over.` },
    ]);
  });
});

describe('what is looked for', () => {
  test('a part that is looked for stops its own step only; a tool holds every way in that stands open', () => {
    const job = build();
    const port = job.removal('Port');
    port.part('Lid');
    const key = port.part('Key', { kind: 'key' });
    job.tickTock(30);
    const count = job.counting(1, 0, { thingId: key });
    expect(of(job, 'item.unaccounted')).toMatchObject([
      { subjects: [key, count], stepId: `S:${port.id}`, holds: [] },
    ]);
    job.set('counting', count, { thingId: null, note: '10 mm socket' });
    expect(of(job, 'item.unaccounted')).toMatchObject([
      {
        subjects: [count, count],
        stepId: null,
        holds: [`S:${port.id}`],
        sentence: expect.stringMatching(/^10 mm socket: 1 not found\./),
      },
    ]);
    job.set('counting', count, { thingId: port.id });
    expect(of(job, 'item.unaccounted')).toMatchObject([{ stepId: `S:${port.id}`, holds: [`S:${port.id}`] }]);
  });

  test('a bag that is short closes no way in', () => {
    const job = build();
    const bag = job.bag('4');
    const port = job.removal('Port');
    port.part('Lid');
    port.set(2, { stowId: bag });
    job.tickTock(30);
    job.counting(2, 1, { stowId: bag });
    expect(of(job, 'count.differs')).toMatchObject([{ holds: [] }]);
  });

  test('a thing counted too often is a warning by its name', () => {
    const job = build();
    const rag = job.removal('Port').temporary('Rag', 'blocks');
    job.counting(1, 2, { thingId: rag });
    expect(of(job, 'item.unaccounted')).toMatchObject([
      { severity: 'warn', sentence: 'Rag: -1 not found.', holds: [] },
    ]);
  });
});

describe('torque by what is known of the bolt', () => {
  const judged = (
    fset: Partial<Row<'fset'>>,
    spec: Partial<Row<'spec'>>,
    code: FindingCode = 'torque.past-proof',
  ) => {
    const job = build();
    job.removal('Cover').set(1, fset, spec);
    return of(job, code).length;
  };

  test('fine pitch holds more than coarse, an inch thread by its own name', () => {
    const wanted = { torqueMnm: 35_000, torqueTyped: '35 Nm', lubrication: 'dry' } as const;
    // Stress area of M8 × 1 is 39.2 mm² against 36.6 mm² of M8 × 1.25 (ISO 898-1).
    expect(judged(wanted, { pitchUm: 1250 })).toBe(1);
    expect(judged(wanted, { pitchUm: 1000 })).toBe(0);
    expect(
      judged(
        { ...wanted, torqueMnm: 200_000, torqueTyped: '200 Nm' },
        { thread: '5/16-18 UNC', pitchUm: 1411, grade: '8' },
      ),
    ).toBe(1);
  });

  test('a page without a maker, or a maker without a page, is no maker’s figure', () => {
    const wanted = { torqueMnm: 60_000, torqueTyped: '60 Nm', lubrication: 'greased' } as const;
    const severity = (more: Partial<Row<'fset'>>) => {
      const job = build();
      job.removal('Cover').set(1, { ...wanted, ...more });
      return of(job, 'torque.past-proof').map((one) => one.severity);
    };
    expect(severity({ torqueFrom: 'maker', torquePage: '' })).toEqual(['stop']);
    expect(severity({ torqueFrom: 'reference', torquePage: 'p. 4' })).toEqual(['stop']);
    expect(severity({ torqueFrom: 'maker', torquePage: 'p. 4' })).toEqual(['note']);
  });

  test('the unit is that of the figure before the angle', () => {
    const job = build();
    job
      .removal('Cover')
      .set(1, { torqueMnm: 45_194, torqueTyped: '400 lbf·in + 90°', lubrication: 'greased' });
    expect(of(job, 'torque.past-proof')[0]?.sentence).toContain('400 lbf·in');
  });

  test('what was measured on a hole is no torque, and neither is a set without a step', () => {
    const job = build();
    const set = job.removal('Cover').set(1, { torqueMnm: 20_000, torqueTyped: '20 Nm' });
    job.deed(set.holes[0] ?? '', 'measured', { value: 3 });
    expect(of(job, 'torque.off')).toEqual([]);
    job.removal('Planned', { phase: 'planned' }).set(1, { torqueMnm: 900_000, torqueTyped: '900 Nm' });
    expect(of(job, 'torque.past-proof')).toEqual([]);
  });
});

describe('an energy made safe late, by its kind', () => {
  test('the first removal that opened it is named, and heat or motion are never late', () => {
    const job = build();
    job.removal('First').connection('Plug', { kind: 'plug' });
    job.removal('Second').connection('Plug', { kind: 'plug' });
    const end = job.removal('Pipe').connection('Pipe', { kind: 'pipe' });
    job.fluid('Fuel', [end], { liveEnergy: 'heat' });
    const off = job.removal('Off', { did: 'safe' });
    const power = off.isolation('electricity');
    off.isolation('heat');
    off.isolation('pressure');
    expect(of(job, 'isolation.late').map((one) => [one.subjects[0], one.sentence])).toEqual([
      [power, 'electricity: made safe at removal 4, after First had opened it.'],
    ]);
  });

  test('a removal that pulls the plug and makes safe at once is in time', () => {
    const job = build();
    const off = job.removal('Off');
    off.connection('Mains plug', { kind: 'plug' });
    off.isolation('electricity');
    expect(of(job, 'isolation.late')).toEqual([]);
  });
});

describe('a gate passed too soon, by what began it', () => {
  test.each(['bled', 'hot leak checked', 'done'] as const)(
    '%s begins the live half, filling the other',
    (what) => {
      const job = build();
      const sump = job.removal('Sump');
      const oil = job.fluid('Oil', [sump.set(1).id], { bleed: true, liveEnergy: 'motion' });
      job.consumable(sump.id, {
        name: '',
        kind: 'sealant',
        cureMinutes: 60,
        cureBefore: 'run',
        putAt: job.at,
      });
      job.deed(oil, 'filled', { value: 1 });
      expect(of(job, 'cure.wait')).toEqual([]);
      job.deed(oil, what);
      expect(of(job, 'cure.wait')).toMatchObject([
        {
          stepId: `C2:${oil}`,
          sentence: expect.stringMatching(/^sealant had 58 minutes to cure when Bleed Oil/),
        },
      ]);
    },
  );
});
