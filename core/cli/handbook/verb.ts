import { refuse, type Basis, type Outcome, type Refusal } from '../../fastening/index.ts';

/** Options as the command line parsed them: names without dashes, values as typed. */
export type Options = Readonly<Record<string, string | undefined>>;

/** What a verb answers: a JSON value and the same in lines of text, or a refusal in words. */
export type VerbAnswer =
  | {
      readonly ok: true;
      readonly value: unknown;
      readonly text: string[];
      /** How many findings of stop or warn the answer holds; absent is none. */
      readonly findings?: number;
    }
  | Refusal;

/** One option for the help page. */
interface OptionHelp {
  readonly name: string;
  readonly also?: readonly string[];
  readonly says: string;
}

/** A verb of the handbook: pure, so that screen, command and test get the same answer. */
export interface HandbookVerb {
  readonly name: string;
  readonly says: string;
  readonly options: readonly OptionHelp[];
  /** The option that words without an option's name are read as; absent, such words are refused. */
  readonly word?: string;
  readonly run: (options: Options) => VerbAnswer;
}

/** Reads options by their name or another name of theirs; empty text is an answer, absence is undefined. */
export interface Reader {
  readonly get: (name: string) => string | undefined;
}

/** Checks that every given option is known, and gives access by main name. */
export function readOptions(verb: Pick<HandbookVerb, 'name' | 'options'>, options: Options): Outcome<Reader> {
  const names = new Map<string, string>();
  for (const option of verb.options) {
    for (const name of [option.name, ...(option.also ?? [])]) names.set(name, option.name);
  }
  const values = new Map<string, string>();
  for (const [given, value] of Object.entries(options)) {
    if (value === undefined) continue;
    const name = names.get(given);
    if (name === undefined) {
      const known = verb.options.map((option) => `--${option.name}`).join(', ');
      return refuse('usage.option', `one of ${known}`, `--${given}`);
    }
    values.set(name, value);
  }
  return { ok: true, value: { get: (name) => values.get(name) } };
}

/** Runs a reader over an option that may be absent. */
export function optional<T>(
  text: string | undefined,
  read: (text: string) => Outcome<T>,
): Outcome<T | undefined> {
  return text === undefined ? { ok: true, value: undefined } : read(text);
}

/** The first refusal among outcomes, or undefined when all are good. */
export function firstRefusal(...outcomes: readonly (Outcome<unknown> | undefined)[]): Refusal | undefined {
  for (const outcome of outcomes) if (outcome && !outcome.ok) return outcome;
  return undefined;
}

/** A missing option, in words. */
export function missing(what: string): Refusal {
  return { ok: false, code: 'usage.missing', sentence: `Expected ${what}, got nothing.` };
}

/** Formula, inputs, source, limits and cautions as lines: they go with every result. */
export function basisLines(basis: Basis): string[] {
  return [
    `Formula: ${basis.formula}`,
    ...(basis.inputs.length > 0 ? [`Inputs: ${basis.inputs.join(' · ')}`] : []),
    `Source: ${basis.source}`,
    ...basis.limits.map((limit) => `Limit: ${limit}`),
    ...basis.cautions.map((caution) => `Caution: ${caution}`),
  ];
}

/** Reads "yes", "no", "true", "false", "" (a bare flag means yes). */
export function parseYes(text: string): Outcome<boolean> {
  if (/^(|y|yes|true|1|all)$/i.test(text.trim())) return { ok: true, value: true };
  if (/^(n|no|false|0)$/i.test(text.trim())) return { ok: true, value: false };
  return refuse('usage.yes', 'yes or no', text.trim());
}
