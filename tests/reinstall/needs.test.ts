import { describe, expect, test } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import type { Row } from '../../core/model/tables.ts';
import { build, type JobBuilder, type RemovalBuilder } from '../support/build.ts';

const need = (job: JobBuilder, of: RemovalBuilder, on: RemovalBuilder) =>
  planJob(job.state(), job.at).edges.find((edge) => edge.from === `S:${of.id}` && edge.to === `S:${on.id}`);

describe('a plug that was opened to drain holds up nobody', () => {
  /** A tray, a drain of some kind, a cover after it; whether the cover had to wait for the drain, or only for the tray. */
  const waitsForDrain = (more: Partial<Row<'removal'>>, fill: (drain: RemovalBuilder) => string): boolean => {
    const job = build();
    const tray = job.removal('Tray');
    const drain = job.removal('Drain', { did: 'opened', ...more });
    const opened = fill(drain);
    const cover = job.removal('Cover');
    job.fluid('Oil', opened === '' ? [] : [opened], { drainedMl: 100 });
    const waits = need(job, cover, drain) !== undefined;
    expect(need(job, cover, tray) !== undefined, 'else for what the drain itself needed').toBe(!waits);
    return waits;
  };

  test('whether the removal, its set or one of its holes opened the fluid', () => {
    expect(waitsForDrain({}, (drain) => drain.id)).toBe(false);
    expect(waitsForDrain({}, (drain) => drain.set(1).id)).toBe(false);
    expect(waitsForDrain({}, (drain) => drain.set(2).holes[1] ?? '')).toBe(false);
    expect(
      waitsForDrain({}, (drain) => {
        drain.set(1);
        return drain.set(1).id;
      }),
    ).toBe(false);
  });

  test('its washer may come off with it, a part or a hose may not; nor is a taken-off or a tight plug one', () => {
    expect(
      waitsForDrain({}, (drain) => {
        drain.part('Washer', { kind: 'gasket' });
        drain.part('Flap', { how: 'opened' });
        return drain.set(1).id;
      }),
    ).toBe(false);
    expect(
      waitsForDrain({}, (drain) => {
        drain.part('Sump');
        return drain.set(1).id;
      }),
    ).toBe(true);
    expect(
      waitsForDrain({}, (drain) => {
        drain.connection('Hose');
        return drain.set(1).id;
      }),
    ).toBe(true);
    expect(waitsForDrain({ did: 'off' }, (drain) => drain.set(1).id)).toBe(true);
    expect(
      waitsForDrain({}, (drain) => {
        drain.set(1);
        return '';
      }),
    ).toBe(true);
  });
});

describe('needs that are handed on', () => {
  const through = (first: 'assumed' | 'confirmed', second: 'assumed' | 'confirmed') => {
    const job = build();
    const a = job.removal('A');
    job.removal('Void', { phase: 'void', defaultNeed: first });
    const c = job.removal('C', { defaultNeed: second });
    return need(job, c, a)?.assumed;
  };

  test('are as sure as the least sure of them', () => {
    expect(through('confirmed', 'confirmed')).toBe(false);
    expect(through('assumed', 'confirmed')).toBe(true);
    expect(through('confirmed', 'assumed')).toBe(true);
    expect(through('assumed', 'assumed')).toBe(true);
  });

  test('a confirmed one stands where the log assumes the same, whichever came first', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B').needs(a);
    expect(need(job, b, a)).toMatchObject({ assumed: false, mayLoosen: true });
    const other = build();
    const [c, d] = [other.removal('C'), other.removal('D', { defaultNeed: 'confirmed' })];
    d.need(c, false);
    expect(need(other, d, c)?.assumed).toBe(false);
    const asked = build();
    const e = asked.removal('E');
    const f = asked.removal('F').loose().need(e, false);
    expect(need(asked, f, e)?.assumed).toBe(true);
  });

  test('a bench is left as soon as one of its own is needed, and one that began before its assembly came off is none', () => {
    const job = build();
    const off = job.removal('Off');
    const pump = off.part('Pump');
    const first = job.removal('First', { benchPartId: pump });
    const second = job.removal('Second', { benchPartId: pump });
    expect(need(job, second, first)).toBeDefined();
    expect(need(job, second, off)).toBeUndefined();
    const odd = build();
    const early = odd.removal('Early');
    const late = odd.removal('Late');
    early.with({ benchPartId: late.part('Pump') });
    expect(planJob(odd.state(), 0).undecided).toEqual([]);
    expect(need(odd, early, late)).toBeUndefined();
  });
});
