import { plainText, sameWords } from '../entry/index.ts';
import { doneOf, passedOf, sayDone } from '../model/done.ts';
import type { JobState, Row } from '../model/tables.ts';
import type { SearchText } from '../store/search-index.ts';
import { describeSpec } from '../tally/index.ts';
import { removalIdOf, thingWords } from '../model/thing-words.ts';

/** How a word that stands for several is marked in a plain text, so that it is not taken for a part of another word. */
export const senseMark = (sense: string): string => `=${sense}=`;

/** A text as it is compared: plain, with the one word for whatever both trades call by several names. */
export function comparable(text: string): string {
  const plain = plainText(text);
  return ` ${plain} ${sameWords(plain).senses.map(senseMark).join(' ')} `;
}

/** A thread in every way it may be looked for: "M8", "M8x1.25", "M8x30", "M8x1.25x30". */
function threadWords(spec: Row<'spec'>): string[] {
  if (spec.thread === null) return [];
  const pitch = spec.pitchUm === null || !spec.thread.startsWith('M') ? '' : `x${spec.pitchUm / 1000}`;
  const length = spec.lengthUm === null ? '' : `x${spec.lengthUm / 1000}`;
  const { thread } = spec;
  return [...new Set([thread, `${thread}${pitch}`, `${thread}${length}`, `${thread}${pitch}${length}`])];
}

interface Raw {
  readonly kind: string;
  readonly thingId: string | null;
  readonly removalId: string | null;
  readonly shown: readonly (string | null)[];
  /** Found by these too, but not shown. */
  readonly also?: readonly string[];
}

function setTexts(state: JobState): Raw[] {
  const specs = new Map(state.spec.map((spec) => [spec.id, spec]));
  const stows = new Map(state.stow.map((stow) => [stow.id, `${stow.kind} ${stow.label}`]));
  return state.fset.map((set) => {
    const holes = state.position.filter((hole) => hole.setId === set.id);
    const own = [...new Set([set.specId, ...holes.map((hole) => hole.specId)])].flatMap(
      (id) => specs.get(id ?? '') ?? [],
    );
    const bags = [...new Set([set.stowId, ...holes.map((hole) => hole.stowId)])].flatMap(
      (id) => stows.get(id ?? '') ?? [],
    );
    const main = specs.get(set.specId);
    const conditions = [...new Set(holes.map((hole) => hole.condition))];
    return {
      kind: 'set',
      thingId: set.id,
      removalId: set.removalId,
      shown: [set.name, main ? describeSpec(main) : '', ...bags, ...conditions],
      also: [set.typed, set.torqueTyped, ...own.flatMap(threadWords)],
    };
  });
}

function otherTexts(state: JobState): Raw[] {
  const stows = new Map(state.stow.map((stow) => [stow.id, `${stow.kind} ${stow.label}`]));
  const opened = new Map(state.opens.map((one) => [one.fluidId, one.thingId]));
  const of = (
    kind: string,
    row: { id: string; removalId: string | null; typed?: string },
    shown: Raw['shown'],
  ): Raw => ({
    kind,
    thingId: row.id,
    removalId: row.removalId,
    shown,
    also: [row.typed ?? ''],
  });
  return [
    ...state.part.map((row) =>
      of('part', row, [
        row.name,
        row.stamped,
        row.ownPlaceText,
        row.condition,
        row.fateWhy,
        stows.get(row.stowId ?? '') ?? '',
      ]),
    ),
    ...state.connection.map((row) => of('connection', row, [row.name, row.goesTo])),
    ...state.temporary.map((row) => of('must come out', row, [row.name])),
    ...state.isolation.map((row) => of('made safe', row, [row.how, row.lockOwner])),
    ...state.mark.map((row) => of('mark', row, [row.body])),
    ...state.measure.map((row) => of('reading', row, [row.what, row.asFoundTyped])),
    ...state.fluid.map((row) =>
      of('fluid', { id: row.id, removalId: opened.get(row.id) ?? null }, [row.name, row.type, row.batch]),
    ),
    ...state.action.map((row) => of('note', row, [row.what])),
    ...state.asFound.map((row) => of('as found', { id: row.id, removalId: null }, [row.text])),
    ...state.halt.map((row) => of('handover', { id: row.id, removalId: null }, [row.note])),
  ];
}

