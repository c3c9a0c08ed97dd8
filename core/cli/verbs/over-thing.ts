import { v7 } from 'uuid';
import type { JobState } from '../../model/tables.ts';
import { type Client, ofReply, type Options, refusal, type Verb, wrongUsage } from '../frame.ts';
import { targetOf } from '../target.ts';
import { inJob, text } from './in-job.ts';

/** What is wrong with a count or a day that was typed; null = nothing. */
function problem(options: Options): string | null {
  const [qty, due] = [text(options, 'qty'), text(options, 'due')];
  if (qty !== undefined && !/^[1-9]\d*$/.test(qty)) return `Expected --qty as a whole number, got “${qty}”.`;
  if (due !== undefined && Number.isNaN(Date.parse(due)))
    return `Expected --due as a day such as 2026-11-30, got “${due}”.`;
  return null;
}

type Reply = Parameters<typeof ofReply>[0];
/** Does it to the thing, or answers with what is in the way. */
type Call = (
  client: Client,
  input: { command: string; jobId: string; thingId: string },
  options: Options,
  state: JobState,
) => Promise<Reply> | Reply;

/** A verb over one thing of the job; `must` names the options that it cannot do without. */
export function overThing(
  name: string,
  usage: string,
  says: string,
  call: Call,
  more: { readonly options?: readonly string[]; readonly switches?: readonly string[] } = {},
  must: readonly string[] = [],
): Verb {
  return {
    name,
    usage,
    says,
    options: ['job', 'why', ...(more.options ?? [])],
    switches: more.switches ?? [],
    run: (options) => {
      const typed = options.words.join(' ').trim();
      if (typed === '')
        return wrongUsage(`Expected a number such as 4 or 4/1, a name or an id. Usage: ${usage}`);
      const lacks = must.find((option) => (text(options, option) ?? '').trim() === '');
      if (lacks !== undefined) return wrongUsage(`Expected --${lacks}. Usage: ${usage}`);
      const bad = problem(options);
      if (bad !== null) return wrongUsage(bad);
      return inJob(options, async ({ id, state, client }) => {
        const target = targetOf(state(), typed);
        if (!target.ok) return refusal(target.fault);
        const input = { command: v7(), jobId: id, thingId: target.value };
        return ofReply(await call(client, input, options, state()));
      });
    },
  };
}
