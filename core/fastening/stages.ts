import { good, refuse, type Outcome } from './outcome.ts';
import { formatTorque, parseTorque, type Torque, type TorqueUnit } from './units.ts';

/** One stage of a tightening: to a torque, on by an angle, back off, or to snug. */
export type Stage =
  | { readonly kind: 'torque'; readonly torque: Torque }
  | { readonly kind: 'angle'; readonly angleDeg: number }
  | { readonly kind: 'back off'; readonly angleDeg?: number }
  | { readonly kind: 'snug' };

/** A whole tightening as typed: stages in order, and which way it turns. */
export interface Tightening {
  readonly typed: string;
  readonly stages: readonly Stage[];
  readonly leftHand: boolean;
  /** The last torque of the stages; absent for "snug by feel". */
  readonly torque?: Torque;
  /** An angle follows a torque: most makers want such bolts renewed. */
  readonly thenAngle: boolean;
}

const EXPECTED = 'stages such as 20 N·m + 60 N·m + 90°, or snug';

/**
 * Reads "40 N·m", "20 Nm, 60 Nm, +90°", "30 N·m then 2 x 90 deg", "snug", "back off 180°", "25 Nm LH".
 * Angles above 0 and up to 720 degrees; at most 12 stages. A figure without its unit takes the unit of the last torque in the text.
 */
export function parseStages(text: string, defaultUnit?: TorqueUnit): Outcome<Tightening> {
  const typed = text.trim();
  const leftHand = /\b(lh|left[\s-]*hand(ed)?)\b/i.test(typed);
  const body = typed
    .replace(/\(?\b(lh|left[\s-]*hand(ed)?( thread)?)\b\)?/gi, '')
    // "40 Nm 90°", without a plus between them.
    .replace(/(\d\s*[a-z·]*m)\s+(\d+(?:\.\d+)?\s*(?:°|deg))/gi, '$1 + $2')
    .trim();
  const pieces = body
    .split(/\s*(?:\+|;|\bthen\b|\band\b|->|→|,(?!\d))\s*/i)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
  if (pieces.length === 0 || pieces.length > 12) return refuse('stages.unreadable', EXPECTED, typed);
  const unit = pieces.map((piece) => parseTorque(piece)).find((torque) => torque.ok);
  const stages: Stage[] = [];
  for (const piece of pieces) {
    const read = readStage(piece, unit?.ok ? unit.value.unit : defaultUnit);
    if (!read.ok) return read;
    stages.push(...read.value);
  }
  const torques = stages.filter((stage) => stage.kind === 'torque');
  const last = torques.at(-1);
  return good({
    typed,
    stages,
    leftHand,
    ...(last ? { torque: last.torque } : {}),
    thenAngle: stages.some((stage) => stage.kind === 'angle'),
  });
}

function readStage(piece: string, unit: TorqueUnit | undefined): Outcome<readonly Stage[]> {
  if (/^(hand[\s-]*)?(snug|tight)\b|by feel/i.test(piece)) return good([{ kind: 'snug' }]);
  const angle = /^(back\s*off\s*|slacken\s*)?(?:(\d)\s*[x×*]\s*)?([\d.]+)\s*(°|deg(?:rees?)?|turns?)$/i.exec(
    piece,
  );
  const fraction =
    /^(back\s*off\s*|slacken\s*)?(?:a\s+|one\s+)?(quarter|half|full|1\/4|1\/2|3\/4)\s*(?:of\s*a\s*)?turn$/i.exec(
      piece,
    );
  if (/^(back\s*off|slacken|loosen)$/i.test(piece)) return good([{ kind: 'back off' }]);
  if (!angle && !fraction) {
    const torque = parseTorque(piece, unit);
    return torque.ok ? good([{ kind: 'torque', torque: torque.value }]) : torque;
  }
  const back = (angle?.[1] ?? fraction?.[1]) !== undefined;
  const angleDeg = angle
    ? Number(angle[3]) * (/turn/i.test(angle[4] ?? '') ? 360 : 1)
    : turnOf(fraction?.[2] ?? '');
  if (!(angleDeg > 0 && angleDeg <= 720))
    return refuse('stages.angle', 'an angle above 0 and up to 720 degrees', piece);
  const stage: Stage = back ? { kind: 'back off', angleDeg } : { kind: 'angle', angleDeg };
  return good(Array.from({ length: Number(angle?.[2] ?? 1) }, () => stage));
}

function turnOf(word: string): number {
  switch (word.toLowerCase()) {
    case 'quarter':
    case '1/4':
      return 90;
    case 'half':
    case '1/2':
      return 180;
    case '3/4':
      return 270;
    default:
      return 360;
  }
}

/** "to 20 N·m", "on by 90°", "back off 180°", "snug by hand". */
export function sayStage(stage: Stage): string {
  switch (stage.kind) {
    case 'torque':
      return `to ${stage.torque.typed}${/[a-z]/i.test(stage.torque.typed) ? '' : ` ${stage.torque.unit}`}`;
    case 'angle':
      return `on by ${stage.angleDeg}°`;
    case 'back off':
      return stage.angleDeg === undefined ? 'back off' : `back off ${stage.angleDeg}°`;
    case 'snug':
      return 'snug by hand';
  }
}

