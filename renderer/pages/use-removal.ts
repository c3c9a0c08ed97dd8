import { useMemo, useState } from 'react';
import { chips, offerNouns, readEntry, type Sticky, stickyLine, type Token } from '../../core/entry/index.ts';
import { useDraft, useTabText } from '../data/draft.ts';
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
  const shown: EntryData = {
    text,
    mode,
    tokens: mode === null ? entry.tokens : tokensIn(entry.tokens, line.from, line.to),
    chips: text === '' && mode === null ? [] : chips(entry),
    offers: mode === null || text !== '' ? offerNouns(text, nouns, OFFERS) : [],
    last: nouns.slice(0, OFFERS),
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
