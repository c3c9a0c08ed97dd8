import type { Thread } from './threads.ts';

/** Limits of the major diameter of an external thread, mm. */
export interface MajorBand {
  readonly lowMm: number;
  readonly highMm: number;
  readonly tolerance: '6g' | '2A';
}

/**
 * Position g (µm below nominal) and grade 6 (µm) by pitch in mm. Source: ISO 965-1, from memory; both follow the
 * standard's formulas es = −(15 + 11 P) and Td = 180 ∛P² − 3.15/√P to within rounding.
 */
const METRIC_6G: readonly (readonly [number, number, number])[] = [
  [0.35, 19, 85],
  [0.4, 19, 95],
  [0.45, 20, 100],
  [0.5, 20, 106],
  [0.6, 21, 125],
  [0.7, 22, 140],
  [0.75, 22, 140],
  [0.8, 24, 150],
  [1, 26, 180],
  [1.25, 28, 212],
  [1.5, 32, 236],
  [1.75, 34, 265],
  [2, 38, 280],
  [2.5, 42, 335],
  [3, 48, 375],
  [3.5, 53, 425],
  [4, 60, 475],
];

/**
 * Where the major diameter of a new external thread lies: class 6g for metric, 2A for unified.
 * Metric from ISO 965-1; unified by the formulas of ASME B1.1 (length of engagement one diameter):
 * Td = 0.060 ∛P², allowance 0.3 · (0.0015 ∛D + 0.0015 √Le + 0.015 ∛P²), inches.
 */
export function majorBand(thread: Thread): MajorBand {
  if (thread.system === 'metric') {
    const row = METRIC_6G.find(([pitch]) => pitch === thread.pitchMm);
    const below = (row?.[1] ?? 15 + 11 * thread.pitchMm) / 1000;
    const grade = (row?.[2] ?? 180 * thread.pitchMm ** (2 / 3) - 3.15 / Math.sqrt(thread.pitchMm)) / 1000;
    return { lowMm: thread.nominalMm - below - grade, highMm: thread.nominalMm - below, tolerance: '6g' };
  }
  const pitch = thread.pitchMm / 25.4;
  const diameter = thread.nominalMm / 25.4;
  const pitchTolerance =
    0.0015 * Math.cbrt(diameter) + 0.0015 * Math.sqrt(diameter) + 0.015 * pitch ** (2 / 3);
  const highIn = diameter - 0.3 * pitchTolerance;
  return { lowMm: (highIn - 0.06 * pitch ** (2 / 3)) * 25.4, highMm: highIn * 25.4, tolerance: '2A' };
}
