import { describe, expect, it } from 'vitest';
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
    expect(refused('oring', { inside: '25' })).toContain('both --inside and --section');
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
