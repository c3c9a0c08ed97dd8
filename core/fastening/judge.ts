import { threadsForAcrossFlats, threadsForHexalobular, threadsForHexKey, type DriveKind } from './drives.ts';
import { nutFactor, type Lubrication, type NutFactor } from './friction.ts';
import type { JudgedTorque, TorqueCase, TorqueFinding, TorqueJudgement, UnitGuess } from './judge-types.ts';
import { showNumber } from './outcome.ts';
import { classesFor, parseClass, proofLoad, sayClass, type PropertyClass } from './strengths.ts';
import { findThread, threadsOfSize, type Thread } from './threads.ts';
import { PROOF_SHARE, torqueFromPreload } from './torque.ts';
import {
  formatTorque,
  fromNewtonMetres,
  toNewtonMetres,
  TORQUE_UNIT_NAMES,
  type TorqueUnit,
} from './units.ts';

export type * from './judge-types.ts';

interface Limits {
  readonly thread: Thread;
  readonly cls: PropertyClass | undefined;
  readonly proofNm: number;
  readonly strongest: PropertyClass;
  readonly referenceNm: number;
  readonly factor: NutFactor;
}

/**
 * Judges the torque of one set. Past proof is told with the lowest K that fits the stated lubrication; an unknown
 * class is compared with the strongest listed one, so that the finding holds for any.
 */
export function judgeTorque(input: TorqueCase): TorqueJudgement {
  const unknowns: string[] = [];
  const cls = readClass(input, unknowns);
  const thread = readThread(input, unknowns);
  const limits = thread && limitsOf(thread, cls, input.lubrication);
  const findings: TorqueFinding[] = [];
  for (const [torque, word] of [
    [input.wanted, 'wanted'],
    [input.reached, 'reached'],
  ] as const) {
    if (!torque) continue;
    const finding = limits
      ? pastProof(torque, limits, input)
      : thread
        ? undefined
        : misfit(torque, input, cls);
    if (finding && !findings.some((f) => f.sentence === finding.sentence)) findings.push(finding);
    if (word === 'wanted' && limits && !finding) findings.push(...farBelow(torque, limits));
  }
  findings.push(...off(input), ...none(input));
  if (input.thenAngle)
    unknowns.push(
      'After an angle the load no longer follows from the torque, so only the torque stage is judged.',
    );
  const largest = Math.max(input.wanted?.torqueNm ?? 0, input.reached?.torqueNm ?? 0);
  const needs = limits && largest > 0 && !cls?.stainless ? neededClass(largest, limits) : undefined;
  if (!cls && largest > 0) {
    unknowns.push(
      needs
        ? `The class is not recorded; ${formatTyped(largest, 'N·m')} needs ${needs} or stronger.`
        : 'The class is not recorded, so the strongest listed class is taken.',
    );
  }
  return {
    findings,
    unknowns,
    ...(limits && cls && !cls.stainless ? { referenceNm: limits.referenceNm } : {}),
    ...(limits ? { proofTorqueNm: limits.proofNm } : {}),
    ...(needs && (!cls || findings.some((f) => f.code === 'torque.past-proof')) ? { needsClass: needs } : {}),
  };
}

function readClass(input: TorqueCase, unknowns: string[]): PropertyClass | undefined {
  if (input.propertyClass === undefined || input.propertyClass.trim() === '') {
    return undefined;
  }
  const parsed = parseClass(input.propertyClass);
  if (!parsed.ok) {
    unknowns.push(`The class "${input.propertyClass}" is not one that the tables know.`);
    return undefined;
  }
  if (parsed.value.stainless) {
    unknowns.push(
      `The proof load of ${sayClass(parsed.value)} is unknown: its standard gives none, and its friction scatters and galls.`,
    );
  }
  return parsed.value;
}

function readThread(input: TorqueCase, unknowns: string[]): Thread | undefined {
  if (input.thread === undefined || input.thread.trim() === '') return undefined;
  const found = findThread(input.thread);
  if (found.ok) return found.value;
  unknowns.push(`The thread "${input.thread}" is not one that the tables know.`);
  return undefined;
}

