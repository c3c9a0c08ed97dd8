import { v7 } from 'uuid';
import { z } from 'zod';
import { contract } from '../../contract/contract.ts';
import {
  type Answer,
  type Client,
  jobIdOf,
  ofReply,
  type Options,
  reading,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';
import { expectedLines } from '../input-words.ts';

/** Names of all operations, such as `record.make`. */
function operationNames(): string[] {
  return Object.entries(contract).flatMap(([group, operations]) =>
    Object.keys(operations).map((name) => `${group}.${name}`),
  );
}

/** What an operation is given; null where it is given nothing, or there is none of that name. */
function schemaOf(name: string): z.ZodType | null {
  const [group = '', operation = ''] = name.split('.');
  const groups: Readonly<Record<string, Readonly<Record<string, Described>>>> = contract;
  const schema = groups[group]?.[operation]?.['~orpc'].inputSchema;
  return schema instanceof z.ZodType ? schema : null;
}

/** What writes the record carries its own id; the contract says which operations do. */
function writes(name: string): boolean {
  const schema = schemaOf(name);
  return schema instanceof z.ZodObject && 'command' in schema.shape;
}

/** Kept or asked for beside the record, in the notes of the program that holds the workshop. */
const BESIDE: ReadonlySet<string> = new Set([
  'workshop.draft',
  'workshop.keepDraft',
  'halt.seen',
  'plan.walk',
  'photo.draft',
  'photo.rolls',
  'photo.tray',
]);

interface Described {
  readonly '~orpc': { readonly inputSchema?: unknown };
}

type Call = (input: unknown) => Promise<Parameters<typeof ofReply>[0]>;

function callOf(client: Client, name: string): Call | null {
  if (!operationNames().includes(name)) return null;
  const [group = '', operation = ''] = name.split('.');
  // The name was found in the contract above; by which of its types it is called is known at run time only.
  const groups = client as unknown as Record<string, Record<string, Call>>;
  return groups[group]?.[operation] ?? null;
}

function parse(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

/** An empty input with what the command line adds to it: an id of its own, and the job that is named. */
function withOwn(name: string, options: Options): Record<string, unknown> {
  return {
    ...(writes(name) ? { command: v7() } : {}),
    ...(typeof options.flags['job'] === 'string' ? { jobId: v7() } : {}),
  };
}

/** Any operation of the contract with its input as JSON: what the screens can do, a script can do. */
export const OPERATION_VERB: Verb = {
  name: 'operation',
  usage: 'operation [NAME] [JSON] [--job ID]',
  says: 'any operation by its name with its input as JSON; without the input, what it is given; without a name, the list of them',
  options: ['job'],
  run: (options): Promise<Answer> | Answer => {
    const [name, typed] = options.words;
    if (name === undefined) return { code: 0, value: operationNames(), lines: operationNames() };
    const schema = schemaOf(name);
    // Left out, it is nothing; where that is not enough, what is expected is said instead of what is wrong with nothing.
    if (typed === undefined && schema && !schema.safeParse(withOwn(name, options)).success)
      return wrongUsage(expectedLines(name, schema).join('\n'));
    const json = typed ?? '{}';
    const input = parse(json);
    if (!input) return wrongUsage(`Expected the input as one JSON object, got: ${json.slice(0, 80)}`);
    // What only reads works whoever holds the workshop.
    const opening = writes(name) || BESIDE.has(name) ? writing : reading;
    return opening(options, async (context, client) => {
      const call = callOf(client, name);
      if (!call) return wrongUsage(`Expected one of: ${operationNames().join(', ')}; got “${name}”.`);
      const full: Record<string, unknown> = { ...input };
      if (typeof options.flags['job'] === 'string') {
        const job = jobIdOf(context, options.flags['job']);
        if (!job.ok) return refusal(job.fault);
        full['jobId'] = job.value;
      }
      if (writes(name)) full['command'] ??= v7();
      return ofReply(await call(full));
    });
  },
};
