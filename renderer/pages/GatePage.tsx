import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { personNamed } from '../data/people.ts';
import { usePeople } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { type PlanStep, pointOf, stopsOf } from '../model/putback.ts';
import { day } from '../model/time.ts';
import { GateScreen } from '../screens/putback/GateScreen.tsx';
import { putback as say } from '../texts/putback.ts';
import { paneOf, useStatus } from './pane.ts';

/** A step that would cover something open: each point needs its own answer, by name and with a reason. */
export function GatePage({ job, step }: { readonly job: OpenJob; readonly step: PlanStep }) {
  const status = useStatus();
  const people = usePeople().data?.value.person ?? [];
  const go = remember.getState().go;
  const { plan } = job.view;
  const kind = plan.gates.find((gate) => gate.stepId === step.id)?.kind ?? 'covering';
  const stepTitle = (stepId: string | null) => plan.steps.find((one) => one.id === stepId)?.title ?? '';
  const accept = async (finding: string, name: string, why: string) => {
    const personId = await personNamed(job.id, people, name);
    if (personId === null) return;
    go({ personId });
    await send(job.id, (command) => client.finding.accept({ command, jobId: job.id, finding, why }));
  };
  const points = stopsOf(job.view, step).map((finding) => ({
    point: pointOf(finding),
    clear: finding.stepId === null ? null : { label: say.goTo(stepTitle(finding.stepId)) },
    accepted:
      finding.accepted === null
        ? null
        : say.acceptedBy(finding.accepted.why, day(finding.accepted.at, job.now)),
  }));
  return (
    <GateScreen
      pane={paneOf(job, 'putback', 'back', step.removalId, (removalId) => {
        const other = plan.steps.find((one) => one.removalId === removalId);
        if (other) go({ stepId: other.id });
      })}
      status={status}
      title={say.gates[kind]}
      points={points}
      onClear={(key) => {
        const finding = plan.findings.find((one) => one.key === key);
        if (finding?.stepId) go({ stepId: finding.stepId });
      }}
      onAccept={(key, name, why) => void accept(key, name, why)}
      onPass={() => go({ stepId: step.id })}
    />
  );
}
