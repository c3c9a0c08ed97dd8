import type { Did } from '../line/types.ts';

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
  removal: (number: number, title: string, what: Did, back: boolean, pieces: number, note: string) =>
    [
      `Removal ${number}${title === '' ? '' : `, ${title}`}`,
      did[what],
      pieces === 0 ? '' : pieces === 1 ? '1 piece' : `${pieces} pieces`,
      back ? 'back on' : '',
      note,
    ]
      .filter((part) => part !== '')
      .join(', '),
  untitled: 'not named yet',
  range: (from: number, to: number) => (from === to ? `${from}` : `${from}–${to}`),
  showFar: (from: number, to: number, place: string) =>
    `${from === to ? `Removal ${from}` : `Removals ${from} to ${to}`}${place === '' ? '' : `, ${place}`}. Show them.`,
  places: (names: readonly string[]) => (names.length > 1 ? `${names.length} places` : (names[0] ?? '')),
  gate: (title: string, passed: boolean, note: string) => `${title}, ${passed ? 'passed' : 'shut'}. ${note}`,
  off: 'off',
  back: 'back',
  left: 'left',
  pieces: 'pieces',
  unsaved: 'not saved yet',
  givenUp: 'given up',
  away: 'away',
  awayLate: (late: string) => `away, ${late} late`,
  none: 'Nothing is off yet.',
};
