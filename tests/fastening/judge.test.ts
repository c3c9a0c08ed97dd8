import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  judgeTorque,
  referenceTorque,
  findThread,
  parseClass,
  threadsForAcrossFlats,
  type Thread,
  type TorqueCase,
} from '../../core/fastening/index.ts';

const nm = (torqueNm: number): { torqueNm: number } => ({ torqueNm });
const codes = (input: TorqueCase): readonly string[] => judgeTorque(input).findings.map((f) => f.code);

function reference(designation: string, className: string): number {
  const thread = findThread(designation);
  const cls = parseClass(className);
  if (!thread.ok || !cls.ok) throw new Error(designation);
  const found = referenceTorque({ thread: thread.value, propertyClass: cls.value });
  if (!found.ok) throw new Error(found.sentence);
  return found.value.torqueNm;
}

describe('common practice, no source', () => {
  it('a 13 mm head is usually M8 and takes about 25 N·m at class 8.8', () => {
    expect(threadsForAcrossFlats(13)[0]?.size).toBe('M8');
    expect(Math.abs(reference('M8', '8.8') - 25)).toBeLessThan(1);
  });

  it('a 10 mm head is usually M6 and takes about 10 N·m', () => {
    expect(threadsForAcrossFlats(10)[0]?.size).toBe('M6');
    expect(Math.abs(reference('M6', '8.8') - 10)).toBeLessThan(1);
  });

  it('25 N·m typed for an M6 of unknown class is past proof for any class', () => {
    const { findings } = judgeTorque({ thread: 'M6', wanted: nm(25) });
    expect(findings.map((f) => f.code)).toEqual(['torque.past-proof']);
    expect(findings[0]?.severity).toBe('stop');
    expect(findings[0]?.sentence).toMatch(
      /^25 N·m is past the proof load of an M6 of any listed class: even class 12\.9 reaches it near 23\.4 N·m/,
    );
  });

  it('90 N·m on an M6 asks whether lbf·in was meant', () => {
    const { findings } = judgeTorque({ thread: 'M6', wanted: nm(90) });
    expect(findings[0]?.unitGuesses[0]?.unit).toBe('lbf·in');
    expect(findings[0]?.sentence).toContain('90 lbf·in would be 10.2 N·m?');
  });
});

