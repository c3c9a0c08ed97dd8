import { v7 } from 'uuid';
import { blank } from '../model/blank.ts';
import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { type Context, inJob, inWorkshop, type JobInput, type Reply } from './frame.ts';

type JobValues = { readonly [K in keyof Row<'job'>]?: Row<'job'>[K] | undefined };

function defined(values: JobValues | undefined): Partial<Row<'job'>> {
  return Object.fromEntries(
    Object.entries(values ?? {}).filter(([, value]) => value !== undefined),
  ) as Partial<Row<'job'>>;
}

/** Starts a job. The chain of its journal begins here. */
export function jobAdd(
  context: Context,
  input: { command: string; id?: string | undefined; title: string; values?: JobValues | undefined },
): Reply<{ id: string; said: string }> {
  const id = input.id ?? v7();
  return inWorkshop(context, 'jobs.add', { command: input.command, chain: id }, (writer, at) => {
    if (writer.get('job', id)) return refuse('refused', 'Expected a new job, but there is one with this id.');
    writer.put(
      'job',
      blank('job', id, '', { ...defined(input.values), title: input.title.trim(), createdAt: at }),
    );
    return ok({ id, said: `Job “${input.title.trim()}” is started.` });
  });
}

export function jobChange(
  context: Context,
  input: JobInput & { values: JobValues },
): Reply<{ said: string }> {
  return inJob(context, 'jobs.change', input, ({ writer, state }) => {
    writer.put('job', { ...state.job, ...defined(input.values) });
    return ok({ said: 'Kept.' });
  });
}
