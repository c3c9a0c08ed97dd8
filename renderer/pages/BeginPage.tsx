import { v7 } from 'uuid';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useEdit, WHEN_LEFT } from '../data/edit.ts';
import type { OpenJob } from '../data/job.ts';
import { useEnter } from '../data/keys.ts';
import { personNamed } from '../data/people.ts';
import { useJobs, usePeople } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { beginLists, CAUTIONS, keptFields, onlyMadeSafe } from '../model/begin.ts';
import { nextPlanned, patternData } from '../model/pattern.ts';
import { type BeginFields, BeginScreen } from '../screens/begin/BeginScreen.tsx';
import { begin as say } from '../texts/begin.ts';
import { paneOf, useStatus } from './pane.ts';

type JobValues = Parameters<typeof client.jobs.change>[0]['values'];

/** The words about the job: kept when the hand rests or leaves the field, whatever key took it away. */
function useFields(job: OpenJob) {
  const people = usePeople().data?.value.person ?? [];
  const kept = keptFields(job.view);
  const change = (values: JobValues) =>
    void send(job.id, (command) => client.jobs.change({ command, jobId: job.id, values }));
  const own = async (name: string) => {
    const ownerId = name.trim() === '' ? null : await personNamed(job.id, people, name, 'owns');
    if (ownerId !== null || name.trim() === '') change({ ownerId });
  };
  const key = (field: keyof BeginFields) => `${job.id}/${field}`;
  const edits = {
    // A job keeps its name until it has another.
    job: useEdit(key('job'), kept.job, (text) => text.trim() !== '' && change({ title: text.trim() })),
    machine: useEdit(key('machine'), kept.machine, (machine) => change({ machine })),
    complaint: useEdit(key('complaint'), kept.complaint, (complaint) => change({ complaint })),
    sides: useEdit(key('sides'), kept.sides, (seenFrom) =>
      change({ sideNames: { ...job.view.state.job.sideNames, seenFrom } }),
    ),
    owner: useEdit(key('owner'), kept.owner, (name) => void own(name), WHEN_LEFT),
  };
  const fields: BeginFields = {
    job: edits.job[0],
    machine: edits.machine[0],
    complaint: edits.complaint[0],
    sides: edits.sides[0],
    owner: edits.owner[0],
  };
  return {
    fields,
    onField: (field: keyof BeginFields, text: string) => edits[field][1](text),
    onFieldDone: (field: keyof BeginFields) => edits[field][2](),
  };
}

/** Jobs in which something came off, the newest first: each may be the pattern of this one. */
function useEarlierJobs(jobId: string): { id: string; title: string }[] {
  const cards = useJobs().data?.value ?? [];
  return cards
    .filter((card) => card.job.id !== jobId && card.depth.off > 0)
    .map(({ job }) => ({ id: job.id, title: [job.title, job.machine].filter(Boolean).join(', ') }));
}

/** How the machine is before anyone touches it. */
export function BeginPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus(job);
  const fields = useFields(job);
  const make = (table: 'asFound' | 'ready', values: Record<string, unknown>) =>
    void send(job.id, (command) => client.record.make({ command, jobId: job.id, table, values }));
  const drop = (table: 'asFound' | 'ready' | 'isolation', id: string) =>
    void send(job.id, (command) => client.record.remove({ command, jobId: job.id, table, id }));
  const dropSafe = (id: string) => {
    const removalId = onlyMadeSafe(job.view, id);
    if (removalId === null) drop('isolation', id);
    else
      void send(job.id, (command) =>
        client.removal.void({ command, jobId: job.id, removalId, phase: 'void', why: say.struckOut }),
      );
  };
  const makeSafe = (text: string) =>
    void send(job.id, (command) =>
      client.log.add({
        command,
        jobId: job.id,
        text: `made safe: ${text}`,
        removalId: null,
        newRemovalId: v7(),
        did: 'safe',
      }),
    );
  const earlier = useEarlierJobs(job.id);
  const onGo = () => remember.getState().go({ screen: 'removal', removalId: nextPlanned(job.view) });
  useEnter(onGo);

  return (
    <BeginScreen
      pane={paneOf(job, 'begin', 'apart', null, (removalId) =>
        remember.getState().go({ screen: 'removal', removalId }),
      )}
      status={status}
      jobId={job.id}
      {...fields}
      {...beginLists(job.view)}
      points={CAUTIONS}
      pattern={patternData(job.view)}
      earlier={earlier}
      onPattern={(fromJobId) =>
        void send(job.id, (command) => client.pattern.use({ command, jobId: job.id, fromJobId }))
      }
      onPlanned={(removalId) => remember.getState().go({ screen: 'removal', removalId })}
      onFound={(kind, text) => make('asFound', { kind, text })}
      onDropFound={(id) => drop('asFound', id)}
      onReady={(text) => make('ready', { text })}
      onTick={(id, done) =>
        void send(job.id, (command) =>
          client.record.change({ command, jobId: job.id, table: 'ready', id, values: { done } }),
        )
      }
      onDropReady={(id) => drop('ready', id)}
      onSafe={makeSafe}
      onDropSafe={dropSafe}
      onGo={onGo}
    />
  );
}
