import { judgeTorque, parseClass, parseTorque, sayClass } from '../fastening/index.ts';
import type { Row } from '../model/tables.ts';
import type { Draft } from './draft.ts';
import { stepName } from './draft.ts';
import { closersOf } from './energy-edges.ts';
import { of } from './job-log.ts';
import { cures } from './lacks.ts';
import type { Situation } from './situation.ts';
import { mattersOf } from './matters.ts';
import { last, standing } from './standing.ts';
import type { FindingCode, StepKind } from './types.ts';

/** Torques, measurements, amounts, cures: what a number says. */
export function valueFindings(at: Situation): Draft[] {
  return [...torqueFindings(at), ...measureFindings(at), ...fluidFindings(at), ...cureFindings(at)];
}

const LUBRICATION = {
  unknown: undefined,
  dry: 'dry',
  oiled: 'oiled',
  greased: 'greased',
  'anti-seize': 'moly',
  threadlock: undefined,
} as const;

type Case = Parameters<typeof judgeTorque>[0];

/** What is known of a set's fasteners for judging a torque. */
function caseOf(set: Row<'fset'>, spec: Row<'spec'> | undefined, matters: Case['matters']): Case {
  const wanted =
    set.torqueMnm === null ? undefined : { torqueNm: set.torqueMnm / 1000, unit: unitOf(set.torqueTyped) };
  const cls = spec?.grade ? parseClass(spec.grade) : null;
  const pitch = spec?.pitchUm && /^M/.test(spec.thread ?? '') ? `x${spec.pitchUm / 1000}` : '';
  return {
    // A thread that only follows from the head is none to judge by: a 13 mm head may be M8 or M10.
    ...(spec?.thread && (spec.threadKnown || spec.pitchUm !== null || !spec.driveSizeUm)
      ? { thread: `${spec.thread}${pitch}` }
      : {}),
    ...(cls?.ok ? { propertyClass: sayClass(cls.value) } : {}),
    lubrication: LUBRICATION[set.lubrication],
    ...(spec?.driveSizeUm && spec.drive === 'hex external'
      ? { head: { drive: 'hex external' as const, size: spec.driveSizeUm / 1000 } }
      : {}),
    ...(wanted ? { wanted } : {}),
    thenAngle: (set.angleDeg ?? 0) > 0,
    ...(set.torqueFrom === 'maker' && set.torquePage !== '' ? { makerPage: set.torquePage } : {}),
    ...(matters && matters.length > 0 ? { matters } : {}),
    snugByFeel: set.torqueFrom === 'by feel',
  };
}

/** Pins, clips and clamps are not tightened to a figure, wherever they sit. */
function mattersIn(at: Situation, set: Row<'fset'>, spec: Row<'spec'> | undefined): Case['matters'] {
  const threaded = spec !== undefined && (spec.thread !== null || spec.driveSizeUm !== null);
  if (!threaded) return set.critical ? ['by the user'] : [];
  const { log } = at.graph;
  const removal = log.removals[log.indexOf.get(set.removalId) ?? -1];
  const parts = of(log.partsOf, set.removalId);
  return mattersOf([set.name, removal?.title ?? '', ...parts.map((part) => part.name)], set.critical);
}

function unitOf(typed: string) {
  const parsed = parseTorque(typed.split('+')[0] ?? '');
  return parsed.ok ? parsed.value.unit : undefined;
}

