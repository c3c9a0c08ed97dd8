import type { Touched, TouchedRound } from '../../contract/answers.ts';
import type { AgainPlan } from '../../model/off-again.ts';
import type { JobState } from '../../model/tables.ts';
import { thingWords } from '../../model/thing-words.ts';
import { dayOf } from '../day.ts';
import type { Reach, ToolLine } from '../../reinstall/index.ts';

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
            ? 'Less than a minute to take off, by the times of the first time; putting back is not in it.'
            : `${reach.minutesLow} to ${reach.minutesHigh ?? 0} minutes to take off, by the times of the first time; putting back is not in it.`,
        ]),
    ...reach.unknown.map((one) => one.sentence),
  ];
}

/** What is planned to come off again, in the order of taking off. */
export function plannedLines(planned: readonly AgainPlan[]): string[] {
  return planned.map(({ removal }, i) => `${String(i + 1).padStart(3)} ${removal.title} (${removal.note})`);
}

const by = (name: string | null): string => (name === null ? '' : ` by ${name}`);

/** "off again on 2026-11-26 by Ana: it leaks; back on …": one time off and back. */
function roundWords(round: TouchedRound, did: string, zone: string | null): string {
  const on = (ms: number | null) => (ms === null ? '' : ` on ${dayOf(ms, zone)}`);
  const what = round.what.length === 0 ? '' : ` (${round.what.join('; ')})`;
  const why = round.why === '' ? '' : `: ${round.why}`;
  const off = `${did}${what}${on(round.offAt)}${by(round.offBy)}${why}`;
  if (round.backAt === null) return `${off}; not back`;
  const read = round.read.length > 0 ? `, torque read ${round.read.join(', ')}` : ', no torque written down';
  const renewed =
    round.renewed.length > 0 ? `; new with it: ${round.renewed.join('; ')}` : '; nothing new with it';
  return `${off}; back${on(round.backAt)}${by(round.backBy)}${read}${renewed}`;
}

/** Every job of a machine, and what was touched in it: each time that it came off on a line. Days by the job's zone. */
export function touchedLines(value: Touched): string[] {
  return [
    value.sentence,
    ...value.jobs.flatMap((job) => [
      `${dayOf(job.createdAt, job.zone)} ${job.title}${job.hits.length === 0 ? ': not touched' : ''}`,
      ...job.hits.flatMap((hit) => {
        const [first, ...more] = hit.rounds;
        return [
          ...(first ? [`  ${hit.number} ${hit.title}: ${roundWords(first, hit.did, job.zone)}`] : []),
          ...more.map((round) => `      ${roundWords(round, 'off again', job.zone)}`),
        ];
      }),
    ]),
  ];
}
