import {
  findThread,
  formatLength,
  identifyThread,
  majorBand,
  parseLength,
  parsePitch,
  readMark,
  refuse,
  sayThread,
  threadsForAcrossFlats,
  threadsForHexalobular,
  threadsForHexKey,
  type Basis,
  type DriveMatch,
  type Outcome,
  type ThreadIdentity,
} from '../../../core/fastening/index.ts';
import type { AnswerData, AnswerGroup } from '../../screens/handbook/types.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, basisOf, Reading } from './answer.ts';

const HEAD_BASIS: Basis = {
  formula: say.headFormula,
  inputs: [],
  source: 'ISO 272, ISO 10664, ASME B18',
  limits: [say.headLimit, say.headSmaller],
  cautions: [say.headCaution],
};

const FIELDS = ['diameter', 'pitch', 'head', 'key', 'lobe', 'mark', 'thread'] as const;

function lobeNumber(text: string): Outcome<string> {
  return /^\D{0,3}\s*\d{1,3}$/.test(text)
    ? { ok: true, value: text }
    : refuse('identify.hexalobular', 'a hexalobular number such as T30', text);
}

/** Diameter and pitch → designations, nearest first. */
function measured(reading: Reading): ThreadIdentity | undefined {
  const diameter = reading.read('diameter', (text) => parseLength(text));
  const pitch = reading.read('pitch', parsePitch);
  if (diameter === undefined) {
    if (pitch !== undefined) reading.refused['diameter'] = say.diameterToo;
    return undefined;
  }
  const found = identifyThread({ diameterMm: diameter.lengthMm, ...pitch });
  return reading.take(!found.ok && found.code !== 'identify.diameter' ? 'pitch' : 'diameter', found);
}

function byMeasure(found: ThreadIdentity): Partial<AnswerData> {
  const best = found.candidates[0];
  const alike = found.candidates.filter((one) => one.rank === 1).length;
  return {
    figure:
      best === undefined
        ? null
        : {
            value: alike > 1 ? best.thread.size : best.designation,
            unit: '',
            other: alike > 1 ? say.alike(alike) : sayThread(best.thread).replace(/^\S+ ?/, ''),
          },
    says: best === undefined ? [say.noThread] : [],
    groups: [
      {
        title: say.canBe,
        rows: found.candidates.map((one) => ({
          id: one.designation,
          mark: String(one.rank),
          name: one.designation,
          about: one.says.slice(one.says.indexOf(': ') + 2),
        })),
      },
    ],
    points: found.traps.map((trap) => ({
      id: trap.between.join(),
      grave: 'warn' as const,
      say: trap.sentence,
    })),
    basis: basisOf(found),
  };
}

function headGroup(title: string, matches: readonly DriveMatch[]): AnswerGroup {
  return {
    title,
    rows: matches.map((match, i) => ({
      id: match.size,
      mark: String(i + 1),
      name: match.size,
      about: [
        ...(Math.abs(match.deviationMm) < 0.005
          ? []
          : [say.offTool(match.deviationMm, match.rows[0]?.tool ?? '')]),
        [...new Set(match.rows.map((row) => `${row.standard} ${row.family}`))].slice(0, 4).join('; '),
        ...(match.rows.length > 4 ? [say.andMore(match.rows.length - 4)] : []),
      ].join(', '),
    })),
  };
}

function byHead(reading: Reading): Partial<AnswerData> | undefined {
  const flats = reading.read('head', (text) => parseLength(text));
  const key = reading.read('key', (text) => parseLength(text));
  const lobe = reading.read('lobe', lobeNumber);
  const groups = [
    ...(flats
      ? [headGroup(say.headCanBe(formatLength(flats.lengthMm)), threadsForAcrossFlats(flats.lengthMm))]
      : []),
    ...(key ? [headGroup(say.keyCanBe(formatLength(key.lengthMm)), threadsForHexKey(key.lengthMm))] : []),
    ...(lobe === undefined ? [] : [headGroup(say.lobeCanBe(lobe), threadsForHexalobular(lobe))]),
  ];
  if (groups.length === 0) return undefined;
  const first = groups[0]?.rows ?? [];
  const best = first[0];
  return {
    figure: best
      ? {
          value: best.name,
          unit: '',
          other: first.length > 1 ? say.orOthers(first.slice(1).map((row) => row.name)) : '',
        }
      : null,
    says: best ? [] : [say.noHead],
    groups,
    basis: basisOf(HEAD_BASIS),
  };
}

function byMark(reading: Reading): Partial<AnswerData> | undefined {
  const mark = reading.read('mark', readMark);
  if (!mark) return undefined;
  return {
    figure: mark.propertyClass
      ? { value: mark.propertyClass.name, unit: '', other: mark.propertyClass.system }
      : null,
    says: mark.meanings,
    basis: basisOf(mark),
  };
}

function byName(reading: Reading): Partial<AnswerData> | undefined {
  const thread = reading.read('thread', findThread);
  if (!thread) return undefined;
  const band = majorBand(thread);
  return {
    figure: { value: thread.designation, unit: '', other: sayThread(thread).replace(/^\S+ ?/, '') },
    says: [
      say.measures(`${formatLength(band.lowMm)} – ${formatLength(band.highMm)}`, band.tolerance),
      say.area(
        thread.stressAreaMm2.toPrecision(3),
        thread.pitchDiameterMm.toFixed(3),
        thread.minorDiameterMm.toFixed(3),
      ),
    ],
    basis: {
      formula: say.lookedUp,
      inputs: [thread.designation],
      source: `${thread.source} (${thread.confidence})`,
      limits: thread.note === '' ? [] : [thread.note],
      cautions: [say.tryByHand],
    },
  };
}

/** Thread, head or mark → everything it can be. What was measured comes before what was read off. */
const identify: Answering = (typed) => {
  const reading = new Reading(typed);
  const found = measured(reading);
  const parts = [found && byMeasure(found), byHead(reading), byMark(reading), byName(reading)].filter(
    (part) => part !== undefined,
  );
  const [first, ...rest] = parts;
  if (first === undefined) return reading.end(null);
  return reading.end(
    answerOf({
      ...first,
      says: parts.flatMap((part) => part.says ?? []),
      groups: parts.flatMap((part) => part.groups ?? []),
      basis: first.basis
        ? {
            ...first.basis,
            limits: [...first.basis.limits, ...rest.flatMap((part) => part.basis?.limits ?? [])],
          }
        : null,
    }),
  );
};

export const identifyTopic = { topic: 'identify' as const, fields: FIELDS, answer: identify };
