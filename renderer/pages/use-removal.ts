import { useMemo, useState } from 'react';
import { type Chip, chips, readEntry, type Token } from '../../core/entry/index.ts';
import { useDraft } from '../data/draft.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import type { Did } from '../../core/drawing/line/types.ts';
import { logOf } from '../model/line.ts';

/** The removal at hand and the line being typed. */
export function useRemoval(job: OpenJob) {
  const removalId = remember((place) => place.removalId);
  const [text, setText] = useDraft(`entry/${job.id}`);
  const [nextDid, setNextDid] = useState<Did>('off');
  const entry = useMemo(() => readEntry(text), [text]);
  const order = logOf(job.view);
  const shown: { text: string; tokens: readonly Token[]; chips: readonly Chip[] } = {
    text,
    tokens: entry.tokens,
    chips: chips(entry),
  };
  return {
    current: order.find((removal) => removal.id === removalId) ?? null,
    last: order.findLast((removal) => removal.phase !== 'planned') ?? null,
    entry: shown,
    setText,
    nextDid,
    setNextDid,
  };
}
