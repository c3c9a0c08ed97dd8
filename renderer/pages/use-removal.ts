import { useMemo, useState } from 'react';
import {
  type Chip,
  chips,
  type Entry,
  offerNouns,
  readEntry,
  type Sticky,
  stickyLine,
  takesNothingOff,
  type Token,
} from '../../core/entry/index.ts';
import { useDraft, useTabText } from '../data/draft.ts';
import type { Row } from '../../core/model/tables.ts';
import { entry as say } from '../texts/entry.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import type { Did } from '../../core/drawing/line/types.ts';
import { logOf } from '../model/line.ts';
import { nounsOf } from '../model/nouns.ts';
import type { EntryData } from '../ui/EntryLine.tsx';

/** Words offered beside the line: few enough to be seen at once. */
const OFFERS = 3;

/** What is said of the next removal before it is begun. */
export interface Next {
  readonly did: Did;
  readonly place: string;
  readonly side: 'left' | 'right' | 'both' | null;
}
const NOTHING_SAID: Next = { did: 'off', place: '', side: null };

/** The stretches of the whole line that lie in what was typed, moved to where they stand there. */
function tokensIn(tokens: readonly Token[], from: number, to: number): Token[] {
  return tokens.flatMap((token) => {
    const start = Math.max(token.start, from);
    const end = Math.min(token.end, to);
    if (end <= start) return [];
    const text = token.text.slice(start - token.start, end - token.start);
    return { ...token, start: start - from, end: end - from, text };
  });
}

/** A line that takes nothing off goes into the removal under way: its place in the log, from 0; −1 = none, it begins one. */
function besideAt(entry: Entry, removalId: string | null, order: readonly Row<'removal'>[]): number {
  if (removalId !== null || !takesNothingOff(entry.items)) return -1;
  return order.findIndex((removal) => removal.phase === 'under way');
}

/** Says so before the line is written down. */
function besideChip(at: number, order: readonly Row<'removal'>[]): readonly Chip[] {
  const label = say.withRemoval(at + 1, order[at]?.title ?? '');
  return at < 0 ? [] : [{ label, caption: say.withRemovalWhy, doubtful: false }];
}

/** The removal at hand and the line being typed. */
export function useRemoval(job: OpenJob) {
  const removalId = remember((place) => place.removalId);
  const [text, setText] = useDraft(`entry/${job.id}`);
  const [modeText, setModeText] = useTabText(`mode/${job.id}`);
  const mode: Sticky | null = modeText === 'plug' || modeText === 'hose' ? modeText : null;
  const [next, setNext] = useState<Next>(NOTHING_SAID);
  const line = useMemo(() => stickyLine(mode, text), [mode, text]);
  const entry = useMemo(() => readEntry(line.text), [line]);
  const nouns = useMemo(() => nounsOf(job.view), [job.view]);
  const order = logOf(job.view);
  const beside = besideAt(entry, removalId, order);
  const shown: EntryData = {
    text,
    mode,
    tokens: mode === null ? entry.tokens : tokensIn(entry.tokens, line.from, line.to),
    chips: text === '' && mode === null ? [] : [...chips(entry), ...besideChip(beside, order)],
    offers: mode === null || text !== '' ? offerNouns(text, nouns, OFFERS) : [],
    last: nouns.slice(0, OFFERS),
    beside: beside < 0 ? null : beside + 1,
  };
  const isAhead = job.ahead.some((one) => one.removal?.id === removalId);
  return {
    /** The removal that a line goes into, also while it is on its way to the record; null = the next one. */
    targetId: isAhead || order.some((removal) => removal.id === removalId) ? removalId : null,
    current: order.find((removal) => removal.id === removalId) ?? null,
    last: order.findLast((removal) => removal.phase !== 'planned') ?? null,
    entry: shown,
    /** What Enter writes down; "" while there is nothing to write. */
    whole: mode === null && text.trim() === '' ? '' : line.text.trim(),
    mode,
    setMode: (to: Sticky | null) => setModeText(to ?? ''),
    setText,
    next,
    setNext: (values: Partial<Next>) => setNext((now) => ({ ...now, ...values })),
    clearNext: () => setNext(NOTHING_SAID),
  };
}
