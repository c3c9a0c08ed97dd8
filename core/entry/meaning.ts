import type {
  TokenKind,
  Happened,
  Unit,
  FastenerKind,
  HeadForm,
  DriveStyle,
  ThreadSystem,
  TorqueUnit,
  Treatment,
  ConditionKind,
  Renew,
  PartLook,
  ConnectionKind,
  Energy,
  TemporaryRole,
} from './kinds.ts';

export type * from './kinds.ts';

/**
 * What an entry line means.
 *
 * One line may name several things; each is one `EntryItem`, in the order typed. What nobody said is `null` (or an
 * empty list): not recorded is not none. Lengths are millimetres whatever was typed, `unit` says what it was typed in.
 *
 * How a line is cut up:
 * - Commas, semicolons, "+" and line breaks separate; "and" does where both sides could stand alone. A comma or point
 *   between two digits is a decimal sign.
 * - A stretch that begins a thing (a count with a fastener, a thread or a size; a part; a hose; a fluid; …) opens an
 *   item. What can only describe (class, bag, condition, length, torque, own place …) goes to the item before it, or
 *   to the fasteners that follow when nothing stands before it.
 * - A bag, tin, tray or shelf behind a comma of its own holds for all that the line takes off before it; a bag behind
 *   bolts for bolts only.
 * - A name is open: words that end in a part noun of the vocabulary ("lower front cover"), and any words after
 *   "off", "slackened", "opened", "aside", "must come out" or a quantity, unless they come close to a word that is known.
 * - Everything else is not understood: kept as typed in a note of its own, underlined, at most with a suggestion.
 */

/** One stretch of the line. The tokens of a line join up to the whole line, in order, without gaps. */
export interface Token {
  /** Offset of the first UTF-16 unit. */
  readonly start: number;
  /** Offset after the last UTF-16 unit. */
  readonly end: number;
  /** The characters as typed. */
  readonly text: string;
  readonly kind: TokenKind;
  /** False: kept as typed in a note, underlined on the screen, never used for anything else. */
  readonly understood: boolean;
  /** For a token that was not understood: the word of the vocabulary that comes close. Never taken by itself. */
  readonly suggestion?: string;
}

/** A whole line, read. */
export interface Entry {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly items: readonly EntryItem[];
}

export type EntryItem =
  | FastenerItem
  | PartItem
  | ConnectionItem
  | FluidItem
  | MadeSafeItem
  | TemporaryItem
  | MeasurementItem
  | MarkItem
  | ConditionItem
  | StowItem
  | PlaceItem
  | TreatmentItem
  | NoteItem;

// ---------------------------------------------------------------------------------------------- fasteners

/** How it is turned. "13" on the number pad is a hex of 13 mm; "T30" is hexalobular without a size in mm. */
export interface Drive {
  readonly style: DriveStyle;
  /** Size as the tool says it: "13 mm", "1/2 in", "T30", "E10", "PH2"; null when only the style was said. */
  readonly size: string | null;
  /** Across flats (or key size) in mm, also when it was typed in inches; null for T30, PH2 and the like. */
  readonly acrossFlatsMm: number | null;
}

export interface Thread {
  /** Without the pitch for metric ("M10"), with what was said for the others ("1/4-20 UNC", "#10-32", "G 1/2"). */
  readonly designation: string;
  readonly system: ThreadSystem;
  /** null: nothing said and nothing to assume. For inch threads 25.4 / threads per inch. */
  readonly pitchMm: number | null;
  /** Threads per inch for inch threads, else null. */
  readonly threadsPerInch: number | null;
  /** True: not typed, taken as the coarse series (metric) or the series named (1/4 UNC). To be confirmed. */
  readonly pitchAssumed: boolean;
}

/** "6 of them 20 long" */
export interface LengthGroup {
  readonly count: number | null;
  readonly lengthMm: number;
  readonly unit: Unit;
  /** "hole 3 40 long" → [3]; empty: which holes was not said. */
  readonly holes: readonly number[];
}

