import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useDraft } from '../data/draft.ts';
import type { OpenJob } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { useTrayMatch, useWhose } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import {
  boltHits,
  insideOf,
  keptTray,
  measureOf,
  NO_MEASURE,
  NO_TRAY,
  rowOf,
  searchesOf,
  stowNamed,
  trayAnswer,
  trayBags,
  type TrayDraft,
  trayDraft,
  trayRows,
  withMeasured,
  withTable,
} from '../model/tray.ts';
import { spreadLine } from '../model/tray-line.ts';
import type { LostPanelProps } from '../screens/off/LostPanel.tsx';
import type { MeasureData } from '../screens/off/MeasureForm.tsx';
import type { TrayPanelProps } from '../screens/off/TrayPanel.tsx';
import type { UnknownPanelProps } from '../screens/off/UnknownPanel.tsx';

const isEmpty = (measure: MeasureData): boolean =>
  measure.thread === '' && measure.length === '' && measure.head === '' && measure.pitch === '';

/** Fields that survive a reload, as one text. */
function useMeasure(key: string): [MeasureData, (measure: MeasureData) => void] {
  const [text, setText] = useDraft(key);
  const kept = (): MeasureData => {
    try {
      return { ...NO_MEASURE, ...(JSON.parse(text) as Partial<MeasureData>) };
    } catch {
      return NO_MEASURE;
    }
  };
  return [text === '' ? NO_MEASURE : kept(), (measure) => setText(JSON.stringify(measure))];
}

/** Books a tray as sorted; what was done, or null where it was refused and said. */
async function book(
  jobId: string,
  tray: Omit<Parameters<typeof client.tray.accept>[0], 'command' | 'jobId'>,
): Promise<string | null> {
  const booked = await send(jobId, (command) => client.tray.accept({ command, jobId, ...tray }));
  return booked ? booked.said : null;
}

/** The spilled tray: listed here, matched by the host as it is listed, booked in one. */
export function useTray(job: OpenJob): TrayPanelProps {
  const [text, setText] = useDraft(`tray/${job.id}`);
  const [measure, setMeasure] = useMeasure(`tray/${job.id}/fields`);
  const draft = trayDraft(text);
  const change = (values: Partial<TrayDraft>) => setText(keptTray({ ...draft, ...values }));
  const from = draft.from.filter((id) => job.view.state.stow.some((stow) => stow.id === id));
  const tray = { rows: [...draft.rows], unit: draft.unit, from };
  const matched = useTrayMatch(job.id, tray);
  const answer = draft.rows.length > 0 ? (matched.data?.value ?? null) : null;
  const without = (row: number) => draft.rows.filter((one) => one.row !== row);

  // A row that cannot be read is listed all the same, with what is wrong with it.
  const onAdd = () => {
    if (isEmpty(measure) && measure.count === '') return;
    change({ rows: withMeasured(draft, spreadLine(measure)) });
    setMeasure({ ...NO_MEASURE, kind: measure.kind, tolerance: measure.tolerance });
  };
  const onFile = async (table: string) => {
    const read = await client.tray.read({ text: table, unit: draft.unit });
    if (!read.ok) journal.getState().refuse(read.fault.sentence);
    else change(withTable(draft, read.value.rows, read.value.said));
  };
  const onBook = async () => {
    const { unit, into, doubtful } = draft;
    const said = await book(job.id, { ...tray, into: stowNamed(into), doubtful });
    if (said !== null) setText(keptTray({ ...NO_TRAY, unit, told: [said] }));
  };
  return {
    form: {
      measure,
      unit: draft.unit,
      refused: null,
      onAdd,
      onMeasure: setMeasure,
      onUnit: (unit) => change({ unit }),
    },
    rows: trayRows(draft, answer),
    told: draft.told,
    answer: answer && trayAnswer(answer),
    bags: trayBags(job.view, from),
    into: draft.into,
    doubtful: draft.doubtful,
    onFile: (table) => void onFile(table),
    onMend: (row) => {
      const found = draft.rows.find((one) => one.row === row);
      if (!found) return;
      setMeasure(measureOf(found));
      change({ rows: without(row) });
    },
    onDrop: (row) => change({ rows: without(row) }),
    onClear: () => change({ rows: [], told: [] }),
    onSpilled: (stowId, spilled) =>
      change({ from: spilled ? [...from, stowId] : from.filter((id) => id !== stowId) }),
    onInto: (into) => change({ into }),
    onDoubtful: (doubtful) => change({ doubtful }),
    onBook: () => void onBook(),
  };
}

/** A bolt from the floor: asked as it is measured. */
export function useUnknown(): UnknownPanelProps {
  const [measure, setMeasure] = useMeasure('unknown bolt');
  const [unit, setUnit] = useState<'mm' | 'in'>('mm');
  const row = rowOf({ ...spreadLine({ ...measure, count: '' }), count: '1' }, 1);
  const asked = useWhose(isEmpty(measure) ? null : { row, unit });
  const reply = isEmpty(measure) ? null : (asked.data ?? null);
  return {
    form: {
      measure,
      unit,
      refused: reply?.ok === false ? reply.fault.sentence : null,
      onMeasure: setMeasure,
      onUnit: setUnit,
    },
    answer: reply?.ok ? boltHits(reply.value) : null,
    onGo: ({ jobId, removalId }) => remember.getState().go({ jobId, screen: 'removal', removalId }),
  };
}

/** What is looked for, and a search for what has no row in the job. */
export function useLost(job: OpenJob, onGiveUp: (countingId: string) => void): LostPanelProps {
  const [what, setWhat] = useDraft(`lost/${job.id}`);
  const [count, setCount] = useState('');
  const onLook = async () => {
    const qty = count.trim() === '' ? 1 : Number(count);
    if (!Number.isInteger(qty) || qty < 1) {
      journal.getState().refuse(`Expected a whole number of pieces, got “${count}”.`);
      return;
    }
    const done = await send(job.id, (command) =>
      client.item.lost({ command, jobId: job.id, what, qty, thingId: null, note: '' }),
    );
    if (!done) return;
    setWhat('');
    setCount('');
  };
  return {
    searches: searchesOf(job.view),
    inside: insideOf(job.view),
    what,
    count,
    onWhat: setWhat,
    onCount: setCount,
    onLook: () => {
      if (what.trim() !== '') void onLook();
    },
    onMissing: (thingId) =>
      void send(job.id, (command) =>
        client.piece.miss({ command, jobId: job.id, thingId, qty: 1, note: '' }),
      ),
    onFound: (countingId) =>
      void send(job.id, (command) => client.piece.found({ command, jobId: job.id, countingId, where: '' })),
    onGiveUp,
  };
}
