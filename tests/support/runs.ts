/** How often a property is tried: as said, or at most PROPERTY_RUNS times where that is set (mutation runs set it). */
export function runs(full: number): { numRuns: number } {
  return { numRuns: Math.min(full, Number(process.env['PROPERTY_RUNS'] ?? full)) };
}