/** One piece of a stack, in the order typed, counted per hole. */
export interface StackPiece {
  readonly what:
    | 'unspecified'
    | 'bolt'
    | 'screw'
    | 'stud'
    | 'washer'
    | 'spring washer'
    | 'sealing washer'
    | 'spacer'
    | 'bush'
    | 'nut'
    | 'lock nut'
    | 'pin';
  readonly qty: number;
}

export interface Torque {
  /** As typed, in `unit`; null for "snug by feel" and for an angle without a torque. */
  readonly value: number | null;
  readonly unit: TorqueUnit;
  /** In newton metres, rounded to 0.001. */
  readonly torqueNm: number | null;
  /** "+ 90°", degrees. */
  readonly angleDeg: number | null;
  /** "snug by feel" */
  readonly byFeel: boolean;
  /** More than a torque and an angle: every stage in order, "20 Nm", "40 Nm", "90°"; `value` is the last torque then, `angleDeg` the sum. */
  readonly stages: readonly string[];
}

export interface FastenerItem {
  readonly kind: 'fasteners';
  readonly what: FastenerKind;
  /** What they hold or where they sit, as typed: "4 cover bolts" and "4 bolts from the cover" give "cover". */
  readonly name: string | null;
  readonly happened: 'off' | 'slackened';
  /** As typed; null: not recorded. "M8x25" has no count. "one bolt" has 1, "a bolt" and "circlip" too. */
  readonly count: number | null;
  /** Holes that were empty before anyone touched it; null: nothing said. */
  readonly missingAsFound: number | null;
  /** "hole 3 empty as found" → [3]. */
  readonly missingHoles: readonly number[];
  /** Are the missing ones among `count` ("2 of them missing") or besides ("2 more missing")? */
  readonly missingAre: 'among' | 'besides' | 'not said';
  readonly thread: Thread | null;
  /** Every thread that the drive size can belong to; empty when the thread was typed or no size was. */
  readonly threadsPossible: readonly string[];
  /** The commonest of `threadsPossible`, to be confirmed, never taken for known. */
  readonly threadToConfirm: string | null;
  /** One length for all; null when not said or when there are several. */
  readonly lengthMm: number | null;
  readonly lengthUnit: Unit | null;
  /** Several lengths, in the order typed; empty when there is one or none. */
  readonly lengths: readonly LengthGroup[];
  /** Washers, pins, circlips, clamps: the size without a thread ("4 washers 8 mm", "split pin 3.2"), mm. */
  readonly sizeMm: number | null;
  readonly head: HeadForm | null;
  readonly drive: Drive | null;
  /** Property class or grade: "8.8", "10.9", "A2-70", "grade 5", "grade 8". */
  readonly propertyClass: string | null;
  readonly leftHand: boolean;
  readonly treatments: readonly Treatment[];
  readonly stack: readonly StackPiece[];
  readonly torque: Torque | null;
  readonly renew: Renew | null;
  readonly stow: Stow | null;
  readonly conditions: readonly Condition[];
}

// ------------------------------------------------------------------------------ stow, condition, renewal

/** `label` null: "bag" without a number, so the next free one. Labels are kept as typed ("4", "B2"). */
export interface Stow {
  readonly kind: 'bag' | 'tin' | 'tray' | 'shelf';
  readonly label: string | null;
}

/**
 * "one stripped" → qty 1; "hole 3 snapped" → holes [3]; "rusted" → qty null, holes [] (how many was not said).
 * `missing` is for parts and connections only; fasteners have `missingAsFound`.
 */
export interface Condition {
  readonly what: ConditionKind;
  readonly qty: number | null;
  readonly holes: readonly number[];
}

/** Sealant, threadlock, grease … seen on a part or hose: on the way back it is put on again. */
export interface PutOn {
  readonly what: Exclude<Treatment, 'dry'>;
  /** As typed: "PTFE tape". */
  readonly typed: string;
}

// ------------------------------------------------------------------------------------- parts, connections

