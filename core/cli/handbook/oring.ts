import {
  elastomerCaution,
  identifyORing,
  insideToleranceMm,
  parseLength,
  ringByDash,
  ringForPort,
  sectionsFor,
  sectionToleranceMm,
  showNumber,
  type ORing,
} from '../../fastening/index.ts';
import {
  basisLines,
  missing,
  optional,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  { name: 'inside', also: ['id', 'inside-diameter'], says: 'measured inside diameter: 25, 0.984 in' },
  { name: 'section', also: ['cs', 'cross-section'], says: 'measured cross section: 3.53, 0.139 in' },
  { name: 'dash', says: 'an AS568 number to look up: 214' },
  { name: 'port', says: 'a metric port thread (ISO 6149): M14x1.5' },
  { name: 'fluid', says: 'fluid at the seal: mineral oil, fuel, brake fluid, water and glycol, steam, air' },
];

/** A ring with its sizes in inches beside the millimetres: AS568 is an inch standard. */
function inInches(ring: ORing): Record<string, unknown> {
  const inches = (mm: number): number => Number((mm / 25.4).toPrecision(6));
  return {
    ...ring,
    insideIn: inches(ring.insideMm),
    insideToleranceIn: inches(ring.insideToleranceMm),
    sectionIn: inches(ring.sectionMm),
    sectionToleranceIn: inches(ring.sectionToleranceMm),
  };
}

/** A ring that was looked up, into the answer. */
function sayRing(ring: ORing, value: Record<string, unknown>, text: string[]): void {
  value['ring'] = inInches(ring);
  text.push(
    `${ring.name}: inside ${ring.insideMm.toFixed(2)} ± ${ring.insideToleranceMm.toFixed(2)} mm, section ${ring.sectionMm.toFixed(2)} ± ${ring.sectionToleranceMm.toFixed(2)} mm`,
    ...(ring.note === '' ? [] : [`Note: ${ring.note}`]),
    `Source: ${ring.standard} (${ring.confidence})`,
  );
}

/** Half a measurement says no ring, but it says the tolerance and, for a section, the standards that have it. */
function half(measure: { insideMm?: number | undefined; sectionMm?: number | undefined }): VerbAnswer {
  const value: Record<string, unknown> = {};
  const text: string[] = [];
  if (measure.insideMm !== undefined) {
    const toleranceMm = insideToleranceMm(measure.insideMm);
    value['insideToleranceMm'] = toleranceMm;
    text.push(
      `Inside ${showNumber(measure.insideMm)} mm: ± ${toleranceMm.toFixed(2)} mm (ISO 3601-1, class B).`,
    );
  }
  if (measure.sectionMm !== undefined) {
    const sections = sectionsFor(measure.sectionMm);
    value['sectionToleranceMm'] = sectionToleranceMm(measure.sectionMm);
    value['sections'] = sections;
    text.push(
      `Section ${showNumber(measure.sectionMm)} mm: ± ${sectionToleranceMm(measure.sectionMm).toFixed(2)} mm (ISO 3601-1, class B).`,
      ...sections.map(
        (one) => `${showNumber(one.sectionMm)} ± ${one.toleranceMm.toFixed(2)} mm: ${one.standard}`,
      ),
    );
  }
  const basis = {
    formula: 'inside: 0.009 · d^0.95 + 0.11; section: by range',
    inputs: [],
    source: 'ISO 3601-1 (class B), SAE AS568, JIS B 2401-1, ISO 6149',
    limits: ['Both --inside and --section name the ring.'],
    cautions: ['Size says nothing about the compound: match material and hardness to the fluid.'],
  };
  return { ok: true, value: { ...value, ...basis }, text: [...text, ...basisLines(basis)] };
}

function runOring(options: Options): VerbAnswer {
  const opened = readOptions(oring, options);
  if (!opened.ok) return opened;
  const get = opened.value.get;
  const dash = optional(get('dash'), ringByDash);
  const port = optional(get('port'), ringForPort);
  const inside = optional(get('inside'), (text) => parseLength(text));
  const section = optional(get('section'), (text) => parseLength(text));
  const fluid = optional(get('fluid'), elastomerCaution);
  if (!dash.ok) return dash;
  if (!port.ok) return port;
  if (!inside.ok) return inside;
  if (!section.ok) return section;
  if (!fluid.ok) return fluid;
  const value: Record<string, unknown> = {};
  const text: string[] = [];
  if (dash.value) {
    sayRing(dash.value, value, text);
  }
  if (port.value) sayRing(port.value, value, text);
  if (inside.value && section.value) {
    const found = identifyORing({ insideMm: inside.value.lengthMm, sectionMm: section.value.lengthMm });
    if (!found.ok) return found;
    Object.assign(value, found.value);
    text.push(
      ...found.value.candidates.map((c) => `${c.rank}. ${c.says}`),
      ...found.value.twins.map((twin) => `Near twins: ${twin}`),
      ...basisLines(found.value),
    );
  } else if (inside.value ?? section.value) {
    return half({ insideMm: inside.value?.lengthMm, sectionMm: section.value?.lengthMm });
  }
  if (fluid.value) {
    value['elastomer'] = fluid.value;
    text.push(fluid.value.sentence, ...basisLines(fluid.value));
  }
  return text.length === 0
    ? missing('--inside with --section, --dash, --port or --fluid')
    : { ok: true, value, text };
}

/** `oring`: rings by measure, by dash number, and rubber by fluid. */
export const oring: HandbookVerb = {
  name: 'oring',
  says: 'O-rings by measure or dash number, and the usual rubber by fluid',
  options: OPTIONS,
  word: 'dash',
  run: runOring,
};
