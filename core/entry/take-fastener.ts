import { as, has, type Atom } from './atom.ts';
import { couldBeHead, couldBeKey } from './fits.ts';
import type { Drive, DriveStyle, FastenerKind, HeadForm, StackPiece, Thread, Unit } from './meaning.ts';
import { lengthText } from './numbers.ts';
import { takeScrewPlug, takeUnionThread } from './take-plug.ts';
import {
  currentFasteners,
  freshFasteners,
  openFasteners,
  peek,
  use,
  type DraftOf,
  type State,
} from './state.ts';

type Fasteners = DraftOf<'fasteners'>;

/** Kinds with a size of their own instead of a spanner: "split pin 3.2", "washer 8 mm", "clamp 35". */
const SIZED: ReadonlySet<FastenerKind> = new Set([
  'washer',
  'spring washer',
  'sealing washer',
  'spacer',
  'clip',
  'push rivet',
  'rivet',
  'pin',
  'split pin',
  'roll pin',
  'dowel pin',
  'taper pin',
  'clevis pin',
  'R-clip',
  'circlip',
  'E-clip',
  'clamp',
  'cable tie',
  'key',
  'wood screw',
  'self-tapping screw',
]);

/**
 * Pieces that are one by themselves: "circlip" is one, "circlips" are some. Bolts, screws, nuts and washers come in
 * rows and are as often named in the singular for their kind ("bolt M8x20"): of these a count that was not said stays
 * unknown, since one too few would leave holes empty without a word.
 */
const ALONE: ReadonlySet<FastenerKind> = new Set([
  'sealing washer',
  'clip',
  'pin',
  'split pin',
  'roll pin',
  'dowel pin',
  'taper pin',
  'clevis pin',
  'R-clip',
  'circlip',
  'E-clip',
  'clamp',
  'cable tie',
  'key',
]);

export function isSized(what: FastenerKind): boolean {
  return SIZED.has(what);
}

/** Whether a separator or the end of the line comes next. */
export function endsHere(atom: Atom | undefined): boolean {
  return atom === undefined || has(atom, 'hard', 'plus', 'and', 'with');
}

/** The set that a describing word belongs to: the fresh one, the current one where the field is free, else a new one. */
function setFor(state: State, free: (item: Fasteners) => boolean): Fasteners {
  if (state.count !== null) return openFasteners(state);
  const item = freshFasteners(state) ?? (state.fresh === null ? currentFasteners(state) : null);
  return item && free(item) ? item : openFasteners(state);
}

export function takeThread(state: State, thread: Thread): void {
  const atom = peek(state);
  if (takeUnionThread(state)) return;
  takeScrewPlug(state);
  const item = setFor(state, (it) => it.thread === null && it.stack.length === 0);
  item.thread = thread;
  const length = as(atom, 'length');
  use(state, 'thread');
  if (length) setLength(item, length.mm, length.unit, null);
}

/** Notes one length: the first for all, a second one or one with a count as groups. */
export function setLength(
  item: Fasteners,
  lengthMm: number,
  unit: Unit,
  count: number | null,
  holes: readonly number[] = [],
): void {
  if (count === null && item.lengthMm === null && item.lengths.length === 0) {
    item.lengthMm = lengthMm;
    item.lengthUnit = unit;
    return;
  }
  const before =
    item.lengthMm === null
      ? []
      : [{ count: null, lengthMm: item.lengthMm, unit: item.lengthUnit ?? ('mm' as const), holes: [] }];
  item.lengths = [...before, ...item.lengths, { count, lengthMm, unit, holes }];
  item.lengthMm = null;
  item.lengthUnit = null;
}

/** Heads that are turned with a key in the usual case; the words "set screw" mean one without a head. */
export function hasKeyHead({ head, what }: Fasteners): boolean {
  const keyed: readonly (HeadForm | null)[] = ['socket cap', 'button', 'countersunk', 'headless', 'shoulder'];
  return keyed.includes(head) || what === 'set screw';
}

/** Drive style that a size beside this head form means: a key for socket heads, a spanner for the others. */
function styleFor(item: Fasteners, mm: number): DriveStyle {
  const { head, what, thread } = item;
  // To some a set screw has no head, to others it is a bolt threaded up to its head: a 13 mm M8 is the second.
  if (what === 'set screw' && (thread !== null || head === 'hex') && couldBeHead(thread, mm))
    return 'hex external';
  if (hasKeyHead(item)) return 'hex socket';
  // "M6x20 5 mm": no spanner fits, a key does.
  const open = head === null && what !== 'nut' && thread !== null;
  if (open && !couldBeHead(thread, mm) && couldBeKey(thread, mm)) return 'hex socket';
  return head === 'square' ? 'square external' : 'hex external';
}

function driveOf(style: DriveStyle, mm: number, unit: Unit): Drive {
  return { style, size: lengthText(mm, unit), acrossFlatsMm: mm };
}

