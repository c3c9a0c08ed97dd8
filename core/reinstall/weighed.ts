import type { JobState } from '../model/tables.ts';
import { placeFindings } from './draft.ts';
import { draftsOf } from './findings.ts';
import { lacksOf } from './lacks.ts';
import { type Situation, situationOf } from './situation.ts';
import { type States, statesOf } from './states.ts';
import type { Finding, Lack } from './types.ts';

/** A job weighed up: what each step lacks, what is wrong, what can go ahead. */
export interface Weighed {
  readonly at: Situation;
  /** By node. */
  readonly lacks: readonly (readonly Lack[])[];
  readonly findings: readonly Finding[];
  readonly states: States;
}

const SITUATIONS = new WeakMap<JobState, Situation>();
const WEIGHED = new WeakMap<Situation, Weighed>();

/** The plan, its dates and its pace are asked one after the other of the same rows: these are gone through once. */
export function situated(state: JobState, now: number): Situation {
  const had = SITUATIONS.get(state);
  if (had && had.now === now) return had;
  const made = situationOf(state, now);
  SITUATIONS.set(state, made);
  return made;
}

/** As `situated`, with lacks, findings and states. `now` in UTC ms. */
export function weighed(state: JobState, now: number): Weighed {
  const at = situated(state, now);
  const had = WEIGHED.get(at);
  if (had) return had;
  const lacks = lacksOf(at);
  const findings = placeFindings(at, draftsOf(at));
  const made: Weighed = { at, lacks, findings, states: statesOf(at, lacks, findings) };
  WEIGHED.set(at, made);
  return made;
}
