import type { Plan, Step } from './types.ts';

/**
 * The same plan with its steps in another order of walking: what is done as it was listed, then the open steps in this
 * order, then what comes after closing and whatever the order does not name. States, gates and findings stay those of the
 * plan, so that nothing becomes ready by it. An order that does not name a step leaves the plan as it is: it was made of
 * another one.
 */
export function walked(plan: Plan, order: readonly string[]): Plan {
  const place = new Map(order.map((id, i) => [id, i]));
  const done = plan.steps.filter((step) => step.state === 'done');
  const open = plan.steps.filter((step) => step.state !== 'done' && step.kind !== 'K');
  const after = plan.steps.filter((step) => step.state !== 'done' && step.kind === 'K');
  if (open.some((step) => !place.has(step.id))) return plan;
  const placeOf = (step: Step): number => place.get(step.id) ?? 0;
  return { ...plan, steps: [...done, ...open.sort((a, b) => placeOf(a) - placeOf(b)), ...after] };
}
