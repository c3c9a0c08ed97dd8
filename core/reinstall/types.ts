/**
 * What the planner says about a job. All of it is derived from the rows of the job and the time; nothing here is stored
 * but the digest of a finding that somebody accepted.
 */
import type { Finding } from './finding-types.ts';

/**
 * S put a removal back · B carried-over part onto its new parent · F shared position without a home ·
 * C1 fluid closed, filled, cold leak check · C2 prime, bleed, hot leak check · I one isolation given back ·
 * T final tightening later · U the user's own step · K re-check after closing.
 */
export type StepKind = 'S' | 'B' | 'F' | 'C1' | 'C2' | 'I' | 'T' | 'U' | 'K';
/** The first that fits, in this order. */
export type StepState = 'done' | 'behind' | 'waiting' | 'held' | 'ready';

/** Why one step comes before another. */
export type EdgeRule =
  | 'need'
  | 'bench'
  | 'shared position'
  | 'carried over'
  | 'isolation'
  | 'isolation order'
  | 'fluid'
  | 'hides a joint'
  | 'later'
  | 'recheck'
  | 'own order';

export interface Edge {
  /** Step ids: `from` comes first. */
  readonly from: string;
  readonly to: string;
  readonly rule: EdgeRule;
  /** Only derived from the order of the log; nobody has confirmed it. */
  readonly assumed: boolean;
  /** `to` covers `from`: it may not be ticked while a stop finding stands on `from`. */
  readonly covers: boolean;
  /** The user may loosen it: a need or an order of the user's own. */
  readonly mayLoosen: boolean;
  /** The reason that was given, or what makes independence likely. */
  readonly why: string;
}

export type LackCode =
  | 'to get'
  | 'short'
  | 'away'
  | 'repair'
  | 'blocked'
  | 'cure'
  | 'not drained'
  | 'after closing';

/** Something the step waits for. */
export interface Lack {
  readonly code: LackCode;
  /** The part, set, position, consumable or fluid that is lacking. */
  readonly thingId: string;
  /** Pieces; 0 where pieces do not say it. */
  readonly qty: number;
  /** When it will be there by itself (cure), or is promised; UTC ms, null = unknown. */
  readonly until: number | null;
  readonly sentence: string;
}

export type ActionCode =
  | 'caution'
  | 'put in'
  | 'take out'
  | 'clean'
  | 'check hole'
  | 'renew'
  | 'fit'
  | 'put on'
  | 'join'
  | 'place'
  | 'match'
  | 'start'
  | 'tighten'
  | 'snug'
  | 'final tighten'
  | 'route'
  | 'as logged'
  | 'close drain'
  | 'measure'
  | 'fill'
  | 'leak check cold'
  | 'prime and bleed'
  | 'leak check hot'
  | 'give back'
  | 'carry over'
  | 'own step'
  | 'recheck';

export interface StepAction {
  readonly code: ActionCode;
  readonly sentence: string;
  readonly thingIds: readonly string[];
  /** All of its things are through it in the current round. */
  readonly done: boolean;
}

export type HoleMark = 'out' | 'started' | 'tightened' | 'paint-checked' | 'later' | 'left out' | 'blocked';

export interface StepHole {
  readonly positionId: string;
  readonly n: number;
  readonly mark: HoleMark;
  readonly specId: string;
  readonly stowId: string | null;
  readonly hidden: boolean;
  /** N·m, null where none was read. */
  readonly reachedNm: number | null;
  /** The round of tightening that it was last through, by its name ("30 %", "once around"); "" where none was written. */
  readonly round: string;
}

/** The fasteners of one set in one step. */
export interface StepFasteners {
  readonly setId: string;
  readonly name: string;
  readonly holes: readonly StepHole[];
  readonly torqueNm: number | null;
  readonly torqueTyped: string;
  readonly angleDeg: number | null;
  readonly stages: readonly string[];
  readonly laterWhen: string | null;
  readonly mustBeNew: boolean;
}

