import type { DriveKind } from './drives.ts';
import type { Lubrication } from './friction.ts';
import type { TorqueUnit } from './units.ts';

export type TorqueFindingCode = 'torque.past-proof' | 'torque.off' | 'torque.misfit' | 'torque.none';
export type Severity = 'stop' | 'warn' | 'note';

/** Where a joint without a torque is worth a question. */
export type Matter =
  | 'brakes'
  | 'steering'
  | 'suspension'
  | 'rotating'
  | 'pressure'
  | 'fuel'
  | 'lifting'
  | 'electrical power'
  | 'by the user';

/** The same figure read in another unit, where that would make sense. */
export interface UnitGuess {
  readonly unit: TorqueUnit;
  readonly torqueNm: number;
  /** "90 lbf·in would be 10.2 N·m". */
  readonly sentence: string;
}

export interface TorqueFinding {
  readonly code: TorqueFindingCode;
  readonly severity: Severity;
  /** One sentence with the reasoning in it. */
  readonly sentence: string;
  readonly unitGuesses: readonly UnitGuess[];
}

/** A torque for judging: in N·m, and the unit it was typed in. */
export interface JudgedTorque {
  readonly torqueNm: number;
  readonly unit?: TorqueUnit | undefined;
}

/** What is known of one tightened set. Absent means not recorded, never none. */
export interface TorqueCase {
  readonly thread?: string | undefined;
  readonly propertyClass?: string | undefined;
  readonly lubrication?: Lubrication | undefined;
  readonly head?: { readonly drive: DriveKind; readonly size: number | string } | undefined;
  readonly wanted?: JudgedTorque | undefined;
  /** Upper end where a range is wanted, N·m. */
  readonly wantedHighNm?: number | undefined;
  readonly reached?: JudgedTorque | undefined;
  /** Tightened on by an angle after the torque: the load then no longer follows from the torque. */
  readonly thenAngle?: boolean | undefined;
  /** Page of the maker's manual, where it is cited: the maker's value wins and gets a note, not a stop. */
  readonly makerPage?: string | undefined;
  readonly matters?: readonly Matter[] | undefined;
  /** "Snug by feel" is an answer. */
  readonly snugByFeel?: boolean | undefined;
  /** Allowed difference between reached and wanted, percent. 10 unless told (common practice, no source). */
  readonly tolerancePercent?: number | undefined;
}

export interface TorqueJudgement {
  readonly findings: readonly TorqueFinding[];
  /** What cannot be told from what is recorded, in sentences. */
  readonly unknowns: readonly string[];
  /** 75 % of proof, where thread and class are known. */
  readonly referenceNm?: number;
  /** Torque at proof load with the lowest K that fits: of the class, or of the strongest listed class. */
  readonly proofTorqueNm?: number;
  /** The weakest listed class that bears the torque, said where the class is unknown or too weak. */
  readonly needsClass?: string;
}
