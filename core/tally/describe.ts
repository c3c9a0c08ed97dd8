import { describeSpec } from '../model/spec-words.ts';
import type { Lookup } from './lookup.ts';

/** What a thing is called, as far as anyone named it. */
export function nameOf(look: Lookup, id: string | null): string {
  if (id === null) return 'not recorded';
  const removal = look.removals.get(id);
  if (removal) return removal.title || removal.typed || 'a removal';
  const set = look.sets.get(id);
  if (set) {
    const spec = look.specs.get(set.specId);
    return set.name || (spec ? describeSpec(spec) : set.typed) || 'fasteners';
  }
  const part = look.parts.get(id);
  if (part) return part.name || part.typed || part.kind;
  const stow = look.stows.get(id);
  if (stow) return `${stow.kind} ${stow.label}`;
  const spec = look.specs.get(id);
  if (spec) return describeSpec(spec);
  const position = look.positions.get(id);
  if (position) return `hole ${position.n} of ${nameOf(look, position.setId)}`;
  const { temporary, connection } = look.state;
  const other = [...temporary, ...connection].find((row) => row.id === id);
  return other?.name || 'not recorded';
}
