import type {
  Chip,
  Condition,
  ConnectionItem,
  Entry,
  EntryItem,
  FastenerItem,
  FluidItem,
  PartItem,
  Stow,
  TemporaryItem,
  Token,
} from './meaning.ts';
import { chipText as say } from './text.ts';

const chip = (label: string, caption: string, doubtful = false): Chip => ({ label, caption, doubtful });

/** A length or size as read from a metre: no more figures than were meant. */
export function showMm(mm: number): string {
  return String(Math.round(mm * 100) / 100);
}

function threadChips(item: FastenerItem): Chip[] {
  const length = item.lengthMm === null ? '' : ` × ${showMm(item.lengthMm)}`;
  const chips: Chip[] = [];
  if (item.thread) {
    const { designation, system, pitchMm, pitchAssumed } = item.thread;
    const pitch = pitchMm === null ? '' : showMm(pitchMm);
    const caption =
      system !== 'metric' || pitch === ''
        ? say.thread
        : pitchAssumed
          ? say.pitchAssumed(pitch)
          : say.pitch(pitch);
    chips.push(chip(`${designation}${length}`, caption));
  } else if (item.threadToConfirm !== null) {
    const others = item.threadsPossible.filter((one) => one !== item.threadToConfirm);
    chips.push(
      chip(`${item.threadToConfirm}?`, others.length > 0 ? say.confirmOr(others) : say.confirm, true),
    );
    if (length !== '') chips.push(chip(length.slice(3), say.lengthMm));
  } else if (length !== '') chips.push(chip(length.slice(3), say.lengthMm));
  for (const group of item.lengths)
    chips.push(chip(`${group.count ?? '?'} × ${showMm(group.lengthMm)}`, say.lengthMm, group.count === null));
  return chips;
}

function driveChips(item: FastenerItem): Chip[] {
  const { drive, head } = item;
  if (!drive) return head === null ? [] : [chip(head, say.head)];
  const form = head ?? (drive.style === 'hex external' ? 'hex' : drive.style);
  const fits = item.thread
    ? say.drive
    : item.threadsPossible.length > 0
      ? say.fits(item.threadsPossible)
      : say.fitsNothing;
  return [
    chip(
      `${form} ${drive.size ?? ''}`.trim(),
      fits,
      drive.size !== null && !item.thread && item.threadsPossible.length === 0,
    ),
  ];
}

const conditionChip = (one: Condition): Chip =>
  chip(
    one.holes.length > 0
      ? say.holesAre(one.holes, one.what)
      : one.qty === null
        ? one.what
        : say.someAre(one.qty, one.what),
    say.condition,
  );

const stowChips = (stow: Stow | null): Chip[] =>
  stow === null
    ? []
    : [chip(`${stow.kind} ${stow.label ?? ''}`.trim(), stow.label === null ? say.nextBag : say.stow)];

function missingChip(item: FastenerItem): Chip[] {
  const count = item.missingAsFound ?? item.missingHoles.length;
  if (count === 0) return [];
  return [chip(String(count), say.missing[item.missingAre], item.missingAre === 'not said')];
}

function fastenerChips(item: FastenerItem): Chip[] {
  const chips: Chip[] = [];
  chips.push(item.count === null ? chip('?', say.countUnknown, true) : chip(String(item.count), say.count));
  if (item.what !== 'unspecified') chips.push(chip(item.what, item.name ?? say.kind));
  else if (item.name !== null) chips.push(chip(item.name, say.name));
  if (item.happened === 'slackened') chips.push(chip(say.slackened, say.happened));
  chips.push(...threadChips(item), ...driveChips(item));
  if (item.sizeMm !== null) chips.push(chip(showMm(item.sizeMm), say.sizeMm));
  if (item.propertyClass !== null) chips.push(chip(item.propertyClass, say.propertyClass));
  if (item.leftHand) chips.push(chip(say.leftHand, say.thread));
  if (item.stack.length > 0)
    chips.push(
      chip(
        item.stack.map((piece) => (piece.qty > 1 ? `${piece.qty} ` : '') + piece.what).join(', '),
        say.stack,
      ),
    );
  if (item.torque) chips.push(torqueChip(item.torque));
  for (const treatment of item.treatments) chips.push(chip(treatment, say.treatment));
  chips.push(...missingChip(item), ...item.conditions.map(conditionChip), ...stowChips(item.stow));
  return chips;
}

