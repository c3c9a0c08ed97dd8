import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convert,
  defaultPitch,
  findThread,
  formatLength,
  formatTorque,
  formatTyped,
  fromNewtonMetres,
  parseDecimal,
  parseLength,
  parseLubrication,
  parseStages,
  parseTorque,
  parseVolume,
  TORQUE_UNIT_NAMES,
  toNewtonMetres,
} from '../../core/fastening/index.ts';

function nm(text: string): number {
  const found = parseTorque(text);
  if (!found.ok) throw new Error(found.sentence);
  return found.value.torqueNm;
}

describe('torque as typed', () => {
  it('is read in every spelling of the trade', () => {
    for (const text of ['40 N·m', '40 Nm', '40 N m', '40Nm', '40 N.m', '40,0 Nm', '40.0 newton metres'])
      expect(nm(text)).toBe(40);
    for (const text of [
      '29.5 lbf·ft',
      '29.5 ft-lb',
      '29.5 ft lbs',
      '29,5 lb-ft',
      '29.5 lbf.ft',
      '29.5 foot pounds',
    ]) {
      expect(nm(text)).toBeCloseTo(39.9966, 3);
    }
    for (const text of ['90 in lb', '90 lbf·in', '90 in-lbs', '90 inch pounds', '90 lbf.in'])
      expect(nm(text)).toBeCloseTo(10.1686, 3);
    expect(nm('4 kgf·m')).toBeCloseTo(39.2266, 4);
    expect(nm('40 kgf·cm')).toBeCloseTo(3.92266, 5);
    expect(nm('1 000 Nm')).toBe(1000);
  });

  it('without its unit, or with a doubtful comma, is refused in words', () => {
    const said = (text: string): string => {
      const found = parseTorque(text);
      return found.ok ? '' : found.sentence;
    };
    expect(said('90')).toBe(
      'Expected a torque with its unit, such as 25 N·m, 18 lbf·ft or 90 lbf·in, got "90".',
    );
    expect(said('1,200 Nm')).toBe('Expected one decimal sign, such as 1.2 or 1200, got "1,200".');
    for (const text of ['0 Nm', '-5 Nm', '30000 Nm'])
      expect(said(text)).toBe(`Expected a torque above 0 and up to 20 000 N·m, got "${text}".`);
    for (const text of ['', 'tight', '25 bananas', '1.2.3 Nm'])
      expect(said(text)).toMatch(/^Expected .*, got .*\.$/);
  });

  it('goes to another unit and back without loss', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 9999, noNaN: true }),
        fc.constantFrom(...TORQUE_UNIT_NAMES),
        (value, unit) => {
          const back = fromNewtonMetres(toNewtonMetres(value, unit), unit);
          expect(Math.abs(back - value) / value).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it('is kept as typed, with the other system beside it, rounded honestly', () => {
    const typed = (text: string): string => {
      const found = parseTorque(text);
      return found.ok ? formatTyped(found.value) : found.sentence;
    };
    expect(typed('40 N·m')).toBe('40 N·m (29.5 lbf·ft)');
    expect(typed('29 ft-lb')).toBe('29 ft-lb (39.3 N·m)');
    expect(typed('5 Nm')).toBe('5 Nm (44.3 lbf·in)');
    expect(formatTorque(25.44)).toBe('25.4 N·m');
    expect(formatTorque(1234.5)).toBe('1230 N·m');
    expect(formatTorque(0.4567)).toBe('0.457 N·m');
  });

  it('shown and read again is the same torque within the figures shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 9000, noNaN: true }),
        fc.constantFrom(...TORQUE_UNIT_NAMES),
        (value, unit) => {
          const again = parseTorque(formatTorque(value, unit));
          expect(again.ok && Math.abs(again.value.torqueNm / value - 1)).toBeLessThan(0.0051);
        },
      ),
    );
  });
});

