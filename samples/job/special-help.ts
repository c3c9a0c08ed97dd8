import type { Row } from '../../core/model/tables.ts';
import type { Bench } from './bench.ts';

export const removalOf = (bench: Bench, title: string): string => bench.find('removal', title).id;

/** Rows of the removal in one table, oldest first. */
export function rows<T extends 'connection' | 'isolation' | 'part' | 'measure'>(
  bench: Bench,
  table: T,
  title: string,
): Row<T>[] {
  const id = removalOf(bench, title);
  return (bench.state()[table] as readonly Row<T>[])
    .filter((row) => row.removalId === id)
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** A washer under each head of the first set. */
export async function washers(bench: Bench, title: string): Promise<void> {
  const [set] = bench.sets(title);
  if (!set) throw new Error(`${title} has no fasteners.`);
  const specId = await bench.make('spec', { kind: 'washer' });
  await bench.make('stackItem', { setId: set.id, what: 'washer', specId, qty: 1, points: 'under the head' });
}
