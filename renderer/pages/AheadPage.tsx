import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import { aheadData } from '../model/putback.ts';
import { AheadScreen } from '../screens/putback/AheadScreen.tsx';
import { putback as say } from '../texts/putback.ts';
import { AskDialog, type AskProps } from '../ui/AskDialog.tsx';
import { paneOf, useStatus } from './pane.ts';

/** The whole way back as a list. */
export function AheadPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus();
  const [ask, setAsk] = useState<Omit<AskProps, 'onClose'> | null>(null);
  const go = remember.getState().go;
  const pickRemoval = (removalId: string) => {
    const step = job.view.plan.steps.find((one) => one.removalId === removalId);
    if (step) go({ stepId: step.id });
  };
  return (
    <>
      <AheadScreen
        pane={paneOf(job, 'putback', 'back', null, pickRemoval)}
        status={status}
        {...aheadData(job.view)}
        onPick={(stepId) => go({ stepId })}
        onNext={() => go({ stepId: null })}
        onOwnStep={() =>
          setAsk({
            title: say.ownTitle,
            label: say.ownAsk,
            example: say.ownExample,
            go: say.ownGo,
            onAnswer: (title) =>
              void send(job.id, (command) =>
                client.record.make({ command, jobId: job.id, table: 'ownStep', values: { title } }),
              ),
          })
        }
        onNotInLog={() =>
          setAsk({
            title: say.logTitle,
            label: say.logAsk,
            example: say.logExample,
            go: say.logGo,
            onAnswer: (text) =>
              void send(job.id, (command) =>
                client.log.add({ command, jobId: job.id, text, removalId: null }),
              ),
          })
        }
      />
      {ask && <AskDialog {...ask} onClose={() => setAsk(null)} />}
    </>
  );
}
