import type { TrayRow } from '../../../core/contract/tray.ts';
import type { JobState } from '../../../core/model/tables.ts';
import { clientOf, logJob, stateOf } from '../../support/client.ts';
import { newWorkshop } from '../../support/workshop.ts';

/** A row of a tray with the values given. */
export const row = (n: number, values: Partial<TrayRow>): TrayRow => ({
  row: n,
  count: '1',
  thread: '',
  diameter: '',
  pitch: '',
  length: '',
  tolerance: '',
  head: '',
  kind: '',
  note: '',
  ...values,
});

const LINES = [
  'pump cover, 4 M8x25 hex 13, bag 1',
  'side cover, 6 M8x30 hex 13, bag 2',
  'bearing cap 1, own place, 2 M10x1.5x40 hex 16, class 10.9, bag 3',
  'flange, 3 M10x1.5x40 hex 16, class 8.8, bag 4',
  'guard, 4 M6x16 hex 10, 4 washers, bag 5',
];

/** A workshop with one job of these lines. */
export async function bench(lines: readonly string[] = LINES) {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Gear pump', lines);
  const client = clientOf(workshop);
  const state = () => stateOf(workshop, jobId);
  const bag = (label: string) => state().stow.find((stow) => stow.label === label)?.id ?? '';
  return { workshop, jobId, client, state, bag };
}

/** How many pieces lie in a bag by the books. */
export const inBags = (state: JobState, stowId: string): number =>
  state.move.reduce(
    (sum, move) =>
      sum + (move.dstStowId === stowId ? move.qty : 0) - (move.srcStowId === stowId ? move.qty : 0),
    0,
  );
