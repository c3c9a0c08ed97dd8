import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { useEnter, usePlainKeys } from '../data/keys.ts';
import { remember } from '../data/remember.ts';
import { stopsOfJob } from '../model/gates.ts';
import { aheadData } from '../model/putback.ts';
import { AheadScreen } from '../screens/putback/AheadScreen.tsx';
import { ahead as sayAhead } from '../texts/ahead.ts';
import { plannedRows } from '../model/way-in.ts';
import { putback as say } from '../texts/putback.ts';
import { AskDialog, type AskProps } from '../ui/AskDialog.tsx';
import { AheadMore } from './AheadMore.tsx';
import { GatePage } from './GatePage.tsx';
import { paneOf, useStatus } from './pane.ts';
import { answerPoint } from './putback-deeds.ts';
import { SheetDialog } from './SheetDialog.tsx';

type Question = Omit<AskProps, 'onClose'>;

const ownStep = (job: OpenJob): Question => ({
  draft: `${job.id}/own step`,
  title: say.ownTitle,
  label: say.ownAsk,
  example: say.ownExample,
  go: say.ownGo,
  onAnswer: (title) =>
    void send(job.id, (command) =>
      client.record.make({ command, jobId: job.id, table: 'ownStep', values: { title } }),
    ),
});

const notInLog = (job: OpenJob): Question => ({
  draft: `${job.id}/not in log`,
  title: say.logTitle,
  label: say.logAsk,
  example: say.logExample,
  go: say.logGo,
  onAnswer: (text) =>
    void send(job.id, (command) => client.log.add({ command, jobId: job.id, text, removalId: null })),
});

function setPhase(job: OpenJob, phase: 'open' | 'closed'): void {
  void send(job.id, (command) =>
    client.jobs.close({ command, jobId: job.id, phase, recheckDue: job.view.state.job.recheckDue }),
  );
}

/** The whole way back as a list, and its end. */
export function AheadPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus(job);
  const [ask, setAsk] = useState<Question | null>(null);
  const [atGate, setAtGate] = useState(false);
  const [printing, setPrinting] = useState(false);
  const go = remember.getState().go;
  const data = aheadData(job.view, job.now);
  const stops = stopsOfJob(job.view);
  const toDays = () => go({ screen: 'days' });
  const toReach = () => go({ screen: 'reach' });
  const onNext = () => go({ stepId: null });
  const onClose = () => {
    if (stops.length > 0) setAtGate(true);
    else setPhase(job, 'closed');
  };
  const pass = () => {
    setAtGate(false);
    setPhase(job, 'closed');
  };
  usePlainKeys(atGate ? {} : { r: toReach, d: toDays });
  useEnter(atGate ? null : data.next !== null ? onNext : data.close === 'open' ? onClose : null);
  if (atGate) return <GatePage job={job} stepId={null} facts={stops} onPass={pass} />;
  return (
    <>
      <AheadScreen
        pane={paneOf(job, 'putback', 'back', null)}
        status={status}
        {...data}
        timeLeft={job.view.plan.depth.left > 0 ? sayAhead.timeLeft(job.view.timeLeft.sentence) : ''}
        more={<AheadMore job={job} />}
        // Two points may have been passed on one step: each row has a number of its own behind its step's id.
        onPick={(row) => go({ stepId: row.split('#')[0] ?? row })}
        onAnswer={(key, answer) => answerPoint(job, key, answer)}
        onNext={onNext}
        planned={plannedRows(job.view).length}
        onReach={toReach}
        onDays={toDays}
        onOwnStep={() => setAsk(ownStep(job))}
        onNotInLog={() => setAsk(notInLog(job))}
        onPrint={() => setPrinting(true)}
        onClose={onClose}
        onReopen={() => setPhase(job, 'open')}
      />
      {printing && <SheetDialog job={job} step={null} onClose={() => setPrinting(false)} />}
      {ask && <AskDialog {...ask} onClose={() => setAsk(null)} />}
    </>
  );
}