describe('torque.past-proof', () => {
  it('uses the lowest K that fits: a greased M8 8.8 reaches proof near 20 N·m, a dry one near 34', () => {
    const at = (lubrication: 'greased' | 'dry'): number =>
      judgeTorque({ thread: 'M8', propertyClass: '8.8', lubrication, wanted: nm(10) }).proofTorqueNm ?? 0;
    expect(Math.abs(at('greased') - 20)).toBeLessThan(0.5);
    expect(Math.abs(at('dry') - 34)).toBeLessThan(0.5);
    expect(codes({ thread: 'M8', propertyClass: '8.8', lubrication: 'greased', wanted: nm(25) })).toEqual([
      'torque.past-proof',
    ]);
    expect(codes({ thread: 'M8', propertyClass: '8.8', lubrication: 'dry', wanted: nm(25) })).toEqual([]);
  });

  it('tells an unknown class which class the torque needs', () => {
    const answer = judgeTorque({ thread: 'M8', wanted: nm(30) });
    expect(answer.findings).toEqual([]);
    expect(answer.needsClass).toBe('class 8.8');
    expect(answer.unknowns).toEqual(['The class is not recorded; 30 N·m needs class 8.8 or stronger.']);
  });

  it('tells a known class which class it would need', () => {
    const answer = judgeTorque({ thread: 'M8', propertyClass: '8.8', wanted: nm(40) });
    expect(answer.needsClass).toBe('class 10.9');
    expect(answer.findings[0]?.sentence).toContain('and it would need class 10.9');
  });

  it('becomes a note when the page of the maker is cited', () => {
    const { findings } = judgeTorque({
      thread: 'M8',
      propertyClass: '8.8',
      wanted: nm(40),
      makerPage: 'page 12-4',
    });
    expect(findings.map((f) => [f.code, f.severity])).toEqual([['torque.past-proof', 'note']]);
  });

  it('is raised by what was reached, too', () => {
    expect(codes({ thread: 'M6', propertyClass: '8.8', wanted: nm(10), reached: nm(30) })).toEqual([
      'torque.past-proof',
      'torque.off',
    ]);
  });

  it('holds for stainless only beyond every class; below that it is said to be unknown', () => {
    expect(codes({ thread: 'M8', propertyClass: 'A2-70', wanted: nm(80) })).toEqual(['torque.past-proof']);
    const within = judgeTorque({ thread: 'M8', propertyClass: 'A2-70', wanted: nm(20) });
    expect(within.findings).toEqual([]);
    expect(within.referenceNm).toBeUndefined();
    expect(within.unknowns.join(' ')).toContain('unknown');
  });

  it('raises nothing at the reference torque of any thread and class, whatever the unit', () => {
    for (const thread of [
      'M5',
      'M6',
      'M8',
      'M10x1.25',
      'M12',
      'M16',
      '1/4-20',
      '5/16-18',
      '3/8-24',
      '1/2-13',
      '#10-32',
    ]) {
      for (const cls of thread.startsWith('M')
        ? ['4.6', '5.8', '8.8', '10.9', '12.9']
        : ['grade 2', 'grade 5', 'grade 8']) {
        const wanted = nm(reference(thread, cls));
        expect(codes({ thread, propertyClass: cls, wanted, reached: wanted }), `${thread} ${cls}`).toEqual(
          [],
        );
        expect(codes({ thread, wanted }), `${thread} unknown class`).toEqual([]);
      }
    }
  });

  it('once raised stays raised for more torque, and for more grease', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M5', 'M8', 'M12', '3/8-16'),
        fc.double({ min: 1, max: 400, noNaN: true }),
        (thread, torque) => {
          const raised = (t: number, lubrication?: 'greased'): boolean =>
            codes({ thread, wanted: nm(t), lubrication }).includes('torque.past-proof');
          if (raised(torque)) {
            expect(raised(torque * 1.2)).toBe(true);
            expect(raised(torque, 'greased')).toBe(true);
          }
        },
      ),
    );
  });
});

describe('torque.off', () => {
  it('is too low as much as too high, and tries other units', () => {
    const low = judgeTorque({ thread: 'M8', propertyClass: '8.8', wanted: nm(25), reached: nm(18.4) })
      .findings[0];
    expect(low?.code).toBe('torque.off');
    expect(low?.sentence).toBe(
      'Reached 18.4 N·m, wanted 25 N·m: 26 % too low; was another unit meant: 18.4 lbf·ft would be 24.9 N·m?',
    );
    expect(codes({ thread: 'M8', propertyClass: '10.9', wanted: nm(25), reached: nm(30) })).toEqual([
      'torque.off',
    ]);
    expect(codes({ thread: 'M8', propertyClass: '8.8', wanted: nm(25), reached: nm(25.9) })).toEqual([]);
  });

  it('allows a range', () => {
    const within = { thread: 'M8', propertyClass: '8.8', wanted: nm(20), wantedHighNm: 25, reached: nm(24) };
    expect(codes(within)).toEqual([]);
    expect(codes({ ...within, reached: nm(15) })).toEqual(['torque.off']);
  });

  it('is a stop where the joint matters', () => {
    const found = judgeTorque({ wanted: nm(25), reached: nm(10), matters: ['brakes'] }).findings[0];
    expect(found?.severity).toBe('stop');
  });

  it('only notes a wanted torque far below the usual, because a weak member may be right', () => {
    const found = judgeTorque({ thread: 'M8', propertyClass: '8.8', wanted: nm(2.5) }).findings[0];
    expect(found?.severity).toBe('note');
    expect(found?.sentence).toContain('2.5 kgf·m would be 24.5 N·m?');
  });
});

