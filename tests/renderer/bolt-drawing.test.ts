import { describe, expect, it } from 'vitest';
import { drawBolt, type BoltShape } from '../../renderer/photo/bolt.ts';

// ISO 4014 / ISO 4017, M10: pitch 1.5, across flats 16, head height 6.4 (values from memory).
const m10: BoltShape = {
  threadMm: 10,
  lengthMm: 35,
  pitchMm: 1.5,
  acrossFlatsMm: 16,
  headHeightMm: 6.4,
  shankMm: 9,
};
const rightmost = (path: string) =>
  Math.max(...[...path.matchAll(/[HL](-?[\d.]+)/g)].map((match) => Number(match[1])));

describe('look-alikes drawn to scale', () => {
  it('ten millimetres more are ten millimetres more on the drawing', () => {
    const short = rightmost(drawBolt(m10, 8).body);
    const long = rightmost(drawBolt({ ...m10, lengthMm: 45 }, 8).body);
    expect(short).toBeCloseTo(35 * 8, 1);
    expect(long - short).toBeCloseTo(10 * 8, 1);
  });

  it('the head lies on its flats: its corners are 2/√3 of the width across flats apart', () => {
    expect(drawBolt(m10, 10).height).toBeCloseTo((160 * 2) / Math.sqrt(3), 0);
  });

  it('thread is drawn from the shank to the point, one stroke for each turn', () => {
    const strokes = drawBolt(m10, 8).threads.match(/l/g)?.length ?? 0;
    expect(strokes).toBe(Math.floor((35 - 9 - 1.5 * 0.75) / 1.5));
  });

  it('a bolt shorter than its point still has a drawing', () => {
    expect(drawBolt({ ...m10, lengthMm: 1, shankMm: 0 }, 8).threads.match(/l/g)).toBeNull();
  });
});
