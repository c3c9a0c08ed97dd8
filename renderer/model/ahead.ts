import type { JobView } from '../../core/contract/views.ts';
import { ahead as say } from '../texts/ahead.ts';

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