/** A size that is the width across flats or the key; `style` null: what the head form means by it. */
export function setDriveSize(item: Fasteners, mm: number, unit: Unit, style: DriveStyle | null): void {
  item.drive = driveOf(
    style ?? (item.drive?.size === null ? item.drive.style : styleFor(item, mm)),
    mm,
    unit,
  );
}

export function takeDrive(state: State, drive: Drive): void {
  const item = setFor(state, (it) => it.drive === null || it.drive.size === null);
  item.drive = drive;
  use(state, 'drive');
}

export function takeDriveStyle(state: State, style: DriveStyle): void {
  const item = setFor(state, (it) => it.drive === null || it.drive.style === style);
  if (item.drive === null) item.drive = { style, size: null, acrossFlatsMm: null };
  use(state, 'drive');
  state.awaiting = item.drive.size === null ? 'drive' : null;
}

export function takeHead(state: State, head: HeadForm): void {
  const item = setFor(state, (it) => it.head === null && it.stack.length === 0);
  item.head = head;
  use(state, 'head');
  state.awaiting = item.drive === null || item.drive.size === null ? 'drive' : null;
}

/** A kind of fastener with nothing in front of it but its count: "bolts", "nyloc nuts", "split pin". */
export function takeKind(state: State, what: FastenerKind, head: HeadForm | null): Fasteners {
  const item = setFor(
    state,
    (it) => it.what === 'unspecified' && it.stack.length === 0 && (it === state.fresh || !isSized(what)),
  );
  item.what = what;
  if (head !== null) item.head = head;
  if (ALONE.has(what) && !/s$/i.test(peek(state)?.text ?? '')) state.singular.push(item);
  use(state, 'fastener');
  if (isSized(what) && item.sizeMm === null) state.awaiting = 'size';
  return item;
}

/** Whether a spanner or a key of this width turns this thread in any table. */
function turnsIt(thread: Thread, mm: number): boolean {
  return couldBeHead(thread, mm) || couldBeKey(thread, mm);
}

/** What a size without any word beside it can be, for a set with or without a thread. */
export function bareSize(item: Fasteners, mm: number): 'drive' | 'length' | null {
  if (isSized(item.what)) return item.sizeMm === null ? null : 'length';
  const hasDrive = item.drive !== null && item.drive.size !== null;
  const hasLength = item.lengthMm !== null || item.lengths.length > 0;
  if (item.thread === null) return !hasDrive && couldBeHead(null, mm) ? 'drive' : null;
  if (hasLength || item.what === 'nut') return !hasDrive && turnsIt(item.thread, mm) ? 'drive' : null;
  return !hasDrive && couldBeHead(item.thread, mm) ? null : 'length';
}

const FIRST_PIECE: Partial<Record<FastenerKind, StackPiece['what']>> = {
  bolt: 'bolt',
  screw: 'screw',
  stud: 'stud',
  nut: 'nut',
  pin: 'pin',
  washer: 'washer',
  spacer: 'spacer',
};

/** "4 bolts with 4 washers" is one for each; "each" says that it is per hole already. */
function perHole(qty: number | null, each: boolean, count: number | null): number {
  if (qty === null) return 1;
  if (each || count === null || count < 2 || qty % count !== 0) return qty;
  return qty / count;
}

/**
 * Reads one piece of a stack at this place, when the whole stretch is one: "washer", "2 spring washers each".
 * Behind "+", "with" and "stack" a count may stand before it, behind a comma not ("4 washers" is a set of its own).
 */
export function tryStack(state: State): boolean {
  const item = currentFasteners(state);
  if (!item || state.count !== null || isSized(item.what)) return false;
  let offset = 0;
  const number = as(peek(state), 'num') ?? as(peek(state), 'number');
  if (number) {
    if (!(state.plus || state.stacking) || !Number.isInteger(number.value) || number.value < 1) return false;
    offset += 1;
  } else if (has(peek(state), 'filler')) offset += 1;
  const piece = as(peek(state, offset), 'stack');
  if (!piece) return false;
  const each = has(peek(state, offset + 1), 'each');
  if (!endsHere(peek(state, offset + (each ? 2 : 1)))) return false;
  const qty = number?.value ?? null;
  if (item.stack.length === 0 && !state.stacking) {
    item.stack = [{ what: FIRST_PIECE[item.what] ?? 'unspecified', qty: 1 }];
  }
  item.stack = [...item.stack, { what: piece.what, qty: perHole(qty, each || state.stacking, item.count) }];
  use(state, 'stack', offset + (each ? 2 : 1));
  return true;
}

/** "stack": the pieces that follow are in order from the head. */
export function takeStackWord(state: State): void {
  setFor(state, () => true);
  use(state, 'stack');
  state.stacking = true;
  state.first = true;
}
