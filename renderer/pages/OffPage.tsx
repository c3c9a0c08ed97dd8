import { useEffect, useRef, useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { keyIsTaken } from '../data/keys.ts';
import { remember } from '../data/remember.ts';
import { saveFile } from '../data/save.ts';
import {
  awayData,
  bagData,
  firstPanel,
  offGroups,
  offSummary,
  partData,
  wantsCsv,
  wantsOf,
} from '../model/off.ts';
import { arrivalsOf } from '../model/arrivals.ts';
import { OffScreen, type OffPanel } from '../screens/off/OffScreen.tsx';
import type { WantData } from '../screens/off/Panels.tsx';
import { SendDialog } from '../screens/off/SendDialog.tsx';
import { off as say } from '../texts/off.ts';
import { AskDialog, type AskProps } from '../ui/AskDialog.tsx';
import { sidePane, useStatus } from './pane.ts';
import { useLost, useTray, useUnknown } from './use-tray.ts';
import { useWants } from './use-wants.ts';

/** A dialog that asks for one line: why a piece is written off, to whom a part goes. */
type Question = Omit<AskProps, 'onClose'>;

const writeOff = (job: OpenJob, countingId: string): Question => ({
  draft: `${countingId}/write off`,
  title: say.giveUpTitle,
  label: say.giveUpAsk,
  example: say.giveUpExample,
  go: say.giveUpGo,
  onAnswer: (why) =>
    void send(job.id, (command) => client.piece.gone({ command, jobId: job.id, countingId, why })),
});

/** The end of a day as the reader's calendar has it, UTC milliseconds; null where none was chosen. */
function endOfDay(date: string): number | null {
  const [year, month, dayOfMonth] = date.split('-').map(Number);
  return year && month && dayOfMonth ? new Date(year, month - 1, dayOfMonth, 23, 59).getTime() : null;
}

function sendOut(job: OpenJob, thingId: string, toWhom: string, date: string): void {
  const due = endOfDay(date);
  void send(job.id, (command) =>
    client.away.send({ command, jobId: job.id, thingId, toWhom, due, note: '' }),
  );
}

interface Sending {
  readonly thingId: string;
  readonly name: string;
}

interface Counting {
  readonly counted: number | null;
  readonly setCounted: (count: number | null) => void;
}

/** The bag being counted: what the key does, and what ends a search. */
function bagPanel(
  job: OpenJob,
  stowId: string,
  { counted, setCounted }: Counting,
  setAsk: (ask: Question) => void,
): (OffPanel & { kind: 'bag' }) | null {
  const bag = bagData(job.view, stowId, counted);
  if (!bag) return null;
  const search = job.view.searches.find((one) => one.stowId === stowId);
  const base = { jobId: job.id, countingId: search?.countingId ?? '' };
  return {
    kind: 'bag',
    bag,
    onCount: setCounted,
    onIs: () => {
      if (bag.unknown && bag.counted === null) return;
      const number = bag.counted ?? bag.expected;
      void send(job.id, (command) => client.piece.count({ command, jobId: job.id, stowId, counted: number }));
      setCounted(null);
    },
    onAgain: () => setCounted(bag.expected),
    onFound: () =>
      search && void send(job.id, (command) => client.piece.found({ command, ...base, where: '' })),
    onGiveUp: () => search && setAsk(writeOff(job, search.countingId)),
  };
}

function partPanel(job: OpenJob, id: string, setSending: (sending: Sending) => void): OffPanel | null {
  const onRemoval = () => remember.getState().go({ screen: 'removal', removalId: removalOf(job, id) });
  const away = awayData(job.view, id, job.now);
  const row = job.view.state.away.find((one) => one.thingId === id && one.backAt === null);
  if (away && row)
    return {
      kind: 'away',
      away,
      onRemoval,
      onBack: () =>
        void send(job.id, (command) => client.away.back({ command, jobId: job.id, awayId: row.id })),
    };
  const part = partData(job.view, id);
  return (
    part && { kind: 'part', part, onRemoval, onSend: () => setSending({ thingId: id, name: part.name }) }
  );
}

/** Digits type the count, + and − step it, Enter keeps it: the hands hold the bag. */
function useCountKeys(panel: OffPanel | null): void {
  const typed = useRef('');
  const bag = panel?.kind === 'bag' ? panel : null;
  useEffect(() => {
    typed.current = '';
  }, [bag?.bag.id]);
  useEffect(() => {
    if (!bag) return;
    const now = bag.bag.counted ?? bag.bag.expected;
    const onKey = (event: KeyboardEvent) => {
      if (keyIsTaken(event)) return;
      if (/^\d$/.test(event.key)) {
        typed.current = `${typed.current}${event.key}`.slice(-4);
        bag.onCount(Number(typed.current));
      } else if (event.key === '+') bag.onCount(now + 1);
      else if (event.key === '-') bag.onCount(Math.max(0, now - 1));
      else if (event.key === 'Enter') bag.onIs();
      else return;
      if (!/^\d$/.test(event.key)) typed.current = '';
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
}

/** The panels that a key opens: list to get, spilled tray, unknown bolt, what is looked for. */
function useTools(job: OpenJob, wants: readonly WantData[], onGiveUp: (countingId: string) => void) {
  const tray = useTray(job);
  const unknown = useUnknown();
  const lost = useLost(job, onGiveUp);
  const onWant = useWants(job);
  return (id: string): OffPanel | null => {
    switch (id) {
      case 'to get':
        return {
          kind: 'to get',
          arrivals: arrivalsOf(job.view, job.now),
          wants,
          ...onWant,
          onSave: () => saveFile('to-get.csv', new Blob([wantsCsv(wants)], { type: 'text/csv' })),
        };
      case 'tray':
        return { kind: 'tray', ...tray };
      case 'unknown':
        return { kind: 'unknown', ...unknown };
      case 'lost':
        return { kind: 'lost', ...lost };
      default:
        return null;
    }
  };
}

/** What is off, by bag and shelf; a bag is counted at the right. */
export function OffPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus(job);
  const chosen = remember((place) => place.stowId);
  const [counted, setCounted] = useState<number | null>(null);
  const [ask, setAsk] = useState<Question | null>(null);
  const [sending, setSending] = useState<Sending | null>(null);
  const go = remember.getState().go;
  const wants = wantsOf(job.view);
  const groups = offGroups(job.view, job.now);
  const atId = chosen ?? firstPanel(groups, wants);
  const tools = useTools(job, wants, (countingId) => setAsk(writeOff(job, countingId)));
  const panelOf = (id: string): OffPanel | null =>
    tools(id) ?? bagPanel(job, id, { counted, setCounted }, setAsk) ?? partPanel(job, id, setSending);
  const panel = atId === null ? null : panelOf(atId);
  useCountKeys(panel);
  const pick = (id: string) => {
    setCounted(null);
    // A set that is loose on the machine lies nowhere else: it is read where it was logged.
    const loose = job.view.state.fset.find((set) => set.id === id);
    if (loose) go({ screen: 'removal', removalId: loose.removalId });
    else go({ stowId: id });
  };
  return (
    <>
      <OffScreen
        pane={sidePane(job, 'off')}
        status={status}
        summary={offSummary(job.view)}
        groups={groups}
        atId={atId}
        panel={panel}
        toGet={wants.filter(isOpen).length}
        onPick={pick}
        lookedFor={job.view.searches.length}
        onTool={(tool) => go({ stowId: tool })}
      />
      {ask && <AskDialog {...ask} onClose={() => setAsk(null)} />}
      {sending && (
        <SendDialog
          {...sending}
          onSend={(toWhom, date) => sendOut(job, sending.thingId, toWhom, date)}
          onClose={() => setSending(null)}
        />
      )}
    </>
  );
}

const isOpen = (want: WantData): boolean => want.state === 'needed' || want.state === 'ordered';

function removalOf(job: OpenJob, partId: string): string | null {
  return job.view.state.part.find((one) => one.id === partId)?.removalId ?? null;
}