function limitsOf(
  thread: Thread,
  cls: PropertyClass | undefined,
  lubrication: Lubrication | undefined,
): Limits | undefined {
  const strongest = classesFor(thread).at(-1);
  if (!strongest) return undefined;
  const factor = nutFactor(lubrication ?? 'as received');
  const usable = cls && !cls.stainless && proofLoad(thread, cls) ? cls : undefined;
  const load = proofLoad(thread, usable ?? strongest)?.loadN ?? 0;
  // An ordinary bolt of unknown class is taken as 8.8 or grade 5 for what would be a sensible torque.
  const usual: PropertyClass = usable ?? {
    system: thread.system === 'metric' ? 'ISO 898-1' : 'SAE J429',
    name: thread.system === 'metric' ? '8.8' : '5',
    stainless: false,
  };
  const usualLoad = proofLoad(thread, usual)?.loadN ?? load;
  return {
    thread,
    cls: usable ?? (cls?.stainless ? cls : undefined),
    proofNm: torqueFromPreload(factor.lowestK, thread.nominalMm, load),
    strongest,
    referenceNm: torqueFromPreload(factor.k, thread.nominalMm, PROOF_SHARE * usualLoad),
    factor,
  };
}

function neededClass(torqueNm: number, limits: Limits): string | undefined {
  const { thread, factor } = limits;
  const enough = classesFor(thread).find(
    (cls) =>
      torqueFromPreload(factor.lowestK, thread.nominalMm, proofLoad(thread, cls)?.loadN ?? 0) >= torqueNm,
  );
  return enough && sayClass(enough);
}

function sayTorque(torque: JudgedTorque): string {
  return formatTyped(torque.torqueNm, torque.unit ?? 'N·m');
}

/** "90 N·m", not "90.0 N·m": the figure as it was said. */
function formatTyped(torqueNm: number, unit: TorqueUnit): string {
  return `${showNumber(Number(fromNewtonMetres(torqueNm, unit).toPrecision(4)))} ${unit}`;
}

/** Guesses in the order in which they happen in a workshop; N·m first, as other units are rarer. */
function guessUnits(torque: JudgedTorque, lowNm: number, highNm: number): readonly UnitGuess[] {
  const unit = torque.unit ?? 'N·m';
  const figure = fromNewtonMetres(torque.torqueNm, unit);
  const order: readonly TorqueUnit[] = ['N·m', 'lbf·in', 'lbf·ft', 'kgf·cm', 'kgf·m', 'ozf·in'];
  return order
    .filter((other) => other !== unit && TORQUE_UNIT_NAMES.includes(other))
    .map((other) => ({ unit: other, torqueNm: toNewtonMetres(figure, other) }))
    .filter((guess) => guess.torqueNm >= lowNm && guess.torqueNm <= highNm)
    .map((guess) => ({
      ...guess,
      sentence:
        guess.unit === 'N·m'
          ? `${formatTyped(guess.torqueNm, 'N·m')} would fit`
          : `${formatTyped(guess.torqueNm, guess.unit)} would be ${formatTorque(guess.torqueNm)}`,
    }));
}

function withGuess(sentence: string, guesses: readonly UnitGuess[]): string {
  return guesses[0] ? `${sentence}; was another unit meant: ${guesses[0].sentence}?` : `${sentence}.`;
}

function pastProof(torque: JudgedTorque, limits: Limits, input: TorqueCase): TorqueFinding | undefined {
  if (torque.torqueNm <= limits.proofNm) return undefined;
  const { thread, cls, strongest, factor } = limits;
  const at = `near ${formatTorque(limits.proofNm)} with K ${showNumber(factor.lowestK)} (${factor.says})`;
  const guesses = guessUnits(torque, 0.5 * limits.referenceNm, limits.proofNm);
  const needs = neededClass(torque.torqueNm, limits);
  const need = needs ? `it would need ${needs}` : 'no listed class is strong enough';
  const said =
    cls && !cls.stainless
      ? `${sayTorque(torque)} is past the proof load of ${article(thread)} of ${sayClass(cls)}, reached ${at}, and ${need}`
      : `${sayTorque(torque)} is past the proof load of ${article(thread)} of any listed class: even ${sayClass(strongest)} reaches it ${at}`;
  return {
    code: 'torque.past-proof',
    severity: citesMaker(input) ? 'note' : 'stop',
    sentence: withGuess(
      citesMaker(input) ? `${said}, but the maker's page ${input.makerPage ?? ''} is cited and wins` : said,
      guesses,
    ),
    unitGuesses: guesses,
  };
}

function citesMaker(input: TorqueCase): boolean {
  return input.makerPage !== undefined && input.makerPage.trim() !== '';
}

function article(thread: Thread): string {
  return `${thread.system === 'metric' ? 'an' : 'a'} ${thread.designation}`;
}

