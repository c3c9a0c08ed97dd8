import {
  classesFor,
  findThread,
  formatTorque,
  formatTorqueBoth,
  fullTorque,
  fromNewtonMetres,
  judgeTorque,
  nutFactor,
  parseClass,
  parseDecimal,
  parseLength,
  parseLubrication,
  parsePercent,
  parseStages,
  referenceTorque,
  sayClass,
  sayHand,
  sayStage,
  type Basis,
  type Lubrication,
  type PropertyClass,
  type Thread,
  type Tightening,
} from '../../../core/fastening/index.ts';
import type { AnswerData, AnswerFigure } from '../../screens/handbook/types.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, basisOf, Reading } from './answer.ts';

const FIELDS = ['maker', 'page', 'thread', 'class', 'lubrication', 'head', 'reached', 'share', 'mu'] as const;

interface Known {
  readonly thread: Thread | undefined;
  readonly cls: PropertyClass | undefined;
  readonly lubrication: Lubrication | undefined;
  readonly maker: Tightening | undefined;
  readonly page: string;
  readonly reached: Tightening | undefined;
  readonly headMm: number | undefined;
  readonly share: number | undefined;
  readonly mu: number | undefined;
}

function knownOf(reading: Reading): Known {
  const unknownClass = /^(unknown|not known|\?)$/i.test(reading.text('class'));
  const lubrication = reading.text('lubrication');
  return {
    thread: reading.read('thread', findThread),
    cls: unknownClass ? undefined : reading.read('class', parseClass),
    lubrication: lubrication === '' ? undefined : reading.take('lubrication', parseLubrication(lubrication)),
    // Newton metres are taken where no unit stands, as at the entry line.
    maker: reading.read('maker', (text) => parseStages(text, 'N·m')),
    page: reading.text('page'),
    reached: reading.read('reached', (text) => parseStages(text, 'N·m')),
    headMm: reading.read('head', (text) => parseLength(text))?.lengthMm,
    share: reading.read('share', (text) =>
      /^\d+([.,]\d+)?$/.test(text) ? parsePercent(`${text} %`) : parsePercent(text),
    ),
    mu: reading.read('mu', parseDecimal),
  };
}

function figureOf(torqueNm: number): AnswerFigure {
  const [value = '', unit = ''] = formatTorque(torqueNm).split(' ');
  const [, other = ''] = /\((.*)\)/.exec(formatTorqueBoth(torqueNm)) ?? [];
  return { value: value.replace(/\.0+$/, ''), unit, other };
}

/** As it was typed; the other unit beside it. */
function makerFigure(maker: Tightening): AnswerFigure | null {
  const torque = maker.torque;
  if (!torque) return maker.stages.length > 0 ? { value: say.snug, unit: '', other: '' } : null;
  const value = String(Number(fromNewtonMetres(torque.torqueNm, torque.unit).toPrecision(4)));
  const other = torque.unit === 'N·m' ? figureOf(torque.torqueNm).other : formatTorque(torque.torqueNm);
  const angle = maker.stages.reduce((sum, stage) => sum + (stage.kind === 'angle' ? stage.angleDeg : 0), 0);
  return { value, unit: angle > 0 ? `${torque.unit} + ${angle}°` : torque.unit, other };
}

interface Reference {
  readonly figure: AnswerFigure | null;
  readonly beside: string;
  readonly says: readonly string[];
  readonly groups: AnswerData['groups'];
  readonly basis: Basis;
}

/** What the tables say where class or thread is missing: every class, never a guess. */
function everyClass(known: Known, thread: Thread): Reference | undefined {
  const rows = classesFor(thread).flatMap((cls) => {
    const found = referenceTorque({
      thread,
      propertyClass: cls,
      lubrication: known.lubrication,
      share: known.share,
    });
    return found.ok ? [{ cls, found: found.value }] : [];
  });
  const [first] = rows;
  const last = rows.at(-1);
  if (!first || !last) return undefined;
  return {
    figure: {
      value: `${figureOf(first.found.torqueNm).value}–${figureOf(last.found.torqueNm).value}`,
      unit: 'N·m',
      other: say.byClass(sayClass(first.cls), sayClass(last.cls)),
    },
    beside: say.byClassBeside(formatTorqueBoth(first.found.torqueNm), formatTorqueBoth(last.found.torqueNm)),
    says: [say.classUnknown],
    groups: [
      {
        title: say.ifClass,
        rows: rows.map(({ cls, found }) => ({
          id: cls.name,
          mark: cls.name,
          name: formatTorqueBoth(found.torqueNm),
          about: say.proofNear(formatTorqueBoth(found.proofTorqueNm)),
        })),
      },
    ],
    basis: { ...first.found, inputs: [thread.designation, say.everyClass] },
  };
}

