import { z } from 'zod';

/** An expected failure, as data: a code for programs, a sentence for people. Bugs are thrown instead. */
export const Fault = z.strictObject({
  code: z.enum([
    'input', // what came is not what was expected
    'not-found', // no such job, thing, file
    'refused', // the trade or the record does not allow it now
    'conflict', // someone changed it since
    'locked', // another host holds the workshop
    'newer', // written by a newer program
    'damaged', // stored data does not hold together
  ]),
  sentence: z.string(),
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
export function refuse(code: FaultCode, sentence: string): { ok: false; fault: Fault } {
  return { ok: false, fault: { code, sentence } };
}
