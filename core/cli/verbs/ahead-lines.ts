import type { DayAhead, FreeLine, Outlook, Plan } from '../../reinstall/index.ts';
import { dayOf } from '../day.ts';

/** "14 Gear cover"; what is no removal has no number: "Fill gear oil". */
export const stepWords = (step: { readonly number: number | null; readonly title: string }): string =>
  step.number === null ? step.title : `${step.number} ${step.title}`;

const nameIn = (plan: Plan, id: string): string => {
  const step = plan.steps.find((one) => one.id === id);
  return step ? stepWords(step) : id;
};

/** What one more item would free, a line each. */
export function freeLines(lines: readonly FreeLine[]): string[] {
  return lines.map(({ stepIds, sentence }) => {
    const count = stepIds.length === 1 ? '1 step' : `${stepIds.length} steps`;
    return `  frees ${count}: ${sentence}`;
  });
}

/** The open points that hold a step, named; of many the first and how many more. */
function heldBy(plan: Plan, stepId: string): string {
  const keys = new Set(plan.steps.find((one) => one.id === stepId)?.stoppedBy ?? []);
  const [first, ...more] = plan.findings.filter((one) => keys.has(one.key) && one.accepted === null);
  if (!first) return 'Steps before it wait for each other.';
  return `Held by an open point: ${first.sentence} [${first.key}]${more.length > 0 ? ` And ${more.length} more.` : ''}`;
}

/** What cannot go ahead, with all that it waits for: what it lacks, what comes first, which open point holds it. */
export function waitLines(title: string, { not }: DayAhead, plan: Plan): string[] {
  const lines = not.map(({ stepId, lacks, firstId }) => {
    const first = firstId === null ? [] : [`First ${nameIn(plan, firstId)}.`];
    const held = firstId === null && lacks.length === 0 ? [heldBy(plan, stepId)] : [];
    return `  ${nameIn(plan, stepId)}: ${[...lacks, ...first, ...held].join(' ')}`;
  });
  return lines.length > 0 ? [title, ...lines] : [];
}

/** What can go ahead by a day, what cannot and why, and what one more item would free then. */
export function dayLines(typed: string, day: DayAhead, outlook: Outlook, plan: Plan): string[] {
  const date = dayOf(day.on);
  const by = typed.trim() === date ? date : `${typed.trim()}, ${date}`;
  return [
    day.ahead.length > 0 ? `By ${by}` : `Nothing can go ahead by ${by}.`,
    ...day.ahead.map(
      ({ stepId, at }) => `  ${nameIn(plan, stepId)}${at === null ? '' : ` (from ${dayOf(at)})`}`,
    ),
    ...waitLines('Not by then', day, plan),
    ...outlook.late.map((line) => `Late since ${dayOf(line.due)}, not counted on: ${line.sentence}`),
    ...(day.oneMore.length > 0 ? ['What would free most then'] : []),
    ...freeLines(day.oneMore),
  ];
}
