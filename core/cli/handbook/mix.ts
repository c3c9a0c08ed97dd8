import {
  drainAndReplace,
  freezePoint,
  fromLitres,
  mix as reckonMix,
  parseDecimal,
  parsePercent,
  parseVolume,
  refuse,
  showNumber,
  strengthAfterFlushes,
  volumePercentOf,
  type FreezePoint,
  type Outcome,
  type Volume,
} from '../../fastening/index.ts';
import {
  basisLines,
  missing,
  optional,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  { name: 'capacity', also: ['total', 'v'], says: 'what the system holds: 10 l, 8 qt' },
  {
    name: 'remaining',
    also: ['residual', 'left'],
    says: 'what stayed after draining: 3 l (left out: nothing)',
  },
  {
    name: 'remaining-strength',
    also: ['residual-strength', 'strength'],
    says: 'how strong that is: 30 % (left out: water)',
  },
  { name: 'target', says: 'strength wanted: 50 %' },
  {
    name: 'concentrate',
    also: ['replacement'],
    says: 'strength of what is poured in: 100 %, 50 % for a premix',
  },
  { name: 'present', says: 'instead: strength of a full system; answers how much to drain and replace' },
  { name: 'flushes', says: 'with remaining and its strength: what is left after so many flushes with water' },
  { name: 'freeze', also: ['freeze-point'], says: 'freezing point at this strength: 50 %' },
  { name: 'by', says: 'volume or mass, for --freeze' },
  { name: 'family', says: 'inhibited or pure, for --freeze' },
  {
    name: 'mass',
    also: ['weight'],
    says: 'mass percent of glycol, as volume percent: 30 %; with --capacity as a volume',
  },
  { name: 'gravity', also: ['sg'], says: 'specific gravity of the glycol, for --mass: 1.1155' },
];

function runMix(options: Options): VerbAnswer {
  const opened = readOptions(mix, options);
  if (!opened.ok) return opened;
  const get = opened.value.get;
  const freeze = get('freeze');
  if (freeze !== undefined) return freezing(freeze, get('by'), get('family'));
  const capacity = optional(get('capacity'), (text) => parseVolume(text));
  if (!capacity.ok) return capacity;
  const mass = get('mass');
  if (mass !== undefined) return byMass(mass, get('gravity'), capacity.value);
  if (!capacity.value) return missing('a capacity (--capacity 10 l), or --freeze 50 %');
  const unit = capacity.value.unit;
  const remaining = parseVolume(get('remaining') ?? '0', unit);
  const [start, target, present] = ['remaining-strength', 'target', 'present'].map((name) =>
    optional(get(name), parsePercent),
  );
  // Nobody pours in a concentrate of 1 %: a bare 1 is all of it.
  const poured = get('concentrate')?.trim() ?? '100 %';
  const concentrate = parsePercent(poured === '1' ? '100 %' : poured);
  if (!remaining.ok) return remaining;
  if (!start?.ok) return start ?? missing('a strength');
  if (!target?.ok) return target ?? missing('a target');
  if (!present?.ok) return present ?? missing('a strength');
  if (!concentrate.ok) return concentrate;
  const flushes = get('flushes');
  if (flushes !== undefined) return flushed(flushes, capacity.value, remaining.value, start.value ?? 0);
  if (target.value === undefined) return missing('a target strength (--target 50 %)');
  if (present.value !== undefined)
    return replaced(capacity.value, present.value, target.value, concentrate.value);
  return mixed(capacity.value, remaining.value, start.value ?? 0, target.value, concentrate.value);
}

function mixed(
  capacity: Volume,
  remaining: Volume,
  start: number,
  target: number,
  concentrate: number,
): VerbAnswer {
  const unit = capacity.unit;
  const found = reckonMix({
    capacity: fromLitres(capacity.litres, unit),
    remaining: fromLitres(remaining.litres, unit),
    remainingStrength: start,
    targetStrength: target,
    concentrateStrength: concentrate,
    unit,
  });
  if (!found.ok) return found;
  const freeze: Outcome<FreezePoint> = freezePoint(found.value.bestStrength * 100);
  return {
    ok: true,
    value: { ...found.value, unit, ...(freeze.ok ? { freezePoint: freeze.value } : {}) },
    text: [
      found.value.sentence,
      ...(freeze.ok ? [`If it is ethylene glycol with inhibitors: ${freeze.value.sentence}`] : []),
      ...basisLines(found.value),
    ],
  };
}

