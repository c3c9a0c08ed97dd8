import type { JobView } from '../../core/contract/views.ts';
import { againPlans } from '../../core/model/off-again.ts';
import type { PatternData } from '../screens/begin/Pattern.tsx';
import type { PlannedData } from '../screens/removal/Planned.tsx';
import { pattern as say } from '../texts/pattern.ts';
import type { PointData } from '../ui/Point.tsx';
import { logOf } from './line.ts';

/** The first removal that is only planned: what comes off next; null = one that nobody planned. */
export function nextPlanned(view: JobView): string | null {
  return logOf(view).find((removal) => removal.phase === 'planned')?.id ?? null;
}

/** What is expected of a removal that is only planned: its own sets, whatever planned them. */
export function plannedOf(view: JobView, removalId: string): PlannedData | null {
  const { state } = view;
  const removal = state.removal.find((one) => one.id === removalId);
  if (removal?.phase !== 'planned') return null;
  const again = againPlans(state).get(removalId);
  if (again !== undefined) return { again: true, sets: [], parts: againLines(view, again) };
  const counts = new Map<string, number>();
  for (const hole of state.position) counts.set(hole.setId, (counts.get(hole.setId) ?? 0) + 1);
  return {
    again: false,
    sets: state.fset
      .filter((set) => set.removalId === removalId)
      .sort((a, b) => (a.ord < b.ord ? -1 : 1))
      .map((set) => {
        const spec = (view.specNames[set.specId] ?? '').replace(/^fastener\s*/, '');
        const expected = counts.get(set.id) ?? 0;
        return {
          id: set.id,
          name: [set.name, spec].filter((word) => word !== '').join(', '),
          torque: set.torqueTyped,
          expected,
          found: expected,
        };
      }),
    parts: state.part.filter((part) => part.removalId === removalId).map((part) => part.name),
  };
}

/** What comes off a second time: known from the first, so that nothing is counted anew. */
function againLines(view: JobView, thingId: string): string[] {
  const { state } = view;
  return [
    ...state.part.filter((part) => part.removalId === thingId).map((part) => part.name),
    ...state.fset
      .filter((set) => set.removalId === thingId)
      .map((set) => {
        const count = state.position.filter((hole) => hole.setId === set.id).length;
        return `${count} × ${set.name || (view.specNames[set.specId] ?? '').replace(/^fastener\s*/, '')}`;
      }),
  ].filter((line) => line !== '');
}

/** What is planned next after this one; null = nothing. */
export function plannedAfter(view: JobView, removalId: string): string | null {
  return logOf(view).find((removal) => removal.phase === 'planned' && removal.id !== removalId)?.id ?? null;
}

/** The same with what was counted so far. */
export function withCounts(
  planned: PlannedData | null,
  counted: ReadonlyMap<string, number>,
): PlannedData | null {
  if (planned === null) return null;
  return {
    ...planned,
    sets: planned.sets.map((set) => ({ ...set, found: counted.get(set.id) ?? set.found })),
  };
}

/** What differs from the earlier job in one removal; a note each, because neither is wrong. */
export function differencesOf(view: JobView, removalId: string): PointData[] {
  const removal = view.pattern?.removals.find((one) => one.removalId === removalId);
  return (removal?.differences ?? []).map((line) => ({ id: line, grave: 'note', say: line }));
}

/** How far the pattern was followed, and what differs so far. */
export function patternData(view: JobView): PatternData | null {
  const { pattern } = view;
  if (!pattern) return null;
  const begun = pattern.removals.filter((one) => one.state !== 'planned');
  return {
    title: pattern.fromTitle,
    begun: begun.length,
    all: pattern.removals.length,
    differs: [
      ...begun
        .filter((one) => one.differences.length > 0)
        .map((one) => ({ id: one.removalId, title: one.title, lines: one.differences })),
      ...pattern.beyond.map((one) => ({ id: one.removalId, title: one.title, lines: [say.beyond] })),
    ],
  };
}
