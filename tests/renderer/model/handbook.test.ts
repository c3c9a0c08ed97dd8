import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../../core/cli/main.ts';
import {
  handbookOf,
  type HandbookState,
  readState,
  TOPIC_NAMES,
  withTyped,
} from '../../../renderer/model/handbook/index.ts';
import { torqueOpening } from '../../../renderer/model/handbook/fill.ts';
import { seeded } from './seed.ts';
import type { AnswerData, Topic } from '../../../renderer/screens/handbook/types.ts';

const at = (topic: Topic, typed: Record<string, string>): HandbookState => ({
  topic,
  typed: { [topic]: typed },
  from: '',
});

function answered(topic: Topic, typed: Record<string, string>): AnswerData {
  const { answer, fields } = handbookOf(at(topic, typed));
  if (!answer) throw new Error(fields.map((field) => field.refused).join(' '));
  return answer;
}

describe('the question of a torque at a step', () => {
  it('is asked where one is noted, or where the handbook has one, and nowhere else', async () => {
    const job = await seeded([
      'guard, 4 M8x25 hex 13, 25 Nm',
      'cover, 4 M6x16 hex 10, class 8.8',
      'shaft key, 1 dowel pin',
      'belt',
    ]);
    const asked = (title: string) => {
      const step = job.view().plan.steps.find((one) => one.title === title);
      return step && torqueOpening(job.view(), step)?.question;
    };
    expect(asked('Guard')).toBe('Why this torque?');
    expect(asked('Cover')).toBe('No torque noted: what does the handbook say?');
    expect(asked('Shaft key')).toBeUndefined();
    expect(asked('Belt')).toBeUndefined();
  });
});

/** Something to ask under every topic, with what an answer shows first. */
const EXAMPLES: readonly (readonly [Topic, Record<string, string>, string])[] = [
  ['identify', { diameter: '7.88', pitch: '1.25' }, 'M8'],
  ['identify', { diameter: '11.85' }, 'M12'],
  ['identify', { head: '13' }, 'M8'],
  ['identify', { mark: '10.9' }, '10.9'],
  ['torque', { thread: 'M8', class: '8.8' }, '25.4'],
  ['torque', { thread: 'M6' }, '4.07–17.6'],
  ['torque', { thread: '5/16-18', class: 'grade 8', lubrication: 'oiled' }, '30'],
  ['torque', { thread: 'M8', class: '8.8', mu: '0.12', share: '90' }, '24.6'],
  ['torque', { maker: '20 N·m + 90°', page: '12', thread: 'M8', class: '10.9' }, '20'],
  ['torque', { thread: 'M8', class: 'A2-70', maker: '18 ft-lb' }, '18'],
  ['extension', { torque: '135 lbf·in', wrench: '10 in', reach: '1.5 in back' }, '158.8'],
  ['order', { holes: '12' }, '12'],
  ['order', { holes: '5 x 2', torque: '25' }, '10'],
  ['order', { holes: '10', shape: 'frame' }, '10'],
  ['oring', { inside: '25', section: '3.53' }, '214'],
  ['oring', { dash: '325' }, '325'],
  ['mix', { capacity: '8 qt', remaining: '3 qt', target: '50' }, '4.00'],
  ['mix', { capacity: '10 l', remaining: '6 l', target: '50 %' }, '1.00'],
  ['units', { value: '25 N·m' }, '18.44'],
];

