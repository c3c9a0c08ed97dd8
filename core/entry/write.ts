import { defaultPitch } from '../fastening/index.ts';
import type { ConnectionItem, EntryItem, FluidItem, PartItem, TemporaryItem } from './meaning.ts';
import { readEntry } from './read.ts';
import { RENEW_WORD } from './text.ts';
import { open, quote, writeCondition, writeStow, type Style } from './write-words.ts';
import { writeFasteners } from './write-fasteners.ts';

/** "slackened 2 …": the verb and the count before a name. */
function before(item: PartItem | ConnectionItem): string {
  return `${item.happened === 'off' ? '' : `${item.happened} `}${item.qty === null ? '' : `${item.qty} `}`;
}

function held(heldBy: string | null, style: Style): string[] {
  if (heldBy === null) return [];
  return [style === 'quoted' ? `held: ${quote(heldBy)}` : heldBy];
}

function writePart(item: PartItem, style: Style): string {
  const name = style === 'quoted' ? `${item.look ?? 'part'} ${quote(item.name)}` : item.name;
  return [
    `${before(item)}${name}`,
    ...held(item.heldBy, style),
    ...item.treatments.map(({ typed }) => typed),
    ...(item.ownPlace ? ['own place'] : []),
    ...(item.stamped === null ? [] : [`stamped ${open(item.stamped, style)}`]),
    ...(item.renew === null ? [] : [RENEW_WORD[item.renew]]),
    ...writeStow(item.stow, style),
    ...item.conditions.map(writeCondition),
  ].join(', ');
}

function writeConnection(item: ConnectionItem, style: Style): string {
  const name = style === 'quoted' ? `${item.what} ${quote(item.name)}` : item.name;
  return [
    `${before(item)}${name}`,
    ...held(item.heldBy, style),
    ...item.treatments.map(({ typed }) => typed),
    ...(item.ends === null ? [] : [`${item.ends} ends`]),
    ...(item.clampMm === null ? [] : [`clamp ${item.clampMm} mm`]),
    ...(item.pins === null ? [] : [`${item.pins} way`]),
    ...(item.leaveAlone ? ['leave alone'] : []),
    ...writeStow(item.stow, style),
    ...item.conditions.map(writeCondition),
  ].join(', ');
}

function writeFluid(item: FluidItem, style: Style): string {
  const name = style === 'quoted' && item.name !== '' ? `fluid ${quote(item.name)}` : item.name;
  const amount = item.amountTyped ?? (item.amountMl === null ? null : `${item.amountMl} ml`);
  const words = [item.did, name === '' ? null : name, amount].filter((word) => word !== null).join(' ');
  const type = item.type === null ? [] : [style === 'quoted' ? `type ${quote(item.type)}` : item.type];
  return [words, ...type, ...item.conditions.map(writeCondition)].join(', ');
}

function writeTemporary(item: TemporaryItem, style: Style): string {
  const count = item.qty === null ? '' : `${item.qty} `;
  if (style === 'quoted') {
    const where = item.where === null ? '' : ` where ${quote(item.where)}`;
    return `must come out (${item.role}): ${count}${quote(item.name)}${where}`;
  }
  const words = `${count}${item.name}${item.where === null ? '' : ` ${item.where}`}`;
  return style === 'plain' ? words : `must come out: ${words}`;
}

function render(item: EntryItem, style: Style): string {
  switch (item.kind) {
    case 'fasteners':
      return writeFasteners(item, style, defaultPitch);
    case 'part':
      return writePart(item, style);
    case 'connection':
      return writeConnection(item, style);
    case 'fluid':
      return writeFluid(item, style);
    case 'made safe':
      if (style === 'plain') return item.how;
      return style === 'prefixed'
        ? `made safe: ${item.how}`
        : `made safe (${item.energy}): ${quote(item.how)}`;
    case 'temporary':
      return writeTemporary(item, style);
    case 'measurement':
      return style === 'quoted'
        ? `measured ${quote(item.what)}: ${item.value} ${quote(item.unit)}`
        : `${item.what} ${item.value}${item.unit === '' ? '' : ` ${item.unit}`}`;
    case 'mark':
      return style === 'quoted' ? `mark: ${quote(item.text)}` : item.text;
    case 'condition':
      return writeCondition(item.condition);
    case 'stow':
      return writeStow(item.stow, style).join('');
    case 'place':
      return style === 'quoted' ? `place: ${quote(item.place)}` : item.place;
    case 'treatment':
      return item.treatment.typed;
    case 'note':
      return style === 'quoted' ? `note: ${quote(item.text)}` : `note: ${item.text}`;
  }
}

/** A value with its keys in order, so that two meanings can be compared. */
function stable(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/** Whether two meanings are the same in every field. */
export function sameMeaning(a: readonly EntryItem[], b: readonly EntryItem[]): boolean {
  return stable(a) === stable(b);
}

/**
 * Writes an item in trade notation, so that reading it gives the same meaning again. Names and texts go into quotes
 * only where they would be read as something else. Lengths over 2000 characters are not promised.
 */
export function writeEntry(item: EntryItem): string {
  for (const style of ['plain', 'prefixed'] as const) {
    const text = render(item, style);
    if (sameMeaning(readEntry(text).items, [item])) return text;
  }
  return render(item, 'quoted');
}
