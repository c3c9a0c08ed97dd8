import type { JobState } from '../../core/model/tables.ts';

/** The same rows, as another database might hand them out. */
export function shuffled(state: JobState, seed: number): JobState {
  let at = seed;
  const next = (n: number) => {
    at = (at * 48_271) % 2_147_483_647;
    return at % n;
  };
  const mixed = <T>(rows: readonly T[]): T[] => {
    const list = [...rows];
    for (let i = list.length - 1; i > 0; i -= 1) {
      const j = next(i + 1);
      [list[i], list[j]] = [list[j] as T, list[i] as T];
    }
    return list;
  };
  return Object.fromEntries(
    Object.entries(state).map(([name, rows]) => [
      name,
      Array.isArray(rows) ? mixed(rows as unknown[]) : rows,
    ]),
  ) as unknown as JobState;
}
