import { chipsOfFasteners } from './chips-fasteners.ts';
import { chip, chipOfCondition, chipsOfStow } from './chip.ts';
import type { Chip, ConnectionItem, Entry, EntryItem, FluidItem, PartItem, Token } from './meaning.ts';
import { CAPTION } from './text.ts';

function chipsOfPart(item: PartItem): Chip[] {
  const name = item.qty === null ? item.name : `${item.qty} ${item.name}`;
  return [
    chip(name, CAPTION.part[item.happened]),
    ...(item.heldBy === null ? [] : [chip(item.heldBy, CAPTION.heldBy)]),
    ...item.treatments.map((one) => chip(one.typed, CAPTION.putOn)),
    ...(item.ownPlace ? [chip('own place', CAPTION.ownPlace)] : []),
    ...(item.stamped === null ? [] : [chip(item.stamped, CAPTION.stamped)]),
    ...(item.renew === null ? [] : [chip(item.renew === 'must' ? 'renew' : 'renew if worn', CAPTION.renew)]),
    ...chipsOfStow(item.stow),
    ...item.conditions.map(chipOfCondition),
  ];
}

function chipsOfConnection(item: ConnectionItem): Chip[] {
  const name = item.qty === null ? item.name : `${item.qty} ${item.name}`;
  return [
    chip(name, item.leaveAlone ? CAPTION.leaveAlone : CAPTION.part[item.happened]),
    ...(item.heldBy === null ? [] : [chip(item.heldBy, CAPTION.heldBy)]),
    ...item.treatments.map((one) => chip(one.typed, CAPTION.putOn)),
    ...(item.ends === null ? [] : [chip(String(item.ends), CAPTION.ends)]),
    ...(item.clampMm === null ? [] : [chip(`${item.clampMm} mm`, CAPTION.clamp)]),
    ...(item.pins === null ? [] : [chip(String(item.pins), CAPTION.pins)]),
    ...chipsOfStow(item.stow).map((stow) => ({
      ...stow,
      caption: item.clampMm === null ? CAPTION.stowBeside : CAPTION.stowClamp,
    })),
    ...item.conditions.map(chipOfCondition),
  ];
}

function chipsOfFluid(item: FluidItem): Chip[] {
  const unclear = item.amountTyped !== null && item.amountMl === null;
  return [
    chip(
      item.name === '' ? '?' : item.name,
      item.did === null ? CAPTION.fluidOnly : CAPTION.fluid[item.did],
      item.name === '',
    ),
    ...(item.amountTyped === null
      ? []
      : [chip(item.amountTyped, unclear ? CAPTION.amountWhose : CAPTION.amount, unclear)]),
    ...(item.type === null ? [] : [chip(item.type, CAPTION.fluidType)]),
    ...item.conditions.map(chipOfCondition),
  ];
}

function chipsOf(item: EntryItem): Chip[] {
  switch (item.kind) {
    case 'fasteners':
      return chipsOfFasteners(item);
    case 'part':
      return chipsOfPart(item);
    case 'connection':
      return chipsOfConnection(item);
    case 'fluid':
      return chipsOfFluid(item);
    case 'made safe':
      return [chip(item.how, CAPTION.madeSafe(item.energy))];
    case 'temporary':
      return [
        chip(`${item.qty === null ? '' : `${item.qty} `}${item.name}`, CAPTION.role[item.role]),
        ...(item.where === null ? [] : [chip(item.where, CAPTION.where)]),
      ];
    case 'measurement':
      return [
        chip(
          `${item.value}${item.unit === '' ? '' : ` ${item.unit}`}`,
          item.what === '' ? CAPTION.measured : item.what,
        ),
      ];
    case 'mark':
      return [chip(item.text, CAPTION.mark)];
    case 'condition':
      return [chipOfCondition(item.condition)];
    case 'stow':
      return chipsOfStow(item.stow);
    case 'place':
      return [chip(item.place, CAPTION.place)];
    case 'treatment':
      return [chip(item.treatment.typed, CAPTION.putOn)];
    case 'note':
      return [chip(item.text, CAPTION.note)];
  }
}

/** Runs of tokens that were not understood, over the spaces between them; each became one note. */
function unknownRuns(tokens: readonly Token[]): Token[][] {
  const runs: Token[][] = [];
  let open: Token[] | null = null;
  for (const token of tokens) {
    if (token.kind === 'space') continue;
    if (token.understood) open = null;
    else if (open) open.push(token);
    else {
      open = [token];
      runs.push(open);
    }
  }
  return runs;
}

function chipOfUnknown(run: readonly Token[], text: string): Chip {
  const near = run.find((token) => token.suggestion !== undefined);
  if (near?.suggestion !== undefined) return chip(`${near.suggestion}?`, CAPTION.keptAsNote(text), true);
  return chip(text, CAPTION.notUnderstood, true);
}

/**
 * The chips under the entry line, in the order of the items: what was read, large, and how it is known, small.
 * What was not understood is a doubtful chip with the nearest known word as a question.
 */
export function chips(entry: Entry): readonly Chip[] {
  const runs = unknownRuns(entry.tokens);
  return entry.items.flatMap((item) => {
    const run = runs[0];
    const from = run?.[0]?.start ?? 0;
    const to = run?.at(-1)?.end ?? 0;
    if (run && item.kind === 'note' && item.text === entry.text.slice(from, to)) {
      runs.shift();
      return [chipOfUnknown(run, item.text)];
    }
    return chipsOf(item);
  });
}