describe('the handbook on the screen', () => {
  it('has one large answer for every question, always with formula, source and cautions', () => {
    expect(new Set(EXAMPLES.map(([topic]) => topic))).toEqual(new Set(TOPIC_NAMES));
    for (const [topic, typed, figure] of EXAMPLES) {
      const answer = answered(topic, typed);
      expect(answer.figure?.value, JSON.stringify(typed)).toBe(figure);
      expect(answer.basis?.formula, JSON.stringify(typed)).not.toBe('');
      expect(answer.basis?.source).toBeTruthy();
      expect(answer.basis?.cautions.length).toBeGreaterThan(0);
      expect(JSON.stringify(answer)).not.toMatch(/\btighten (it )?to\b/i);
    }
  });

  it('puts the maker’s value in the large place, and the reference only beside it', () => {
    const answer = answered('torque', { maker: '22 N·m', page: 'page 12', thread: 'M8', class: '8.8' });
    expect(answer.figure).toEqual({ value: '22', unit: 'N·m', other: '16.2 lbf·ft' });
    expect(answer.whose).toBe('The maker’s value, page 12: it wins');
    expect(answer.beside).toContain('Reference beside it: 25.4 N·m');
    expect(answered('torque', { thread: 'M8', class: '8.8' }).whose).toBe('Reference, not an instruction');
  });

  it('says what speaks against a torque in one sentence, a note where the page is cited', () => {
    const bare = answered('torque', { maker: '90 N·m', thread: 'M6' });
    expect(bare.points[0]?.grave).toBe('stop');
    expect(bare.points[0]?.say).toContain('90 lbf·in would be 10.2 N·m?');
    expect(answered('torque', { maker: '90 N·m', thread: 'M6', page: '3' }).points[0]?.grave).toBe('note');
    expect(answered('torque', { maker: '200 N·m', head: '10' }).points[0]?.say).toContain(
      'fits no thread of a 10 mm head',
    );
    expect(
      answered('torque', { maker: '25', reached: '18 N·m', thread: 'M8', class: '8.8' }).points[0]?.say,
    ).toContain('28 % too low');
  });

  it('says the expected range at the field that is wrong, and then gives no answer at all', () => {
    for (const [topic, typed, field, words] of [
      ['identify', { diameter: '80' }, 'diameter', 'from 1 to 60 mm'],
      ['identify', { pitch: '1.25' }, 'diameter', 'a diameter beside the pitch'],
      ['identify', { diameter: '8', pitch: '12' }, 'pitch', 'from 0.2 to 8 mm'],
      ['identify', { lobe: 'forty' }, 'lobe', 'such as T30'],
      ['torque', { thread: 'M8', class: 'grade 5' }, 'class', 'lists for M8'],
      ['torque', { thread: 'M8', class: '8.8', mu: '3' }, 'mu', 'from 0.04 to 0.4'],
      ['torque', { thread: 'M8', class: '8.8', share: '400' }, 'share', 'from 5 to 100 %'],
      ['torque', { maker: 'bananas', thread: 'M8' }, 'maker', 'Expected'],
      ['extension', { torque: '100', wrench: '500', reach: '-480' }, 'reach', 'less than 90 %'],
      ['extension', { torque: '100', wrench: '500', reach: '100', angle: '400' }, 'angle', '−180 to 180'],
      ['order', { holes: '0' }, 'holes', '1 to 200 holes'],
      ['oring', { inside: '0.1', section: '3' }, 'inside', 'from 0.5 to 1500 mm'],
      ['oring', { dash: '999' }, 'dash', 'AS568 dash number'],
      ['mix', { capacity: '10 l', remaining: '12 l', target: '50' }, 'remaining', 'from 0 to the capacity'],
      ['mix', { capacity: '10 l', target: '150' }, 'target', 'from 0 to 100 %'],
      ['units', { value: '25 bananas' }, 'value', 'a number with its unit'],
    ] as const) {
      const { fields, answer } = handbookOf(at(topic, typed));
      expect(fields.find((one) => one.id === field)?.refused, `${topic} ${field}`).toContain(words);
      expect(answer, `${topic} ${field}`).toBeNull();
    }
  });

  it('agrees with the commands', async () => {
    const said = async (...args: string[]) => (await runCommand(args)).lines.join('\n');
    expect(await said('torque', 'M8', '--class', '8.8')).toContain(
      `${answered('torque', { thread: 'M8', class: '8.8' }).figure?.value} N·m`,
    );
    expect(await said('extension', '--torque', '100 N·m', '--wrench', '500', '--extension', '100')).toContain(
      `${answered('extension', { torque: '100', wrench: '500', reach: '100' }).figure?.value} N·m`,
    );
    const drawn = answered('order', { holes: '12' }).drawing;
    const order = [...drawn].sort((a, b) => a.step - b.step).map((hole) => hole.id);
    expect(await said('tighten', '--holes', '12')).toContain(`Order: ${order.join(' ')}`);
  });

  it('draws every count of holes in every shape, each hole once', () => {
    for (const shape of ['ring', 'frame', 'rows'])
      for (let n = 1; n <= 40; n += 1) {
        const { drawing } = answered('order', { holes: String(n), shape });
        expect(
          drawing.map((hole) => hole.step).sort((a, b) => a - b),
          `${shape} ${n}`,
        ).toEqual(Array.from({ length: n }, (_, i) => i + 1));
      }
  });

  it('never throws, whatever is typed or was kept', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TOPIC_NAMES),
        fc.array(
          fc.oneof(
            fc.string({ maxLength: 12 }),
            fc.constantFrom('8', '13 mm', 'M8', '8.8', '0', '-1', '50 %', '5/16'),
          ),
          { minLength: 9, maxLength: 9 },
        ),
        (topic, texts) => {
          const ids = handbookOf(at(topic, {})).fields.map((field) => field.id);
          const state = ids.reduce((now, id, i) => withTyped(now, id, texts[i] ?? ''), at(topic, {}));
          const { answer, fields } = handbookOf(state);
          if (fields.some((field) => field.refused !== '')) expect(answer).toBeNull();
          expect(readState(JSON.stringify(state))).toEqual(state);
        },
      ),
      { seed: 20261125, numRuns: 400 },
    );
    for (const kept of ['', 'null', '7', '{"topic":"cooking"}', '{', '[]'])
      expect(readState(kept)).toMatchObject({ topic: 'identify', from: '' });
  });
});
