import { PROOF_LOADS, STRENGTHS } from './data/strengths.ts';
import { good, refuse, type Confidence, type Outcome } from './outcome.ts';
import { cell, numberCell, readRows } from './table.ts';
import type { Thread } from './threads.ts';

const PSI_MPA = 0.006894757293168361;

/** Weakest to strongest by proof strength; "strongest listed" is the last. Sources: ISO 898-1, SAE J429. */
const METRIC_CLASSES = ['4.6', '5.6', '4.8', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'] as const;
const SAE_GRADES = ['1', '2', '5', '8'] as const;

type ClassSystem = 'ISO 898-1' | 'SAE J429' | 'ISO 3506-1';

/** A property class or grade, told from the text on the head. */
export interface PropertyClass {
  readonly system: ClassSystem;
  readonly name: string;
  readonly stainless: boolean;
}

/**
 * Reads "8.8", "class 10.9", "grade 5", "gr8", "SAE 2", "A2-70", "A4 80".
 * Refuses anything else in words; 8.8 and grade 8 are different things.
 */
export function parseClass(text: string): Outcome<PropertyClass> {
  const bare = text
    .trim()
    .toLowerCase()
    .replace(/^(property\s+)?(class|grade|gr\.?|g(?=\d)|sae|cl\.?)\s*/, '')
    // The finish says nothing about the strength.
    .replace(/(?<=\d)\s+(black|zinc(ed)?|galvani[sz]ed|plated|zinc[\s-]plated|plain)$/, '')
    .replace(',', '.');
  const metric = METRIC_CLASSES.find((name) => name === bare);
  if (metric) return good({ system: 'ISO 898-1', name: metric, stainless: false });
  const grade = SAE_GRADES.find((name) => name === bare);
  if (grade) return good({ system: 'SAE J429', name: grade, stainless: false });
  const steel = /^(?:stainless\s*)?(a[1-5]?)?[\s-]*(?:class\s*)?(50|70|80)$/.exec(bare);
  if (steel) {
    return good({
      system: 'ISO 3506-1',
      name: `${(steel[1] ?? 'a').toUpperCase()}-${steel[2]}`,
      stainless: true,
    });
  }
  return refuse('class.unknown', 'a class such as 8.8, 10.9, 12.9, grade 5, grade 8 or A2-70', text.trim());
}

/** "class 8.8", "grade 5", "stainless A2-70": how a class is said. */
export function sayClass(propertyClass: PropertyClass): string {
  if (propertyClass.stainless) return `stainless ${propertyClass.name}`;
  return `${propertyClass.system === 'SAE J429' ? 'grade' : 'class'} ${propertyClass.name}`;
}

interface StrengthRow {
  readonly system: string;
  readonly name: string;
  readonly range: string;
  readonly quantity: string;
  readonly valueMPa: number;
  readonly confidence: Confidence;
}

const ROWS: readonly StrengthRow[] = readRows(STRENGTHS).map((row) => ({
  system: cell(row, 0),
  name: cell(row, 1),
  range: cell(row, 2),
  quantity: cell(row, 3),
  valueMPa: numberCell(row, 4) * (cell(row, 5) === 'psi' ? PSI_MPA : 1),
  confidence: cell(row, 6),
}));

const LOADS = new Map(readRows(PROOF_LOADS).map((row) => [`${cell(row, 0)}|${cell(row, 1)}`, row]));

/**
 * Whether a nominal diameter lies in a range as the standards print it. SAE J429 starts at 1/4 in; numbered
 * screws are let in, and their confidence says that they lie below the standard's sizes.
 */
function inRange(range: string, nominalMm: number): boolean {
  const inches = nominalMm / 25.4;
  switch (range) {
    case 'all':
      return true;
    case 'd<=16':
      return nominalMm <= 16;
    case 'd>16':
      return nominalMm > 16;
    case '1/4 to 3/4 in':
      return inches <= 0.75;
    case '1/4 to 1 in':
      return inches <= 1;
    case '1/4 to 1-1/2 in':
      return inches <= 1.5;
    case 'over 3/4 to 1-1/2 in':
      return inches > 0.75 && inches <= 1.5;
    case 'over 1 to 1-1/2 in':
      return inches > 1 && inches <= 1.5;
    default:
      return nominalMm <= 24;
  }
}

/** A strength in MPa with where it comes from. */
export interface Strength {
  readonly valueMPa: number;
  readonly source: string;
  readonly confidence: Confidence;
}

function strength(
  kind: 'proof' | 'yield' | 'tensile',
  cls: PropertyClass,
  nominalMm: number,
): Strength | undefined {
  const wanted = kind === 'proof' ? /^proof_strength/ : kind === 'yield' ? /^(yield|Rp0\.2)/ : /^tensile/;
  const row = ROWS.find(
    (r) =>
      r.system === cls.system &&
      (r.name === cls.name || (cls.stainless && r.name.endsWith(cls.name.slice(-3)))) &&
      wanted.test(r.quantity) &&
      inRange(r.range, nominalMm),
  );
  if (!row) return undefined;
  const below = cls.system === 'SAE J429' && nominalMm < 6.3;
  const confidence = below ? `${row.confidence}, below the sizes of the standard` : row.confidence;
  return { valueMPa: row.valueMPa, source: cls.system, confidence };
}

/** Proof strength in MPa for a class and a nominal diameter in mm; undefined for stainless and outside the standard's range. */
export function proofStrength(cls: PropertyClass, nominalMm: number): Strength | undefined {
  return strength('proof', cls, nominalMm);
}

/** Minimum yield (ReL, Rp0.2 or Rpf) in MPa. */
export function yieldStrength(cls: PropertyClass, nominalMm: number): Strength | undefined {
  return strength('yield', cls, nominalMm);
}

/** Minimum tensile strength in MPa. */
export function tensileStrength(cls: PropertyClass, nominalMm: number): Strength | undefined {
  return strength('tensile', cls, nominalMm);
}

/** One printed strength of a class, with the sizes that it holds for. */
export interface PrintedStrength {
  readonly quantity: 'proof' | 'yield' | 'tensile';
  readonly range: string;
  readonly valueMPa: number;
  readonly valuePsi: number;
  readonly confidence: Confidence;
}

/** Every printed strength of a class. Stainless has a yield (Rp0.2) and a tensile strength, and no proof strength. */
export function strengthsOf(cls: PropertyClass): readonly PrintedStrength[] {
  const own = ROWS.filter(
    (row) => row.system === cls.system && (row.name === cls.name || (cls.stainless && isSteel(row, cls))),
  );
  return own.map((row) => ({
    quantity: row.quantity.startsWith('proof')
      ? 'proof'
      : row.quantity.startsWith('tensile')
        ? 'tensile'
        : 'yield',
    range: row.range,
    valueMPa: row.valueMPa,
    valuePsi: Math.round(row.valueMPa / PSI_MPA),
    confidence: row.confidence,
  }));
}

/** A stainless class without its steel ("70") stands for the first steel of that strength. */
function isSteel(row: StrengthRow, cls: PropertyClass): boolean {
  if (ROWS.some((one) => one.name === cls.name)) return false;
  const first = ROWS.find((one) => one.system === cls.system && one.name.endsWith(cls.name.slice(-3)));
  return row.name === first?.name;
}

/** What a class promises at one thread: strengths in MPa and psi, proof load in N and lbf where the standard has one. */
export interface StrengthAt {
  readonly proofMPa?: number;
  readonly yieldMPa?: number;
  readonly tensileMPa?: number;
  readonly proofPsi?: number;
  readonly yieldPsi?: number;
  readonly tensilePsi?: number;
  readonly proofLoadN?: number;
  readonly source: string;
}

/** Strengths and proof load of a thread in a class; what the standard does not give is left out. */
export function strengthAt(thread: Thread, cls: PropertyClass): StrengthAt {
  const found = {
    proof: proofStrength(cls, thread.nominalMm),
    yield: yieldStrength(cls, thread.nominalMm),
    tensile: tensileStrength(cls, thread.nominalMm),
  };
  const load = proofLoad(thread, cls);
  const both = Object.entries(found).flatMap(([name, one]) =>
    one
      ? [
          [`${name}MPa`, one.valueMPa],
          [`${name}Psi`, Math.round(one.valueMPa / PSI_MPA)],
        ]
      : [],
  );
  return {
    ...(Object.fromEntries(both) as Partial<StrengthAt>),
    ...(load ? { proofLoadN: load.loadN } : {}),
    source: load?.source ?? cls.system,
  };
}

/** A proof load in N: the most the fastener must bear without staying longer. */
export interface ProofLoad {
  readonly loadN: number;
  readonly source: string;
  readonly confidence: Confidence;
}

/**
 * Proof load of a thread in a class, N. The printed table wins over stress area times proof strength, because the
 * standard rounds (within 0.6 %). Undefined for stainless and for sizes outside the standard.
 */
export function proofLoad(thread: Thread, cls: PropertyClass): ProofLoad | undefined {
  const metric = cls.system === 'ISO 898-1';
  if (metric !== (thread.system === 'metric')) return undefined;
  const row = LOADS.get(`${thread.designation}|${cls.name}`);
  if (row && metric) {
    return { loadN: numberCell(row, 2), source: 'ISO 898-1 table 5 or 7', confidence: cell(row, 3) };
  }
  const proof = proofStrength(cls, thread.nominalMm);
  if (!proof) return undefined;
  return {
    loadN: proof.valueMPa * thread.stressAreaMm2,
    source: `${cls.system}, proof strength times stress area`,
    confidence: proof.confidence,
  };
}

/** Classes of the thread's own system that the standard knows at this size, weakest first. */
export function classesFor(thread: Thread): readonly PropertyClass[] {
  const metric = thread.system === 'metric';
  const names: readonly string[] = metric ? METRIC_CLASSES : SAE_GRADES;
  return names
    .map((name): PropertyClass => ({ system: metric ? 'ISO 898-1' : 'SAE J429', name, stainless: false }))
    .filter((cls) => proofLoad(thread, cls) !== undefined);
}
