import { v7 } from 'uuid';
import { type Answer, jobIdOf, type Options, refusal, type Verb, writing, wrongUsage } from '../frame.ts';
import { HANDBOOK_VERBS, type HandbookVerb, type VerbAnswer } from '../handbook/index.ts';

/** The handbook's verbs as the command line has them: pure, but for a ring that is put on a job's list to get. */

const usageOf = (verb: HandbookVerb): string =>
  `${verb.name} ${[...verb.options.map((option) => `[--${option.name} …]`), ...(verb.name === 'oring' ? ['[--to-get COUNT --job JOB]'] : [])].join(' ')}`;

function answerOf(answer: VerbAnswer): Answer {
  if (answer.ok)
    // Findings of stop or warn count like those of every other verb.
    return { code: (answer.findings ?? 0) > 0 ? 1 : 0, value: answer.value, lines: answer.text };
  const code = answer.code.startsWith('usage.') ? 2 : 1;
  return {
    code,
    value: { ok: false, fault: { code: answer.code, sentence: answer.sentence } },
    lines: [answer.sentence],
  };
}

function asked(verb: HandbookVerb, { flags, words }: Options): VerbAnswer | Answer {
  const own = new Set(verb.options.flatMap((option) => [option.name, ...(option.also ?? [])]));
  const typed = Object.fromEntries(
    Object.entries(flags).filter(
      (pair): pair is [string, string] => typeof pair[1] === 'string' && own.has(pair[0]),
    ),
  );
  const spare = words.join(' ');
  if (spare === '') return verb.run(typed);
  if (verb.word === undefined || typed[verb.word] !== undefined)
    return wrongUsage(`Expected only options after ${verb.name}, got “${spare}”. Usage: ${usageOf(verb)}`);
  return verb.run({ ...typed, [verb.word]: spare });
}

/** The ring that was looked up, or the nearest to what was measured. */
function ringOf(value: unknown): string | null {
  const found = value as { ring?: { name: string }; candidates?: readonly { name: string }[] };
  const name = found.ring?.name ?? found.candidates?.[0]?.name;
  return name === undefined ? null : `O-ring ${name}`;
}

/** Puts the ring on the list to get of a job: a note of what must be bought, undone like every other change. */
function toGet(options: Options, answer: Answer): Promise<Answer> | Answer {
  const what = ringOf(answer.value);
  const typed = String(options.flags['to-get']);
  const qty = Number(typed);
  if (!Number.isInteger(qty) || qty < 1 || qty > 1000)
    return wrongUsage(`Expected --to-get with a count from 1 to 1000, got “${typed}”.`);
  if (what === null)
    return refusal({
      code: 'oring.none',
      sentence: 'Expected a ring that is near what was measured; none is.',
    });
  return writing(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const values = { what, qty, state: 'needed', cause: 'noted in the handbook' };
    const made = await client.record.make({ command: v7(), jobId: job.value, table: 'want', values });
    if (!made.ok) return refusal(made.fault);
    const said = `On the list to get: ${qty} × ${what}.`;
    return {
      ...answer,
      value: { ...(answer.value as object), wanted: { id: made.value.id, what, qty } },
      lines: [said, ...answer.lines],
    };
  });
}

export const BOOK_VERBS: readonly Verb[] = HANDBOOK_VERBS.map((verb) => ({
  name: verb.name,
  usage: usageOf(verb),
  says: verb.says,
  options: [
    ...verb.options.flatMap((option) => [option.name, ...(option.also ?? [])]),
    ...(verb.name === 'oring' ? ['to-get', 'job'] : []),
  ],
  run: (options) => {
    const found = asked(verb, options);
    const answer = 'lines' in found ? found : answerOf(found);
    return answer.code === 0 && options.flags['to-get'] !== undefined ? toGet(options, answer) : answer;
  },
}));
