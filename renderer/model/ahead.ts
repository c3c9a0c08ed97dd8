import type { JobView } from '../../core/contract/views.ts';
import { ahead as say } from '../texts/ahead.ts';
import type { RowData } from '../ui/Rows.tsx';
import { day } from './time.ts';

const titleOf = (view: JobView, stepId: string): string =>
  view.plan.steps.find((step) => step.id === stepId)?.title ?? '';

const titles = (view: JobView, ids: readonly string[]): string => {
  const names = ids.map((id) => titleOf(view, id)).filter((name) => name !== '');
  return names.length > 3 ? `${names.slice(0, 3).join(', ')} …` : names.join(', ');
};

/** Day by day what becomes possible, and what is late. A touch leads to the first step of the day. */
export function dateRows(view: JobView, now: number): RowData[] {
  const byDay = new Map<string, { ids: string[]; what: Set<string> }>();
  for (const line of view.outlook.dates) {
    const key = day(line.at, now);
    const one = byDay.get(key) ?? { ids: [], what: new Set<string>() };
    one.ids.push(...line.stepIds);
    for (const word of line.what) one.what.add(word);
    byDay.set(key, one);
  }
  return [
    ...[...byDay].map(([when, { ids, what }]) => ({
      id: ids[0] ?? '',
      mark: '',
      name: `${when}: ${titles(view, ids)}`,
      count: ids.length,
      about: [...what].join(' '),
    })),
    ...view.outlook.late.map((line) => ({
      id: view.plan.steps.find((step) => step.lacks.some((lack) => lack.thingId === line.thingId))?.id ?? '',
      mark: '',
      name: line.sentence,
      count: '',
      about: say.late(day(line.due, now)),
      grave: true,
    })),
  ];
}

/** What one more item would free, the greatest first. */
export function oneMoreRows(view: JobView): RowData[] {
  return view.outlook.oneMore.slice(0, 12).map((line) => ({
    id: line.stepIds[0] ?? '',
    mark: '',
    name: line.sentence,
    count: line.stepIds.length,
    about: titles(view, line.stepIds),
  }));
}

export interface NeedAsk {
  readonly removalId: string;
  readonly needsId: string;
  readonly question: string;
  readonly reason: string;
}

/** Needs that may be none, of steps that wait for them now. */
export function needAsks(view: JobView, stepId: string | null = null): NeedAsk[] {
  const nameOf = (id: string) => {
    const step = view.plan.steps.find((one) => one.removalId === id && one.kind === 'S');
    return `${step?.number ?? ''} ${step?.title ?? ''}`.trim();
  };
  return view.suggestions
    .filter((one) => one.waiting !== null && (stepId === null || one.waiting.stepId === stepId))
    .map((one) => ({
      removalId: one.removalId,
      needsId: one.needsId,
      question: say.ask(nameOf(one.removalId), nameOf(one.needsId)),
      reason: [one.reason, one.instead.length > 0 ? say.instead(one.instead.map(nameOf).join(', ')) : '']
        .join(' ')
        .trim(),
    }));
}

/** Things of the job by the words typed, several parted by commas: the ids, and what no thing is called. */
export function targetsOf(view: JobView, typed: string): { ids: string[]; unknown: string[] } {
  const { state } = view;
  const things = [
    ...state.part,
    ...state.connection,
    ...state.fset,
    ...state.removal.map((one) => ({ id: one.id, name: one.title })),
  ];
  const ids: string[] = [];
  const unknown: string[] = [];
  for (const word of typed.split(',').map((one) => one.trim().toLowerCase())) {
    if (word === '') continue;
    const hit =
      things.find((one) => one.name.toLowerCase() === word) ??
      things.find((one) => one.name !== '' && one.name.toLowerCase().includes(word));
    if (hit) ids.push(hit.id);
    else unknown.push(word);
  }
  return { ids, unknown };
}

/** Names of things for a sentence. */
export function namesOf(view: JobView, ids: readonly string[]): string {
  const { state } = view;
  const names = new Map<string, string>([
    ...state.part.map((one) => [one.id, one.name] as const),
    ...state.fset.map((one) => [one.id, one.name || (view.specNames[one.specId] ?? '')] as const),
    ...state.fluid.map((one) => [one.id, one.name] as const),
    ...state.isolation.map((one) => [one.id, one.how || one.energy] as const),
  ]);
  return ids
    .map((id) => names.get(id) ?? '')
    .filter((name) => name !== '')
    .join(', ');
}
