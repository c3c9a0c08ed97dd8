import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { HANDBOOK_VERBS, type Options } from '../../core/cli/handbook/index.ts';

function ask(
  name: string,
  options: Options,
): { readonly value: Record<string, unknown>; readonly text: string } {
  const answer = HANDBOOK_VERBS.find((verb) => verb.name === name)?.run(options);
  if (!answer?.ok) throw new Error(answer?.sentence ?? `no verb ${name}`);
  return { value: answer.value as Record<string, unknown>, text: answer.text.join('\n') };
}

function refused(name: string, options: Options): string {
  const answer = HANDBOOK_VERBS.find((verb) => verb.name === name)?.run(options);
  return answer?.ok === false ? answer.sentence : 'not refused';
}

describe('handbook verbs', () => {
  it('identify by measure, head, key, hexalobular, mark and name', () => {
    expect(ask('identify', { diameter: '7.88', pitch: '1.25' }).text).toContain(
      '1. M8 (pitch 1.25 mm, coarse)',
    );
    expect(ask('identify', { d: '0.31 in', tpi: '18' }).text).toContain('1. 5/16-18 UNC');
    expect(ask('identify', { 'across-flats': '13' }).text).toMatch(/M8: ISO 4014[\s\S]*M10: ISO 15071/);
    expect(ask('identify', { 'hex-key': '5/32 in' }).text).toContain('#10');
    expect(ask('identify', { hexalobular: 'T30' }).text).toContain('M6: ISO 14579');
    expect(ask('identify', { mark: '3 lines' }).text).toContain('grade 5');
    expect(ask('identify', { thread: 'M8' }).text).toContain('7.76 to 7.97 mm (6g)');
  });

  it('torque by class, by every class, by preload, by friction, and as a judgement', () => {
    expect(ask('torque', { thread: 'M8', class: '8.8' }).text).toContain('Reference: 25.4 N·m (18.8 lbf·ft)');
    expect(ask('torque', { thread: 'M6' }).text).toContain('class 8.8: 10.4 N·m');
    expect(ask('torque', { thread: 'M10', preload: '25230 N', k: '0.2' }).text).toContain('50.5 N·m');
    expect(ask('torque', { thread: 'M8', class: '8.8', mu: '0.12' }).text).toContain('24.6 N·m');
    expect(ask('torque', { thread: 'M10', class: 'A2-70' }).text).toContain('is unknown here');
    expect(ask('torque', { thread: '1/4-28', class: 'grade 5' }).text).toContain(
      'never above 11.3 N·m (100 lbf·in)',
    );
    expect(ask('torque', { thread: 'M8', torque: '20 N·m', drag: '2 N·m' }).value['readingNm']).toBe(22);
    const judged = ask('torque', { thread: 'M6', torque: '90 Nm' });
    expect(judged.text).toContain('torque.past-proof (stop)');
    expect(judged.value['findings']).toHaveLength(1);
    const torque = HANDBOOK_VERBS.find((verb) => verb.name === 'torque');
    expect(torque?.run({ thread: 'M6', torque: '90 Nm' })).toMatchObject({ ok: true, findings: 1 });
    expect(torque?.run({ thread: 'M8', class: '8.8', torque: '25 Nm' })).not.toHaveProperty('findings');
    expect(torque?.run({ thread: 'M6', torque: '90 Nm', maker: 'page 3' })).not.toHaveProperty('findings');
  });

  it('put the maker’s value above the reference', () => {
    const { text } = ask('torque', { thread: 'M8', class: '8.8', torque: '22 N·m', maker: 'page 12-4' });
    expect(text.indexOf('Wanted by the maker (page 12-4): 22 N·m')).toBe(0);
    expect(text.indexOf('Reference:')).toBeGreaterThan(0);
  });

  it('extension in any unit, and back', () => {
    const back = { torque: '135 lbf·in', wrench: '10 in', extension: '1.5 in back' };
    expect(ask('extension', back).text).toContain('158.8 lbf·in');
    expect(ask('extension', { torque: '135 lbf·in', wrench: '10 in', extension: '-1.5 in' }).text).toContain(
      '158.8 lbf·in',
    );
    expect(
      ask('extension', { set: '66.667 lbf·in', wrench: '12 in', extension: '6 in' }).value['appliedTorque'],
    ).toBeCloseTo(100, 2);
    expect(
      ask('extension', { torque: '100', wrench: '12 in', extension: '6 in', angle: '90°' }).value['setting'],
    ).toBe(100);
  });

  it('tighten from points, JSON or a count, with rounds', () => {
    const points = '0.5,0.1 0.9,0.5 0.5,0.9 0.1,0.5';
    expect(ask('tighten', { points, size: '1000x1000' }).value['order']).toEqual(['1', '3', '2', '4']);
    expect(
      ask('tighten', { points: '[{"id":"a","x":0,"y":0},{"id":"b","x":40,"y":0},{"id":"c","x":80,"y":0}]' })
        .value['order'],
    ).toEqual(['b', 'a', 'c']);
    expect(ask('tighten', { holes: '8', torque: '50 N·m' }).text).toContain(
      'Round, 30 %: 15.0 N·m: 1 5 3 7 2 6 4 8',
    );
    expect(ask('tighten', { points }).text).toContain('Are all holes of this joint on the photo?');
    expect(ask('tighten', { points, 'all-shown': 'yes' }).text).not.toContain('Are all holes');
  });

  it('oring by measure, dash number and fluid', () => {
    expect(ask('oring', { inside: '25', section: '3.53' }).text).toContain('1. AS568-214');
    expect(ask('oring', { dash: '325' }).text).toContain('inside 37.47');
    expect(ask('oring', { fluid: 'brake fluid' }).text).toContain('EPDM is usual. Not NBR');
  });

  it('mix by what stayed, capacity and target; and the freezing point', () => {
    expect(ask('mix', { capacity: '8 qt', remaining: '3 qt', target: '50 %' }).text).toContain(
      'Add 4.00 US qt of concentrate and 1.00 US qt of water.',
    );
    expect(ask('mix', { capacity: '10 l', remaining: '6 l', target: '0.5' }).text).toContain(
      'Drain at least 1.00 l first',
    );
    expect(ask('mix', { freeze: '50 %' }).value['celsius']).toBe(-37);
    expect(
      ask('mix', { capacity: '10 l', remaining: '3 l', 'remaining-strength': '50 %', flushes: '2' }).value[
        'strength'
      ],
    ).toBeCloseTo(0.045, 9);
  });

  it('carry formula, source, limits and a caution with every result, and give no order', () => {
    const all = [
      ask('identify', { diameter: '7.88' }),
      ask('torque', { thread: 'M8', class: '8.8' }),
      ask('torque', { thread: 'M8', class: '8.8', mu: '0.12' }),
      ask('extension', { torque: '100 N·m', wrench: '500', extension: '100' }),
      ask('tighten', { holes: '6' }),
      ask('oring', { inside: '25', section: '3.53' }),
      ask('mix', { capacity: '10 l', target: '50 %' }),
      ask('mix', { freeze: '50 %' }),
    ];
    for (const { text } of all) {
      for (const word of ['Formula: ', 'Inputs: ', 'Source: ', 'Limit: ', 'Caution: '])
        expect(text).toContain(word);
      expect(text).not.toMatch(/\btighten (it )?to\b/i);
    }
  });

  it('answer bad input with the expected range in words', () => {
    expect(refused('identify', {})).toContain('Expected a measure');
    expect(refused('identify', { diameter: 'wide' })).toBe(
      'Expected a length such as 8 mm, 5/16 in or 0.313 in, got "wide".',
    );
    expect(refused('identify', { diameter: '80' })).toBe(
      'Expected a measured diameter from 1 to 60 mm, got "80 mm".',
    );
    expect(refused('identify', { colour: 'red' })).toMatch(
      /^Expected one of --diameter, .* got "--colour"\.$/,
    );
    expect(refused('torque', { thread: 'M8', class: '12.5' })).toContain('Expected a class such as 8.8');
    expect(refused('torque', { thread: 'M8', torque: '90' })).toContain('Expected a torque with its unit');
    expect(refused('torque', { thread: 'M8', class: '8.8', mu: '3' })).toBe(
      'Expected a coefficient of friction from 0.04 to 0.4, got 3.',
    );
    expect(refused('extension', { torque: '100 N·m', wrench: '500', extension: '-480' })).toContain(
      'less than 90 % of the wrench',
    );
    expect(
      refused('extension', { torque: '100 N·m', wrench: '500', extension: '100', angle: '400' }),
    ).toContain('−180 to 180 degrees');
    expect(refused('tighten', { points: '0.5,0.1 0.9', size: '100x100' })).toContain(
      'Expected points such as',
    );
    expect(refused('tighten', { holes: '0' })).toBe('Expected 1 to 200 holes, got "0".');
    expect(refused('oring', { port: 'M9x1' })).toContain('Expected a metric port thread: M8x1, M10x1');
    expect(refused('oring', { inside: '25', section: '40' })).toContain('from 0.5 to 15 mm');
    expect(refused('oring', { dash: '999' })).toContain('Expected an AS568 dash number');
    expect(refused('mix', { capacity: '10 l', remaining: '12 l', target: '50 %' })).toContain(
      'from 0 to the capacity 10',
    );
    expect(refused('mix', { capacity: '10 l', target: '150 %' })).toBe(
      'Expected a target strength from 0 to 100 %, got "150 %".',
    );
    expect(refused('mix', { capacity: '10 l', target: '1' })).toContain('1 % or 100 %');
  });
});

