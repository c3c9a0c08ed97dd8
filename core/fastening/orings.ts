import { AS568 } from './data/as568.ts';
import { METRIC_ORINGS } from './data/metric-orings.ts';
import { good, refuse, showNumber, type Basis, type Confidence, type Outcome } from './outcome.ts';
import { cell, numberCell, readRows } from './table.ts';

const IN = 25.4;

/** A ring of a standard: sizes in mm with their tolerances. */
export interface ORing {
  readonly name: string;
  readonly standard: string;
  readonly insideMm: number;
  readonly insideToleranceMm: number;
  readonly sectionMm: number;
  readonly sectionToleranceMm: number;
  readonly confidence: Confidence;
  readonly note: string;
}

export interface ORingCandidate extends ORing {
  readonly rank: number;
  /** Measured minus nominal, mm. */
  readonly insideDeviationMm: number;
  readonly sectionDeviationMm: number;
  readonly withinTolerance: boolean;
  readonly says: string;
}

export interface ORingAnswer extends Basis {
  readonly candidates: readonly ORingCandidate[];
  /** Rings that measuring can hardly tell apart, in sentences. */
  readonly twins: readonly string[];
}

const INCH_RINGS: readonly ORing[] = readRows(AS568).map((row) => ({
  name: `AS568-${cell(row, 0)}`,
  standard: 'SAE AS568',
  insideMm: numberCell(row, 1) * IN,
  insideToleranceMm: numberCell(row, 2) * IN,
  sectionMm: numberCell(row, 3) * IN,
  sectionToleranceMm: numberCell(row, 4) * IN,
  confidence: cell(row, 5),
  note: cell(row, 7),
}));

const METRIC_ROWS = readRows(METRIC_ORINGS);

/** Ring by its dash number: "214", "-214", "AS568-214". */
export function ringByDash(text: string): Outcome<ORing> {
  const number = /^(?:as\s*568\w?\s*)?-?\s*(\d{1,3})$/i.exec(text.trim())?.[1]?.padStart(3, '0');
  const ring = INCH_RINGS.find((r) => r.name === `AS568-${number}`);
  return ring ? good(ring) : refuse('oring.dash', 'an AS568 dash number such as 214', text.trim());
}

/**
 * Class B inside-diameter tolerance, ± mm: 0.009 d1^0.95 + 0.11. Source: ISO 3601-1 (the one copy prints 0.93; its
 * own table fits only 0.95).
 */
export function insideToleranceMm(insideMm: number): number {
  return 0.009 * insideMm ** 0.95 + 0.11;
}

/** Class B cross-section tolerance, ± mm, by range. Source: ISO 3601-1. */
export function sectionToleranceMm(sectionMm: number): number {
  for (const row of METRIC_ROWS) {
    const range = /^([\d.]+) to ([\d.]+)$/.exec(cell(row, 1));
    if (cell(row, 0) === 'class_B_cs_tolerance' && range && sectionMm <= Number(range[2]) + 0.005) {
      return numberCell(row, 3);
    }
  }
  return 0.15;
}

interface Section {
  readonly standard: string;
  readonly sectionMm: number;
  readonly toleranceMm: number;
  readonly confidence: Confidence;
  readonly note: string;
  /** Inside diameters that the series runs over, mm; undefined: any. */
  readonly fromMm?: number;
  readonly toMm?: number;
}

/** Metric rings come in any inside diameter, so a measured one is answered with its section's standard. */
const SECTIONS: readonly Section[] = METRIC_ROWS.flatMap((row): readonly Section[] => {
  const kind = cell(row, 0);
  if (kind === 'iso3601_cross_section') {
    return [
      {
        standard: 'ISO 3601-1',
        sectionMm: numberCell(row, 2),
        toleranceMm: numberCell(row, 3),
        confidence: cell(row, 7),
        note: '',
      },
    ];
  }
  if (kind === 'jis_cross_section') {
    const range = /[A-Z](\d+)A?-[A-Z](\d+)/.exec(cell(row, 1));
    return [
      {
        standard: cell(row, 1),
        sectionMm: numberCell(row, 2),
        toleranceMm: numberCell(row, 3),
        confidence: cell(row, 7),
        note: cell(row, 8),
        fromMm: Number(range?.[1] ?? 0) * 0.96,
        toMm: Number(range?.[2] ?? 2000) * 1.01,
      },
    ];
  }
  if (kind !== 'common_non_iso_metric_cross_sections') return [];
  return cell(row, 1)
    .split(' ')
    .map((size) => ({
      standard: 'plain metric (no size standard)',
      sectionMm: Number(size),
      toleranceMm: sectionToleranceMm(Number(size)),
      confidence: 'memory',
      note: 'sold by inside diameter × section',
    }));
});

