import { convert, parseFraction, quantityOf, readQuantity, refuse } from '../../fastening/index.ts';
import {
  basisLines,
  missing,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  { name: 'value', also: ['v'], says: 'a number with its unit: 25 N·m, 18 ft-lb, 5/16 in, 30 psi, 180 °F' },
  { name: 'from', says: 'the unit, where the value has none: lbf·ft' },
  { name: 'to', says: 'one unit to answer in: N·m; left out: all of that kind' },
];

function runUnits(options: Options): VerbAnswer {
  const opened = readOptions(units, options);
  if (!opened.ok) return opened;
  const get = opened.value.get;
  const typed = get('value');
  const from = get('from');
  const to = get('to');
  if (typed === undefined) return missing('a number with its unit (--value 25 N·m)');
  const number = from === undefined ? undefined : parseFraction(typed);
  if (number && !number.ok) return number;
  const found =
    number === undefined
      ? readQuantity(typed)
      : quantityOf(number.value.value, from ?? '', `${typed} ${from ?? ''}`);
  if (!found.ok) return found;
  const { converted, ...quantity } = found.value;
  if (to === undefined)
    return {
      ok: true,
      value: { ...quantity, converted },
      text: [`${quantity.typed}:`, ...converted.map((one) => one.shown), ...basisLines(quantity)],
    };
  const answer = convert(quantity.value, quantity.unit, to);
  const wanted =
    answer.ok &&
    (converted.find((one) => one.value === answer.value) ?? { unit: quantity.unit, shown: typed });
  if (!answer.ok || !wanted) return refuse('unit.kind', `a unit of ${quantity.kind} to convert to`, to);
  return {
    ok: true,
    value: {
      ...quantity,
      from: quantity.unit,
      given: quantity.value,
      value: answer.value,
      unit: wanted.unit,
    },
    text: [`${quantity.typed} = ${wanted.shown}`, ...basisLines(quantity)],
  };
}

/** `units`: what was typed, and the same in the other units of its kind. */
export const units: HandbookVerb = {
  name: 'units',
  says: 'a figure as typed and in the other units of its kind, by exact factors',
  options: OPTIONS,
  word: 'value',
  run: runUnits,
};
