import {
  elastomerCaution,
  formatLength,
  identifyORing,
  parseLength,
  ringByDash,
  type Basis,
  type ORing,
} from '../../../core/fastening/index.ts';
import type { AnswerData } from '../../screens/handbook/types.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, basisOf, Reading } from './answer.ts';

const FIELDS = ['inside', 'section', 'fluid', 'dash'] as const;

/** "AS568-214, 24.99 × 3.53 mm": what is bought. */
const wantOf = (ring: ORing): string =>
  ring.standard === 'SAE AS568'
    ? `${say.ring} ${ring.name}, ${ring.insideMm.toFixed(2)} × ${ring.sectionMm.toFixed(2)} mm`
    : `${say.ring} ${ring.name}`;

function ringFigure(ring: ORing): AnswerData['figure'] {
  const size = `${formatLength(ring.insideMm)} × ${formatLength(ring.sectionMm)}`;
  const dash = /^AS568-(\d+)$/.exec(ring.name)?.[1];
  return dash === undefined
    ? {
        value: `${Number(ring.insideMm.toFixed(2))} × ${Number(ring.sectionMm.toFixed(2))}`,
        unit: 'mm',
        other: ring.standard,
      }
    : { value: dash, unit: 'AS568', other: size };
}

function listed(ring: ORing): Partial<AnswerData> {
  const basis: Basis = {
    formula: say.lookedUp,
    inputs: [ring.name],
    source: `${ring.standard} (${ring.confidence})`,
    limits: [
      say.tolerances(formatLength(ring.insideToleranceMm), formatLength(ring.sectionToleranceMm)),
      ...(ring.note === '' ? [] : [ring.note]),
    ],
    cautions: [say.compound],
  };
  return { figure: ringFigure(ring), whose: say.byNumber, basis: basisOf(basis), want: wantOf(ring) };
}

/** Rings by measure or number, near twins told apart, and the usual rubber by fluid. */
const oring: Answering = (typed) => {
  const reading = new Reading(typed);
  const dash = reading.read('dash', ringByDash);
  const inside = reading.read('inside', (text) => parseLength(text));
  const section = reading.read('section', (text) => parseLength(text));
  const fluid = reading.read('fluid', elastomerCaution);
  const found =
    inside && section
      ? reading.take('inside', identifyORing({ insideMm: inside.lengthMm, sectionMm: section.lengthMm }))
      : undefined;
  const best = found?.candidates[0];
  if (!dash && !found && !fluid) return reading.end(null);
  const byNumber: Partial<AnswerData> = dash ? listed(dash) : {};
  const measured: Partial<AnswerData> = found
    ? {
        figure: best ? ringFigure(best) : null,
        whose: best ? (best.withinTolerance ? say.nearest : say.nearestOutside) : say.noRing,
        groups: [
          {
            title: say.canBe,
            rows: found.candidates.map((one) => ({
              id: one.name,
              mark: String(one.rank),
              name: one.name,
              about: one.says.slice(one.says.indexOf(': ') + 2),
            })),
          },
        ],
        // Twins of the nearest ring; pairs further down say nothing more.
        points: found.twins
          .filter((twin) => best && twin.includes(best.name))
          .slice(0, 3)
          .map((twin) => ({ id: twin, grave: 'warn' as const, say: twin })),
        basis: basisOf(found),
        want: best ? wantOf(best) : '',
      }
    : {};
  const ring = measured.basis ?? byNumber.basis;
  return reading.end(
    answerOf({
      ...(fluid ? { basis: basisOf(fluid), whose: say.rubberOnly } : {}),
      ...byNumber,
      ...measured,
      says: fluid ? [fluid.sentence] : [],
      ...(fluid && ring
        ? {
            basis: {
              ...ring,
              source: `${ring.source}; ${say.rubber}: ${fluid.source}`,
              limits: [...ring.limits, ...fluid.limits],
              cautions: [...ring.cautions, ...fluid.cautions],
            },
          }
        : {}),
    }),
  );
};

export const oringTopic = { topic: 'oring' as const, fields: FIELDS, answer: oring };
