import { nutFactor, type Lubrication } from './friction.ts';
import { MAKER_FIRST, good, refuse, showNumber, type Basis, type Outcome } from './outcome.ts';
import { classesFor, proofLoad, sayClass, type PropertyClass } from './strengths.ts';
import type { Thread } from './threads.ts';

/** Share of the proof load: 75 % where the joint is taken apart again, 90 % where it stays. Source: Shigley. */
export const PROOF_SHARE = 0.75;
export const PROOF_SHARE_PERMANENT = 0.9;

/** Torque in N·m from nut factor, diameter in mm and preload in N: T = K·d·F. */
export function torqueFromPreload(k: number, nominalMm: number, preloadN: number): number {
  return (k * nominalMm * preloadN) / 1000;
}

/** Preload in N from torque in N·m: F = T / (K·d). */
export function preloadFromTorque(k: number, nominalMm: number, torqueNm: number): number {
  return (torqueNm * 1000) / (k * nominalMm);
}

/** A reference torque by the short form, never an instruction. */
export interface ReferenceTorque extends Basis {
  readonly torqueNm: number;
  readonly preloadN: number;
  readonly proofLoadN: number;
  /** Torque at which the proof load is reached with the lowest K that fits. */
  readonly proofTorqueNm: number;
  readonly k: number;
  readonly share: number;
  readonly confidence: string;
}

export interface ReferenceTorqueInput {
  readonly thread: Thread;
  readonly propertyClass: PropertyClass;
  readonly lubrication?: Lubrication | undefined;
  /** Overrides the nut factor of the lubrication. */
  readonly k?: number | undefined;
  /** Share of the proof load, 0.75 unless told. */
  readonly share?: number | undefined;
}

/**
 * Reference torque T = K·d·F with F a share of the proof load.
 * K from 0.05 to 0.5, share from 0.05 to 1. Refuses stainless (its proof load is not tabulated) and a class that the
 * standard does not know at this size.
 */
export function referenceTorque(input: ReferenceTorqueInput): Outcome<ReferenceTorque> {
  const { thread, propertyClass } = input;
  const factor = nutFactor(input.lubrication ?? 'as received');
  const k = input.k ?? factor.k;
  const share = input.share ?? PROOF_SHARE;
  if (!(k >= 0.05 && k <= 0.5)) return refuse('torque.k', 'a nut factor K from 0.05 to 0.5', k);
  if (!(share >= 0.05 && share <= 1))
    return refuse(
      'torque.share',
      'a share of the proof load from 5 to 100 %',
      `${showNumber(share * 100)} %`,
    );
  if (propertyClass.stainless) return stainlessUnknown(propertyClass);
  const proof = proofLoad(thread, propertyClass);
  if (!proof) {
    return refuse(
      'torque.class-size',
      `a class that its standard lists for ${thread.designation} (${listOf(classesFor(thread))})`,
      sayClass(propertyClass),
    );
  }
  const preloadN = share * proof.loadN;
  return good({
    torqueNm: torqueFromPreload(k, thread.nominalMm, preloadN),
    preloadN,
    proofLoadN: proof.loadN,
    proofTorqueNm: torqueFromPreload(input.k ?? factor.lowestK, thread.nominalMm, proof.loadN),
    k,
    share,
    confidence: proof.confidence,
    formula: 'T = K · d · F, F = share of proof load',
    inputs: [
      `${thread.designation}, d ${showNumber(thread.nominalMm)} mm`,
      `${sayClass(propertyClass)}, proof load ${showNumber(Math.round(proof.loadN))} N`,
      `${showNumber(share * 100)} % of proof, F ${showNumber(Math.round(preloadN))} N`,
      `K ${showNumber(k)} (${input.k === undefined ? factor.says : 'as given'})`,
    ],
    source: `${proof.source} (${proof.confidence}); ${input.k === undefined ? `${factor.source} (${factor.confidence})` : 'K as given'}`,
    limits: [
      'K scatters by about 25 to 30 % from bolt to bolt.',
      'Holds for a full steel nut or enough thread in a strong member; a casting, a hollow bolt or a thin nut may be the weak member, and that is unknown here.',
    ],
    cautions: [MAKER_FIRST],
  });
}

function listOf(classes: readonly PropertyClass[]): string {
  return classes.map(sayClass).join(', ') || 'none at this size';
}

/** Stainless has no proof load in its standard, and its friction runs from 0.1 to 0.5 and galls. */
function stainlessUnknown(propertyClass: PropertyClass): Outcome<never> {
  return {
    ok: false,
    code: 'torque.unknown',
    sentence: `The torque for ${sayClass(propertyClass)} is unknown here: its standard gives no proof load and its friction scatters widely and galls; use the maker's figure.`,
  };
}
