import {
  DRIVE_ROWS,
  findThread,
  HEXALOBULAR_MM,
  identifyThread,
  majorBand,
  parseDecimal,
  parseLength,
  parsePitch,
  readMark,
  sayThread,
  showNumber,
  strengthsOf,
  threadFacts,
  threadsForAcrossFlats,
  threadsForHexalobular,
  threadsForHexKey,
  refuse,
  type Basis,
  type DriveMatch,
  type DriveRow,
  type Outcome,
} from '../../fastening/index.ts';
import {
  basisLines,
  firstRefusal,
  missing,
  optional,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  { name: 'diameter', also: ['d', 'dia'], says: 'measured over the crests: 7.88, 7.88 mm, 0.31 in' },
  { name: 'pitch', also: ['p'], says: 'pitch: 1.25, 1.25 mm; or threads per inch: 18 tpi' },
  { name: 'tpi', says: 'threads per inch: 18' },
  { name: 'across-flats', also: ['af', 'head', 'hex'], says: 'spanner size of the head: 13, 1/2 in' },
  { name: 'hex-key', also: ['key', 'allen-key'], says: 'key size of a hexagon socket: 6, 5/32 in' },
  { name: 'hexalobular', also: ['lobe'], says: 'number of a hexalobular socket: T30' },
  { name: 'mark', also: ['class', 'grade'], says: 'mark on head or nut: 8.8, A2-70, 3 lines, nut 10' },
  { name: 'thread', also: ['t'], says: 'a designation to look up: M8, 5/16-18' },
];

const HEAD_BASIS: Basis = {
  formula: 'looked up by tool size',
  inputs: [],
  source: 'ISO 272 and the product standards named',
  limits: [
    'A head alone never proves a thread: measure diameter and pitch.',
    'Heads are made a little smaller than the spanner; 2.5 % below still counts (3.5 % from 23 mm on).',
  ],
  cautions: [],
};

function runIdentify(options: Options): VerbAnswer {
  const read = readOptions(identify, options);
  if (!read.ok) return read;
  const get = read.value.get;
  const parts: { value: Record<string, unknown>; text: string[] } = { value: {}, text: [] };
  const steps = [measured(get, parts), heads(get, parts), marks(get, parts), looked(get, parts)];
  const refused = firstRefusal(...steps);
  if (refused) return refused;
  if (parts.text.length === 0) {
    return missing(
      'a measure: --diameter with --pitch or --tpi, --across-flats, --hex-key, --hexalobular, --mark or --thread',
    );
  }
  return { ok: true, value: parts.value, text: parts.text };
}

type Get = (name: string) => string | undefined;
interface Parts {
  value: Record<string, unknown>;
  text: string[];
}

function measured(get: Get, parts: Parts): Outcome<unknown> | undefined {
  const typed = get('diameter');
  if (typed === undefined) {
    return (get('pitch') ?? get('tpi'))
      ? missing('a measured diameter beside the pitch (--diameter)')
      : undefined;
  }
  const diameter = parseLength(typed);
  const pitch = optional(get('pitch'), parsePitch);
  const tpi = optional(get('tpi'), parseDecimal);
  if (!diameter.ok) return diameter;
  if (!pitch.ok) return pitch;
  if (!tpi.ok) return tpi;
  const found = identifyThread({
    diameterMm: diameter.value.lengthMm,
    ...(pitch.value ?? {}),
    ...(tpi.value === undefined ? {} : { tpi: tpi.value }),
  });
  if (!found.ok) return found;
  const { candidates, traps } = found.value;
  Object.assign(parts.value, found.value);
  parts.text.push(
    ...candidates.map((c) => `${c.rank}. ${c.says}`),
    ...(candidates.length === 0 ? ['No thread in the tables is near.'] : []),
    ...traps.map((trap) => `Trap: ${trap.sentence}`),
    ...basisLines(found.value),
  );
  return undefined;
}

