import { describe, expect, it } from 'vitest';
import { fileByTime, type FilingRemoval } from '../../core/photos/filing.ts';

/** Which removal a photo belongs to, by its time. Paris is two hours ahead of UTC on 3 May 2026 (IANA time zone data). */

const utc = (clock: string): number => Date.parse(`2026-05-03T${clock}:00Z`);
const removal = (number: number, from: string | null, to: string | null): FilingRemoval => ({
  id: `removal-${number}`,
  number,
  title: number === 2 ? 'Wheel guard' : '',
  startedAt: from === null ? null : utc(from),
  endedAt: to === null ? null : utc(to),
});
const log = [removal(1, '08:00', '08:20'), removal(2, '08:40', '08:52'), removal(3, '09:30', null)];
const at = { zone: 'Europe/Paris', now: utc('15:00') };
const withOffset = (clock: string) => ({
  takenLocal: `2026-05-03T${clock}:30`,
  takenUtc: utc(clock) - 7_200_000 + 30_000,
});
const withoutOffset = (clock: string) => ({ takenLocal: `2026-05-03T${clock}:30`, takenUtc: null });

describe('filing by capture time', () => {
  it('puts a photo into the removal that was under way, and says so with its times', () => {
    const filed = fileByTime(withOffset('10:45'), log, at);
    expect(filed).toMatchObject({ removalId: 'removal-2', filedBy: 'time' });
    expect(filed.filedWhy).toContain('10:45');
    expect(filed.filedWhy).toContain('removal 2 (Wheel guard)');
    expect(filed.filedWhy).toContain('10:40');
    expect(filed.filedWhy).toContain('10:52');
  });

  it('leaves a photo between two removals unfiled, with the reason', () => {
    const filed = fileByTime(withOffset('10:30'), log, at);
    expect(filed).toMatchObject({ removalId: null, filedBy: 'none' });
    expect(filed.filedWhy).toMatch(/10:20.*10:40/);
  });

  it('reads a clock without an offset in the zone of the job, and says that it did', () => {
    const filed = fileByTime(withoutOffset('10:45'), log, at);
    expect(filed.removalId).toBe('removal-2');
    expect(filed.filedWhy).toContain('Europe/Paris');
    expect(fileByTime(withoutOffset('10:45'), log, { ...at, zone: 'UTC' }).removalId).toBe('removal-3');
  });

  it('files nothing by a clock when neither the file nor the job names a zone', () => {
    expect(fileByTime(withoutOffset('10:45'), log, { ...at, zone: null })).toMatchObject({ removalId: null });
  });

  it('files nothing without a time, and says that the file does not say one', () => {
    const filed = fileByTime({ takenLocal: null, takenUtc: null }, log, at);
    expect(filed.removalId).toBeNull();
    expect(filed.filedWhy).toContain('does not say');
  });

  it('takes the one that is under way now, but not days later', () => {
    expect(fileByTime(withOffset('12:00'), log, at).removalId).toBe('removal-3');
    const week = 7 * 24 * 3_600_000;
    const later = { takenLocal: '2026-05-10T12:00:00', takenUtc: utc('10:00') + week };
    expect(fileByTime(later, log, { ...at, now: at.now + 2 * week }).removalId).toBeNull();
  });

  it('takes a photo of the very second in which the removal was written down', () => {
    const half = [{ ...removal(1, '08:00', '08:20'), startedAt: utc('08:00') + 700 }];
    const taken = { takenLocal: '2026-05-03T10:00:00', takenUtc: utc('08:00') };
    expect(fileByTime(taken, half, at).removalId).toBe('removal-1');
  });

  it('never files into a removal that is only planned', () => {
    expect(fileByTime(withOffset('10:45'), [removal(1, null, null)], at).removalId).toBeNull();
  });
});
