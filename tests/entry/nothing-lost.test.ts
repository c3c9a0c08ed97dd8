import { describe, expect, it } from 'vitest';
import { readEntry } from '../../core/entry/index.ts';
import { KNOWN } from '../support/known-words.ts';

/** A line with a gap for a word; the gap comes with its comma, so that the line can do without it. */
const FRAMES = [
  'cover_, 4 M8x25',
  'cover, 4 M8x25_',
  'gasket_',
  'hose_',
  '4 M8x25_',
  'rag in the port_',
  'mains off_',
  'drained oil 1 l_',
  'bag 3_',
];

const meaning = (line: string): string => JSON.stringify(readEntry(line).items);

describe('nothing that is typed is lost', () => {
  it.each(FRAMES)('every known word makes a difference to “%s”', (frame) => {
    const without = meaning(frame.replace('_', ''));
    const lost = KNOWN.flatMap(({ words }) => words).filter(
      (word) => meaning(frame.replace('_', `, ${word}`)) === without,
    );
    expect(lost).toEqual([]);
  });

  it.each(['_', '_, 4 M8x25', 'cover_', 'cover, 2 _'])('nor in “%s”', (frame) => {
    const without = meaning(frame.replace('_', '').replace(/^, /, ''));
    const lost = KNOWN.flatMap(({ words }) => words).filter((word) => {
      const line = frame.replace('_', frame.startsWith('_') || frame.endsWith(' _') ? word : ` ${word}`);
      return meaning(line) === without;
    });
    expect(lost).toEqual([]);
  });
});
