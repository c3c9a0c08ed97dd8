import type { Row } from '../model/tables.ts';
import { describeSpec } from '../tally/index.ts';
import { action } from './action.ts';
import type { Content, Hole } from './content.ts';
import type { Situation } from './situation.ts';
import { isIn, isTight, last, standing } from './standing.ts';
import type { StepAction } from './types.ts';

/** Every thread, unions too, is started by hand before any is tightened. */
export function threads(at: Situation, content: Content, unions: readonly Row<'connection'>[]): StepAction[] {
  const bySet = new Map<string, Hole[]>();
  for (const hole of content.holes) {
    const list = bySet.get(hole.set.id);
    if (list) list.push(hole);
    else bySet.set(hole.set.id, [hole]);
  }
  if (bySet.size === 0) return [];
  const sets = [...bySet.values()];
  const starts = sets.map((holes) => startAction(at, holes));
  if (unions.length > 0)
    starts.push(
      action(
        'start',
        `Start by hand: ${unions.map((row) => row.name || row.kind).join(', ')}.`,
        unions.map((row) => row.id),
        unions.every(
          (row) =>
            last(standing(at.graph.log, row.id, row.removalId), 'started', 'joined', 'tightened', 'done') !==
            undefined,
        ),
      ),
    );
  return [...starts, ...sets.map(tightenAction)];
}

function startAction(at: Situation, holes: readonly Hole[]): StepAction {
  const set = (holes[0] as Hole).set;
  const lengths = new Map<string, number[]>();
  for (const { position } of holes) {
    const own = at.graph.log.spec.get(position.specId ?? set.specId);
    const name = own ? describeSpec(own) : 'fasteners';
    const list = lengths.get(name);
    if (list) list.push(position.n);
    else lengths.set(name, [position.n]);
  }
  const what =
    lengths.size === 1
      ? `${holes.length} × ${[...lengths.keys()][0]}`
      : [...lengths]
          .map(([name, ns]) => `${name} in ${ns.length === 1 ? 'hole' : 'holes'} ${ns.join(', ')}`)
          .join('; ');
  const stow = at.graph.log.stow.get(set.stowId ?? '');
  const from = stow ? `, from ${stow.kind} ${stow.label}` : '';
  const alike = lengths.size > 1 ? '. All heads must stand out alike' : '';
  const fresh = set.renew === 'must' ? 'new ' : '';
  const done = holes.every((hole) => hole.mark !== 'out' && hole.mark !== 'blocked');
  return action(
    'start',
    `Start all by hand: ${fresh}${what}${from}${alike}.`,
    holes.map((hole) => hole.position.id),
    done,
  );
}

function tightenAction(holes: readonly Hole[]): StepAction {
  const set = (holes[0] as Hole).set;
  const ids = holes.map((hole) => hole.position.id);
  const done = holes.every((hole) => isIn(hole.mark) || hole.mark === 'left out');
  if (set.laterWhen !== null)
    return action('snug', `Snug only; final tightening ${set.laterWhen}.`, ids, done);
  const figure =
    set.torqueTyped !== '' ? ` to ${set.torqueTyped}` : set.torqueFrom === 'by feel' ? ', snug by feel' : '';
  const name = set.name ? `${set.name}` : `${holes.length} fasteners`;
  const order = holes.length > 2 ? ', in order and in rounds' : '';
  const left = holes.some((hole) => hole.set.lubrication === 'threadlock') ? ', with threadlock' : '';
  return action('tighten', `Tighten ${name}${figure}${order}${left}.`, ids, done);
}

export function finalActions(content: Content): StepAction[] {
  const ids = content.holes.map((hole) => hole.position.id);
  const set = content.holes[0]?.set;
  const figure = set?.torqueTyped ? ` to ${set.torqueTyped}` : '';
  const done =
    content.holes.length > 0 && content.holes.every((hole) => isTight(hole.mark) || hole.mark === 'left out');
  return [action('final tighten', `Final tightening${figure}, ${set?.laterWhen ?? 'now'}.`, ids, done)];
}