function torqueFindings(at: Situation): Draft[] {
  const drafts: Draft[] = [];
  const { spec } = at.graph.log;
  const read = at.state.deed.some((deed) => deed.what === 'tightened' && deed.value !== null);
  for (const set of at.state.fset) {
    const node = at.graph.stepOfThing(set.id);
    if (node < 0) continue;
    const base = caseOf(set, spec.get(set.specId), mattersIn(at, set, spec.get(set.specId)));
    const add = (subjects: string[], found: ReturnType<typeof judgeTorque>['findings'], only?: string) => {
      for (const one of found)
        if (only === undefined || one.code === only)
          drafts.push({
            code: one.code as FindingCode,
            severity: one.code === 'torque.none' && at.progress[node]?.done !== true ? 'note' : one.severity,
            subjects,
            sentence: `${set.name || stepName(at, node)}: ${one.sentence}`,
            clears: CLEARS[one.code] ?? 'Look it up in the maker’s manual.',
            node,
          });
    };
    add([set.id], judgeTorque(base).findings);
    if (!read) continue;
    // By hole once: looking through the step for each of its holes would be quadratic in a large set.
    const own = new Map(at.content[node]?.holes.map((hole) => [hole.position.id, hole]));
    for (const position of of(at.graph.log.positionsOf, set.id)) {
      const elsewhere = at.graph.shared.get(position.id);
      const hole = elsewhere === undefined ? own.get(position.id) : at.content[elsewhere]?.holes[0];
      const deed = hole?.standing.deeds.findLast((one) => one.what === 'tightened' && one.value !== null);
      if (!deed || deed.value === null) continue;
      const reached = { torqueNm: deed.value, unit: unitOf(deed.valueTyped) };
      const off = judgeTorque({ ...base, reached }).findings.filter((one) => one.code === 'torque.off');
      // A wanted figure that is past proof is judged above, once; here only what went beyond the wanted one.
      const beyond = set.torqueMnm === null || off.length > 0;
      const past = beyond ? judgeTorque({ ...base, wanted: undefined, reached }).findings : [];
      add([position.id], [...off, ...past.filter((one) => one.code === 'torque.past-proof')]);
    }
  }
  return drafts;
}

const CLEARS: Record<string, string> = {
  'torque.past-proof': 'Check figure, unit and class against the maker’s manual, or say why it stands.',
  'torque.off': 'Tighten it again to the wanted value, or say why it stands.',
  'torque.misfit': 'Check thread and head size.',
  'torque.none': 'Look the value up, or say that it is snug by feel.',
};

function measureFindings(at: Situation): Draft[] {
  return at.state.measure.flatMap((measure) => {
    const deed = last(standing(at.graph.log, measure.id, measure.removalId), 'measured');
    if (!deed || deed.value === null) return [];
    const low = measure.limitLow !== null && deed.value < measure.limitLow;
    const high = measure.limitHigh !== null && deed.value > measure.limitHigh;
    if (!low && !high) return [];
    const unit = measure.unit === '' ? '' : ` ${measure.unit}`;
    const limits = [measure.limitLow ?? '…', measure.limitHigh ?? '…'].join(' to ');
    return [
      {
        code: 'measure.off' as const,
        severity: 'stop' as const,
        subjects: [measure.id],
        sentence: `${measure.what}: ${deed.value}${unit} is ${low ? 'below' : 'above'} ${limits}${unit}.`,
        clears: 'Correct it and measure again, or say why it stands.',
        node: at.graph.stepOfThing(measure.id),
        facts: [deed.id],
      },
    ];
  });
}

/** Five in a hundred is inside what a measuring jug, and what stays in a system, can tell (common practice, no source). */
const AMOUNT_TOLERANCE = 0.05;

function fluidFindings(at: Situation): Draft[] {
  const drafts: Draft[] = [];
  for (const fluid of at.state.fluid) {
    const node = at.graph.closing.get(fluid.id);
    if (node === undefined) continue;
    const own = standing(at.graph.log, fluid.id);
    const fills = own.deeds.filter((deed) => deed.what === 'filled');
    if (fills.length === 0) continue;
    const filled = fills.reduce((sum, deed) => sum + (deed.value ?? 0), 0) || (fluid.filledMl ?? 0);
    if (filled === 0) continue;
    const least = fluid.lost === 'all' ? (fluid.capacityMl ?? fluid.drainedMl) : fluid.drainedMl;
    const most = fluid.capacityMl;
    const short = least !== null && filled < least * (1 - AMOUNT_TOLERANCE);
    const over = most !== null && filled > most * (1 + AMOUNT_TOLERANCE);
    if (!short && !over) continue;
    drafts.push({
      code: 'fluid.amount',
      severity: 'stop',
      subjects: [fluid.id],
      sentence: short
        ? `${fluid.name}: ${litres(filled)} went in, ${litres(least ?? 0)} ${least === fluid.capacityMl ? 'is what it holds' : 'came out'}.`
        : `${fluid.name}: ${litres(filled)} went in, and it holds ${litres(most ?? 0)}.`,
      clears: short
        ? 'Top it up, look for an air lock, or say why less is right.'
        : 'Draw some off, or correct the amount.',
      node,
      facts: [filled],
    });
  }
  return drafts;
}

