import type { Row } from '../model/tables.ts';
import type { Lookup } from './lookup.ts';

/** Micrometres as millimetres without a tail of zeros: "25", "1.25". */
export function inMm(um: number): string {
  return String(um / 1000);
}

/** A specification as the trade writes it: "bolt M8 × 1.25 × 25, hex 13 mm, class 8.8". Unknown fields are left out. */
export function describeSpec(spec: Row<'spec'>): string {
  const kind = spec.kind === 'unknown' ? 'fastener' : spec.kind;
  const pitch =
    spec.pitchUm !== null && spec.thread !== null && /^M\d/i.test(spec.thread) && spec.threadKnown;
  const size = [
    spec.thread === null ? null : spec.threadKnown || spec.pitchUm !== null ? spec.thread : `${spec.thread}?`,
    pitch ? inMm(spec.pitchUm ?? 0) : null,
    spec.lengthUm === null ? null : `${inMm(spec.lengthUm)} mm`,
  ].filter((word) => word !== null);
  const drive =
    spec.driveTyped !== ''
      ? spec.driveTyped
      : spec.driveSizeUm === null
        ? ''
        : `${inMm(spec.driveSizeUm)} mm`;
  const rest = [
    [spec.head ?? spec.drive ?? '', drive].filter((word) => word !== '').join(' '),
    spec.grade === null ? '' : `class ${spec.grade}`,
    spec.hand === 'left' ? 'left-hand thread' : '',
    spec.more,
  ].filter((word) => word.trim() !== '');
  return [[kind, size.join(' × ')].filter((word) => word !== '').join(' '), ...rest].join(', ');
}

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
