import { z } from 'zod';
import { Energy, Id, Line, Ml, Text } from './fields.ts';

/** A fluid system that is drained, refilled and bled. */
export const Fluid = z.strictObject({
  id: Id,
  jobId: Id,
  name: Line.min(1),
  typed: Text,
  type: Line,
  batch: Line,
  capacityMl: Ml.nullable(),
  drainedMl: Ml.nullable(),
  filledMl: Ml.nullable(),
  lost: z.enum(['all', 'some', 'none', 'unknown']),
  /** Priming, bleeding and the hot leak check need this energy; null = none. */
  liveEnergy: Energy.nullable(),
  /** Needs bleeding or priming after filling. */
  bleed: z.boolean(),
});

/** A connection, plug, part or removal that opens a fluid; one may belong to two fluids. */
export const Opens = z.strictObject({ id: Id, jobId: Id, fluidId: Id, thingId: Id });
