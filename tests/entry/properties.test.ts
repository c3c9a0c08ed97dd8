import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chips, readEntry, sameMeaning, writeEntry } from '../../core/entry/index.ts';
import { anyItem, anyLine } from './any-item.ts';

const RUNS = Number(process.env['ENTRY_RUNS'] ?? 3000);

describe('the entry line, whatever is typed', () => {
  it('never throws, and its tokens join up to exactly what was typed', () => {
    fc.assert(
      fc.property(anyLine, (text) => {
        const { tokens } = readEntry(text);
        expect(tokens.map((token) => token.text).join('')).toBe(text);
        let at = 0;
        for (const token of tokens) {
          expect(token.start).toBe(at);
          expect(token.end).toBeGreaterThan(token.start);
          expect(token.text).toBe(text.slice(token.start, token.end));
          at = token.end;
        }
        expect(at).toBe(text.length);
      }),
      { numRuns: RUNS },
    );
  });

  it('keeps every character that it did not understand in a note', () => {
    fc.assert(
      fc.property(anyLine, (text) => {
        const { tokens, items } = readEntry(text);
        const notes = items.flatMap((item) => (item.kind === 'note' ? [item.text] : [])).join('\n');
        for (const token of tokens.filter((one) => !one.understood)) {
          expect(token.kind).toBe('unknown');
          expect(notes).toContain(token.text);
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('never takes a suggestion for what was meant', () => {
    fc.assert(
      fc.property(anyLine, (text) => {
        for (const token of readEntry(text).tokens)
          if (token.suggestion !== undefined) expect(token.understood).toBe(false);
      }),
      { numRuns: RUNS },
    );
  });

  it('shows a chip for every item, each with a label', () => {
    fc.assert(
      fc.property(anyLine, (text) => {
        const entry = readEntry(text);
        const shown = chips(entry);
        expect(shown.length).toBeGreaterThanOrEqual(entry.items.length);
        const unknown = entry.tokens.some((token) => !token.understood);
        if (unknown) expect(shown.some((chip) => chip.doubtful)).toBe(true);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('what is written in trade notation', () => {
  it('is read again with the same meaning, for any item', () => {
    fc.assert(
      fc.property(anyItem, (item) => {
        const text = writeEntry(item);
        const again = readEntry(text).items;
        if (!sameMeaning(again, [item])) expect({ text, items: again }).toEqual({ text, items: [item] });
      }),
      { numRuns: RUNS },
    );
  });
});
