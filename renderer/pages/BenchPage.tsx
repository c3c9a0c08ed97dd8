import { generateKeyBetween } from 'fractional-indexing';
import { useEffect, useState } from 'react';
import type { Row } from '../../core/model/tables.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { type OpenJob, undo } from '../data/job.ts';
import { usePeople } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { benchGroups, benchTimes, type BenchGroup, logChoices, removalFields } from '../model/bench.ts';
import { benchHoles, holeFields } from '../model/bench-holes.ts';
import { thingFields } from '../model/bench-thing.ts';
import { logOf } from '../model/line.ts';
import type { ActionsProps } from '../screens/bench/Actions.tsx';
import { type AtBench, BenchScreen } from '../screens/bench/BenchScreen.tsx';
import { MergeDialog } from '../screens/bench/MergeDialog.tsx';
import { SplitDialog } from '../screens/bench/SplitDialog.tsx';
import { bench as say } from '../texts/bench.ts';
import { removal as sayRemoval } from '../texts/removal.ts';
import { AskDialog } from '../ui/AskDialog.tsx';
import { sendWrite } from './bench-writes.ts';
import { OtherSide } from './OtherSide.tsx';
import { paneOf, pickRemoval, useStatus } from './pane.ts';
import { useReorder } from './use-reorder.tsx';
import { useScreenKeys } from './use-screen-keys.ts';

type Removal = Row<'removal'>;

/** The order of what was done in a removal. */
function actionsOf(job: OpenJob, removalId: string): ActionsProps {
  const rows = job.view.state.action
    .filter((one) => one.removalId === removalId)
    .sort((a, b) => (a.ord < b.ord ? -1 : 1));
  return {
    draft: `${removalId}/action`,
    actions: rows.map(({ id, what }) => ({ id, what })),
    onAdd: (what) =>
      void send(job.id, (command) =>
        client.record.make({ command, jobId: job.id, table: 'action', values: { removalId, what } }),
      ),
    onMove: (id, by) => {
      const at = rows.findIndex((one) => one.id === id);
      const [low, high] = by === -1 ? [rows[at - 2], rows[at - 1]] : [rows[at + 1], rows[at + 2]];
      const ord = generateKeyBetween(low?.ord ?? null, high?.ord ?? null);
      void send(job.id, (command) =>
        client.record.change({ command, jobId: job.id, table: 'action', id, values: { ord } }),
      );
    },
    onDrop: (id) =>
      void send(job.id, (command) => client.record.remove({ command, jobId: job.id, table: 'action', id })),
  };
}

/** What stands on the sheet: the removal itself, or the thing touched in its list. */
function atBench(
  job: OpenJob,
  removal: Removal,
  found: { group: BenchGroup; name: string; id: string } | null,
  holes: { chosen: readonly string[]; setChosen: (ids: readonly string[]) => void },
): AtBench {
  const { view } = job;
  if (found === null)
    return {
      id: removal.id,
      name: removal.title || sayRemoval.untitled,
      fields: removalFields(view, removal),
      holes: null,
      whole: { actions: actionsOf(job, removal.id), times: benchTimes(view, removal.id, job.now) },
    };
  const { id, group } = found;
  const set = group.table === 'fset' ? view.state.fset.find((one) => one.id === id) : undefined;
  const fields = thingFields(view, group.table, id);
  return {
    id,
    name: found.name,
    fields,
    holes: set
      ? {
          holes: benchHoles(view, set),
          after: fields.findIndex((field) => /\/bag$/.test(field.id)) + 1,
          chosen: holes.chosen,
          fields: holeFields(view, set, holes.chosen),
          onChoose: holes.setChosen,
        }
      : null,
    whole: null,
  };
}

type Asked = 'split' | 'merge' | 'void' | 'other side' | null;

/** The bench needs a removal; without one the log is still empty. */
export function BenchPage({ job }: { readonly job: OpenJob }) {
  const removalId = remember((place) => place.removalId);
  const log = logOf(job.view);
  const removal = log.find((one) => one.id === removalId) ?? log.at(-1) ?? null;
  useEffect(() => {
    if (removal === null) remember.getState().go({ screen: 'removal' });
  }, [removal]);
  return removal === null ? null : (
    <Bench key={removal.id} job={job} removal={removal} number={log.indexOf(removal) + 1} />
  );
}

