import { useEffect, useRef } from 'react';
import type { StandingPoint } from '../../core/model/result.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import type { Joint } from '../model/joint.ts';
import type { PlanStep } from '../model/putback.ts';

/**
 * Walking a joint: the lit hole through its round, or all that lag behind through one. Each is one command, so one undo.
 * `closing` asks first for what is still in an opening.
 */
export function useRoundDeeds(
  job: OpenJob,
  joint: Joint,
  step: PlanStep,
  onStop: (points: readonly StandingPoint[], again: () => void) => void,
  closing: (run: () => void) => void,
) {
  // A second press before the reply would send the same hole again, and be refused for it.
  const sent = useRef(false);
  const { nextId, nextRound } = joint;
  useEffect(() => {
    sent.current = false;
  }, [nextId, nextRound]);
  const through = (holeIds: readonly string[], round: string): void => {
    if (holeIds.length === 0 || sent.current) return;
    sent.current = true;
    void send(
      job.id,
      (command) => client.tick.round({ command, jobId: job.id, holeIds: [...holeIds], round }),
      {
        onStopped: (points) => onStop(points, () => through(holeIds, round)),
        tick: { thingIds: holeIds, round },
      },
    ).then((done) => {
      if (done === null) sent.current = false;
    });
  };
  const done = step.state === 'done' && nextRound !== 'once around';
  return {
    advance: nextId === null || done ? null : () => closing(() => through([nextId], nextRound)),
    /** The round at hand: all holes are through it. One to come: all are through what lies before it. */
    toRound: (name: string): void => {
      const index = joint.rounds.findIndex((round) => round.id === name);
      const last = joint.rounds[index]?.state === 'now' ? joint.rounds[index] : joint.rounds[index - 1];
      if (last !== undefined) closing(() => through(joint.lagging(last.id), last.id));
    },
  };
}
