import type { JobState, Row } from '../model/tables.ts';

/** Bags and shelves that this job has something to do with. */
export function usedStows(state: JobState): string[] {
  const used = new Set<string>();
  for (const move of state.move)
    for (const id of [move.srcStowId, move.dstStowId]) if (id !== null) used.add(id);
  for (const row of [...state.fset, ...state.part, ...state.position])
    if (row.stowId !== null) used.add(row.stowId);
  return [...used];
}

/** So much of a job's title stands behind a label that is in use elsewhere. */
const TITLE = 40;

/** The label where another job of the workshop uses it too: "3 (Gearbox of a winch)". */
export const besideOthers = (label: string, title: string, n: number): string =>
  `${label} (${title.slice(0, TITLE)}${n === 1 ? '' : ` ${n}`})`;

/**
 * The job with its bags called as they are on the bench: within a job its own name behind a label says nothing. It
 * stays where two bags of this job would be called the same.
 */
export function withOwnLabels(state: JobState): JobState {
  const behind = ` (${state.job.title.slice(0, TITLE)}`;
  const used = new Set(usedStows(state));
  const bare = ({ label }: Row<'stow'>) => {
    const at = label.indexOf(behind);
    return at > 0 && /^(?: \d+)?\)$/.test(label.slice(at + behind.length)) ? label.slice(0, at) : label;
  };
  const name = (stow: Row<'stow'>, label: string) => `${stow.kind} ${label}`.toLowerCase();
  const taken = new Map<string, number>();
  for (const stow of state.stow)
    if (used.has(stow.id)) taken.set(name(stow, bare(stow)), (taken.get(name(stow, bare(stow))) ?? 0) + 1);
  return {
    ...state,
    stow: state.stow.map((stow) =>
      used.has(stow.id) && taken.get(name(stow, bare(stow))) === 1 ? { ...stow, label: bare(stow) } : stow,
    ),
  };
}
