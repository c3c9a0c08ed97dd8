import { useEffect, useState } from 'react';
import { v7 } from 'uuid';
import type { SearchHit } from '../../core/contract/contract.ts';
import type { JobCard, JobView } from '../../core/contract/views.ts';
import { SAMPLE_JOBS } from '../../core/model/sample-jobs.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useDraft, useTabText } from '../data/draft.ts';
import { useJobs, useSearch, useView } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { carryOn, jobData } from '../model/jobs.ts';
import { lineOf } from '../model/line.ts';
import { JobsScreen, type JobsScreenProps } from '../screens/jobs/JobsScreen.tsx';
import type { HitData } from '../screens/jobs/Search.tsx';
import { jobs as say } from '../texts/jobs.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { Key } from '../ui/Key.tsx';
import { useStatus } from './pane.ts';

const go = remember.getState().go;

/** Cuts a hit at the first word looked for, so that it can be shown with weight. */
function cut(text: string, words: string): readonly [string, string, string] {
  const word = words.trim().split(/\s+/)[0] ?? '';
  const at = text.toLowerCase().indexOf(word.toLowerCase());
  return at < 0
    ? [text, '', '']
    : [text.slice(0, at), text.slice(at, at + word.length), text.slice(at + word.length)];
}

/** "/" to search, N to start, S for the sample while it is not there, as the screen says. */
function useJobsKeys(onStart: () => void, onSample: (() => void) | null): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const field = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if (field || event.ctrlKey || event.altKey || event.metaKey) return;
      if (event.key.toLowerCase() === 'n') {
        event.preventDefault();
        onStart();
      } else if (event.key.toLowerCase() === 's' && onSample) {
        event.preventDefault();
        onSample();
      } else if (event.key === '/') {
        event.preventDefault();
        document.querySelector<HTMLInputElement>('input[type=search]')?.focus();
      }
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onStart, onSample]);
}

function StartDialog({ open, onClose }: { readonly open: boolean; readonly onClose: () => void }) {
  const [title, setTitle] = useDraft('start/title');
  const start = async () => {
    const id = v7();
    const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    const made = await send(id, (command) =>
      client.jobs.add({ command, id, title: title.trim(), values: { zone } }),
    );
    if (!made) return;
    onClose();
    setTitle('');
    go({ jobId: id, screen: 'removal', removalId: null, stepId: null, stowId: null });
  };
  const ready = title.trim() !== '';
  return (
    <Dialog open={open} title={say.startTitle} onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (ready) void start();
        }}
      >
        <Field label={say.startAsk} value={title} onChange={setTitle} example={say.startExample} first />
        <div className="keys">
          <Key look="go" large off={!ready} onPress={() => void start()} hint={say.enter}>
            {say.startGo}
          </Key>
        </div>
      </form>
    </Dialog>
  );
}

const idOf = (hit: SearchHit): string => `${hit.jobId}/${hit.kind}/${hit.thingId ?? ''}`;

function hitsOf(found: readonly SearchHit[], words: string): HitData[] {
  return found.map((hit) => ({
    id: idOf(hit),
    job: hit.jobTitle,
    where: hit.kind,
    text: cut(hit.text, words),
  }));
}

/** The line of the job touched last. */
function jobsPane(first: JobCard | null, view: JobView | null, now: number): JobsScreenProps['pane'] {
  const direction = first && first.depth.back > 0 ? 'back' : 'apart';
  return {
    job: say.title,
    counts: first
      ? [
          { label: say.counts.off, value: first.depth.off },
          { label: say.counts.back, value: first.depth.back },
          { label: say.counts.pieces, value: first.depth.pieces },
        ]
      : [],
    line: view ? lineOf(view, { direction, atId: null, now }, []) : { direction, items: [], atId: null },
    nav: [],
    onPick: (removalId) =>
      first && go({ jobId: first.job.id, screen: 'removal', removalId, stepId: null, stowId: null }),
  };
}

/** All jobs of the workshop. */
export function JobsPage() {
  const reading = useJobs();
  const [words, setWords] = useTabText('search');
  const [starting, setStarting] = useState(false);
  const found = useSearch(words);
  const status = useStatus();
  const cards = reading.data?.value ?? [];
  const first = cards[0];
  const now = Date.now();
  const view = useView(first?.job.id ?? null).data?.value;
  const sampleIn = SAMPLE_JOBS.every((id) => cards.some((card) => card.job.id === id));
  const sample = sampleIn ? null : () => void send('workshop', (command) => client.jobs.sample({ command }));
  useJobsKeys(() => setStarting(true), sample);

  const open = (jobId: string) => {
    const back = (cards.find((one) => one.job.id === jobId)?.depth.back ?? 0) > 0;
    go({ jobId, screen: back ? 'putback' : 'removal', removalId: null, stepId: null, stowId: null });
  };
  /** Where the words were found: the removal that they belong to, else the job. */
  const openHit = (hit: SearchHit | undefined) => {
    if (!hit) return;
    if (hit.removalId === null) open(hit.jobId);
    else go({ jobId: hit.jobId, screen: 'removal', removalId: hit.removalId, stepId: null, stowId: null });
  };
  const current = view && first && view.state.job.id === first.job.id ? view : null;
  if (reading.data === undefined) return null;
  return (
    <>
      <JobsScreen
        pane={jobsPane(first ?? null, current, now)}
        status={status}
        carry={first ? carryOn(first, now) : null}
        jobs={cards.slice(1).map((card) => jobData(card, now))}
        search={words}
        hits={words.trim() === '' ? null : hitsOf(found.data?.value ?? [], words)}
        onSearch={setWords}
        onHit={(id) => openHit(found.data?.value.find((hit) => idOf(hit) === id))}
        onCarryOn={() => first && open(first.job.id)}
        onOpen={open}
        onStart={() => setStarting(true)}
        onSample={sample}
        onHandbook={() => go({ screen: 'handbook', bookFrom: null })}
      />
      <StartDialog open={starting} onClose={() => setStarting(false)} />
    </>
  );
}
