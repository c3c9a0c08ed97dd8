import { describe, expect, it } from 'vitest';
import { note, notUnderstood, part, said, set } from './said.ts';

/** What is seen at removal and is put on again: sealant, threadlock, grease, paste, oil. */

const put = (...typed: readonly (readonly [what: string, typed: string])[]) => ({
  treatments: typed.map(([what, words]) => ({ what, typed: words })),
});
const m8 = (fields: Readonly<Record<string, unknown>> = {}): unknown =>
  set({ count: 4, thread: 'M8 (1.25)', ...fields });

const LINES: readonly (readonly [string, ...unknown[]])[] = [
  [
    'gearbox cover, gasket, sealant, 12 M8x25 hex 13',
    part('gearbox cover'),
    part('gasket', { look: 'gasket', ...put(['sealant', 'sealant']) }),
    set({ count: 12, thread: 'M8 (1.25)', lengthMm: 25, head: 'hex', drive: 'hex external 13 mm' }),
  ],
  ['cover, sealant, 4 M8', part('cover', put(['sealant', 'sealant'])), m8()],
  ['cover, threadlock, 4 M8', part('cover', put(['threadlock', 'threadlock'])), m8()],
  ['cover, thread locker, 4 M8', part('cover', put(['threadlock', 'thread locker'])), m8()],
  ['cover, anti-seize, 4 M8', part('cover', put(['anti-seize', 'anti-seize'])), m8()],
  ['bearing, grease', part('bearing', put(['greased', 'grease']))],
  ['bearing, assembly paste, oil', part('bearing', put(['anti-seize', 'assembly paste'])), 'oil'],
  ['bearing greased', part('bearing', put(['greased', 'greased']))],
  ['greased bearing', part('bearing', put(['greased', 'greased']))],
  ['sealant, cover, 4 M8', part('cover', put(['sealant', 'sealant'])), m8()],
  ['pipe, PTFE tape', { kind: 'connection', what: 'pipe', name: 'pipe', ...put(['sealant', 'PTFE tape']) }],
  ['cover, sealant, sealant', part('cover', put(['sealant', 'sealant']))],
  ['cover, 4 M8, threadlock', part('cover'), m8({ treatments: ['threadlock'] })],
  ['4 M8, grease', m8({ treatments: ['greased'] })],
  ['4 M8, thread locker', m8({ treatments: ['threadlock'] })],
  ['threadlock, 4 M8', m8({ treatments: ['threadlock'] })],
  ['sealant', { kind: 'treatment', treatment: { what: 'sealant', typed: 'sealant' } }],
  [
    'rag in the port, sealant',
    'rag',
    { kind: 'treatment', treatment: { what: 'sealant', typed: 'sealant' } },
  ],
  // A sealed bearing is a kind of bearing.
  ['sealed bearing', part('sealed bearing')],
  ['bearing, sealed', part('bearing'), note('sealed')],
  // Nothing is put on for what was dry.
  ['cover, dry', part('cover'), note('dry')],
  // Grease with an amount, or drained, is a fluid as any other.
  ['gearbox, grease, 200 ml', part('gearbox'), 'grease'],
  ['drained grease', 'grease'],
];

describe('what is put on again on the way back', () => {
  it.each(LINES.map(([line, ...meant]) => ({ line, meant })))('$line', ({ line, meant }) => {
    const items = said(line);
    expect(
      items.map((item, i) => (typeof meant[i] === 'string' ? (item as { name: string }).name : item)),
    ).toEqual(meant);
    expect(notUnderstood(line)).toEqual([]);
  });
});
