/** Rows by owner; rows without one are left out. */
export function groupBy<T>(rows: readonly T[], key: (row: T) => string | null): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const owner = key(row);
    if (owner === null) continue;
    const list = groups.get(owner);
    if (list) list.push(row);
    else groups.set(owner, [row]);
  }
  return groups;
}
