import { describe, expect, it } from 'vitest';
import { typeOnPad } from '../../renderer/ui/pad.ts';

const type = (...keys: string[]) => keys.reduce(typeOnPad, '');

describe('the number pad writes into the entry line', () => {
  it('five, times, thirteen is what is said at the machine: 5 13', () => {
    expect(type('5', 'x', '1', '3')).toBe('5 13');
  });

  it('between a thread and its length the same key is the "by" of the trade', () => {
    expect(['x', '3', '5'].reduce(typeOnPad, '8 M10')).toBe('8 M10x35');
    expect(typeOnPad('8 M10x1.5', 'x')).toBe('8 M10x1.5x');
  });

  it('it is never written twice, nor first', () => {
    expect(type('x')).toBe('');
    expect(type('5', 'x', 'x', '8')).toBe('5 8');
    expect(typeOnPad('M8x', 'x')).toBe('M8x');
  });
});
