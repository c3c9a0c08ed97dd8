import { parseArgs } from 'node:util';
import { type Answer, type Options, UsageProblem, type Verb, workshopDir, wrongUsage } from './frame.ts';
import { ANSWER_VERBS } from './verbs/answers.ts';
import { AWAY_VERBS } from './verbs/away.ts';
import { DONE_VERB } from './verbs/done.ts';
import { FILE_VERBS } from './verbs/files.ts';
import { BOOK_VERBS } from './verbs/handbook.ts';
import { JOB_VERBS } from './verbs/jobs.ts';
import { NEED_VERBS } from './verbs/needs.ts';
import { OPERATION_VERB } from './verbs/operation.ts';
import { PATTERN_VERBS } from './verbs/pattern.ts';
import { PHOTO_VERBS } from './verbs/photos.ts';
import { PLAN_VERBS } from './verbs/plan.ts';
import { TRAY_VERBS } from './verbs/tray.ts';
import { SHEET_VERB } from './verbs/sheet.ts';
import { WORK_VERBS } from './verbs/work.ts';

/** The command line: the same use cases as the screens, for scripts and for trying things without a window. */

export const VERBS: readonly Verb[] = [
  ...JOB_VERBS,
  ...WORK_VERBS,
  ...AWAY_VERBS,
  ...PLAN_VERBS,
  DONE_VERB,
  ...ANSWER_VERBS,
  ...NEED_VERBS,
  ...FILE_VERBS,
  ...PHOTO_VERBS,
  SHEET_VERB,
  ...TRAY_VERBS,
  ...PATTERN_VERBS,
  OPERATION_VERB,
  ...BOOK_VERBS,
];

function help(): Answer {
  const lines = [
    'everybolt VERB … [--workshop DIR] [--who NAME] [--json]',
    '',
    ...VERBS.flatMap((verb) => [`  ${verb.usage}`, `      ${verb.says}`]),
  ];
  return { code: 0, value: VERBS.map(({ name, usage, says }) => ({ name, usage, says })), lines };
}

/** "--extension -1.5" means a negative figure, which the parser would take for another option. */
function withNegatives(args: readonly string[]): string[] {
  const joined: string[] = [];
  const words: string[] = [];
  for (const arg of args) {
    const before = joined.at(-1);
    if (/^[-\u2212][\d.]/.test(arg) && before !== undefined && /^--[a-z][a-z-]*$/i.test(before))
      joined[joined.length - 1] = `${before}=${arg}`;
    else if (/^[-\u2212][\d.]/.test(arg) && arg !== '--') words.push(arg);
    else joined.push(arg);
  }
  return words.length === 0 ? joined : [...joined, '--', ...words];
}

/** What was wrong with an option, in one sentence. */
function optionFault(message: string): string {
  const name = /'[^']*?(--[a-z-]+)/.exec(message)?.[1] ?? 'an option';
  if (message.startsWith('Unknown option')) return `There is no option ${name} here.`;
  if (/does not take an argument/.test(message)) return `Expected ${name} without a value.`;
  return `Expected a value after ${name}.`;
}

/** Runs one command line and answers; nothing is printed here. */
export async function runCommand(args: readonly string[]): Promise<Answer> {
  const [name, ...rest] = args;
  if (name === undefined || name === 'help' || name === '--help') return help();
  const verb = VERBS.find((one) => one.name === name);
  if (!verb) return wrongUsage(`Expected one of: ${VERBS.map((one) => one.name).join(', ')}; got “${name}”.`);
  try {
    const options = Object.fromEntries([
      ...['workshop', 'who', ...verb.options].map((option) => [option, { type: 'string' as const }]),
      ...['json', ...(verb.switches ?? [])].map((option) => [option, { type: 'boolean' as const }]),
      ...(verb.many ?? []).map((option) => [option, { type: 'string' as const, multiple: true }]),
    ]) as Record<string, { type: 'string' | 'boolean'; multiple?: boolean }>;
    const { values, positionals } = parseArgs({ args: withNegatives(rest), options, allowPositionals: true });
    const parsed: Options = {
      workshop: workshopDir(values['workshop'] as string | undefined),
      flags: Object.fromEntries(
        Object.entries(values).map(([name, value]) => [
          name,
          Array.isArray(value) ? value.join('\n') : value,
        ]),
      ) as Options['flags'],
      words: positionals,
    };
    return await verb.run(parsed);
  } catch (error) {
    if (error instanceof UsageProblem) return wrongUsage(error.message);
    if ((error as { code?: string }).code?.startsWith('ERR_PARSE_ARGS'))
      return wrongUsage(`${optionFault((error as Error).message)} Usage: ${verb.usage}`);
    throw error;
  }
}

if (import.meta.main) {
  const args = process.argv.slice(2);
  const answer = await runCommand(args);
  const json = args.includes('--json');
  const text = json ? JSON.stringify(answer.value ?? null) : answer.lines.join('\n');
  const stream =
    answer.code === 0 || json ? process.stdout : answer.code === 2 ? process.stderr : process.stdout;
  await new Promise<void>((done) => stream.write(`${text}\n`, () => done()));
  process.exitCode = answer.code;
}