/** Which way it turns, said where the hand goes: most threads are right-hand, so only the other kind is said. */
export function sayHand(leftHand: boolean): string | undefined {
  return leftHand ? 'Left-hand thread: tighten anticlockwise, undo clockwise.' : undefined;
}

/** One round over all holes of a joint. */
export interface Round {
  readonly name: string;
  readonly says: string;
  /** Share of the target, where the round has one. */
  readonly share?: number;
  /** Shares between which the source lets this round lie. */
  readonly shareRange?: readonly [number, number];
  /** In which order: ids, each once. */
  readonly order: readonly string[];
  /** Torque at each place of `order`, N·m, where the target of that hole is known. */
  readonly torquesNm: readonly (number | undefined)[];
}

export interface RoundsInput {
  readonly order: readonly string[];
  readonly around: readonly string[];
  /** Target per hole in N·m: sets of one joint may differ. */
  readonly targetNm?: ((id: string) => number | undefined) | undefined;
  /** Shares of the rounds between snug and the last pass; 30, 70, 100 % unless told. Rising, the last one 1. */
  readonly shares?: readonly number[] | undefined;
  /** The maker's stages win over the usual shares. */
  readonly makerStages?: readonly Stage[] | undefined;
}

const USUAL_SHARES: readonly number[] = [0.3, 0.7, 1];

/** Where the source lets a round lie. Source: ASME PCC-1. */
const RANGES: ReadonlyMap<number, readonly [number, number]> = new Map([
  [0.3, [0.2, 0.3]],
  [0.7, [0.5, 0.7]],
  [1, [1, 1]],
]);

/** Other rounds that are published: not taken here, and named so that nobody has to choose blind. */
export const OTHER_ROUNDS: readonly {
  readonly name: string;
  readonly shares: readonly number[];
  readonly fromHoles: number;
  readonly confidence: string;
}[] = [
  { name: 'three step', shares: [0.3, 0.6, 1], fromHoles: 1, confidence: 'verified-2' },
  { name: 'four step', shares: [0.2, 0.4, 0.8, 1], fromHoles: 12, confidence: 'verified-1' },
];

/** Reads "30 60 100 %", "20, 40, 80, 100": rising shares that end at 100 %, as fractions. */
export function parseShares(text: string): Outcome<readonly number[]> {
  const shares = text
    .split(/[\s,;/%]+/)
    .filter((piece) => piece !== '')
    .map((piece) => Number(piece) / 100);
  const rising = shares.every((share, i) => share > (shares[i - 1] ?? 0));
  return shares.length > 0 && shares.length <= 8 && rising && shares.at(-1) === 1
    ? good(shares)
    : refuse('tighten.rounds', 'rising shares that end at 100, such as 30 60 100', text.trim());
}

/**
 * Rounds over the joint: all started by hand and snug, 30, 70, 100 %, then once around; or the maker's own stages.
 * Source: ASME PCC-1 (snug at most 20 %, 20 to 30, 50 to 70, 100 %, circular passes). After an angle there is no
 * round at full torque: it would turn the bolts on.
 */
export function tighteningRounds(input: RoundsInput): readonly Round[] {
  const target = input.targetNm ?? (() => undefined);
  const round = (name: string, says: string, share?: number, order = input.order): Round => ({
    name,
    says,
    ...(share === undefined ? {} : { share }),
    order,
    torquesNm: order.map((id) => {
      const full = target(id);
      return full === undefined || share === undefined ? undefined : full * share;
    }),
  });
  const snug = {
    ...round(
      'snug',
      'All started by hand, then evenly snug, not above a fifth of the torque; look at the gap all round.',
    ),
    shareRange: [0, 0.2] as const,
  };
  const stages = input.makerStages?.filter((stage) => stage.kind !== 'snug') ?? [];
  const single = stages.length === 1 && stages[0]?.kind === 'torque';
  if (stages.length > 0 && !single) {
    const own = stages.map((stage, i) => ({
      ...round(`stage ${i + 1}`, `All holes ${sayStage(stage)}.`),
      torquesNm: input.order.map(() => (stage.kind === 'torque' ? stage.torque.torqueNm : undefined)),
    }));
    return [snug, ...own];
  }
  const shares = input.order.length === 1 ? [1] : (input.shares ?? USUAL_SHARES);
  return [
    snug,
    ...shares.map((share) => {
      const range = input.shares === undefined ? RANGES.get(share) : undefined;
      return {
        ...round(
          `${Math.round(share * 100)} %`,
          `All holes in order, ${Math.round(share * 100)} % of the torque.`,
          share,
        ),
        ...(range ? { shareRange: range } : {}),
      };
    }),
    ...(input.order.length > 2
      ? [
          round(
            'once around',
            'Once around at full torque, until no fastener turns any more.',
            1,
            input.around,
          ),
        ]
      : []),
  ];
}

/** "snug", "30 %: 7.5 N·m": a round with its torque, where all holes share one. */
export function sayRound(round: Round): string {
  const first = round.torquesNm[0];
  const one = first !== undefined && round.torquesNm.every((t) => t === first);
  return one ? `${round.name}: ${formatTorque(first)}` : round.name;
}