/** Where things were sent, what is to be got, put on, done besides, or looked for, and what was said with it. */
function besideTexts(state: JobState): Raw[] {
  const raw = (kind: string, thingId: string | null, shown: Raw['shown']): Raw => ({
    kind,
    thingId,
    removalId: thingId === null ? null : removalIdOf(state, thingId),
    shown: thingId === null ? shown : [...shown, thingWords(state, thingId)],
  });
  return [
    ...state.away.map((row) =>
      raw(row.backAt === null ? 'away' : 'was away', row.thingId, [row.toWhom, row.note]),
    ),
    ...state.want.map((row) => raw('to get', row.thingId, [row.what, row.cause])),
    ...state.consumable.map((row) => raw('put on', row.thingId, [row.name, row.batch])),
    ...state.ownStep.map((row) => raw('own step', null, [row.title, row.body])),
    ...state.counting.map((row) => raw('looked for', row.thingId, [row.note, row.endedWhy])),
  ];
}

/** What was read, what went in and every reason on the way back; who passed which point and why. */
function doneTexts(state: JobState): Raw[] {
  const home = new Map<string, string | null>(state.removal.map((row) => [row.id, row.id]));
  for (const rows of [
    state.fset,
    state.part,
    state.connection,
    state.temporary,
    state.isolation,
    state.measure,
  ])
    for (const row of rows) home.set(row.id, row.removalId);
  for (const hole of state.position) home.set(hole.id, home.get(hole.setId) ?? null);
  for (const one of state.opens) home.set(one.fluidId, one.thingId);
  const raw = (kind: string, thingId: string | null, shown: string[]): Raw => ({
    kind,
    thingId,
    removalId: home.get(thingId ?? '') ?? null,
    shown,
  });
  const told = new Set(
    state.deed.filter((deed) => deed.valueTyped !== '' || deed.why !== '').map((deed) => deed.thingId),
  );
  const done = [...told].map((id) => {
    const lines = doneOf(state, new Set([id])).filter((line) => line.read !== '' || line.why !== '');
    return raw(
      'done',
      id,
      lines.map((line) => (line.by === '' ? sayDone(line) : `${sayDone(line)}, ${line.by}`)),
    );
  });
  const passed = new Map<string | null, string[]>();
  for (const one of passedOf(state)) {
    const thing = [...home.keys()].find((id) => one.finding.includes(id)) ?? null;
    const words = one.by === '' ? `passed: ${one.why}` : `passed by ${one.by}: ${one.why}`;
    passed.set(thing, [...(passed.get(thing) ?? []), words]);
  }
  return [...done, ...[...passed].map(([id, words]) => raw('passed', id, words))];
}

/** Everything of a job that can be found by its words. */
export function searchTexts(state: JobState): SearchText[] {
  const { job } = state;
  const raws: Raw[] = [
    {
      kind: 'job',
      thingId: null,
      removalId: null,
      shown: [job.title, job.machine, job.complaint, job.cause, job.correction],
    },
    ...state.removal
      .filter((row) => row.phase !== 'void')
      .map((row) => ({
        kind: 'removal',
        thingId: row.id,
        removalId: row.id,
        shown: [row.title, row.typed, row.place, row.note, row.noteBack, row.caution],
      })),
    ...setTexts(state),
    ...otherTexts(state),
    ...besideTexts(state),
    ...doneTexts(state),
  ];
  return raws.flatMap(({ kind, thingId, removalId, shown, also = [] }) => {
    const text = shown
      .filter((word) => word !== null && word !== '')
      .join(', ')
      .replace(/\s+/g, ' ');
    const plain = comparable([text, ...also].join(', '));
    return plain.trim() === '' ? [] : [{ jobId: job.id, removalId, thingId, kind, text, plain }];
  });
}
