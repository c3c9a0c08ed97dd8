import {
  formatVolume,
  freezePoint,
  fromLitres,
  mix as reckonMix,
  parsePercent,
  parseVolume,
  type Outcome,
} from '../../../core/fastening/index.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, Reading } from './answer.ts';

const FIELDS = ['capacity', 'remaining', 'strength', 'target', 'concentrate'] as const;

/** A bare figure above 1 is percent, as everybody says it; "1" too, because nobody mixes to a share of one. */
const percent = (text: string): Outcome<number> => parsePercent(text === '1' ? '1 %' : text);
const poured = (text: string): Outcome<number> => parsePercent(text === '1' ? '100 %' : text);

/** Which field a refusal of the balance belongs to. */
function fieldOf(code: string, sentence: string): string {
  if (code === 'mix.capacity') return 'capacity';
  if (code === 'mix.remaining') return 'remaining';
  if (sentence.includes('concentrate')) return 'concentrate';
  return sentence.includes('target') ? 'target' : 'strength';
}

/** Concentrate and water, or what must come out first; and where the mixture begins to freeze. */
const mix: Answering = (typed) => {
  const reading = new Reading(typed);
  const capacity = reading.read('capacity', (text) => parseVolume(text));
  const unit = capacity?.unit ?? 'l';
  const remaining = reading.read('remaining', (text) => parseVolume(text, unit));
  const strength = reading.read('strength', percent);
  const target = reading.read('target', percent);
  const concentrate = reading.read('concentrate', poured);
  if (!capacity || target === undefined || !reading.ok) return reading.end(null);
  const found = reckonMix({
    capacity: fromLitres(capacity.litres, unit),
    remaining: fromLitres(remaining?.litres ?? 0, unit),
    remainingStrength: strength ?? 0,
    targetStrength: target,
    concentrateStrength: concentrate,
    unit,
  });
  const value = reading.take(found.ok ? 'capacity' : fieldOf(found.code, found.sentence), found);
  if (!value) return reading.end(null);
  const freeze = freezePoint(value.bestStrength * 100);
  const first = value.feasible ? Math.max(0, value.concentrate) : (value.drainFirst ?? 0);
  const both = (amount: number): string => formatVolume(amount, unit);
  return reading.end(
    answerOf({
      figure:
        value.feasible || value.drainFirst !== undefined
          ? {
              value: (value.feasible ? first : Math.ceil(first * 100 - 1e-6) / 100).toFixed(2),
              unit,
              other: value.feasible ? say.andWater(both(Math.max(0, value.water))) : say.drainFirst,
            }
          : null,
      whose: value.feasible ? say.concentrateToAdd : say.notYet,
      says: [
        value.sentence,
        ...(value.feasible ? [say.inBoth(both(first))] : []),
        ...(freeze.ok ? [say.ifGlycol(freeze.value.sentence)] : []),
      ],
      basis: {
        ...value,
        source: freeze.ok ? `${value.source}; ${freeze.value.source}` : value.source,
        limits: [...new Set([...value.limits, ...(freeze.ok ? freeze.value.limits : [])])],
        cautions: [...value.cautions, ...(freeze.ok ? freeze.value.cautions : [])],
      },
    }),
  );
};

export const mixTopic = { topic: 'mix' as const, fields: FIELDS, answer: mix };
