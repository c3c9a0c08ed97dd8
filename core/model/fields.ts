import { z } from 'zod';

/** Building blocks of every stored row. Limits are generous for people and small enough that a hostile file cannot fill the disk. */

/** UUIDv7 text made by the use case; the SHA-256 of a photo's original is an id as well. */
export const Id = z.string().regex(/^[0-9a-f-]{36}$|^[0-9a-f]{64}$/, 'Expected an id made by the program.');
/** UTC milliseconds since 1970. Range: 1970 to 2200. */
export const Ms = z.int().min(0).max(7_258_118_400_000);
/** IANA zone name or offset beside a time; null = unknown. */
export const Zone = z.string().max(64).nullable();
/** One line: a name, a title, a label. */
export const Line = z.string().max(300);
/** Free text: notes, what was typed. */
export const Text = z.string().max(10_000);
/** Place in an order: fractional key text, compared as plain text. */
export const Ord = z.string().regex(/^[0-9A-Za-z]{1,200}$/, 'Expected an order key.');
/** A whole number of pieces. Range: 0 to 100 000. */
export const Qty = z.int().min(0).max(100_000);
/** Micrometres, so that 0.5 mm and 1/64 in stay whole numbers. Range: 0 to 100 m. */
export const Um = z.int().min(0).max(100_000_000);
/** Millinewton metres. Range: 0 to 100 000 N·m. */
export const Mnm = z.int().min(0).max(100_000_000);
/** Millilitres. Range: 0 to 100 000 l. */
export const Ml = z.int().min(0).max(100_000_000);

export const Side = z.enum(['left', 'right', 'both']);
export const Energy = z.enum([
  'electricity',
  'pressure',
  'spring',
  'load',
  'motion',
  'ignition',
  'fuel',
  'heat',
  'other',
]);
export type Energy = z.infer<typeof Energy>;

/** Whether a thing may go back as it is. "must" needs a new one, or an override with a reason. */
export const Renew = z.enum(['no', 'must', 'if worn', 'overridden']);