const PORT_SEALS: readonly ORing[] = METRIC_ROWS.filter((row) => cell(row, 0) === 'iso6149_port_seal').map(
  (row) => ({
    name: `ISO 6149 seal for ${cell(row, 1)} port`,
    standard: 'ISO 6149',
    insideMm: numberCell(row, 4),
    insideToleranceMm: insideToleranceMm(numberCell(row, 4)),
    sectionMm: numberCell(row, 2),
    sectionToleranceMm: sectionToleranceMm(numberCell(row, 2)),
    confidence: cell(row, 7),
    note: cell(row, 8),
  }),
);

/** Seal of a metric port by its thread: "M14x1.5". Source: ISO 6149. */
export function ringForPort(text: string): Outcome<ORing> {
  const wanted = text
    .trim()
    .replace(/\s*[×*]\s*/, 'x')
    .replace(/\s/g, '')
    .toUpperCase();
  const ring = PORT_SEALS.find((seal) => seal.name.toUpperCase().includes(` ${wanted} `));
  const ports = PORT_SEALS.map((seal) => / for (\S+) /.exec(seal.name)?.[1]).join(', ');
  return ring ? good(ring) : refuse('oring.port', `a metric port thread: ${ports}`, text.trim());
}

/** A cross section of a standard, mm. */
export interface ListedSection {
  readonly standard: string;
  readonly sectionMm: number;
  readonly toleranceMm: number;
  readonly confidence: Confidence;
}

/** Standards whose cross section a measured one can be, nearest first; inch and metric ones lie close together. */
export function sectionsFor(sectionMm: number): readonly ListedSection[] {
  const inch = new Map(INCH_RINGS.map((ring) => [ring.sectionMm, ring]));
  return [
    ...SECTIONS,
    ...[...inch.values()].map((ring) => ({
      standard: `${ring.standard} (${ring.name} and others)`,
      sectionMm: ring.sectionMm,
      toleranceMm: ring.sectionToleranceMm,
      confidence: ring.confidence,
    })),
  ]
    .filter((one) => Math.abs(one.sectionMm - sectionMm) <= one.toleranceMm + READ_MM.section)
    .map(({ standard, sectionMm: own, toleranceMm, confidence }) => ({
      standard,
      sectionMm: own,
      toleranceMm,
      confidence,
    }))
    .sort((a, b) => Math.abs(a.sectionMm - sectionMm) - Math.abs(b.sectionMm - sectionMm));
}

/** Inside diameters of the metric series, mm. Source: ISO 3601-1, from memory. */
const ISO_INSIDE: readonly number[] = `
  1.8 2 2.24 2.5 2.8 3.15 3.55 3.75 4 4.5 4.87 5 5.15 5.3 5.6 6 6.3 6.7 6.9 7.1 7.5 8 8.5 8.76 9 9.5 10 10.6 11.2 11.8 12.5
  13.2 14 15 16 17 18 19 20 21.2 22.4 23.6 25 25.8 26.5 28 30 31.5 32.5 33.5 34.5 35.5 36.5 37.5 38.7 40 41.2 42.5 43.7 45
  46.2 47.5 48.7 50 51.5 53 54.5 56 58 60 61.5 63 65 67 69 71 73 75 77.5 80 82.5 85 87.5 90 92.5 95 97.5 100 103 106 109 112
  115 118 122 125 128 132 136 140 145 150 155 160 165 170 175 180 185 190 195 200 206 212 218 224 230 236 243 250 258 265
  272 280 290 300 307 315 325 335 345 355 365 375 387 400`
  .trim()
  .split(/\s+/)
  .map(Number);

/** The series' own diameter where one is within tolerance; else steps of 0.1 mm under 20 mm and 0.5 mm above. */
function metricRing(section: Section, insideMm: number): ORing {
  const step = insideMm < 20 ? 0.1 : 0.5;
  const nearest = ISO_INSIDE.reduce((a, b) => (Math.abs(b - insideMm) < Math.abs(a - insideMm) ? b : a));
  const inSeries =
    section.standard === 'ISO 3601-1' &&
    Math.abs(nearest - insideMm) <= insideToleranceMm(nearest) + READ_MM.inside;
  const nominal = inSeries ? nearest : Number((Math.round(insideMm / step) * step).toFixed(2));
  return {
    name: `${showNumber(nominal)} × ${showNumber(section.sectionMm)} mm (${section.standard})`,
    standard: section.standard,
    insideMm: nominal,
    insideToleranceMm: insideToleranceMm(nominal),
    sectionMm: section.sectionMm,
    sectionToleranceMm: section.toleranceMm,
    confidence: inSeries ? `${section.confidence}, inside diameter from memory` : section.confidence,
    note: section.note,
  };
}

/** Reading error of a soft ring with a caliper: what a careful hand reaches, mm (common practice, no source). */
const READ_MM = { section: 0.05, inside: 0.1 } as const;

/**
 * AS568 and metric candidates for a measured ring, nearest first, with near twins told apart.
 * Inside diameter 0.5 to 1500 mm, section 0.5 to 15 mm. A used ring is flattened and stretched: measure the section
 * across the flat and the groove too.
 */
