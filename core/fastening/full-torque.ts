import { MAKER_FIRST, good, refuse, showNumber, type Basis, type Outcome } from './outcome.ts';
import { sayClass, yieldStrength, type PropertyClass } from './strengths.ts';
import type { Thread } from './threads.ts';

/**
 * Bearing diameter under the head (d_w, smallest, ISO 4014/4017) and medium clearance hole (d_h, ISO 273), mm.
 * From memory; the published torque tables follow from them within 1.5 %.
 */
const BEARING: ReadonlyMap<number, readonly [number, number]> = new Map([
  [3, [4.57, 3.4]],
  [3.5, [5.07, 3.9]],
  [4, [5.88, 4.5]],
  [5, [6.88, 5.5]],
  [6, [8.88, 6.6]],
  [7, [9.63, 7.6]],
  [8, [11.63, 9]],
  [10, [14.63, 11]],
  [12, [16.63, 13.5]],
  [14, [19.64, 15.5]],
  [16, [22.49, 17.5]],
  [18, [25.34, 20]],
  [20, [28.19, 22]],
  [22, [31.71, 24]],
  [24, [33.61, 26]],
  [27, [38, 30]],
  [30, [42.75, 33]],
]);

/** Mean bearing diameter D_Km in mm under a hexagon head, or undefined for sizes without data. */
function meanBearingMm(nominalMm: number): number | undefined {
  const found = BEARING.get(nominalMm);
  return found && (found[0] + found[1]) / 2;
}

export interface FullTorqueInput {
  readonly thread: Thread;
  readonly propertyClass: PropertyClass;
  /** Friction in the thread and under the head, 0.04 to 0.4. */
  readonly threadFriction: number;
  readonly headFriction?: number | undefined;
  /** Share of the yield strength that tension and twist together may use, 0.9 unless told. */
  readonly utilisation?: number | undefined;
  /** Mean bearing diameter, mm; from the tables for hexagon heads unless told. */
  readonly bearingMm?: number | undefined;
}

export interface FullTorque extends Basis {
  readonly torqueNm: number;
  readonly preloadN: number;
}

/**
 * The fuller metric formula with friction in thread and under the head (VDI 2230 part 1):
 * F = ν Rp / √(1 + 3 (1.5 d2/d0 (P/(π d2) + 1.155 µ))²) · A0, d0 = (d2 + d3)/2; M = F (0.16 P + 0.58 d2 µ_G + 0.5 D_Km µ_K).
 * Metric only. For stainless only because friction must be stated here: it is arithmetic on that figure and says so.
 */
export function fullTorque(input: FullTorqueInput): Outcome<FullTorque> {
  const { thread, propertyClass, threadFriction } = input;
  const headFriction = input.headFriction ?? threadFriction;
  const utilisation = input.utilisation ?? 0.9;
  if (thread.system !== 'metric')
    return refuse('torque.metric', 'a metric thread for the fuller formula', thread.designation);
  for (const mu of [threadFriction, headFriction]) {
    if (!(mu >= 0.04 && mu <= 0.4))
      return refuse('torque.friction', 'a coefficient of friction from 0.04 to 0.4', mu);
  }
  if (!(utilisation >= 0.1 && utilisation <= 1)) {
    return refuse('torque.utilisation', 'a share of the yield strength from 10 to 100 %', utilisation);
  }
  const yieldMPa = yieldStrength(propertyClass, thread.nominalMm);
  if (!yieldMPa) {
    return refuse(
      'torque.class-size',
      `a metric class listed for ${thread.designation}`,
      sayClass(propertyClass),
    );
  }
  const bearingMm = input.bearingMm ?? meanBearingMm(thread.nominalMm);
  if (bearingMm === undefined) {
    return refuse(
      'torque.bearing',
      'a hexagon head from M3 to M30, or its mean bearing diameter',
      thread.designation,
    );
  }
  const preloadN = assemblyPreloadN(thread, threadFriction, utilisation * yieldMPa.valueMPa);
  const lever =
    0.16 * thread.pitchMm + 0.58 * thread.pitchDiameterMm * threadFriction + 0.5 * bearingMm * headFriction;
  return good({
    torqueNm: (preloadN * lever) / 1000,
    preloadN,
    ...fullBasis(input, headFriction, utilisation, yieldMPa.valueMPa, bearingMm),
  });
}

/** Least preload after tightening by torque: the greatest over the scatter of the tool (1.6 to 1.8 for a torque wrench). Source: VDI 2230. */
export function lowestPreloadN(greatestN: number, scatter: number): Outcome<number> {
  return scatter >= 1 && scatter <= 4
    ? good(greatestN / scatter)
    : refuse('torque.scatter', 'a scatter of the tightening from 1 to 4', scatter);
}

function assemblyPreloadN(thread: Thread, friction: number, stressMPa: number): number {
  const d2 = thread.pitchDiameterMm;
  const d0 = (d2 + thread.minorDiameterMm) / 2;
  const twist = 1.5 * (d2 / d0) * (thread.pitchMm / (Math.PI * d2) + 1.155 * friction);
  return ((stressMPa / Math.sqrt(1 + 3 * twist * twist)) * Math.PI * d0 * d0) / 4;
}

function fullBasis(
  input: FullTorqueInput,
  headFriction: number,
  utilisation: number,
  yieldMPa: number,
  bearingMm: number,
): Basis {
  return {
    formula: 'M = F · (0.16 P + 0.58 d2 µ_thread + 0.5 D_Km µ_head), F at a share of yield with twist',
    inputs: [
      `${input.thread.designation}, d2 ${showNumber(input.thread.pitchDiameterMm)} mm, P ${showNumber(input.thread.pitchMm)} mm`,
      `${sayClass(input.propertyClass)}, yield ${showNumber(yieldMPa)} MPa, used to ${showNumber(utilisation * 100)} %`,
      `µ thread ${showNumber(input.threadFriction)}, µ head ${showNumber(headFriction)}, D_Km ${showNumber(bearingMm)} mm`,
    ],
    source: 'VDI 2230 part 1, ISO 898-1, ISO 4014, ISO 273',
    limits: [
      'Hexagon head on a medium clearance hole; another head or washer has another bearing diameter.',
      'Tables on other bases differ for the same bolt (M10 8.8 from 48 to 54 N·m); they are not interchangeable.',
      ...(input.propertyClass.stainless
        ? ['Stainless: the friction is as you gave it; what it really is, and whether it galls, is unknown.']
        : []),
    ],
    cautions: [MAKER_FIRST],
  };
}
