import { buriedBy, type Finding, type Plan } from '../../core/reinstall/index.ts';
import { machine } from './machine.ts';
import { putBack, walkDown } from './play.ts';
import type { Mistake } from './slips.ts';
import { chance, type Story, troubles, type Yard } from './story.ts';

export interface Verdict {
  readonly found: boolean;
  /** Where and how, in words. */
  readonly how: string;
  readonly told: readonly string[];
}

/**
 * Plants one mistake in a machine of this number and walks on until the program speaks of it, or until the last moment
 * at which it could have been mended has gone by. With `oneTouch` the guard over everything is ticked in one touch.
 */
export async function plant(yard: Yard, mistake: Mistake, seed: number, oneTouch = false): Promise<Verdict> {
  const rnd = chance(seed * 7919 + mistake.name.length);
  const made = await machine(yard, rnd, { must: mistake.must, plain: true });
  const { story } = made;
  const verdict = (found: boolean, how: string): Verdict => ({ found, how, told: story.told });
  const early = troubles(story.plan())[0];
  if (early) return verdict(false, `a false alarm before the mistake: ${early.sentence}`);
  await mistake.before?.(made, rnd);
  const mine = (findings: readonly Finding[]) => findings.find((one) => mistake.codes.includes(one.code));
  const atOnce = mine(troubles(story.plan()));
  if (atOnce && mistake.deadline !== 'guard') return verdict(true, `at once: ${atOnce.sentence}`);
  if (mistake.deadline === 'log') return verdict(false, 'nothing was said when it was written down');
  const over = passed(mistake, made.guard, made.ids);
  let said: Finding | undefined;
  let late = false;
  const refused = await walkDown(story, rnd, {
    slip: mistake.slip?.(made, rnd) ?? (() => null),
    patient: mistake.patient ?? true,
    oneTouch: oneTouch ? made.guard : null,
    warned: (findings) => {
      said = mine(findings);
      return said !== undefined;
    },
    look: (plan, doing) => {
      // A stop that a gate keeps must hold that gate: somebody who only saw it in a list has gone on.
      said = mistake.deadline === 'guard' && atOnce ? undefined : mine(troubles(plan));
      late = over(plan, doing.what, doing.thingIds);
      return said !== undefined || late;
    },
  });
  if (refused !== null)
    return verdict(mentions(refused, story, yard.workshop.now(), mistake), `refused: ${refused}`);
  if (said && !late) return verdict(true, `${said.severity}: ${said.sentence}`);
  if (late) return verdict(false, `too late: ${said?.sentence ?? 'nothing was said at all'}`);
  const closing = await story.close();
  const named = mine(story.plan().findings);
  return verdict(!closing.ok && named !== undefined, closing.ok ? 'the job closed' : closing.fault.sentence);
}

/** The refusal names this mistake's finding, not something else: one that stands, or one that the tick would have buried. */
function mentions(sentence: string, story: Story, now: number, mistake: Mistake): boolean {
  const plan = story.plan();
  const buried = plan.steps.flatMap((step) => buriedBy(story.state, now, plan, step));
  return [...plan.findings, ...buried].some(
    (one) => mistake.codes.includes(one.code) && sentence.includes(one.sentence),
  );
}

/** Whether the last moment has gone by. */
function passed(mistake: Mistake, guard: string, ids: Readonly<Record<string, string>>) {
  const { deadline } = mistake;
  return (plan: Plan, what: string, thingIds: readonly string[]): boolean => {
    if (typeof deadline === 'object' && 'deed' in deadline)
      return what === deadline.deed && thingIds.includes(ids[deadline.on] ?? '');
    const removal =
      deadline === 'guard' ? guard : typeof deadline === 'object' ? ids[deadline.step] : undefined;
    const step = plan.steps.find((one) => one.kind === 'S' && one.removalId === removal);
    return step !== undefined && step.missing.length === 0;
  };
}

/** Puts a clean machine of this number back; gives what was wrongly said of it, or nothing. */
export async function clean(yard: Yard, seed: number): Promise<string | null> {
  const rnd = chance(seed);
  const { story } = await machine(yard, rnd);
  let alarm: string | null = null;
  await putBack(story, rnd, (plan, last) => {
    const one = troubles(plan)[0];
    if (one) alarm ??= `after ${last}: ${one.severity} ${one.code} ${one.sentence}`;
  });
  const closing = await story.close();
  if (!closing.ok) alarm ??= `not closed: ${closing.fault.sentence}`;
  const after = troubles(story.plan())[0];
  return alarm ?? (after ? `closed, yet ${after.sentence}` : null);
}
