import type { Move, PhotoData, PhotoMark } from '../../photo/types.ts';
import type { PointData } from '../../ui/Point.tsx';
import type { Rich } from '../../ui/rich.tsx';

export type StepState = 'ready' | 'waiting' | 'behind' | 'held' | 'done';

/** One round of tightening. */
export interface Round {
  readonly id: string;
  /** "30 %", "By hand", "Once around" */
  readonly share: string;
  /** "12", "all" */
  readonly value: string;
  /** "N·m"; "" where there is none. */
  readonly unit: string;
  /** "round 1", "round 3, 3 of 8" */
  readonly about: string;
  /** "not noted": tight already, and nobody wrote down that this round was walked. */
  readonly state: 'done' | 'now' | 'to come' | 'not noted';
}

/** The order of tightening: the same that the wedges show, for those who read rows. */
export interface OrderData {
  /** "Order, crosswise, by the marks on the photo" */
  readonly say: string;
  /** Mark ids in order; what is on no photo comes last. */
  readonly markIds: readonly string[];
  /** Asked first: are all holes of the joint on the photo? */
  readonly question: boolean;
}

/** Something to tick inside the step, in order. */
export interface ActionData {
  readonly id: string;
  readonly text: string;
  readonly done: boolean;
  /** A search led to what this action is done on. */
  readonly lit: boolean;
  /** What more of it may be kept once it is done; "" for nothing. */
  readonly more: string;
  /** False where nothing of its own is kept: it is done with its step. */
  readonly ticks: boolean;
  /** Said with it where the hand goes; "" for none. */
  readonly caution: string;
}

/** A single hole, opened for an exception. */
export interface HoleData {
  readonly id: string;
  readonly name: string;
  readonly state: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** What was read on the wrench, as typed; null where nothing is read. */
  readonly reading: string | null;
  readonly refused: string | null;
  /** "Read: 24 N·m"; "" where nothing was. */
  readonly reached: string;
}

export interface StepData {
  readonly id: string;
  readonly title: string;
  /** Where it stands in the list. */
  readonly number: number;
  readonly total: number;
  readonly state: StepState;
  /** It stands there because the list is walked with the fewest changes of tool. */
  readonly byTools: boolean;
  /** What it waits for, what comes first, what stops it, one thing each; none when ready. */
  readonly stateWhy: readonly string[];
  /** The one number: torque, amount, count. */
  readonly figure: { readonly value: string; readonly unit: string; readonly other: string } | null;
  /** What is next, by whose figure, with which wrench. */
  readonly about: Rich;
  readonly noteBack: { readonly text: string; readonly when: string } | null;
  readonly fitted: Rich;
  readonly actions: readonly ActionData[];
  readonly gate: { readonly title: string; readonly points: readonly PointData[] } | null;
  /** The sets by what they are; none where there is only one. */
  readonly sets: readonly { readonly id: string; readonly name: string }[];
  /** What was done in it, by whom and when; none while it is not done. */
  readonly did: readonly string[];
  /** Open points of it that were passed: what, by whom, when and why. */
  readonly passed: readonly string[];
  readonly rounds: readonly Round[];
  readonly order: OrderData | null;
  /** "Hole 7: 30 %": what the key for the lit hole does; "" where none is lit. */
  readonly advance: string;
  /** Where the gaps suggest that a hole is not shown; "" where they do not. */
  readonly hint: string;
  readonly marks: readonly PhotoMark[];
  /** Holes that the photo does not show; they count the same. */
  readonly beside: readonly PhotoMark[];
  /** "4 of 5 shown" */
  readonly shown: string;
  readonly moves: readonly Move[];
  readonly photo: PhotoData | null;
  /** Which of several photos it is; null where there is no other. */
  readonly photoPlace: { readonly number: number; readonly total: number } | null;
  /** The key that answers for all holes at once: "All started", "All tight", "It is back". */
  readonly go: { readonly label: string; readonly hint: string; readonly off: boolean };
}