export interface PartItem {
  readonly kind: 'part';
  /** As typed, with single spaces: "lower front cover". */
  readonly name: string;
  readonly look: PartLook | null;
  readonly happened: Happened;
  /** null: not recorded. */
  readonly qty: number | null;
  /** "own place": must go back exactly where it was. */
  readonly ownPlace: boolean;
  /** Number or letters stamped on it. */
  readonly stamped: string | null;
  readonly renew: Renew | null;
  /** For moved aside: "hung on wire". */
  readonly heldBy: string | null;
  readonly treatments: readonly PutOn[];
  readonly stow: Stow | null;
  readonly conditions: readonly Condition[];
}

export interface ConnectionItem {
  readonly kind: 'connection';
  readonly what: ConnectionKind;
  /**
   * As typed, the word for its kind included: "lower hose", "plug at the sensor"; "hose" when nothing more.
   * Place words behind a comma go in front: "hose, lower" is "lower hose"; so for parts.
   */
  readonly name: string;
  readonly happened: Happened;
  readonly qty: number | null;
  readonly ends: number | null;
  /** Hose clamp size in mm. */
  readonly clampMm: number | null;
  /** Ways of an electrical plug ("plug, 3 pin"). */
  readonly pins: number | null;
  /** "leave alone": not to be undone at all. */
  readonly leaveAlone: boolean;
  readonly heldBy: string | null;
  readonly treatments: readonly PutOn[];
  readonly stow: Stow | null;
  readonly conditions: readonly Condition[];
}

// --------------------------------------------------------------------------------- fluids, safe, temporary

export interface FluidItem {
  readonly kind: 'fluid';
  /** "coolant", "gear oil", "brake fluid", as typed. */
  readonly name: string;
  readonly did: 'drained' | 'lost' | 'filled' | 'bled' | null;
  /** Millilitres, rounded to whole ones; null: not measured. */
  readonly amountMl: number | null;
  /** The amount as typed ("2,5 l"). */
  readonly amountTyped: string | null;
  /** Grade or batch as typed: "75W-90", "DOT 4", "ISO VG 46". */
  readonly type: string | null;
  readonly conditions: readonly Condition[];
}

export interface MadeSafeItem {
  readonly kind: 'made safe';
  readonly energy: Energy;
  /** As typed: "battery earth off", "pressure let off", "on stands". */
  readonly how: string;
}

/** Put in for the duration; must come out again. */
export interface TemporaryItem {
  readonly kind: 'temporary';
  /** As typed, without the count: "rag", "caging bolt". */
  readonly name: string;
  readonly role: TemporaryRole;
  readonly qty: number | null;
  /** "in the inlet": where it was put, as typed, the preposition included. */
  readonly where: string | null;
}

// -------------------------------------------------------------------------------------------- the small ones

/** "end float 0.15 mm": a reading as found. */
export interface MeasurementItem {
  readonly kind: 'measurement';
  readonly what: string;
  readonly value: number;
  /** As typed ("mm", "bar", "°C", "in", "thou"), "" when none. */
  readonly unit: string;
}

/** Match mark: alignment, order or direction, as typed. */
export interface MarkItem {
  readonly kind: 'mark';
  readonly text: string;
}

/** A condition that names nothing: "hole 3 snapped" alone. It belongs to what was logged last. */
export interface ConditionItem {
  readonly kind: 'condition';
  readonly condition: Condition;
}

/** "bag 7" alone. */
export interface StowItem {
  readonly kind: 'stow';
  readonly stow: Stow;
}

/** "front left, under" alone: where on the machine this removal is. */
export interface PlaceItem {
  readonly kind: 'place';
  readonly place: string;
}

/** "sealant" with nothing it could be on: it belongs to the removal. */
export interface TreatmentItem {
  readonly kind: 'treatment';
  readonly treatment: PutOn;
}

/** Kept as typed: a note that was asked for ("note: …", "…" in quotes) and everything that was not understood. */
export interface NoteItem {
  readonly kind: 'note';
  readonly text: string;
}

// ------------------------------------------------------------------------------------------------- on screen

/** One chip under the entry line. `label` large, `caption` small; `doubtful` wants a confirmation or a look. */
export interface Chip {
  readonly label: string;
  readonly caption: string;
  readonly doubtful: boolean;
}