interface BenchProps {
  readonly job: OpenJob;
  readonly removal: Removal;
  readonly number: number;
}

function Bench({ job, removal, number }: BenchProps) {
  const status = useStatus(job, true);
  const people = usePeople().data?.value.person ?? [];
  const [pickedId, setPickedId] = useState<string | null>(null);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [asked, setAsked] = useState<Asked>(null);
  const reorder = useReorder(job);
  const groups = benchGroups(job.view, removal.id);
  const found =
    groups
      .flatMap((group) => group.rows.map((row) => ({ group, id: row.id, name: row.name })))
      .find((one) => one.id === pickedId) ?? null;
  const pick = (id: string) => {
    setPickedId(id);
    setChosen([]);
  };
  const onMove = (by: -1 | 1) => reorder.step(removal.id, by);
  const onBack = () => remember.getState().go({ screen: 'removal', removalId: removal.id });
  useScreenKeys({
    'Alt+KeyB': onBack,
    'Alt+ArrowUp': () => onMove(-1),
    'Alt+ArrowDown': () => onMove(1),
    'Alt+KeyR': () => setAsked('other side'),
  });
  return (
    <>
      <BenchScreen
        pane={{ ...paneOf(job, 'bench', 'apart', removal.id, pickRemoval), onMove: reorder.move }}
        status={status}
        number={number}
        total={logOf(job.view).length}
        title={removal.title}
        groups={groups}
        at={atBench(job, removal, found, { chosen, setChosen })}
        removalId={removal.id}
        canUndo={job.view.history.undo !== null}
        onPick={pick}
        onWrite={(write) => void sendWrite(job, people, write)}
        onRemove={() => found && takeOut(job, found.group, found.id)}
        onMove={onMove}
        onSplit={() => setAsked('split')}
        onMerge={() => setAsked('merge')}
        onOtherSide={() => setAsked('other side')}
        onVoid={() => setAsked('void')}
        onUndo={() => undo(job.id)}
        onBack={onBack}
      />
      {reorder.dialog}
      <Question job={job} removal={removal} groups={groups} asked={asked} onClose={() => setAsked(null)} />
    </>
  );
}

function takeOut(job: OpenJob, group: BenchGroup, id: string): void {
  void send(job.id, (command) => client.record.remove({ command, jobId: job.id, table: group.table, id }));
}

interface QuestionProps {
  readonly job: OpenJob;
  readonly removal: Removal;
  readonly groups: readonly BenchGroup[];
  readonly asked: Asked;
  readonly onClose: () => void;
}

/** What the keys under the list ask before they do it. */
function Question({ job, removal, groups, asked, onClose }: QuestionProps) {
  const base = (command: string) => ({ command, jobId: job.id });
  if (asked === 'other side') return <OtherSide job={job} removalId={removal.id} onClose={onClose} />;
  if (asked === 'split')
    return (
      <SplitDialog
        draft={removal.id}
        groups={groups}
        onClose={onClose}
        onSplit={(thingIds, title) =>
          void send(job.id, (command) =>
            client.removal.split({ ...base(command), removalId: removal.id, thingIds: [...thingIds], title }),
          )
        }
      />
    );
  if (asked === 'merge')
    return (
      <MergeDialog
        choices={logChoices(job.view).filter((one) => one.id !== removal.id)}
        onClose={onClose}
        onMerge={(fromId) =>
          void send(job.id, (command) =>
            client.removal.merge({ ...base(command), intoId: removal.id, fromId }),
          )
        }
      />
    );
  if (asked === 'void')
    return (
      <AskDialog
        draft={`${removal.id}/void`}
        title={say.voidTitle}
        label={say.voidAsk}
        example={say.voidExample}
        go={say.voidGo}
        onClose={onClose}
        onAnswer={(why) =>
          void send(job.id, (command) =>
            client.removal.void({ ...base(command), removalId: removal.id, phase: 'void', why }),
          )
        }
      />
    );
  return null;
}
