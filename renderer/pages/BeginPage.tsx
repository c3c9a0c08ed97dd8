import { useState } from 'react';
import { v7 } from 'uuid';
import type { Row } from '../../core/model/tables.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { personNamed } from '../data/people.ts';
import { usePeople } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { type BeginFields, BeginScreen } from '../screens/begin/BeginScreen.tsx';
import { begin as say } from '../texts/begin.ts';
import type { PointData } from '../ui/Point.tsx';
import { paneOf, useStatus } from './pane.ts';

const CAUTIONS: readonly PointData[] = [
  { id: 'isolate', grave: 'note', say: say.isolate },
  { id: 'manual', grave: 'note', say: say.manual },
];

/** The words about the job as the record has them. */
function keptFields(job: OpenJob): BeginFields {
  const { job: row, person } = job.view.state;
  return {
    job: row.title,
    machine: row.machine,
    complaint: row.complaint,
    owner: person.find((one) => one.id === row.ownerId)?.name ?? '',
    sides: row.sideNames.seenFrom,
  };
}

/** Writes a field that the hand has left, where it was changed. */
async function keepField(
  job: OpenJob,
  people: readonly Row<'person'>[],
  field: keyof BeginFields,
  text: string | undefined,
): Promise<void> {
  if (text === undefined || text === keptFields(job)[field]) return;
  const change = (values: Parameters<typeof client.jobs.change>[0]['values']) =>
    send(job.id, (command) => client.jobs.change({ command, jobId: job.id, values }));
  if (field === 'job') await change(text.trim() === '' ? {} : { title: text.trim() });
  else if (field === 'machine') await change({ machine: text });
  else if (field === 'complaint') await change({ complaint: text });
  else if (field === 'sides')
    await change({ sideNames: { ...job.view.state.job.sideNames, seenFrom: text } });
  else await change({ ownerId: text.trim() === '' ? null : await personNamed(job.id, people, text, 'owns') });
}

/** How the machine is before anyone touches it. */
export function BeginPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus();
  const people = usePeople().data?.value.person ?? [];
  const [typed, setTyped] = useState<Partial<BeginFields>>({});
  const { state } = job.view;
  const fields = { ...keptFields(job), ...typed };
  const make = (table: 'asFound' | 'ready', values: Record<string, unknown>) =>
    void send(job.id, (command) => client.record.make({ command, jobId: job.id, table, values }));
  const drop = (table: 'asFound' | 'ready' | 'isolation', id: string) =>
    void send(job.id, (command) => client.record.remove({ command, jobId: job.id, table, id }));

  const keep = (field: keyof BeginFields) => {
    void keepField(job, people, field, typed[field]).then(() =>
      setTyped(({ [field]: _kept, ...rest }) => rest),
    );
  };

  return (
    <BeginScreen
      pane={paneOf(job, 'begin', 'apart', null, (removalId) =>
        remember.getState().go({ screen: 'removal', removalId }),
      )}
      status={status}
      fields={fields}
      found={state.asFound.map(({ id, kind, text }) => ({ id, kind, text }))}
      ready={state.ready.map(({ id, text, done }) => ({ id, text, done, about: '' }))}
      safe={state.isolation.map(({ id, how, energy, lockOwner }) => ({
        id,
        text: how || energy,
        about: lockOwner || energy,
      }))}
      points={CAUTIONS}
      onField={(field, value) => setTyped((before) => ({ ...before, [field]: value }))}
      onFieldDone={keep}
      onFound={(kind, text) => make('asFound', { kind, text })}
      onDropFound={(id) => drop('asFound', id)}
      onReady={(text) => make('ready', { text })}
      onTick={(id, done) =>
        void send(job.id, (command) =>
          client.record.change({ command, jobId: job.id, table: 'ready', id, values: { done } }),
        )
      }
      onDropReady={(id) => drop('ready', id)}
      onSafe={(text) =>
        void send(job.id, (command) =>
          client.log.add({
            command,
            jobId: job.id,
            text: `made safe: ${text}`,
            removalId: null,
            newRemovalId: v7(),
            did: 'safe',
          }),
        )
      }
      onDropSafe={(id) => drop('isolation', id)}
      onGo={() => remember.getState().go({ screen: 'removal', removalId: null })}
    />
  );
}
