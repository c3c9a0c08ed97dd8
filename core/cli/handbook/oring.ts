import { elastomerCaution, identifyORing, parseLength, ringByDash } from '../../fastening/index.ts';
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
  { name: 'fluid', says: 'fluid at the seal: mineral oil, fuel, brake fluid, water and glycol, steam, air' },
];

function runOring(options: Options): VerbAnswer {
  const opened = readOptions(oring, options);
  if (!opened.ok) return opened;
  const get = opened.value.get;
  const dash = optional(get('dash'), ringByDash);
  const inside = optional(get('inside'), (text) => parseLength(text));
  const section = optional(get('section'), (text) => parseLength(text));
  const fluid = optional(get('fluid'), elastomerCaution);
  if (!dash.ok) return dash;
  if (!inside.ok) return inside;
  if (!section.ok) return section;
  if (!fluid.ok) return fluid;
  const value: Record<string, unknown> = {};
  const text: string[] = [];
  if (dash.value) {
    const ring = dash.value;
    value['ring'] = ring;
    text.push(
      `${ring.name}: inside ${ring.insideMm.toFixed(2)} ± ${ring.insideToleranceMm.toFixed(2)} mm, section ${ring.sectionMm.toFixed(2)} ± ${ring.sectionToleranceMm.toFixed(2)} mm`,
      ...(ring.note === '' ? [] : [`Note: ${ring.note}`]),
      `Source: ${ring.standard} (${ring.confidence})`,
    );
  }
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
    return missing('both --inside and --section');
  }
  if (fluid.value) {
    value['elastomer'] = fluid.value;
    text.push(fluid.value.sentence, ...basisLines(fluid.value));
  }
  return text.length === 0
    ? missing('--inside with --section, --dash or --fluid')
    : { ok: true, value, text };
}

/** `oring`: rings by measure, by dash number, and rubber by fluid. */
export const oring: HandbookVerb = {
  name: 'oring',
  says: 'O-rings by measure or dash number, and the usual rubber by fluid',
  options: OPTIONS,
  run: runOring,
};