/** Something that has to be done on a thing before the step is complete, and the deed that says so. */
export interface Missing {
  readonly thingId: string;
  readonly what:
    | 'tightened'
    | 'started'
    | 'fitted'
    | 'joined'
    | 'taken out'
    | 'measured'
    | 'filled'
    | 'cold leak checked'
    | 'bled'
    | 'hot leak checked'
    | 'given back'
    | 'done';
  readonly sentence: string;
}

export interface Step {
  readonly id: string;
  readonly kind: StepKind;
  /** What a deed "done" on this step is written on. */
  readonly thingId: string;
  readonly removalId: string | null;
  /** The number in the log, from 1; null where the step belongs to no removal. */
  readonly number: number | null;
  readonly title: string;
  readonly state: StepState;
  /** From 1; one more each time it came off again. */
  readonly round: number;
  readonly lacks: readonly Lack[];
  /** Why it is not ready, in one sentence; empty when it is. */
  readonly why: string;
  /** Steps directly before it that are not done. */
  readonly firstDo: readonly string[];
  /** Assumed needs behind which it waits: to be asked about now, and not before. */
  readonly ask: readonly {
    readonly removalId: string;
    readonly needsId: string;
    readonly question: string;
  }[];
  /** Keys of the findings that hold it: its own gate's, and one example from further below. */
  readonly stoppedBy: readonly string[];
  /** Keys of all findings on this step, whatever their severity. */
  readonly findings: readonly string[];
  readonly actions: readonly StepAction[];
  readonly fasteners: readonly StepFasteners[];
  /** Parts to be renewed in this step. */
  readonly renew: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** What is not yet done in it; empty when every thing of it is through. */
  readonly missing: readonly Missing[];
  /** Steps that it covers, all the way down; null in jobs of more than 2 000 steps, where only `coveredBy` says it. */
  readonly coversCount: number | null;
  /** A gate stands before it (covering, filling, power or pressure, lowering). */
  readonly gate: string | null;
}

export type GateKind =
  | 'covering'
  | 'filling'
  | 'power or pressure'
  | 'lowering or moving'
  | 'handing over'
  | 'closing';

export interface Gate {
  readonly id: string;
  readonly kind: GateKind;
  /** The step before which it stands; null = before the job is handed over or closed. */
  readonly stepId: string | null;
  readonly open: boolean;
  /** What holds it now, one answer each: keys of stop findings. */
  readonly holding: readonly string[];
  /** Not wrong, only not done yet. */
  readonly notYet: readonly { readonly stepId: string; readonly sentence: string }[];
  readonly passedBy: readonly {
    readonly finding: string;
    readonly personId: string | null;
    readonly why: string;
    readonly at: number;
  }[];
}

/** A final tightening still due. */
export interface Later {
  readonly stepId: string;
  readonly setId: string;
  readonly when: string;
  readonly holesLeft: number;
  readonly due: boolean;
}

/** Steps that wait for each other in a ring: shown together, nothing guessed. */
export interface Undecided {
  readonly stepIds: readonly string[];
  /** One shortest ring, each step before the next, the last before the first. */
  readonly ring: readonly string[];
  readonly mayLoosen: readonly Edge[];
}

export interface Depth {
  readonly off: number;
  readonly back: number;
  readonly left: number;
  readonly pieces: number;
}

export interface Plan {
  /** In list order. */
  readonly steps: readonly Step[];
  readonly edges: readonly Edge[];
  readonly gates: readonly Gate[];
  readonly findings: readonly Finding[];
  /** Ids of the steps that can go ahead with what is in hand. */
  readonly ahead: ReadonlySet<string>;
  readonly later: readonly Later[];
  readonly undecided: readonly Undecided[];
  readonly depth: Depth;
}

export type * from './answers.ts';
export type * from './finding-types.ts';

/** A ring that an order of the user's own would close. */
export interface Ring {
  /** Step ids, each before the next, the last before the first. */
  readonly steps: readonly string[];
  readonly edges: readonly Edge[];
  readonly mayLoosen: readonly Edge[];
  readonly sentence: string;
}

/** A need that a new order of the log would turn round. */
export interface BrokenNeed {
  readonly removalId: string;
  readonly needsId: string;
  /** Loosening it is enough; a structural one (an assembly on its bench) cannot be loosened. */
  readonly mayLoosen: boolean;
  readonly sentence: string;
}
