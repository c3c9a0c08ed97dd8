import { useRef } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useDraft } from '../data/draft.ts';
import type { Reach } from '../../core/contract/answers.ts';
import type { OpenJob } from '../data/job.ts';
import { useEnter } from '../data/keys.ts';
import { useReach, useTouched } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { targetsOf } from '../model/ahead.ts';
import { touchedLines } from '../model/touched.ts';
import { chosenOf, costLines, plannedRows, targetRows, wayRows } from '../model/way-in.ts';
import { ReachScreen } from '../screens/ahead/ReachScreen.tsx';
import { ahead as say } from '../texts/ahead.ts';
import { sidePane, useStatus } from './pane.ts';
import { useScreenKeys } from './use-screen-keys.ts';

/** What was chosen by touch, kept over a reload: ids, parted by a blank. */
function useChosen(job: OpenJob) {
  const [kept, setKept] = useDraft(`${job.id}/reach chosen`);
  const chosen = chosenOf(
    job.view,
    kept.split(' ').filter((id) => id !== ''),
  );
  const ids = chosen.map((one) => one.id);
  const choose = (id: string) =>
    setKept((ids.includes(id) ? ids.filter((one) => one !== id) : [...ids, id]).join(' '));
  return { chosen, ids, choose, clear: () => setKept('') };
}

/** Takes the first of the plan off; a second press before the record answers must not take the next one off as well. */
function useNextOff(job: OpenJob, removalId: string | null): () => Promise<void> {
  const beginning = useRef<string | null>(null);
  return async () => {
    if (removalId === null || beginning.current === removalId) return;
    beginning.current = removalId;
    const done = await send(job.id, (command) =>
      client.pattern.begin({ command, jobId: job.id, removalId, found: [] }),
    );
    if (!done) beginning.current = null;
  };
}

/** Words that nothing is called, what cannot be answered, whether it was touched at all. */
function useSaid(job: OpenJob, typed: string, unknown: readonly string[], reach: Reach | null): string[] {
  const text = typed.split(',')[0]?.trim() ?? '';
  const touched = useTouched(job.id, text).data?.value;
  return [
    // What no job of this machine knows is said once, with the nearest names.
    ...unknown.filter((word) => word !== text || touched?.known !== false).map(say.noneNamed),
    ...(reach !== null && reach.removals.length === 0 && reach.unknown.length === 0 ? [say.reachNone] : []),
    ...(reach?.unknown.map((one) => one.sentence) ?? []),
    ...(touched && text !== '' ? [touched.sentence, ...touchedLines(touched, job.now)] : []),
  ];
}

/** What must come off to reach something, and the plan of it, which is followed here. */
export function ReachPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus(job);
  const [typed, setTyped] = useDraft(`${job.id}/reach`);
  const { chosen, ids, choose, clear } = useChosen(job);
  const named = targetsOf(job.view, typed);
  const wanted = [...new Set([...ids, ...named.ids])];
  const asked = useReach(job.id, wanted).data?.value ?? null;
  const reach = wanted.length > 0 ? asked : null;
  const said = useSaid(job, typed, named.unknown, reach);
  const planned = plannedRows(job.view);
  const { rows, more } = targetRows(job.view, typed);
  const back = () => remember.getState().go({ screen: 'putback', stepId: 'list' });
  const nothing = wanted.length === 0 && named.unknown.length === 0;
  const way = nothing ? null : reach === null ? [] : wayRows(reach);
  const canPlan = reach?.removals.some((one) => one.state !== 'still') ?? false;
  const plan = async () => {
    if (!canPlan) return;
    const made = await send(job.id, (command) =>
      client.plan.comeOff({ command, jobId: job.id, targetIds: wanted }),
    );
    if (made === null) return;
    clear();
    setTyped('');
  };
  const off = useNextOff(job, planned[0]?.id ?? null);
  const take = () => {
    const id = named.ids.at(-1) ?? rows[0]?.id;
    if (id === undefined) return;
    if (!ids.includes(id)) choose(id);
    setTyped('');
  };
  useEnter(way !== null ? () => void plan() : planned.length > 0 ? () => void off() : null);
  useScreenKeys({ Escape: back });
  return (
    <ReachScreen
      pane={sidePane(job, 'reach')}
      status={status}
      typed={typed}
      targets={rows}
      more={more}
      chosen={chosen}
      way={way}
      cost={reach === null ? [] : costLines(job.view, reach)}
      said={said}
      planned={planned}
      canPlan={canPlan}
      onType={setTyped}
      onChoose={choose}
      onTake={take}
      onPlan={() => void plan()}
      onOff={() => void off()}
      onBack={back}
    />
  );
}