/** One command line as typed, without its process. */
async function typed(line: string): Promise<{ readonly code: number; readonly said: string }> {
  const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((one) => one[1] ?? one[2] ?? '');
  const answer = await runCommand(words);
  return { code: answer.code, said: answer.lines.join('\n') };
}

describe('odd input at the command line', () => {
  it('is understood as the trade writes it', async () => {
    for (const [line, said] of [
      ['units 25Nm', '18.44 lbf·ft'],
      ['units "29ft-lb" --to N·m', '39.32 N·m'],
      ['units 90in-lb', '10.17 N·m'],
      ['units "4 kgf·m"', '39.23 N·m'],
      ['units "25,5 Nm"', '18.81 lbf·ft'],
      ['units 250Ncm', '2.5 N·m'],
      ['units 2.5daNm', '25 N·m'],
      ['units 5/16', '7.938 mm'],
      ['units "-40 °C"', '-40 °F'],
      ['units --value 180 --from F --to C', '82.22 °C'],
      ['identify 5/16-18', '5/16-18 UNC'],
      ['identify "5/16 - 18 UNC-2A"', '5/16-18 UNC'],
      ['identify "1/4-28 UNF LH"', '1/4-28 UNF'],
      ['identify "1/4 UNEF"', '1/4-32 UNEF'],
      ['identify "1-1/8 8UN"', '1-1/8-8 UN'],
      ['identify 2-8UN', '2-8 UN (50.80 mm'],
      ['identify 10-24', '#10-24 UNC'],
      ['identify M8', 'pitch 1.25 mm, coarse'],
      ['identify M8x1', 'M8x1 (pitch 1 mm, fine)'],
      ['identify "M8×1,25 left-hand"', 'M8 (pitch 1.25 mm, coarse)'],
      ['identify M20x1.5-6g', 'M20x1.5 (pitch 1.5 mm, fine)'],
      ['identify --mark A4-80', 'Stainless A4'],
      ['identify --mark "8.8 zinc"', 'Class 8.8'],
      ['torque M8 --class unknown', 'class 12.9: 42.6 N·m'],
      ['torque M8 --class "A2-70"', 'is unknown here'],
      ['torque 5/16-18 --class gr8', 'Reference: 33.3 N·m'],
      ['torque --drag "8 lbf·in" --torque "100 to 140 lbf·in"', '148 lbf·in'],
      ['extension --torque 100Nm --wrench 500 --extension -100', 'Wrench setting: 125.0 N·m'],
      ['oring 214', 'AS568-214'],
      ['mix --mass "30 %" --capacity "1000 gal"', '277.6 US gal of glycol'],
    ] as const) {
      const answer = await typed(line);
      expect(answer, line).toMatchObject({ code: 0 });
      expect(answer.said, line).toContain(said);
    }
  });

  it('that cannot be meant is told what is expected: 1 for a value, 2 for the command line itself', async () => {
    for (const [line, code, said] of [
      ['units 25', 1, 'Expected a number with its unit'],
      ['units "25 bananas"', 1, 'got "25 bananas"'],
      ['units "25 Nm" --to psi', 1, 'Expected a unit of torque to convert to, got "psi".'],
      ['units -5Nm', 1, 'Expected a torque of 0 or more'],
      ['identify M9', 1, 'Expected a metric size with its pitch'],
      ['identify M8x9', 1, 'a pitch from 0.2 mm to a third of it'],
      ['identify banana', 1, 'Expected a thread such as M8'],
      ['identify --mark 10.8', 1, 'Expected a class such as 8.8'],
      ['identify --mark A9-70', 1, 'got "A9-70"'],
      ['torque M8 --class "grade 5"', 1, 'lists for M8 (class 4.6, class 5.6'],
      ['torque M8 --class 8.8 --share "400 %"', 1, 'from 5 to 100 %, got "400 %"'],
      ['torque M8 --torque 90', 1, 'Expected a torque with its unit'],
      ['torque M8 --torque "140 to 100 lbf·in"', 1, 'from the lower to the higher'],
      ['torque', 2, 'Expected a thread'],
      ['torque --diameter 8', 2, 'Expected a preload'],
      ['mix 5', 2, 'Expected only options after mix'],
      ['identify M8 --thread M10', 2, 'Expected only options after identify'],
      ['identify --colour red', 2, '--colour'],
      ['tighten --holes 8 --rounds "30 20"', 1, 'Expected rising shares that end at 100'],
      ['mix --mass 30 --gravity 9', 1, 'Expected a specific gravity from 0.8 to 2'],
    ] as const) {
      const answer = await typed(line);
      expect(answer.said, line).toContain(said);
      expect(answer.code, line).toBe(code);
    }
  });

  it('answers 1 where something speaks against a torque, as every command with findings does', async () => {
    expect((await typed('torque M6 --torque 25Nm')).code).toBe(1);
    expect((await typed('torque M6 --class 8.8 --torque 10Nm')).code).toBe(0);
  });
});
