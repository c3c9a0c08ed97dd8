import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useDraft } from '../data/draft.ts';
import { BOOK } from '../data/handbook.ts';
import type { OpenJob } from '../data/job.ts';
import { navKeys } from '../data/keys.ts';
import { remember } from '../data/remember.ts';
import type { LinePaneProps } from '../frame/LinePane.tsx';
import {
  handbookOf,
  type HandbookState,
  readState,
  TOPIC_NAMES,
  withTyped,
} from '../model/handbook/index.ts';
import { HandbookScreen, type WantProps } from '../screens/handbook/HandbookScreen.tsx';
import { common } from '../texts/common.ts';
import { handbook as say } from '../texts/handbook.ts';
import { sidePane, useStatus } from './pane.ts';

/** Without a job there is no line, only the ways to the other screens. */
const barePane = (): LinePaneProps => ({
  job: common.handbook,
  counts: [],
  line: { direction: 'apart', items: [], atId: null },
  nav: navKeys('handbook', false),
  onPick: () => undefined,
});

/** A piece for the list to get: what was found, as many as typed. */
function useWant(job: OpenJob | null, what: string): WantProps | null {
  const [count, setCount] = useState('1');
  const [refused, setRefused] = useState('');
  const [done, setDone] = useState<{ readonly what: string; readonly say: string } | null>(null);
  if (job === null) return null;
  const onWant = () => {
    const qty = Number(count.trim());
    if (!Number.isInteger(qty) || qty < 1 || qty > 1000) {
      setRefused(`${say.wantNumber} "${count.trim()}".`);
      return;
    }
    setRefused('');
    const values = { what, qty, state: 'needed', cause: say.wantCause };
    void send(job.id, (command) =>
      client.record.make({ command, jobId: job.id, table: 'want', values }),
    ).then((made) => {
      if (made) setDone({ what, say: say.wanted(what, qty) });
    });
  };
  return { count, refused, done: done?.what === what ? done.say : '', onCount: setCount, onWant };
}

/** Identify, torque, extension, order, O-ring, mix, units: the same functions as the commands and the job. */
export function HandbookPage({ job }: { readonly job: OpenJob | null }) {
  const status = useStatus(job);
  const [draft, setDraft] = useDraft(BOOK);
  const from = remember((place) => place.bookFrom);
  const state = readState(draft);
  const { fields, answer } = handbookOf(state);
  const want = useWant(job, answer?.want ?? '');
  const keep = (next: HandbookState) => setDraft(JSON.stringify(next));
  return (
    <HandbookScreen
      pane={job === null ? barePane() : sidePane(job, 'handbook')}
      status={status}
      topic={state.topic}
      topics={TOPIC_NAMES}
      fields={fields}
      answer={answer}
      from={state.from}
      back={from === null ? '' : say.backTo(common[from])}
      want={want}
      onTopic={(topic) => keep({ ...state, topic, from: '' })}
      onField={(id, value) => keep(withTyped(state, id, value))}
      onClear={() => keep({ ...state, from: '', typed: { ...state.typed, [state.topic]: {} } })}
      onBack={() => remember.getState().go({ screen: from ?? 'jobs', bookFrom: null })}
    />
  );
}
