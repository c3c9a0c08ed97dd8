import { describe, expect, it } from 'vitest';
import { dayAheadOf } from '../../../core/reinstall/index.ts';
import { comingDays, dayBeside, dayGroups, dayName, endOfDay, isoOf } from '../../../renderer/model/days.ts';
import { command, good } from '../../support/client.ts';
import { seeded } from './seed.ts';

const DAY = 86_400_000;

/** A fan that is away for two days, over a guard; a cover with a gasket that is late, and one day promised for nothing. */
async function waiting() {
  const job = await seeded(['guard, 2 M6x16', 'fan, 2 M8x20', 'cover, gasket, 3 M6x25']);
  const now = job.workshop.now();
  const part = (name: string) => job.view().state.part.find((one) => one.name === name)?.id ?? '';
  const send = (thingId: string, due: number | null) =>
    job.client.away.send({ ...command(), jobId: job.jobId, thingId, toWhom: 'Weber', due, note: '' });
  good(await send(part('fan'), now + 2 * DAY));
  good(await send(part('guard'), now - DAY));
  return { ...job, now };
}

describe('the days that matter', () => {
  it('are today and those on which something comes, each once; what is late is none of them', async () => {
    const { view, now } = await waiting();
    const days = comingDays(view(), now);
    expect(days.map((one) => one.iso)).toEqual([isoOf(now), isoOf(now + 2 * DAY)]);
    expect(days[1]?.about).toBe('fan is away, with Weber.');
    expect(dayName(isoOf(now), now)).toBe('Today');
    expect(dayName('2027-01-01', now)).toMatch(/^Friday, .*2027/);
  });

  it('are gone through by the arrows, also from a day between them, and no further than the last', async () => {
    const { view, now } = await waiting();
    const days = comingDays(view(), now);
    const [today = '', later = ''] = days.map((one) => one.iso);
    const between = isoOf(now + DAY);
    expect(dayBeside(days, between, 1)).toBe(later);
    expect(dayBeside(days, between, -1)).toBe(today);
    expect(dayBeside(days, later, -1)).toBe(today);
    expect(dayBeside(days, later, 1)).toBe(later);
    expect(dayBeside(days, today, -1)).toBe(today);
  });

  it('end where the reader is, and nonsense is no day', () => {
    expect(new Date(endOfDay('2026-03-01') ?? 0).getDate()).toBe(1);
    for (const typed of ['', '2026-02-30', '2026-13-01', 'thursday']) expect(endOfDay(typed)).toBeNull();
  });

  it('say what cannot go ahead by then with what it lacks, else what comes first, and what is late', async () => {
    const { view, now } = await waiting();
    const on = endOfDay(isoOf(now + 2 * DAY)) ?? 0;
    const groups = dayGroups(view(), dayAheadOf(view().state, now, on), now);
    const rows = (title: string) =>
      groups.find((group) => group.title === title)?.rows.map((row) => [row.name, row.about, row.grave]);
    expect(rows('Cannot go ahead yet')).toEqual([
      ['Cover', 'Gasket must be new: 1 to get.', true],
      ['Fan', 'First: Cover.', false],
      ['Guard', 'Guard is away, with Weber.', false],
    ]);
    expect(rows('Late')?.map(([name]) => name)).toEqual(['guard is away, with Weber.']);
    expect(rows('Can go ahead')).toBeUndefined();
  });
});