/** A wanted torque far below the usual is listed, not more: plastic, soft metal and gaskets take little. */
function farBelow(torque: JudgedTorque, limits: Limits): readonly TorqueFinding[] {
  if (!limits.cls || limits.cls.stainless || torque.torqueNm >= 0.2 * limits.referenceNm) return [];
  const guesses = guessUnits(torque, 0.5 * limits.referenceNm, limits.proofNm);
  const said = `${sayTorque(torque)} is far below the ${formatTorque(limits.referenceNm)} that ${article(limits.thread)} of ${sayClass(limits.cls)} takes at 75 % of proof, which is right only for a weak member`;
  return [{ code: 'torque.off', severity: 'note', sentence: withGuess(said, guesses), unitGuesses: guesses }];
}

/** Threads that the head can belong to, with their fine pitches. */
function threadsOfHead(input: TorqueCase): readonly Thread[] {
  if (!input.head) return [];
  const { drive, size } = input.head;
  const matches =
    drive === 'hexalobular'
      ? threadsForHexalobular(String(size))
      : drive === 'hex socket'
        ? threadsForHexKey(Number(size))
        : threadsForAcrossFlats(Number(size));
  return matches.flatMap((match) => threadsOfSize(match.size));
}

/** Only where no thread of that head size could bear the torque. */
function misfit(
  torque: JudgedTorque,
  input: TorqueCase,
  cls: PropertyClass | undefined,
): TorqueFinding | undefined {
  const limits = threadsOfHead(input)
    .map((thread) => limitsOf(thread, cls, input.lubrication))
    .filter((l) => l !== undefined);
  if (limits.length === 0 || limits.some((l) => torque.torqueNm <= l.proofNm)) return undefined;
  const best = limits.reduce((a, b) => (b.proofNm > a.proofNm ? b : a));
  const lowest = Math.min(...limits.map((l) => l.referenceNm));
  const guesses = guessUnits(torque, 0.5 * lowest, best.proofNm);
  const size =
    input.head?.drive === 'hexalobular' ? String(input.head.size) : `${String(input.head?.size)} mm`;
  const said = `${sayTorque(torque)} fits no thread of a ${size} ${headWord(input.head?.drive)}: the largest, ${best.thread.designation}, reaches proof near ${formatTorque(best.proofNm)} in ${sayClass(best.cls ?? best.strongest)}`;
  return {
    code: 'torque.misfit',
    severity: citesMaker(input) ? 'note' : 'warn',
    sentence: withGuess(said, guesses),
    unitGuesses: guesses,
  };
}

function headWord(drive: DriveKind | undefined): string {
  return drive === 'hex external' ? 'head' : drive === 'hex socket' ? 'hex key' : 'hexalobular socket';
}

/** Reached against wanted, too low as much as too high. */
function off(input: TorqueCase): readonly TorqueFinding[] {
  if (!input.wanted || !input.reached) return [];
  const tolerance = (input.tolerancePercent ?? 10) / 100;
  const lowNm = Math.min(input.wanted.torqueNm, input.wantedHighNm ?? input.wanted.torqueNm);
  const highNm = Math.max(input.wanted.torqueNm, input.wantedHighNm ?? input.wanted.torqueNm);
  const reachedNm = input.reached.torqueNm;
  const low = reachedNm < lowNm * (1 - tolerance) - 1e-9;
  const high = reachedNm > highNm * (1 + tolerance) + 1e-9;
  if (!low && !high) return [];
  const guesses = guessUnits(input.reached, lowNm * (1 - tolerance), highNm * (1 + tolerance));
  const share = low ? 1 - reachedNm / lowNm : reachedNm / highNm - 1;
  const wanted =
    highNm > lowNm
      ? `${formatTyped(lowNm, 'N·m')} to ${formatTyped(highNm, 'N·m')}`
      : sayTorque(input.wanted);
  const said = `Reached ${sayTorque(input.reached)}, wanted ${wanted}: ${Math.round(share * 100)} % too ${low ? 'low' : 'high'}`;
  return [
    {
      code: 'torque.off',
      severity: (input.matters?.length ?? 0) > 0 ? 'stop' : 'warn',
      sentence: withGuess(said, guesses),
      unitGuesses: guesses,
    },
  ];
}

/** No torque recorded, and the joint is of a kind where that matters. */
function none(input: TorqueCase): readonly TorqueFinding[] {
  const matters = input.matters ?? [];
  if (input.wanted || input.snugByFeel || matters.length === 0) return [];
  return [
    {
      code: 'torque.none',
      severity: 'stop',
      sentence: `No torque is recorded, and this joint matters (${matters.join(', ')}): look up the maker's figure, or answer "snug by feel".`,
      unitGuesses: [],
    },
  ];
}
