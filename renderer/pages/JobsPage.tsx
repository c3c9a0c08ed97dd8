import { useEffect, useState } from 'react';
import { v7 } from 'uuid';
import type { SearchHit } from '../../core/contract/contract.ts';
import type { JobCard, JobView } from '../../core/contract/views.ts';
import { SAMPLE_JOBS } from '../../core/model/sample-jobs.ts';
import { client, valueOf } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useDraft, useTabText } from '../data/draft.ts';
import { useJobs, useNearNames, useSearch, useView } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { placeOfHit } from '../model/hit.ts';
import { carryOn, jobData } from '../model/jobs.ts';
import { lineOf } from '../model/line.ts';
import { JobsScreen, type JobsScreenProps } from '../screens/jobs/JobsScreen.tsx';
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

/** How much is shown round what was found, in letters. */
const ROUND = 48;

/** A cut hit with only the words next to what was found. */
function nearby([before, word, after]: readonly [string, string, string]): readonly [string, string, string] {
  return [
    before.length > ROUND ? `… ${before.slice(-ROUND).replace(/^\S*\s/, '')}` : before,
    word,
    after.length > ROUND ? `${after.slice(0, ROUND).replace(/\s\S*$/, '')} …` : after,
  ];
}

const idOf = (hit: SearchHit): string => `${hit.jobId}/${hit.kind}/${hit.thingId ?? ''}`;

/** Opens a job where the words were found: the step of the way back where it shows that, else the removal. */
async function openHit(hit: SearchHit, words: string, open: (jobId: string) => void): Promise<void> {
  const { jobId, thingId, removalId } = hit;
  const { value: view } = valueOf(await client.jobs.view({ jobId }));
  const place = placeOfHit(view, hit);
  if (place === null) return open(jobId);
  const found = { text: nearby(cut(hit.text, words)), thingId: thingId ?? removalId };
  go({ jobId, stowId: null, removalId: null, stepId: null, ...place, found });
}

/** What was found for the words, or what is offered instead; Enter takes the first of either. */
function useHits(words: string, setWords: (words: string) => void, open: (jobId: string) => void) {
  const searched = useSearch(words);
  const hits = words.trim() === '' ? [] : (searched.data?.value ?? []);
  const isKnown = searched.data !== undefined && !searched.isPlaceholderData;
  const offered = useNearNames(words, words.trim() !== '' && isKnown && hits.length === 0).data?.value;
  const near = offered ? { names: offered.near, lookedIn: offered.lookedIn } : null;
  const onHit = (hit: SearchHit | undefined) => {
    if (hit) void openHit(hit, words, open);
  };
  return {
    hits:
      words.trim() === '' || (!isKnown && hits.length === 0)
        ? null
        : hits.map((hit) => ({
            id: idOf(hit),
            job: hit.jobTitle,
            where: hit.kind,
            text: cut(hit.text, words),
          })),
    near,
    onHit: (id: string) => onHit(hits.find((hit) => idOf(hit) === id)),
    onEnter: () => {
      const name = near?.names[0];
      if (hits.length > 0 && isKnown) onHit(hits[0]);
      else if (name !== undefined) setWords(name);
    },
  };
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
  const { hits, near, onHit, onEnter } = useHits(words, setWords, open);
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
        hits={hits}
        near={near}
        onSearch={setWords}
        onHit={onHit}
        onEnter={onEnter}
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