function replaced(capacity: Volume, present: number, target: number, replacement: number): VerbAnswer {
  const unit = capacity.unit;
  const found = drainAndReplace(fromLitres(capacity.litres, unit), present, target, replacement);
  if (!found.ok) return found;
  const basis = {
    formula: 'x = V · (Ct − C0) / (Cc − C0)',
    inputs: [
      `V ${capacity.typed}`,
      `now ${showNumber(present * 100)} %`,
      `target ${showNumber(target * 100)} %`,
    ],
    source: 'balance of volumes, well mixed',
    limits: ['Holds when the whole system is mixed before it is drained.'],
    cautions: [
      'Catch what is drained; open a hot system only when it has cooled down and lost its pressure.',
    ],
  };
  return {
    ok: true,
    value: { drainAndReplace: found.value, volume: found.value, unit, ...basis },
    text: [
      `Drain ${found.value.toFixed(2)} ${unit} and replace it with ${showNumber(replacement * 100)} %.`,
      ...basisLines(basis),
    ],
  };
}

function flushed(typed: string, capacity: Volume, remaining: Volume, start: number): VerbAnswer {
  const flushes = Number(typed);
  if (!Number.isInteger(flushes) || flushes < 0 || flushes > 50)
    return refuse('mix.flushes', '0 to 50 flushes', typed);
  if (remaining.litres > capacity.litres)
    return refuse('mix.remaining', 'less left than the system holds', remaining.typed);
  const strength = strengthAfterFlushes(start, remaining.litres, capacity.litres, flushes);
  const basis = {
    formula: 'C = C0 · (R/V)^n',
    inputs: [
      `V ${capacity.typed}`,
      `R ${remaining.typed}`,
      `C0 ${showNumber(start * 100)} %`,
      `${flushes} flushes`,
    ],
    source: 'balance of volumes, mixed each time',
    limits: ['Each time drained to R, filled with water and mixed.'],
    cautions: ['Catch what is drained.'],
  };
  return {
    ok: true,
    value: { strength, ...basis },
    text: [
      `After ${flushes} flushes ${showNumber(Number((strength * 100).toFixed(2)))} % is left.`,
      ...basisLines(basis),
    ],
  };
}

/** Volume percent from mass percent, and the volume of glycol where the whole is known. */
function byMass(typed: string, gravityTyped: string | undefined, capacity: Volume | undefined): VerbAnswer {
  const mass = parsePercent(typed);
  const gravity = parseDecimal(gravityTyped ?? '1.1155');
  if (!mass.ok) return mass;
  if (!gravity.ok || !(gravity.value >= 0.8 && gravity.value <= 2))
    return refuse('mix.gravity', 'a specific gravity from 0.8 to 2', gravityTyped);
  const found = volumePercentOf(mass.value * 100, gravity.value);
  if (!found.ok) return found;
  const glycol = capacity && (fromLitres(capacity.litres, capacity.unit) * found.value) / 100;
  const basis = {
    formula: 'volume % = 100 / (1 + g · (1 − m) / m)',
    inputs: [`${showNumber(mass.value * 100)} mass %`, `specific gravity ${showNumber(gravity.value)}`],
    source: 'balance of volumes',
    limits: ['Volumes are taken as additive: the tables lie up to half a percent lower.'],
    cautions: ['A tester that reads the mixture itself comes before this figure.'],
  };
  return {
    ok: true,
    value: {
      volumePercent: found.value,
      ...(capacity && glycol !== undefined
        ? { glycol, water: fromLitres(capacity.litres, capacity.unit) - glycol, unit: capacity.unit }
        : {}),
      ...basis,
    },
    text: [
      `${showNumber(mass.value * 100)} mass % is ${showNumber(Number(found.value.toFixed(2)))} volume %.`,
      ...(capacity && glycol !== undefined
        ? [`In ${capacity.typed}: ${glycol.toFixed(1)} ${capacity.unit} of glycol.`]
        : []),
      ...basisLines(basis),
    ],
  };
}

function freezing(typed: string, by: string | undefined, family: string | undefined): VerbAnswer {
  const strength = parsePercent(typed);
  if (!strength.ok) return strength;
  if (by !== undefined && by !== 'volume' && by !== 'mass') return refuse('mix.by', 'volume or mass', by);
  if (family !== undefined && family !== 'inhibited' && family !== 'pure')
    return refuse('mix.family', 'inhibited or pure', family);
  const found = freezePoint(
    Number((strength.value * 100).toPrecision(12)),
    by ?? (family === 'pure' ? 'mass' : 'volume'),
    family ?? 'inhibited',
  );
  if (!found.ok) return found;
  return { ok: true, value: found.value, text: [found.value.sentence, ...basisLines(found.value)] };
}

/** `mix`: concentrate and water from what stayed, capacity and target; freezing point. */
export const mix: HandbookVerb = {
  name: 'mix',
  says: 'concentrate and water from what stayed, capacity and target; freezing point',
  options: OPTIONS,
  run: runMix,
};
