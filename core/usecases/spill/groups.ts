import type { HoleGroup } from '../../contract/tray.ts';
import type { JobState, Row } from '../../model/tables.ts';
import { type CountLine, countLines, describeSpec } from '../../tally/index.ts';
import { type Wanted, wantedOf } from './fit.ts';

/** Holes that nothing recorded tells apart, with the lines of the count that they come from. */
export interface OpenGroup extends HoleGroup {
  readonly wanted: Wanted;
  readonly lines: readonly CountLine[];
}

/** Everything that a hand with a caliper could tell apart, and what is stamped on the head. */
function keyOf({ spec, size, pitchMm, sizeSure, pitchSure, headMm, headNumber, family }: Wanted): string {
  const head = headMm ?? headNumber ?? '';
  return [
    family,
    spec.kind === 'unknown' ? 'bolt' : spec.kind,
    size ?? '',
    sizeSure ? 1 : 0,
    pitchMm ?? '',
    pitchSure ? 1 : 0,
    spec.lengthUm ?? '',
    spec.head ?? '',
    head,
    spec.grade ?? '',
    spec.hand,
    spec.more,
  ].join('|');
}

function named(state: JobState) {
  const titles = new Map(state.removal.map((row) => [row.id, row.title || row.typed]));
  const sets = new Map(state.fset.map((row) => [row.id, row]));
  return (line: CountLine): string => {
    const set = sets.get(line.setId ?? '');
    return [titles.get(line.removalId ?? '') ?? '', set?.name ?? '']
      .filter((word, i, all) => word !== '' && all.indexOf(word) === i)
      .join(', ');
  };
}

/** "bag 4", by set: where its pieces are kept; "" where nobody said. */
function bagsOf(state: JobState): (setId: string | null) => string {
  const stows = new Map(state.stow.map(({ id, kind, label }) => [id, `${kind} ${label}`]));
  const sets = new Map(state.fset.map((set) => [set.id, stows.get(set.stowId ?? '') ?? '']));
  return (setId) => sets.get(setId ?? '') ?? '';
}

/**
 * The groups of holes of a job that wait for a piece, in the order of the log, of the lines that take part. Sets without
 * a count are left out.
 */
export function openGroups(
  state: JobState,
  takesPart: (line: CountLine) => boolean = () => true,
): OpenGroup[] {
  const bagOf = bagsOf(state);
  const specs = new Map<string, Row<'spec'>>(state.spec.map((spec) => [spec.id, spec]));
  const nameOf = named(state);
  const groups = new Map<string, { wanted: Wanted; lines: CountLine[] }>();
  const read = new Map<string, { key: string; wanted: Wanted }>();
  for (const line of countLines(state)) {
    const spec = specs.get(line.specId ?? '');
    if (!spec || line.perHole === 0 || !line.toFill || line.setId === null || !takesPart(line)) continue;
    let one = read.get(spec.id);
    if (!one) {
      const wanted = wantedOf(spec);
      one = { key: keyOf(wanted), wanted };
      read.set(spec.id, one);
    }
    const key = `${one.key}|${line.ownPlace ? 1 : 0}${line.mustBeNew ? 1 : 0}`;
    const had = groups.get(key);
    if (had) had.lines.push(line);
    else groups.set(key, { wanted: one.wanted, lines: [line] });
  }
  return [...groups].map(([key, { wanted, lines }]) => {
    const sum = (of: (line: CountLine) => number) => lines.reduce((total, line) => total + of(line), 0);
    return {
      key,
      wanted,
      lines,
      what: describeSpec(wanted.spec).replace(/^fastener\s*/, '') || 'fastener',
      homes: lines.map((line) => ({
        setId: line.setId as string,
        removalId: line.removalId ?? '',
        name: nameOf(line),
        open: line.toFill ?? 0,
        bag: bagOf(line.setId),
      })),
      open: sum((line) => line.toFill ?? 0),
      inHand: sum((line) => line.usable),
      lookedFor: sum((line) => line.unknown),
      ownPlace: lines.some((line) => line.ownPlace),
      mustBeNew: lines.some((line) => line.mustBeNew),
    };
  });
}

/** A group as the screens and commands see it. */
export function bare({ wanted: _wanted, lines: _lines, ...group }: OpenGroup): HoleGroup {
  return group;
}
