import { AIRCRAFT_TORQUES, LEAST_DRAG } from './data/aircraft.ts';
import type { Confidence } from './outcome.ts';
import { cell, numberCell, readRows } from './table.ts';
import type { Thread } from './threads.ts';
import { toNewtonMetres } from './units.ts';

/** What aircraft practice lists for an inch thread, N·m. */
export interface AircraftTorque {
  readonly tensionNm: readonly [number, number];
  readonly shearNm: readonly [number, number];
  /** A limit, never a target. */
  readonly mostNm: number;
  readonly source: string;
  readonly confidence: Confidence;
}

const inchPounds = (value: number): number => toNewtonMetres(value, 'lbf·in');

/** Listed torque for cadmium plated steel, threads free of oil; undefined where the table has no such thread. */
export function aircraftTorque(thread: Thread): AircraftTorque | undefined {
  const row = readRows(AIRCRAFT_TORQUES).find((r) => cell(r, 0) === thread.designation);
  if (!row) return undefined;
  return {
    tensionNm: [inchPounds(numberCell(row, 1)), inchPounds(numberCell(row, 2))],
    shearNm: [inchPounds(numberCell(row, 3)), inchPounds(numberCell(row, 4))],
    mostNm: inchPounds(numberCell(row, 5)),
    source: 'FAA AC 43.13-1B table 7-1',
    confidence: cell(row, 6),
  };
}

/** A used self-locking nut that drags less than this, N·m, is replaced; undefined where the table has no such thread. */
export function leastDragNm(thread: Thread): number | undefined {
  const row = readRows(LEAST_DRAG).find((r) => cell(r, 0) === thread.designation);
  return row && inchPounds(numberCell(row, 1));
}
