import { useEffect, useRef, useState } from 'react';
import type { Row } from '../../core/model/tables.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import { plannedAfter, plannedOf, withCounts } from '../model/pattern.ts';

/** A removal that is only planned: what is counted of it, and the key that says that it is off. */
export function usePlanned(job: OpenJob, current: Row<'removal'> | null) {
  const [counted, setCounted] = useState<ReadonlyMap<string, number>>(new Map());
  // A second press before the record answers must not begin it twice.
  const beginning = useRef<string | null>(null);
  const id = current?.id ?? null;
  useEffect(() => {
    setCounted(new Map());
    beginning.current = null;
  }, [id]);
  const planned = id === null ? null : withCounts(plannedOf(job.view, id), counted);
  const begin = async (removalId: string) => {
    if (beginning.current === removalId) return;
    beginning.current = removalId;
    const found = [...counted].map(([setId, count]) => ({ setId, count }));
    const done = await send(job.id, (command) =>
      client.pattern.begin({ command, jobId: job.id, removalId, found }),
    );
    if (!done) beginning.current = null;
    // The plan is gone once it came true: the next one is at hand.
    else if (planned?.again) remember.getState().go({ removalId: plannedAfter(job.view, removalId) });
  };
  return {
    planned,
    onExpected: (setId: string, count: number) => setCounted(new Map(counted).set(setId, count)),
    onBegin: planned === null || id === null ? null : () => void begin(id),
  };
}
