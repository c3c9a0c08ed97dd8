import { z } from 'zod';

/** An open point that stands in the way of something, with what clears it. */
export const StandingPoint = z.strictObject({
  /** As `finding.accept` takes it. */
  key: z.string(),
  sentence: z.string(),
  clears: z.string(),
  /** The step that it lies on; null = the job as a whole. */
  stepId: z.string().nullable(),
  /** The step that would bury it. */
  coveredBy: z.string(),
});
export type StandingPoint = z.infer<typeof StandingPoint>;

/** An expected failure, as data: a code for programs, a sentence for people. Bugs are thrown instead. */
export const Fault = z.strictObject({
  code: z.enum([
    'input', // what came is not what was expected
    'not-found', // no such job, thing, file
    'refused', // the trade or the record does not allow it now
    'loosen', // it would turn round what was said before: done when asked to loosen that
    'conflict', // someone changed it since
    'locked', // another host holds the workshop
    'newer', // written by a newer program
    'damaged', // stored data does not hold together
  ]),
  sentence: z.string(),
  /** Where open points stand in the way: each needs an answer of its own. */
  points: z.array(StandingPoint).readonly().optional(),
});
export type Fault = z.infer<typeof Fault>;
export type FaultCode = Fault['code'];

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: Fault };

export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** A refusal in words. `sentence` says what was expected and what came, or what clears it. */
export function refuse(
  code: FaultCode,
  sentence: string,
  points?: readonly StandingPoint[],
): { ok: false; fault: Fault } {
  return { ok: false, fault: { code, sentence, ...(points && { points }) } };
}
