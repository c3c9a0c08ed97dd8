import { z } from 'zod';
import { Id, Ms, Text } from '../model/fields.ts';
import { Fault } from '../model/result.ts';

/** Every answer: the value with the journal number it stands at, or a refusal in words. */
export function reply<T extends z.ZodType>(value: T) {
  return z.discriminatedUnion('ok', [
    z.strictObject({ ok: z.literal(true), seq: z.int().min(0), value }),
    z.strictObject({ ok: z.literal(false), fault: Fault }),
  ]);
}

/** A write carries its own id, so that sending it twice does it once. */
export const command = { command: Id };
/** A write inside one job. `at` is UTC milliseconds of the deed when it was not just now. */
export const jobCommand = { command: Id, jobId: Id, at: Ms.optional() };

/** What a write answers when nothing more is to be said. */
export const Done = z.strictObject({ said: Text });
export const Made = z.strictObject({ id: Id, said: Text });
export type Made = z.infer<typeof Made>;
export type Done = z.infer<typeof Done>;
