import { z } from 'zod';

interface Issue {
  readonly path?: readonly PropertyKey[];
  readonly message: string;
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  integer: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  null: 'null',
  undefined: 'nothing',
};
const kindOf = (name: string): string => KINDS[name] ?? name;

/** The commonest complaints in words that say what is missing. */
function plainIssue(message: string): string {
  if (/expected string to have >=1 char/.test(message)) return 'must not be empty';
  if (/expected number, received NaN/.test(message)) return 'must be a number';
  const kind = /expected (\w+), received (\w+)/.exec(message);
  if (kind?.[2] === 'undefined') return `is missing (${kindOf(kind[1] ?? '')})`;
  if (kind) return `must be ${kindOf(kind[1] ?? '')}, got ${kindOf(kind[2] ?? '')}`;
  const option = /expected one of (.*)$/.exec(message);
  if (option) return `must be one of ${(option[1] ?? '').replaceAll('"', '').replaceAll('|', ', ')}`;
  const stranger = /^Unrecognized keys?: (.*)$/.exec(message);
  if (stranger) return `has no ${(stranger[1] ?? '').replaceAll('"', '')}`;
  return message.replace(/^Expected an id made by the program\.$/, 'must be an id made by the program');
}

/** The contract's complaint about an input, in words. */
export function inputFault(issues: readonly Issue[]): { code: string; sentence: string } {
  const words = issues.map(
    (issue) => `${(issue.path ?? []).map(String).join('.') || 'the input'} ${plainIssue(issue.message)}`,
  );
  return { code: 'input', sentence: `Expected an input that fits the operation: ${words.join('; ')}.` };
}

interface Described {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Described[];
  readonly items?: Described;
  readonly properties?: Readonly<Record<string, Described>>;
  readonly required?: readonly string[];
}

function wordsOf(one: Described, deep: boolean): string {
  if (one.const !== undefined) return String(one.const);
  if (one.enum) return `one of ${one.enum.map(String).join(', ')}`;
  if (one.anyOf) return [...new Set(one.anyOf.map((each) => wordsOf(each, deep)))].join(', or ');
  if (one.type === 'array') return one.items && deep ? `a list, each ${wordsOf(one.items, false)}` : 'a list';
  if (one.type === 'object' && one.properties && deep)
    return `an object of ${Object.keys(one.properties).join(', ')}`;
  return kindOf(one.type ?? 'text');
}

/** Made by the command line itself, where it is left out. */
const OWN: ReadonlySet<string> = new Set(['command']);

/** What an operation is given, a field a line; what need not be given comes last. */
export function expectedLines(name: string, schema: z.ZodType): string[] {
  const described = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Described;
  const must = new Set(described.required);
  const fields = Object.entries(described.properties ?? {}).filter(([field]) => !OWN.has(field));
  const line = ([field, one]: [string, Described]) =>
    `  ${field}${must.has(field) ? '' : ' (may be left out)'}: ${wordsOf(one, true)}${field === 'jobId' ? ', or given as --job' : ''}`;
  const sorted = [...fields].sort(([a], [b]) => Number(must.has(b)) - Number(must.has(a)));
  return sorted.length === 0
    ? [`${name} is given nothing.`]
    : [`${name} is given one JSON object:`, ...sorted.map(line)];
}