const litres = (ml: number): string => (ml >= 1000 ? `${Math.round(ml / 10) / 100} l` : `${ml} ml`);

/** What begins a step of a fluid; both halves are ticked on the fluid itself. */
const BEGINS: Partial<Record<StepKind, readonly string[]>> = {
  C1: ['filled', 'done'],
  C2: ['bled', 'hot leak checked', 'done'],
};

/** A gate that was passed while a sealant was still curing. */
function cureFindings(at: Situation): Draft[] {
  return cures(at).flatMap(({ node, consumable, until }) => {
    const progress = at.progress[node];
    const kind = at.graph.nodes[node]?.kind;
    const deeds = at.graph.log.deedsOf.get(at.graph.nodes[node]?.thingId ?? '') ?? [];
    const began = deeds.find(
      (deed) => (BEGINS[kind ?? 'S']?.includes(deed.what) ?? true) && deed.at >= (consumable.putAt ?? 0),
    );
    if (!progress?.touched && !progress?.done) return [];
    if (!began || began.at >= until) return [];
    const minutes = Math.ceil((until - began.at) / 60_000);
    return [
      {
        code: 'cure.wait' as const,
        severity: 'stop' as const,
        subjects: [consumable.thingId, at.graph.nodes[node]?.thingId ?? ''],
        sentence: `${consumable.name || consumable.kind} had ${minutes} minutes to cure when ${stepName(at, node)} began.`,
        clears: 'Let it out, renew the sealant and wait, or say why it holds.',
        node,
        facts: [began.id],
      },
    ];
  });
}

const ELECTRIC = new Set(['plug', 'cable', 'earth lead']);

/** An energy made safe after something of it was opened already. Nothing mends that; it is passed by name. */
export function lateIsolations(at: Situation): Draft[] {
  const { log } = at.graph;
  return at.state.isolation.flatMap((isolation) => {
    const made = log.indexOf.get(isolation.removalId) ?? -1;
    if (log.removals[made]?.phase === 'planned') return [];
    const earlier = openedBefore(at, isolation, made);
    if (earlier < 0) return [];
    const removal = log.removals[earlier];
    return [
      {
        code: 'isolation.late' as const,
        severity: 'warn' as const,
        subjects: [isolation.id],
        sentence: `${isolation.how || isolation.energy}: made safe at removal ${made + 1}, after ${removal?.title || `removal ${earlier + 1}`} had opened it.`,
        clears: 'Say by name that nothing was harmed.',
        node: at.graph.givenBack.get(isolation.id) ?? -1,
      },
    ];
  });
}

function openedBefore(at: Situation, isolation: Row<'isolation'>, made: number): number {
  const { log } = at.graph;
  let first = -1;
  const see = (index: number | undefined) => {
    if (index !== undefined && index >= 0 && index < made && (first < 0 || index < first)) first = index;
  };
  if (isolation.energy === 'electricity')
    for (const one of at.state.connection)
      if (ELECTRIC.has(one.kind) && !one.leaveAlone) see(log.indexOf.get(one.removalId ?? ''));
  if (isolation.energy === 'pressure' || isolation.energy === 'fuel')
    for (const fluid of at.state.fluid) {
      if (isolation.scope === 'fluid' && isolation.fluidId !== null && isolation.fluidId !== fluid.id)
        continue;
      if (isolation.scope !== 'fluid' && fluid.liveEnergy !== isolation.energy) continue;
      for (const node of closersOf(at.graph, fluid.id)) see(at.graph.nodes[node]?.index);
    }
  return first;
}
