import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useDraft } from '../data/draft.ts';
import type { OpenJob } from '../data/job.ts';
import { useEnter } from '../data/keys.ts';
import { personNamed } from '../data/people.ts';
import { usePeople } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { stopGroups } from '../model/stopwork.ts';
import { clock, day } from '../model/time.ts';
import { StopWorkScreen, type StopWorkScreenProps } from '../screens/stopwork/StopWorkScreen.tsx';
import { sidePane, useStatus } from './pane.ts';

function standsOf({ view }: OpenJob): StopWorkScreenProps['stands'] {
  if (view.state.job.phase === 'closed') return 'closed';
  const { off, left } = view.plan.depth;
  if (off === 0) return 'begun';
  return left === 0 ? 'back' : 'apart';
}

/** Stop work: what whoever comes next must see first. */
export function StopWorkPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus(job);
  const personId = remember((place) => place.personId);
  const people = usePeople().data?.value.person ?? [];
  const [note, setNote] = useDraft(`halt/${job.id}`);
  const [name, setName] = useDraft('name');
  const go = remember.getState().go;
  const groups = stopGroups(job.view);
  const known = people.find((person) => person.id === personId)?.name ?? '';
  const shown = name === '' ? known : name;
  const stop = async () => {
    if (shown.trim() !== '') {
      const id = await personNamed(job.id, people, shown);
      if (id === null) return;
      go({ personId: id });
    }
    const made = await send(job.id, (command) =>
      client.halt.add({ command, jobId: job.id, note: note.trim() }),
    );
    if (!made) return;
    setNote('');
    go({ screen: 'jobs', jobId: null });
  };
  const stands = standsOf(job);
  useEnter(stands === 'closed' ? null : () => void stop());
  return (
    <StopWorkScreen
      pane={sidePane(job, 'stopwork')}
      status={status}
      machine={job.view.state.job.machine || job.view.state.job.title}
      stands={stands}
      count={groups.filter((one) => one.group !== 'uncounted').reduce((sum, one) => sum + one.rows.length, 0)}
      groups={groups}
      note={note}
      name={shown}
      when={`${day(job.now, job.now)}, ${clock(job.now)}`}
      onPick={(id) =>
        job.view.state.removal.some((removal) => removal.id === id)
          ? go({ screen: 'removal', removalId: id })
          : go({ screen: 'off', stowId: id })
      }
      onNote={setNote}
      onName={setName}
      onPrint={() => window.print()}
      onStop={() => void stop()}
      onBack={() => go({ screen: job.view.plan.depth.back > 0 ? 'putback' : 'removal' })}
    />
  );
}
