import type { JobView } from '../../core/contract/views.ts';
import { parseLength } from '../../core/fastening/index.ts';
import { ok, type Result, refuse } from '../../core/model/result.ts';
import { type Row, TABLES } from '../../core/model/tables.ts';
import { bench as say } from '../texts/bench.ts';
import { fieldKinds, optionsOf, readStow, stowName } from './bench-build.ts';
import type { BenchField, BenchHole, Write } from './bench-fields.ts';

type Set = Row<'fset'>;

/** The holes of a set by their numbers. */
export const holesIn = (view: JobView, setId: string): Row<'position'>[] =>
  view.state.position.filter((hole) => hole.setId === setId).sort((a, b) => a.n - b.n);

/** Length of a hole's piece, else of the set's; micrometres, null = not known. */
export function lengthUm(view: JobView, set: Set, hole: Row<'position'> | null): number | null {
  return view.state.spec.find((one) => one.id === (hole?.specId ?? set.specId))?.lengthUm ?? null;
}

/** The holes of a set, each with its own length and what state it is in. */
export function benchHoles(view: JobView, set: Set): BenchHole[] {
  return holesIn(view, set.id).map((hole) => {
    const um = lengthUm(view, set, hole);
    const fate = hole.fate === 'fill' ? '' : say.word(hole.fate);
    const found = hole.found === 'empty' ? say.word('empty') : '';
    const words = [um === null ? '' : `${um / 1000} mm`, found, hole.condition, fate];
    return { id: hole.id, n: hole.n, about: words.filter((word) => word !== '').join(', ') };
  });
}

/** One length for all the holes chosen. */
function lengthField(view: JobView, set: Set, chosen: readonly Row<'position'>[]): BenchField {
  const um = new Set(chosen.map((one) => lengthUm(view, set, one)));
  const [only] = um;
  const numbers = chosen.map((one) => one.n);
  const { line } = fieldKinds(`${numbers.join('+')}/${set.id}`);
  const value = um.size === 1 && only ? String(only / 1000) : '';
  return line('length', say.holeLength(numbers.join(', ')), value, '30', (typed) => {
    const read = parseLength(typed);
    if (!read.ok) return refuse('input', read.sentence);
    const length = Math.round(read.value.lengthMm * 1000);
    return ok({ verb: 'lengths', setId: set.id, holes: numbers.map((n) => ({ n, lengthUm: length })) });
  });
}

/** Found empty, and nobody has said whether it is filled. */
const undecided = (view: JobView, hole: Row<'position'>): boolean =>
  view.plan.findings.some((one) => one.code === 'hole.empty' && one.subjects[0] === hole.id);

/** What can be said of one hole; for several at once only their length. */
export function holeFields(view: JobView, set: Set, holeIds: readonly string[]): BenchField[] {
  const chosen = holesIn(view, set.id).filter((hole) => holeIds.includes(hole.id));
  const [hole] = chosen;
  if (hole === undefined) return [];
  const length = lengthField(view, set, chosen);
  if (chosen.length > 1) return [length];
  const change = (values: Record<string, unknown>): Result<Write> =>
    ok({ verb: 'change', table: 'position', id: hole.id, values });
  const { line, pick, choice, yes } = fieldKinds(hole.id);
  const shape = TABLES.position.schema.shape;
  const bag = stowName(view, hole.stowId ?? set.stowId);
  return [
    length,
    line('condition', say.condition, hole.condition, say.conditionExample, (typed) =>
      change({ condition: typed.trim() }),
    ),
    pick('found', say.found, hole.found, optionsOf(shape.found.options), (found) => change({ found })),
    // Found empty and nothing said: none of the fates is chosen yet, and "fill it" is something that is said.
    choice(
      'fate',
      say.holeFate,
      undecided(view, hole) ? '' : hole.fate,
      optionsOf(shape.fate.options),
      (fate) =>
        change(
          fate === 'fill' && hole.found === 'empty'
            ? { fate, fateWhy: hole.fateWhy || say.foundEmpty }
            : { fate },
        ),
    ),
    line('why', say.why, hole.fateWhy, say.whyExample, (typed) => change({ fateWhy: typed.trim() })),
    line('bag', say.bag, bag, 'bag 4', (typed) => {
      const stow = readStow(typed);
      return stow.ok ? ok({ verb: 'stow', setId: set.id, positionIds: [hole.id], ...stow.value }) : stow;
    }),
    yes('hidden', say.hidden, hole.hidden, (hidden) => change({ hidden })),
  ];
}