function torqueChip(torque: NonNullable<FastenerItem['torque']>): Chip {
  if (torque.byFeel) return chip(say.byFeel, say.torque);
  const angle = torque.angleDeg === null ? '' : `${torque.angleDeg}°`;
  const value = torque.value === null ? '' : `${torque.value} ${say.torqueUnits[torque.unit]}`;
  return chip([value, angle].filter((part) => part !== '').join(' + '), say.torque);
}

function partChips(item: PartItem): Chip[] {
  const chips = [chip(item.name, say.happenings[item.happened])];
  if (item.qty !== null) chips.unshift(chip(String(item.qty), say.count));
  if (item.ownPlace) chips.push(chip(say.ownPlace, say.ownPlaceMeans));
  if (item.stamped !== null) chips.push(chip(item.stamped, say.stamped));
  if (item.renew !== null)
    chips.push(chip(say.renew, item.renew === 'must' ? say.renewMust : say.renewIfWorn));
  if (item.heldBy !== null) chips.push(chip(item.heldBy, say.heldBy));
  return [...chips, ...item.conditions.map(conditionChip), ...stowChips(item.stow)];
}

function connectionChips(item: ConnectionItem): Chip[] {
  const chips = [chip(item.name, item.leaveAlone ? say.leaveAlone : say.happenings[item.happened])];
  if (item.qty !== null) chips.unshift(chip(String(item.qty), say.count));
  if (item.ends !== null) chips.push(chip(String(item.ends), say.ends));
  if (item.clampMm !== null) chips.push(chip(showMm(item.clampMm), say.clampMm));
  if (item.pins !== null) chips.push(chip(String(item.pins), say.pins));
  if (item.heldBy !== null) chips.push(chip(item.heldBy, say.heldBy));
  return [...chips, ...item.conditions.map(conditionChip), ...stowChips(item.stow)];
}

function fluidChips(item: FluidItem): Chip[] {
  const chips = [chip(item.name, item.did ?? say.fluid)];
  if (item.amountTyped !== null) chips.push(chip(item.amountTyped, say.amount));
  if (item.type !== null) chips.push(chip(item.type, say.grade));
  return [...chips, ...item.conditions.map(conditionChip)];
}

function temporaryChips(item: TemporaryItem): Chip[] {
  const count = item.qty === null ? [] : [chip(String(item.qty), say.count)];
  return [
    ...count,
    chip([item.name, item.where ?? ''].join(' ').trim(), say.mustComeOut(say.roles[item.role])),
  ];
}

function itemChips(item: EntryItem, tokens: readonly Token[]): Chip[] {
  switch (item.kind) {
    case 'fasteners':
      return fastenerChips(item);
    case 'part':
      return partChips(item);
    case 'connection':
      return connectionChips(item);
    case 'fluid':
      return fluidChips(item);
    case 'made safe':
      return [chip(item.how, say.madeSafe(item.energy))];
    case 'temporary':
      return temporaryChips(item);
    case 'measurement':
      return [chip(`${item.value} ${item.unit}`.trim(), item.what)];
    case 'mark':
      return [chip(item.text, say.mark)];
    case 'condition':
      return [conditionChip(item.condition)];
    case 'stow':
      return stowChips(item.stow);
    case 'place':
      return [chip(item.place, say.place)];
    case 'note': {
      const token = tokens.find((one) => !one.understood && item.text.includes(one.text));
      return token?.suggestion === undefined
        ? [chip(item.text, say.note, token !== undefined)]
        : [chip(`${token.suggestion}?`, say.keptAsNote(item.text), true)];
    }
  }
}

/** What was understood, one chip a meaning, in the order typed. Doubtful ones want a confirmation or a look. */
export function chips(entry: Entry): Chip[] {
  return entry.items.flatMap((item) => itemChips(item, entry.tokens));
}
