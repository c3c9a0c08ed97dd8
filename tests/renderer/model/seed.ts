import type { JobView } from '../../../core/contract/views.ts';
import type { Workshop } from '../../../core/store/workshop.ts';
import { jobView } from '../../../core/usecases/views.ts';
import { clientOf, command, good, logJob, type TestClient } from '../../support/client.ts';
import { newWorkshop } from '../../support/workshop.ts';

/** A job as a window is given it, and the hand that works on it. */
export interface Seeded {
  readonly workshop: Workshop;
  readonly jobId: string;
  readonly client: TestClient;
  /** The job as it stands now. */
  view(): JobView;
  /** Ticks the removal of this number in the log, or what `pick` finds in the job. */
  tick(what: Parameters<TestClient['tick']['do']>[0]['what'], ids: readonly string[]): Promise<void>;
  removalId(title: string): string;
}

export async function seeded(lines: readonly string[]): Promise<Seeded> {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Winch gearbox', lines);
  const client = clientOf(workshop);
  const view = () => {
    const read = jobView({ workshop, actor: null }, jobId);
    if (!read.ok) throw new Error(read.fault.sentence);
    return read.value;
  };
  return {
    workshop,
    jobId,
    client,
    view,
    tick: async (what, ids) => {
      good(await client.tick.do({ ...command(), jobId, thingIds: [...ids], what }));
    },
    removalId: (title) => {
      const row = view().state.removal.find((one) => one.title.toLowerCase() === title.toLowerCase());
      if (!row) throw new Error(`Expected a removal “${title}”.`);
      return row.id;
    },
  };
}
