import type { JobView } from '../../core/contract/views.ts';
import type { OpenJob } from '../data/job.ts';
import { useEnter } from '../data/keys.ts';
import { remember } from '../data/remember.ts';
import { lookedAt } from '../model/looked-at.ts';
import { gateTitle, isPassed, passedPoints } from '../model/gates.ts';
import { GateScreen } from '../screens/putback/GateScreen.tsx';
import { lookedAt as sayLooked } from '../texts/looked-at.ts';
import { paneOf, useStatus } from './pane.ts';

interface GateSeenPageProps {
  readonly job: OpenJob;
  readonly gate: JobView['plan']['gates'][number];
  /** On to what is at hand. */
  readonly onOn: () => void;
}

/** A check that is passed or that nothing holds any more: who passed which point of it, when and why. */
export function GateSeenPage({ job, gate, onOn }: GateSeenPageProps) {
  const status = useStatus(job);
  const step = job.view.plan.steps.find((one) => one.id === gate.stepId);
  useEnter(onOn);
  return (
    <GateScreen
      seen={isPassed(job.view, gate) ? 'passed' : 'free'}
      pane={paneOf(job, 'putback', 'back', step?.removalId ?? null)}
      status={status}
      title={gateTitle(job.view, gate.stepId)}
      points={passedPoints(job.view, gate, job.now).map((one) => ({
        point: { id: one.id, grave: 'warn', say: [{ strong: one.sentence }] },
        clear: null,
        accepted: one.said,
      }))}
      name=""
      {...(gate.stepId === null && { lookedAt: lookedAt(job.view) })}
      {...(gate.notYet.length > 0 && { free: sayLooked.first(gate.notYet.length) })}
      onList={() => remember.getState().go({ stepId: 'list' })}
      onClear={() => {}}
      onAccept={() => {}}
      onPass={onOn}
    />
  );
}
