import type { Row } from '../../model/tables.ts';

/** The removals of a job that are not void, in the order of the log. */
export function logOrder(removals: readonly Row<'removal'>[]): Row<'removal'>[] {
  return removals
    .filter((removal) => removal.phase !== 'void')
    .sort((a, b) => (a.ord === b.ord ? (a.id < b.id ? -1 : 1) : a.ord < b.ord ? -1 : 1));
}
