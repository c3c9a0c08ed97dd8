import type { Did } from '../../core/drawing/line/types.ts';

const did: Record<Did, string> = {
  off: 'off',
  slackened: 'only slackened',
  opened: 'only opened',
  aside: 'moved aside',
  safe: 'made safe',
};

/** What the depth line says. */
export const line = {
  name: 'Removals of this job, the deepest last',
  stick: (off: number, back: number) => `${off} off, ${back} back`,
  removalWord: 'Removal',
  removalsWord: 'Removals',
  /** Said after what is seen of a removal. */
  heard: (what: Did, back: boolean, pieces: number) =>
    `${pieces === 0 ? '' : pieces === 1 ? 'piece, ' : 'pieces, '}${back ? 'back on' : did[what]}`,
  whole: (number: number, title: string, note: string) =>
    [`${number}${title === '' ? '' : ` ${title}`}`, note].filter((part) => part !== '').join(', '),
  untitled: 'not named yet',
  range: (from: number, to: number) => (from === to ? `${from}` : `${from}–${to}`),
  showThem: 'Show them.',
  places: (names: readonly string[]) => (names.length > 1 ? `${names.length} places` : (names[0] ?? '')),
  gates: (count: number) => (count === 1 ? '1 check' : `${count} checks`),
  gateState: (passed: boolean) => (passed ? 'passed' : 'shut'),
  off: 'off',
  back: 'back',
  left: 'left',
  none: 'Nothing is off yet.',
};
