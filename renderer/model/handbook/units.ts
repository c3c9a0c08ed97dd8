import { readQuantity } from '../../../core/fastening/index.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, basisOf, Reading } from './answer.ts';

const FIELDS = ['value'] as const;

/** The unit across the ocean, for the large figure. */
const OTHER: Readonly<Record<string, string>> = {
  N·m: 'lbf·ft',
  lbf·ft: 'N·m',
  lbf·in: 'N·m',
  N·cm: 'lbf·in',
  mm: 'in',
  in: 'mm',
  bar: 'psi',
  psi: 'bar',
  kPa: 'psi',
  l: 'US qt',
  'US qt': 'l',
  'US gal': 'l',
  kN: 'lbf',
  N: 'lbf',
  lbf: 'N',
  kg: 'lb',
  lb: 'kg',
};

/** What was typed, and the same in every other unit of its kind. */
const units: Answering = (typed) => {
  const reading = new Reading(typed);
  const found = reading.read('value', readQuantity);
  if (!found) return reading.end(null);
  const main = found.converted.find((one) => one.unit === OTHER[found.unit]) ?? found.converted[0];
  return reading.end(
    answerOf({
      figure: main ? { value: main.shown.slice(0, -main.unit.length - 1), unit: main.unit, other: '' } : null,
      whose: say.isTyped(found.typed),
      groups: [
        {
          title: say.same,
          rows: found.converted.map((one) => ({ id: one.unit, mark: '', name: one.shown, about: '' })),
        },
      ],
      basis: basisOf(found),
    }),
  );
};

export const unitsTopic = { topic: 'units' as const, fields: FIELDS, answer: units };
