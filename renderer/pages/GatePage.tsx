import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { useEnter } from '../data/keys.ts';
import { personNamed } from '../data/people.ts';
import { usePeople } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { type GateFact, gateTitle, pointSay, whereToClear } from '../model/gates.ts';
import { lookedAt } from '../model/looked-at.ts';
import { GateScreen } from '../screens/putback/GateScreen.tsx';
import { putback as say } from '../texts/putback.ts';
import { paneOf, useStatus } from './pane.ts';

interface GatePageProps {
  readonly job: OpenJob;
  /** The step before which the gate stands; null = before the job is closed. */
  readonly stepId: string | null;
  /** What holds it now. */
  readonly facts: readonly GateFact[];
  readonly onPass: () => void;
}

/** A check before something is covered, filled, powered, closed: each point needs its own answer, by name and reason. */
export function GatePage({ job, stepId, facts, onPass }: GatePageProps) {
  const status = useStatus(job);
  const people = usePeople().data?.value.person ?? [];
  const personId = remember((place) => place.personId);
  const [passed, setPassed] = useState<ReadonlyMap<string, { fact: GateFact; said: string }>>(new Map());
  const go = remember.getState().go;
  const step = job.view.plan.steps.find((one) => one.id === stepId);
  // What was passed on this visit stays in sight with its reason.
  const shown = [
    ...facts.filter((fact) => !passed.has(fact.key)),
    ...[...passed.values()].map((one) => one.fact),
  ];
  const held = facts.some((fact) => !passed.has(fact.key));
  useEnter(held ? null : onPass);

  const accept = async (fact: GateFact, name: string, why: string) => {
    const who = await personNamed(job.id, people, name);
    if (who === null) return;
    go({ personId: who });
    const done = await send(job.id, (command) =>
      client.finding.accept({
        command,
        jobId: job.id,
        finding: fact.key,
        why,
        ...(fact.coveredBy === null ? {} : { coveredBy: fact.coveredBy }),
      }),
    );
    if (done) setPassed((now) => new Map(now).set(fact.key, { fact, said: say.acceptedBy(name, why) }));
  };
  const clear = (fact: GateFact) => {
    const where = whereToClear(job.view, fact, stepId);
    if (where === null) return;
    if ('stowId' in where) go({ screen: 'off', stowId: where.stowId });
    else go({ stepId: where.stepId });
  };
  const withFact = (key: string, act: (fact: GateFact) => void) => {
    const fact = shown.find((one) => one.key === key);
    if (fact) act(fact);
  };

  return (
    <GateScreen
      pane={paneOf(job, 'putback', 'back', step?.removalId ?? null)}
      status={status}
      title={gateTitle(job.view, stepId)}
      points={shown.map((fact) => ({
        point: { id: fact.key, grave: 'stop', say: pointSay(fact) },
        clear: whereToClear(job.view, fact, stepId),
        accepted: passed.get(fact.key)?.said ?? null,
      }))}
      name={people.find((person) => person.id === personId)?.name ?? ''}
      {...(stepId === null && { lookedAt: lookedAt(job.view) })}
      onList={() => go({ stepId: 'list' })}
      onClear={(key) => withFact(key, clear)}
      onAccept={(key, name, why) => withFact(key, (fact) => void accept(fact, name, why))}
      onPass={onPass}
    />
  );
}
