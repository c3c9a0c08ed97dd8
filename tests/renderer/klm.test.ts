import { describe, expect, it } from 'vitest';
import { countInputs, type InputEvent } from '../e2e/support/klm.ts';

const argument = (name: string): InputEvent => ({ kind: 'key', name, argument: true, modifier: false });
const command = (name: string): InputEvent => ({ kind: 'key', name, argument: false, modifier: false });
const held = (name: string): InputEvent => ({ kind: 'key', name, argument: false, modifier: true });
const press: InputEvent = { kind: 'press', name: 'Next', argument: false, modifier: false };
const seconds = (events: readonly InputEvent[], anticipated = false) =>
  countInputs(events, anticipated).seconds;

describe('seconds of the keystroke-level model', () => {
  it('an argument costs its keys, and its end one mental step: rules 0 and 4', () => {
    expect(seconds(['5', ' ', '1', '3'].map(argument))).toBe(1.12);
    expect(seconds([...['5', ' ', '1', '3'].map(argument), command('Enter')])).toBe(2.75);
  });

  it('keys held together are one unit: rule 2', () => {
    expect(seconds([held('Control'), command('z')])).toBe(1.91);
  });

  it('an end right after the end of its argument costs no mental step of its own: rule 3', () => {
    expect(seconds([argument('c'), command('Tab'), command('Enter')])).toBe(2.19);
    expect(seconds([command('Enter'), command('Enter')])).toBe(3.26);
  });

  it('what always follows the action before is anticipated: rule 1', () => {
    expect(seconds([command('Enter')], true)).toBe(0.28);
  });

  it('a press is a point and a key, and going over to the screen is a move of the hand', () => {
    expect(seconds([press])).toBe(2.73);
    expect(countInputs([argument('5'), press, argument('1')], false)).toEqual({
      keys: 2,
      presses: 1,
      handMoves: 2,
      mental: 1,
      seconds: 4.09,
    });
  });
});