describe('lengths, volumes, numbers', () => {
  it('take millimetres, inches and fractions of an inch', () => {
    const mm = (text: string): number => {
      const found = parseLength(text);
      if (!found.ok) throw new Error(found.sentence);
      return found.value.lengthMm;
    };
    expect(mm('8')).toBe(8);
    expect(mm('8,5 mm')).toBe(8.5);
    expect(mm('5/16')).toBeCloseTo(7.9375, 9);
    expect(mm('1-1/8 in')).toBeCloseTo(28.575, 9);
    expect(mm('1 1/8"')).toBeCloseTo(28.575, 9);
    expect(mm('0.3125"')).toBeCloseTo(7.9375, 9);
    expect(mm('2 cm')).toBe(20);
    for (const text of ['', '#10', '0', '-3 mm', '5/0', 'wide']) {
      const found = parseLength(text);
      expect(found.ok ? '' : found.sentence).toMatch(/^Expected .*, got .*\.$/);
    }
    expect(formatLength(7.9375)).toBe('7.94 mm (0.313 in)');
  });

  it('take litres, quarts and gallons', () => {
    const litres = (text: string): number => {
      const found = parseVolume(text);
      if (!found.ok) throw new Error(found.sentence);
      return found.value.litres;
    };
    expect(litres('8 qt')).toBeCloseTo(7.570823568, 9);
    expect(litres('1 imp gal')).toBe(4.54609);
    expect(litres('500 ml')).toBe(0.5);
    expect(parseVolume('ten').ok).toBe(false);
    expect(convert(1, 'US gal', 'l')).toEqual({ ok: true, value: expect.closeTo(3.785411784, 9) as unknown });
  });

  it('read both decimal signs', () => {
    expect(parseDecimal('29,5')).toEqual({ ok: true, value: 29.5 });
    expect(parseDecimal('0,125')).toEqual({ ok: true, value: 0.125 });
    expect(parseDecimal('12 500')).toEqual({ ok: true, value: 12500 });
    expect(parseDecimal('1,2,3').ok).toBe(false);
  });
});

describe('stages', () => {
  it('read torque, angle, left hand and snug', () => {
    const read = (text: string): string => {
      const found = parseStages(text);
      if (!found.ok) return found.sentence;
      const kinds = found.value.stages.map((s) =>
        s.kind === 'torque'
          ? String(s.torque.torqueNm)
          : 'angleDeg' in s
            ? `${s.kind} ${s.angleDeg}`
            : s.kind,
      );
      return `${kinds.join(', ')}${found.value.leftHand ? ' LH' : ''}`;
    };
    expect(read('20 Nm + 60 Nm + 90°')).toBe('20, 60, angle 90');
    expect(read('30 N·m then 2 x 90 deg LH')).toBe('30, angle 90, angle 90 LH');
    expect(read('20, 60 Nm')).toBe('20, 60');
    expect(read('29,5 Nm + quarter turn')).toBe('29.5, angle 90');
    expect(read('25 Nm, back off 180°, 10 Nm')).toBe('25, back off 180, 10');
    expect(read('25 Nm + 0.5 turns')).toBe('25, angle 180');
    expect(read('40 Nm 90°')).toBe('40, angle 90');
    expect(read('snug')).toBe('snug');
    expect(read('25 Nm + 900°')).toBe('Expected an angle above 0 and up to 720 degrees, got "900°".');
    expect(read('')).toContain('Expected stages');
  });
});

describe('threads by name', () => {
  it('are found as people write them', () => {
    for (const [text, designation] of [
      ['m8', 'M8'],
      ['M8x1.25', 'M8'],
      ['M10 × 1,25', 'M10x1.25'],
      ['M8x1.25x30', 'M8'],
      ['5/16-18 UNC', '5/16-18'],
      ['1/4 UNF', '1/4-28'],
      ['10-32', '#10-32'],
      ['No. 8-36', '#8-36'],
      ['1-14', '1-14'],
      ['0.375-16', '3/8-16'],
    ] as const) {
      const found = findThread(text);
      expect(found.ok ? found.value.designation : found.sentence).toBe(designation);
    }
    for (const text of ['', 'M', 'M0', 'M8x9', 'bolt', '5/16-200', 'M9']) {
      const found = findThread(text);
      expect(found.ok ? found.value.designation : found.sentence).toMatch(/^Expected .*, got .*\.$/);
    }
  });

  it('without a pitch mean the coarse one', () => {
    expect([6, 8, 10, 12, 24].map(defaultPitch)).toEqual([1, 1.25, 1.5, 1.75, 3]);
    expect(defaultPitch(9)).toBeUndefined();
  });

  it('and lubrication in plain words', () => {
    for (const [text, id] of [
      ['copper grease', 'greased'],
      ['dry', 'dry'],
      ['lightly oiled', 'oiled'],
      ['non-plated black', 'black'],
      ['zinc plated', 'zinc'],
    ] as const) {
      expect(parseLubrication(text)).toEqual({ ok: true, value: id });
    }
    expect(parseLubrication('honey').ok).toBe(false);
  });
});
