import type { Touched } from '../../contract/answers.ts';
import type { AgainPlan } from '../../model/off-again.ts';
import type { JobState } from '../../model/tables.ts';
import { thingWords } from '../../model/thing-words.ts';
import type { DayAhead, Outlook, Reach, ToolLine } from '../../reinstall/index.ts';

/** "2026-11-26", in UTC. */
export const dayOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

/** What can go ahead by a day, what cannot and why, and what one more item would free then. */
export function dayLines(
  typed: string,
  day: DayAhead,
  outlook: Outlook,
  title: ReadonlyMap<string, string>,
): string[] {
  const name = (id: string) => title.get(id) ?? id;
  return [
    day.ahead.length > 0 ? `By ${typed}` : `Nothing can go ahead by ${typed}.`,
    ...day.ahead.map(({ stepId, at }) => `  ${name(stepId)}${at === null ? '' : ` (from ${dayOf(at)})`}`),
    ...(day.not.length > 0 ? ['Not by then'] : []),
    ...day.not.map(({ stepId, lacks, firstId }) => {
      const first = firstId === null ? 'an open point holds it' : `first ${name(firstId)}`;
      return `  ${name(stepId)}: ${lacks.length > 0 ? lacks.join(' ') : first}`;
    }),
    ...outlook.late.map((line) => `Late since ${dayOf(line.due)}, not counted on: ${line.sentence}`),
    ...(day.oneMore.length > 0 ? ['What would free most then'] : []),
    ...day.oneMore.map((line) => `  ${line.stepIds.length}: ${line.sentence}`),
  ];
}

/** Each tool on a line: how many fasteners, in how many steps. */
export function toolLines(tools: readonly ToolLine[]): string[] {
  return tools.map(({ tool, known, fasteners, steps }) => {
    const mark = known === 'by the standard' ? ' (by the standard, not recorded)' : '';
    const count = `${fasteners} ${fasteners === 1 ? 'fastener' : 'fasteners'}, ${steps} ${steps === 1 ? 'step' : 'steps'}`;
    return `${tool === '' ? 'tool not recorded' : tool}${mark}: ${count}`;
  });
}

/** What must come off and what it costs, as lines. */
export function reachLines(state: JobState, reach: Reach): string[] {
  const list = (label: string, ids: readonly string[]) =>
    ids.length > 0 ? [`${label}: ${ids.map((id) => thingWords(state, id)).join('; ')}`] : [];
  return [
    ...reach.removals.map(
      (one) =>
        `${one.number} ${one.title} (${one.why}${one.assumed ? ', by the order of the log only' : ''}; ${one.state === 'again' ? 'off again' : one.state === 'partly' ? 'partly back' : 'never off yet'})`,
    ),
    ...(reach.removals.length === 0 && reach.unknown.length === 0 ? ['Nothing is in the way.'] : []),
    ...(reach.fasteners > 0 ? [`${reach.fasteners} fasteners come out.`] : []),
    ...(reach.shared.length > 0 ? [`${reach.shared.length} of them also hold parts of other removals.`] : []),
    ...list('Make safe again', reach.isolations),
    ...list('Drain again', reach.fluids),
    ...list('New ones needed', reach.renew),
    ...list('New if worn', reach.renewIfWorn),
    ...toolLines(reach.tools),
    ...(reach.minutesLow === null
      ? []
      : [
          (reach.minutesHigh ?? 0) < 1
            ? 'Less than a minute.'
            : `${reach.minutesLow} to ${reach.minutesHigh ?? 0} minutes.`,
        ]),
    ...reach.unknown.map((one) => one.sentence),
  ];
}

/** What is planned to come off again, in the order of taking off. */
export function plannedLines(planned: readonly AgainPlan[]): string[] {
  return planned.map(({ removal }, i) => `${String(i + 1).padStart(3)} ${removal.title} (${removal.note})`);
}

/** Every job of a machine, and what was touched in it. */
export function touchedLines(value: Touched): string[] {
  return [
    value.sentence,
    ...value.jobs.flatMap((job) => [
      `${dayOf(job.createdAt)} ${job.title}${job.hits.length === 0 ? ': not touched' : ''}`,
      ...job.hits.map((hit) => {
        const by = (name: string | null) => (name === null ? '' : ` by ${name}`);
        const when = hit.at === null ? '' : ` on ${dayOf(hit.at)}`;
        const back = hit.backAt === null ? 'not back' : `back on ${dayOf(hit.backAt)}${by(hit.backBy)}`;
        const read =
          hit.read.length > 0 ? `, torque read ${hit.read.join(', ')}` : ', no torque written down';
        const renewed =
          hit.renewed.length > 0 ? `; new with it: ${hit.renewed.join('; ')}` : '; nothing new with it';
        const how = hit.backAt === null ? '' : `${read}${renewed}`;
        return `  ${hit.number} ${hit.title}: ${hit.did}${when}${by(hit.by)}; ${back}${how}`;
      }),
    ]),
  ];
}