function heads(get: Get, parts: Parts): Outcome<unknown> | undefined {
  const flats = optional(get('across-flats'), (text) => parseLength(text));
  const key = optional(get('hex-key'), (text) => parseLength(text));
  const lobe = get('hexalobular');
  const refused = firstRefusal(flats, key);
  if (refused) return refused;
  if (lobe !== undefined && !/^\D{0,3}\s*\d{1,3}$/.test(lobe.trim())) {
    return refuse('identify.hexalobular', 'a hexalobular number such as T30', lobe);
  }
  if (flats.ok && flats.value)
    head(
      'acrossFlats',
      `${flats.value.typed} across flats`,
      threadsForAcrossFlats(flats.value.lengthMm),
      parts,
    );
  if (key.ok && key.value)
    head('hexKey', `${key.value.typed} hex key`, threadsForHexKey(key.value.lengthMm), parts);
  if (lobe !== undefined) {
    head('hexalobular', `hexalobular ${lobe}`, threadsForHexalobular(lobe), parts);
    const acrossMm = HEXALOBULAR_MM.get(`T${/\d+/.exec(lobe)?.[0] ?? ''}`);
    if (acrossMm !== undefined) {
      parts.value['hexalobularMm'] = acrossMm;
      parts.text.push(`The socket measures ${showNumber(acrossMm)} mm over its points (ISO 10664).`);
    }
  }
  return undefined;
}

function head(name: string, says: string, matches: readonly DriveMatch[], parts: Parts): void {
  parts.value[name] = {
    threads: matches.map((match) => ({
      size: match.size,
      deviationMm: match.deviationMm,
      standards: match.rows.map(({ standard, family, tool, confidence, note }) => ({
        standard,
        family,
        tool,
        confidence,
        note,
      })),
    })),
    ...HEAD_BASIS,
  };
  const lines = matches.map((match) => {
    const standards = [
      ...new Set(
        match.rows.map((row) => `${row.standard} ${row.family}${row.note === '' ? '' : ` (${row.note})`}`),
      ),
    ];
    const off =
      Math.abs(match.deviationMm) < 0.005
        ? ''
        : ` (${match.deviationMm.toFixed(2)} mm from ${match.rows[0]?.tool ?? ''})`;
    return `${match.size}${off}: ${standards.join('; ')}`;
  });
  parts.text.push(
    `${says} can be:`,
    ...(lines.length > 0
      ? lines
      : ['No listed thread has that head; it may be worn, a special, or a casting plug.']),
    ...basisLines(HEAD_BASIS),
  );
}

function marks(get: Get, parts: Parts): Outcome<unknown> | undefined {
  const typed = get('mark');
  if (typed === undefined) return undefined;
  const mark = readMark(typed);
  if (!mark.ok) return mark;
  const cls = mark.value.propertyClass;
  const strengths = cls ? strengthsOf(cls) : [];
  parts.value['mark'] = { ...mark.value, ...(cls ? { strengths } : {}) };
  const printed = strengths.map(
    (one) =>
      `${one.quantity} strength, ${one.range}: ${showNumber(one.valueMPa)} MPa (${one.valuePsi} psi, ${one.confidence})`,
  );
  parts.text.push(...mark.value.meanings, ...printed, ...basisLines(mark.value));
  return undefined;
}

function looked(get: Get, parts: Parts): Outcome<unknown> | undefined {
  const typed = get('thread');
  if (typed === undefined) return undefined;
  const found = findThread(typed);
  if (!found.ok) return found;
  const thread = found.value;
  const band = majorBand(thread);
  const heads = DRIVE_ROWS.filter((row) => row.size === thread.size);
  parts.value['thread'] = { ...threadFacts(thread), majorBand: band, heads };
  parts.text.push(
    sayThread(thread),
    `A new external thread measures ${band.lowMm.toFixed(2)} to ${band.highMm.toFixed(2)} mm (${band.tolerance}).`,
    `Stress area ${thread.stressAreaMm2.toPrecision(3)} mm², pitch diameter ${thread.pitchDiameterMm.toFixed(3)} mm, root ${thread.minorDiameterMm.toFixed(3)} mm.`,
    ...toolLines(heads),
    `Source: ${thread.source} (${thread.confidence})`,
  );
  return undefined;
}

/** "17 mm, hex external: ISO 4014, ISO 4017", one line a tool. */
function toolLines(heads: readonly DriveRow[]): readonly string[] {
  const tools = [...new Set(heads.map((row) => `${row.tool}, ${row.drive}`))];
  return tools.map(
    (tool) =>
      `${tool}: ${[...new Set(heads.filter((row) => `${row.tool}, ${row.drive}` === tool).map((row) => row.standard))].join(', ')}`,
  );
}

/** `identify`: thread, head or mark → what it can be. */
export const identify: HandbookVerb = {
  name: 'identify',
  says: 'what a measured thread, a head or a mark can be',
  options: OPTIONS,
  word: 'thread',
  run: runIdentify,
};