export function identifyORing(measure: {
  readonly insideMm: number;
  readonly sectionMm: number;
}): Outcome<ORingAnswer> {
  const { insideMm, sectionMm } = measure;
  if (!(insideMm >= 0.5 && insideMm <= 1500)) {
    return refuse('oring.inside', 'an inside diameter from 0.5 to 1500 mm', `${showNumber(insideMm)} mm`);
  }
  if (!(sectionMm >= 0.5 && sectionMm <= 15)) {
    return refuse('oring.section', 'a cross section from 0.5 to 15 mm', `${showNumber(sectionMm)} mm`);
  }
  const metric = SECTIONS.filter(
    (s) =>
      Math.abs(s.sectionMm - sectionMm) <= s.toleranceMm + READ_MM.section &&
      insideMm >= (s.fromMm ?? 0) &&
      insideMm <= (s.toMm ?? 2000),
  ).map((s) => metricRing(s, insideMm));
  const listed = [...INCH_RINGS, ...PORT_SEALS].filter(
    (ring) =>
      Math.abs(ring.sectionMm - sectionMm) <= ring.sectionToleranceMm + 0.15 &&
      Math.abs(ring.insideMm - insideMm) <= 2 * ring.insideToleranceMm + 0.02 * insideMm,
  );
  const candidates = rank([...listed, ...metric], insideMm, sectionMm);
  return good({
    candidates,
    twins: twinsOf(candidates),
    formula: 'deviation of inside diameter and section, each against its tolerance',
    inputs: [`inside ${showNumber(insideMm)} mm`, `section ${showNumber(sectionMm)} mm`],
    source: 'SAE AS568, ISO 3601-1, JIS B 2401-1, ISO 6149',
    limits: [
      'A used ring is flattened and has grown or shrunk: the groove decides.',
      'A metric inside diameter is rounded to the usual steps; rings are made in any size.',
      ...(candidates.length === 0 ? ['No listed ring is near: it may be made to measure, or swollen.'] : []),
    ],
    cautions: [
      'Size says nothing about the compound: match material and hardness to the fluid, and take a new ring.',
    ],
  });
}

/** A listed size before a size that was only rounded to what was measured. */
function prior(standard: string): number {
  if (standard === 'ISO 3601-1') return 0.15;
  if (standard.startsWith('JIS')) return 0.4;
  return standard.startsWith('plain') ? 0.5 : 0;
}

function rank(rings: readonly ORing[], insideMm: number, sectionMm: number): readonly ORingCandidate[] {
  const score = (ring: ORing): number =>
    ((ring.sectionMm - sectionMm) / (ring.sectionToleranceMm + READ_MM.section)) ** 2 +
    ((ring.insideMm - insideMm) / (ring.insideToleranceMm + READ_MM.inside)) ** 2 +
    prior(ring.standard);
  return [...rings]
    .sort((a, b) => score(a) - score(b))
    .slice(0, 8)
    .map((ring, i) => {
      const inside = insideMm - ring.insideMm;
      const section = sectionMm - ring.sectionMm;
      const within =
        Math.abs(inside) <= ring.insideToleranceMm + 1e-9 &&
        Math.abs(section) <= ring.sectionToleranceMm + 1e-9;
      return {
        ...ring,
        rank: i + 1,
        insideDeviationMm: inside,
        sectionDeviationMm: section,
        withinTolerance: within,
        says: `${ring.name}: ${ring.insideMm.toFixed(2)} ± ${ring.insideToleranceMm.toFixed(2)} × ${ring.sectionMm.toFixed(2)} ± ${ring.sectionToleranceMm.toFixed(2)} mm, measured ${signed(inside)} and ${signed(section)} mm, ${within ? 'within' : 'outside'} tolerance`,
      };
    });
}

function signed(value: number): string {
  const digits = Math.abs(value).toFixed(2);
  return digits === '0.00' ? digits : `${value < 0 ? '−' : '+'}${digits}`;
}

/** Pairs of candidates from different standards whose sizes are closer than their tolerances. */
function twinsOf(candidates: readonly ORingCandidate[]): readonly string[] {
  const said: string[] = [];
  for (const [i, a] of candidates.entries()) {
    for (const b of candidates.slice(i + 1)) {
      const section = Math.abs(a.sectionMm - b.sectionMm);
      const inside = Math.abs(a.insideMm - b.insideMm);
      const close =
        section <= a.sectionToleranceMm + b.sectionToleranceMm &&
        inside <= a.insideToleranceMm + b.insideToleranceMm;
      if (!close || a.standard === b.standard || !(a.withinTolerance && b.withinTolerance)) continue;
      said.push(
        `${a.name} and ${b.name} differ by ${section.toFixed(2)} mm in section and ${inside.toFixed(2)} mm inside: not the same part; go by the groove and by what the machine is built in, inch or metric.`,
      );
    }
  }
  return said.slice(0, 4);
}
