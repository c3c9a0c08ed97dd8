import { DRIVE_ROWS, type DriveRow } from '../fastening/index.ts';
import type { JobState, Row } from '../model/tables.ts';
import { groupBy } from './grouping.ts';
import type { ToolKnown, ToolLine } from './types.ts';

/** The tool of one specification. An empty name: it goes by hand. */
export interface ToolOf {
  readonly tool: string;
  readonly known: ToolKnown;
}

const BY_HAND: ToolOf = { tool: '', known: 'recorded' };
const NOT_RECORDED: ToolOf = { tool: '', known: 'not recorded' };

/** What turns each style of drive. Common practice, no source. */
const BY_STYLE: Readonly<Record<string, string>> = {
  'hex external': 'spanner or socket',
  'bi-hex': 'bi-hex socket',
  'hex socket': 'hex key',
  hexalobular: 'bit',
  'hexalobular external': 'socket',
  slotted: 'flat screwdriver',
  'cross PH': 'screwdriver',
  'cross PZ': 'screwdriver',
  'triple square': 'bit',
  'square external': 'spanner or socket',
  'square socket': 'square key',
};

/** What takes fasteners that are not turned. Common practice, no source. */
const BY_KIND: Partial<Record<Row<'spec'>['kind'], string>> = {
  circlip: 'circlip pliers',
  'E-clip': 'pliers',
  'split pin': 'pliers',
  'roll pin': 'pin punch',
  'dowel pin': 'pin punch',
  'taper pin': 'pin punch',
  rivet: 'rivet drill',
};

const TURNED: ReadonlySet<Row<'spec'>['kind']> = new Set([
  'bolt',
  'screw',
  'set screw',
  'stud',
  'banjo bolt',
  'wood screw',
  'self-tapping screw',
  'nut',
  'plug',
  'unknown',
]);

/** Heads whose size follows from the thread, and the families of the drive tables that say which. */
const HEADS: Readonly<Record<string, readonly [DriveRow['drive'], RegExp]>> = {
  hex: ['hex external', /^hex (head|cap screw)/],
  nut: ['hex external', /^hex nut/],
  'socket cap': ['hex socket', /^socket head cap screw$/],
  button: ['hex socket', /^button/],
};

/**
 * The tool that fits a specification: the size as recorded; else, where thread and head are known, the size or sizes by
 * the product standards (so marked); else not recorded. Fasteners without a head to turn go by hand or by their kind.
 */
export function toolOf(spec: Row<'spec'> | undefined): ToolOf {
  if (!spec) return NOT_RECORDED;
  if (spec.head === 'wing' || spec.head === 'knurled') return BY_HAND;
  const size = sizeOf(spec);
  const turns = spec.drive === null ? '' : (BY_STYLE[spec.drive] ?? spec.drive);
  if (size !== '' || turns !== '') {
    if (size === '' && spec.drive !== 'slotted')
      return byStandard(spec) ?? { tool: turns, known: 'recorded' };
    const typed = `${size} ${turns || 'spanner or socket'}`.trim();
    return { tool: typed, known: 'recorded' };
  }
  const own = BY_KIND[spec.kind];
  if (own !== undefined) return { tool: own, known: 'recorded' };
  if (!TURNED.has(spec.kind)) return BY_HAND;
  return byStandard(spec) ?? NOT_RECORDED;
}

function sizeOf(spec: Row<'spec'>): string {
  if (spec.driveTyped !== '') return spec.driveTyped;
  return spec.driveSizeUm === null ? '' : `${spec.driveSizeUm / 1000} mm`;
}

function headOf(spec: Row<'spec'>): string {
  if (spec.kind === 'nut') return spec.head === null || spec.head === 'hex' ? 'nut' : spec.head;
  if (spec.head !== null) return spec.head;
  return spec.drive === 'hex external' ? 'hex' : spec.drive === 'hex socket' ? 'socket cap' : '';
}

function byStandard(spec: Row<'spec'>): ToolOf | null {
  const found = HEADS[headOf(spec)];
  if (!found || spec.thread === null) return null;
  const [drive, family] = found;
  const size = spec.thread.split(/[\s×x-]/)[0] ?? '';
  const sizes = [
    ...new Set(
      DRIVE_ROWS.filter((row) => row.size === size && row.drive === drive && family.test(row.family)).map(
        (row) => row.tool,
      ),
    ),
  ].sort((a, b) => Number.parseFloat(a) - Number.parseFloat(b));
  if (sizes.length === 0) return null;
  return { tool: `${sizes.join(' or ')} ${BY_STYLE[drive] ?? ''}`.trim(), known: 'by the standard' };
}

/** Tools and their counts for some pieces of sets: the fasteners themselves, and the nuts and bolts of their stacks. */
export class ToolBox {
  private readonly spec: ReadonlyMap<string, ToolOf>;
  private readonly stacks: ReadonlyMap<string, readonly Row<'stackItem'>[]>;

  constructor(state: JobState) {
    this.spec = new Map(state.spec.map((spec) => [spec.id, toolOf(spec)]));
    this.stacks = groupBy(state.stackItem, (item) => item.setId);
  }

  /** The tools for one fastener of this specification in this set; each once. */
  toolsFor(setId: string, specId: string): ToolOf[] {
    const own = this.spec.get(specId) ?? NOT_RECORDED;
    const more = (this.stacks.get(setId) ?? []).flatMap((item) => {
      const tool = item.specId === null || item.specId === specId ? undefined : this.spec.get(item.specId);
      return tool && tool.tool !== '' ? [tool] : [];
    });
    const found = new Map<string, ToolOf>();
    for (const one of [own, ...more])
      if (!(one.tool === '' && one.known === 'recorded')) found.set(one.tool, one);
    return [...found.values()];
  }
}

interface Tallied {
  known: ToolKnown;
  fasteners: number;
  readonly steps: Set<string>;
}

/** Adds up uses of tools: most fasteners first, what is not recorded last. */
export class ToolSum {
  private readonly lines = new Map<string, Tallied>();

  add(tool: ToolOf, fasteners: number, stepId: string): void {
    const line = this.lines.get(tool.tool) ?? { known: tool.known, fasteners: 0, steps: new Set<string>() };
    line.fasteners += fasteners;
    line.steps.add(stepId);
    if (tool.known === 'recorded') line.known = 'recorded';
    this.lines.set(tool.tool, line);
  }

  list(): ToolLine[] {
    return [...this.lines]
      .map(([tool, { known, fasteners, steps }]) => ({ tool, known, fasteners, steps: steps.size }))
      .sort(
        (a, b) =>
          Number(a.tool === '') - Number(b.tool === '') ||
          b.fasteners - a.fasteners ||
          (a.tool < b.tool ? -1 : 1),
      );
  }
}
