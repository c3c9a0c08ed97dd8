import {
  convert,
  formatTorqueBoth,
  fromNewtonMetres,
  lowestPreloadN,
  nutFactor,
  preloadFromTorque,
  PROOF_SHARE,
  readingWithDrag,
  refuse,
  showNumber,
  torqueFromPreload,
  type Basis,
  type Outcome,
} from '../../fastening/index.ts';
import type { Read } from './torque-options.ts';
import { basisLines, missing } from './verb.ts';

/** What an answer is gathered in: one JSON value, and the same in lines. */
export interface Parts {
  readonly value: Record<string, unknown>;
  readonly text: string[];
}

const ARITHMETIC = "Arithmetic, not an instruction: the maker's figure comes first.";
const SCATTER = 'K scatters by about 25 to 30 % from bolt to bolt.';

/** The nut factor that is reckoned with: as given, else of the lubrication. */
export function kOf(input: Read): number {
  return input.k ?? nutFactor(input.lubrication ?? 'as received').k;
}

/** Newtons as lbf, for those who read inch tables. */
export function poundsForce(newtons: number): number {
  const found = convert(newtons, 'N', 'lbf');
  if (!found.ok) throw new Error(found.sentence);
  return found.value;
}

/** Whether the question can be answered without knowing the thread. */
export function isPlain(input: Read): boolean {
  if (input.thread) return false;
  return (
    input.diameterMm !== undefined ||
    input.drag !== undefined ||
    (input.scatter !== undefined && input.preloadN !== undefined) ||
    (input.lubrication !== undefined && !input.wanted && input.headMm === undefined) ||
    (input.joint !== undefined && !input.wanted) ||
    (input.proofMPa !== undefined && input.areaMm2 !== undefined)
  );
}

/** Arithmetic on figures alone: nut factor, T = K·d·F and back, share of proof, drag, scatter. */
export function plain(input: Read, parts: Parts): Outcome<unknown> | undefined {
  if (input.lubrication !== undefined || input.k !== undefined) sayFactor(input, parts);
  if (input.joint !== undefined) {
    parts.value['share'] = input.share;
    parts.text.push(
      `Share of the proof load for a ${input.joint} joint: ${showNumber((input.share ?? 0) * 100)} % (Shigley).`,
    );
  }
  const clampN =
    input.preloadN ??
    (input.proofMPa !== undefined && input.areaMm2 !== undefined
      ? (input.share ?? PROOF_SHARE) * input.proofMPa * input.areaMm2
      : undefined);
  if (clampN !== undefined) {
    parts.value['preloadN'] = clampN;
    parts.value['preloadLbf'] = poundsForce(clampN);
    parts.text.push(
      `Clamp load: ${showNumber(Math.round(clampN))} N (${showNumber(Math.round(poundsForce(clampN)))} lbf).`,
    );
  }
  const byDiameter =
    input.diameterMm === undefined ? undefined : onDiameter(input, input.diameterMm, clampN, parts);
  if (byDiameter) return byDiameter;
  if (input.scatter !== undefined && clampN !== undefined) return scattered(clampN, input.scatter, parts);
  return undefined;
}

function sayFactor(input: Read, parts: Parts): void {
  const factor = nutFactor(input.lubrication ?? 'as received');
  parts.value['k'] = kOf(input);
  parts.value['nutFactor'] = factor;
  if (input.k !== undefined) return;
  const basis: Basis = {
    formula: 'looked up by lubrication',
    inputs: [factor.says],
    source: `${factor.source} (${factor.confidence})`,
    limits: [SCATTER, `The lowest K that fits these words is ${showNumber(factor.lowestK)}.`],
    cautions: [ARITHMETIC],
  };
  Object.assign(parts.value, basis);
  parts.text.push(`Nut factor K ${showNumber(factor.k)} (${factor.says}).`, ...basisLines(basis));
}

/** T = K·d·F where only the diameter is known, whichever of the two is asked for. */
function onDiameter(
  input: Read,
  diameterMm: number,
  clampN: number | undefined,
  parts: Parts,
): Outcome<unknown> | undefined {
  const k = kOf(input);
  if (!(k >= 0.05 && k <= 0.5)) return refuse('torque.k', 'a nut factor K from 0.05 to 0.5', k);
  const wanted = input.wanted?.torque;
  if (clampN === undefined && !wanted)
    return missing('a preload (--preload 25 kN) or a torque (--torque 10 N·m) beside the diameter');
  const torqueNm = clampN === undefined ? (wanted?.torqueNm ?? 0) : torqueFromPreload(k, diameterMm, clampN);
  const preloadN = clampN ?? preloadFromTorque(k, diameterMm, torqueNm);
  const basis: Basis = {
    formula: clampN === undefined ? 'F = T / (K · d)' : 'T = K · d · F',
    inputs: [
      `K ${showNumber(k)}`,
      `d ${showNumber(diameterMm)} mm`,
      clampN === undefined ? `T ${showNumber(torqueNm)} N·m` : `F ${showNumber(clampN)} N`,
    ],
    source: input.k === undefined ? nutFactor(input.lubrication ?? 'as received').source : 'K as given',
    limits: [SCATTER],
    cautions: [ARITHMETIC],
  };
  Object.assign(parts.value, {
    torqueNm,
    torqueLbfFt: fromNewtonMetres(torqueNm, 'lbf·ft'),
    torqueLbfIn: fromNewtonMetres(torqueNm, 'lbf·in'),
    preloadN,
    preloadLbf: poundsForce(preloadN),
    k,
    ...basis,
  });
  parts.text.push(
    clampN === undefined
      ? `Preload: about ${showNumber(Number(preloadN.toPrecision(4)))} N.`
      : `Torque for that preload: ${formatTorqueBoth(torqueNm)}.`,
    ...basisLines(basis),
  );
  return undefined;
}

/** Adds the least preload over the scatter of the tool. */
export function scattered(greatestN: number, scatter: number, parts: Parts): Outcome<unknown> | undefined {
  const lowest = lowestPreloadN(greatestN, scatter);
  if (!lowest.ok) return lowest;
  parts.value['lowestPreloadN'] = lowest.value;
  parts.text.push(
    `With a scatter of ${showNumber(scatter)} the preload may be as low as ${showNumber(Math.round(lowest.value))} N.`,
  );
  return undefined;
}

/** Adds the reading on the wrench where a self-locking nut drags: both ends where a range is wanted. */
export function withDrag(input: Read, parts: Parts): Outcome<unknown> | undefined {
  const wanted = input.wanted?.torque;
  if (!wanted) return missing('a torque beside the drag (--torque 100 lbf·in)');
  const drag = input.drag?.torqueNm ?? 0;
  const low = readingWithDrag(wanted.torqueNm, drag);
  const high = readingWithDrag(input.wantedHigh?.torqueNm ?? wanted.torqueNm, drag);
  if (!low.ok) return low;
  if (!high.ok) return high;
  const inUnit = (nm: number): number => Number(fromNewtonMetres(nm, wanted.unit).toPrecision(12));
  Object.assign(parts.value, {
    readingNm: low.value,
    reading: inUnit(low.value),
    readingUnit: wanted.unit,
    ...(input.wantedHigh ? { readingHighNm: high.value, readingHigh: inUnit(high.value) } : {}),
  });
  const range = input.wantedHigh ? ` to ${formatTorqueBoth(high.value)}` : '';
  parts.text.push(
    `Reading with the drag of the nut: ${formatTorqueBoth(low.value)}${range} (wanted + drag on the last turn before seating; FAA AC 43.13-1B 7-40).`,
  );
  return undefined;
}