describe('torque.misfit', () => {
  const head = (size: number): TorqueCase['head'] => ({ drive: 'hex external', size });
  it('is raised only when no thread of that head could bear it', () => {
    expect(codes({ head: head(10), wanted: nm(100) })).toEqual(['torque.misfit']);
    // 13 mm may be an M10 on a small flange bolt, which bears 100 N·m in class 12.9.
    expect(codes({ head: head(13), wanted: nm(100) })).toEqual([]);
    expect(codes({ head: head(13), wanted: nm(25) })).toEqual([]);
    expect(codes({ head: head(19), wanted: nm(100) })).toEqual([]);
  });

  it('stays silent for a head that no table knows', () => {
    expect(codes({ head: head(200), wanted: nm(100) })).toEqual([]);
  });
});

describe('torque.none', () => {
  it('asks only where it matters, and takes "snug by feel" for an answer', () => {
    expect(codes({ thread: 'M8' })).toEqual([]);
    expect(codes({ thread: 'M8', matters: ['steering'] })).toEqual(['torque.none']);
    expect(codes({ thread: 'M8', matters: ['steering'], snugByFeel: true })).toEqual([]);
    expect(codes({ thread: 'M8', matters: ['steering'], wanted: nm(25) })).toEqual([]);
  });
});

describe('sentences', () => {
  it('are one sentence each, and never give a reference value as an instruction', () => {
    const cases: readonly TorqueCase[] = [
      { thread: 'M6', wanted: nm(90) },
      { thread: 'M8', propertyClass: '8.8', wanted: nm(60) },
      { head: { drive: 'hex external', size: 10 }, wanted: nm(100) },
      { wanted: nm(25), reached: nm(10) },
      { matters: ['fuel'] },
    ];
    for (const input of cases) {
      const sentences = judgeTorque(input).findings.map((f) => f.sentence);
      expect(sentences.length).toBeGreaterThan(0);
      for (const sentence of sentences) {
        expect(sentence).toMatch(/^[^.?!]*(\d\.\d[^.?!]*)*[.?]$/);
        expect(sentence).not.toMatch(/\btighten to\b|\bmust be\b|\bset to\b/i);
      }
    }
  });
});

describe('reference torques', () => {
  const thread = (name: string): Thread => {
    const found = findThread(name);
    if (!found.ok) throw new Error(found.sentence);
    return found.value;
  };

  it('refuse what is out of range, in words', () => {
    const cls = parseClass('8.8');
    const grade = parseClass('grade 8');
    const stainless = parseClass('A4-80');
    if (!cls.ok || !grade.ok || !stainless.ok) throw new Error('class');
    const said = (input: Parameters<typeof referenceTorque>[0]): string => {
      const found = referenceTorque(input);
      return found.ok ? '' : found.sentence;
    };
    expect(said({ thread: thread('M8'), propertyClass: cls.value, k: 2 })).toBe(
      'Expected a nut factor K from 0.05 to 0.5, got 2.',
    );
    expect(said({ thread: thread('M8'), propertyClass: cls.value, share: 1.2 })).toBe(
      'Expected a share of the proof load from 5 to 100 %, got "120 %".',
    );
    expect(said({ thread: thread('M8'), propertyClass: grade.value })).toBe(
      'Expected a class that its standard lists for M8 (class 4.6, class 5.6, class 4.8, class 5.8, class 6.8, class 8.8, class 9.8, class 10.9, class 12.9), got "grade 8".',
    );
    expect(said({ thread: thread('M8'), propertyClass: stainless.value })).toContain('is unknown here');
  });

  it('carry formula, inputs, source, limits and the caution that the maker comes first', () => {
    const cls = parseClass('8.8');
    if (!cls.ok) throw new Error(cls.sentence);
    const found = referenceTorque({ thread: thread('M8'), propertyClass: cls.value });
    if (!found.ok) throw new Error(found.sentence);
    expect(found.value.formula).toContain('T = K · d · F');
    expect(found.value.inputs.length).toBe(4);
    expect(found.value.source).toContain('ISO 898-1');
    expect(found.value.limits.join(' ')).toContain('unknown here');
    expect(found.value.cautions.join(' ')).toContain('not an instruction');
  });
});