function referenceOf(known: Known, reading: Reading): Reference | undefined {
  const { thread, cls } = known;
  if (!thread) return undefined;
  if (!cls) return everyClass(known, thread);
  if (known.mu !== undefined) {
    const full = reading.take(
      'mu',
      fullTorque({ thread, propertyClass: cls, threadFriction: known.mu, utilisation: known.share }),
    );
    if (!full) return undefined;
    return {
      figure: figureOf(full.torqueNm),
      beside: say.besideFull(formatTorqueBoth(full.torqueNm)),
      says: [say.preload(Math.round(full.preloadN))],
      groups: [],
      basis: full,
    };
  }
  const found = referenceTorque({
    thread,
    propertyClass: cls,
    lubrication: known.lubrication,
    share: known.share,
  });
  if (!found.ok) {
    // Stainless: the answer is that it is unknown, not that the question was wrong.
    if (found.code !== 'torque.unknown') {
      reading.take(found.code === 'torque.share' ? 'share' : 'class', found);
      return undefined;
    }
    return {
      figure: null,
      beside: '',
      says: [found.sentence],
      groups: [],
      basis: {
        formula: say.none,
        inputs: [thread.designation, sayClass(cls)],
        source: cls.system,
        limits: [say.frictionOnly],
        cautions: [say.makerFirst],
      },
    };
  }
  return {
    figure: figureOf(found.value.torqueNm),
    beside: say.besideReference(
      formatTorqueBoth(found.value.torqueNm),
      Math.round(found.value.share * 100),
      found.value.k,
    ),
    says: [
      say.preload(Math.round(found.value.preloadN)),
      `${say.proofNear(formatTorqueBoth(found.value.proofTorqueNm))}.`,
    ],
    groups: [],
    basis: found.value,
  };
}

/** What speaks against the torque wanted or reached. */
function judged(known: Known): Pick<AnswerData, 'points' | 'says'> {
  if (!known.maker?.torque && !known.reached?.torque) return { points: [], says: [] };
  const found = judgeTorque({
    thread: known.thread?.designation,
    propertyClass: known.cls && sayClass(known.cls).replace('stainless ', ''),
    lubrication: known.lubrication,
    head: known.headMm === undefined ? undefined : { drive: 'hex external', size: known.headMm },
    wanted: known.maker?.torque,
    reached: known.reached?.torque,
    thenAngle: known.maker?.thenAngle,
    makerPage: known.page,
  });
  return {
    points: found.findings.map((one, i) => ({
      id: `${one.code} ${i}`,
      grave: one.severity,
      say: one.sentence,
    })),
    says: [...found.unknowns, ...(found.findings.length === 0 ? [say.nothingAgainst] : [])],
  };
}

function stagesOf(maker: Tightening | undefined): AnswerData['groups'] {
  if (!maker || maker.stages.length < 2) return [];
  return [
    {
      title: say.stages,
      rows: maker.stages.map((stage, i) => ({
        id: String(i),
        mark: String(i + 1),
        name: sayStage(stage),
        about: '',
      })),
    },
  ];
}

const JUDGED: Basis = {
  formula: say.judgedFormula,
  inputs: [],
  source: say.judgedSource,
  limits: [say.weakMember],
  cautions: [say.makerFirst],
};

/** Torque: the maker's value first and largest; the reference beside it, never in its place. */
const torque: Answering = (typed) => {
  const reading = new Reading(typed);
  const known = knownOf(reading);
  if (!reading.ok) return reading.end(null);
  const reference = referenceOf(known, reading);
  if (!known.maker && !reference) return reading.end(null);
  const judgement = judged(known);
  const hand = known.maker && sayHand(known.maker.leftHand);
  const basis = reference?.basis ?? JUDGED;
  return reading.end(
    answerOf({
      figure: known.maker ? makerFigure(known.maker) : (reference?.figure ?? null),
      whose: known.maker ? say.makersValue(known.page) : say.referenceValue,
      beside: known.maker ? (reference?.beside ?? '') : '',
      says: [...(hand ? [hand] : []), ...(reference?.says ?? []), ...judgement.says],
      groups: [...stagesOf(known.maker), ...(reference?.groups ?? [])],
      points: judgement.points,
      basis: basisOf(basis),
    }),
  );
};

export const torqueTopic = { topic: 'torque' as const, fields: FIELDS, answer: torque };

/** States of thread and underhead to choose from, each with its nut factor. */
export const LUBRICATIONS: readonly { readonly value: Lubrication | ''; readonly label: string }[] = [
  { value: '', label: say.notKnown },
  ...(['dry', 'zinc', 'oiled', 'greased', 'moly'] as const).map((id) => ({
    value: id,
    label: `${say.lubrications[id]}, K ${nutFactor(id).k}`,
  })),
];
