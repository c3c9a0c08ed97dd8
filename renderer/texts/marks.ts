import type { MarkKind, MarkState } from '../photo/types.ts';

const position: Record<MarkState, string> = {
  in: 'still in',
  slackened: 'slackened',
  out: 'out',
  started: 'started by hand',
  tightened: 'tightened',
  'paint-checked': 'paint-checked',
  later: 'final tightening later',
  missing: 'missing or unaccounted',
  'left out': 'left out',
  blocked: 'blocked hole',
};

const others: Record<MarkState, string> = {
  in: 'still on',
  slackened: 'loose',
  out: 'off',
  started: 'placed, not fast yet',
  tightened: 'on',
  'paint-checked': 'on and checked',
  later: 'to be finished later',
  missing: 'missing or unaccounted',
  'left out': 'left out',
  blocked: 'blocked',
};

const connection: Partial<Record<MarkState, string>> = { in: 'joined', out: 'open', tightened: 'joined' };
const temporary: Partial<Record<MarkState, string>> = {
  in: 'in, must come out',
  tightened: 'in, must come out',
  out: 'taken out',
};

/** What marks on a photo mean. */
export const marks = {
  state: (kind: MarkKind, state: MarkState): string => {
    if (kind === 'position') return position[state];
    const own =
      kind === 'connection' ? connection[state] : kind === 'temporary' ? temporary[state] : undefined;
    return own ?? others[state];
  },
  heard: (name: string, state: string) => `${name}: ${state}`,
  group: (count: number) => (count === 1 ? '1 mark on the photo' : `${count} marks on the photo`),
  closer: 'Closer',
  whole: 'Whole photo',
  /** Said once to those who cannot see the photo. */
  help: 'Arrow keys go from mark to mark. Enter touches one. Shift and an arrow moves it, farther while it is held down. Delete takes it away.',
  middle: 'Put it in the middle',
  placing: 'Touch where the next mark goes.',
  placingFor: (name: string) => `Touch ${name}.`,
  hole: (set: string, n: number) => (set === '' ? `hole ${n}` : `hole ${n} of ${set}`),
  unnamed: { part: 'a part', connection: 'a connection', temporary: 'a temporary', match: 'a match mark' },
  unbound: (n: number) => `mark ${n}, stands for nothing yet`,
  standsFor: 'This mark stands for',
  nothing: 'nothing yet',
  ofThis: 'Of this removal',
  ofOthers: 'Of other removals',
  remove: 'Take the mark away',
  leave: 'Leave it',
  number: 'Its number; the mark that has it gets this one’s',
  together: 'Goes together with',
  goTogether: 'Goes together',
  mateOn: (name: string, photo: string) => `${name}, on ${photo || 'another photo'}`,
  pair: (one: string, other: string) => `${one} with ${other}`,
  join: 'Goes together with …',
  joinNot: 'With nothing',
  part: 'Set apart',
  joining: (name: string) => `Touch the mark that goes together with ${name}, here or on another photo.`,
};
