import type { Row } from '../model/tables.ts';

type Spec = Row<'spec'>;
type Field = 'thread' | 'pitch' | 'length' | 'head' | 'drive' | 'grade' | 'size' | 'more';

/**
 * What must be known before two fasteners of a kind may be taken for each other. Common practice, no source.
 * Washers go by size and form; clips, rivets and the like are told apart by their description only.
 */
const MATTERS: Readonly<Record<Spec['kind'], readonly Field[] | null>> = {
  bolt: ['thread', 'pitch', 'length', 'head', 'drive', 'grade'],
  screw: ['thread', 'pitch', 'length', 'head', 'drive', 'grade'],
  'set screw': ['thread', 'pitch', 'length', 'head', 'drive', 'grade'],
  'banjo bolt': ['thread', 'pitch', 'length', 'head', 'drive', 'grade'],
  'wood screw': ['size', 'length', 'head', 'drive'],
  'self-tapping screw': ['size', 'length', 'head', 'drive'],
  stud: ['thread', 'pitch', 'length', 'grade'],
  nut: ['thread', 'pitch', 'head', 'drive', 'grade'],
  washer: ['thread', 'head'],
  spacer: ['size', 'length'],
  clip: ['more'],
  'push rivet': ['size', 'length', 'head'],
  rivet: ['size', 'length', 'head'],
  pin: ['size', 'length', 'head'],
  'split pin': ['size', 'length'],
  'roll pin': ['size', 'length'],
  'dowel pin': ['size', 'length'],
  'taper pin': ['size', 'length'],
  'clevis pin': ['size', 'length'],
  'R-clip': ['size'],
  'E-clip': ['size'],
  'cable tie': ['size', 'length'],
  clamp: ['size', 'head'],
  circlip: ['size', 'head'],
  key: ['size', 'length', 'head'],
  plug: ['thread', 'pitch', 'head', 'drive'],
  other: null,
  unknown: null,
};

/**
 * Key text of a specification: equal keys may be pooled. Null while any field that matters for its kind is unknown,
 * for kinds that cannot be told apart by their fields, and for a description too long for the key (300 characters).
 * Recorded fields that do not have to be known still tell fasteners apart.
 */
export function poolKeyOf(spec: Spec): string | null {
  const matters = MATTERS[spec.kind];
  if (matters === null) return null;
  if (matters.some((field) => valueOf(spec, field) === null)) return null;
  const all: readonly Field[] = ['thread', 'pitch', 'length', 'head', 'drive', 'grade', 'more'];
  const key = [spec.kind, spec.hand, ...all.map((field) => valueOf(spec, field) ?? '')].join('|');
  return key.length > 300 ? null : key;
}

function valueOf(spec: Spec, field: Field): string | null {
  switch (field) {
    case 'thread':
      // A thread that only follows from the head is a guess: M8 and 5/16 share a spanner in a worn set.
      return spec.threadKnown ? clean(spec.thread) : null;
    case 'pitch':
      return spec.pitchUm !== null ? `${spec.pitchUm}` : threadSaysPitch(spec.thread) ? 'by thread' : null;
    case 'length':
      return spec.lengthUm === null ? null : `${spec.lengthUm}`;
    case 'head':
      return clean(spec.head);
    case 'drive':
      return driveOf(spec);
    case 'grade':
      return clean(spec.grade);
    case 'size':
      return valueOf(spec, 'thread') ?? (/\d/.test(spec.more) ? clean(spec.more) : null);
    case 'more':
      return clean(spec.more);
  }
}

/** The size is what must be known; the style follows from the head where it was not said ("hex 13"). */
function driveOf(spec: Spec): string | null {
  const size = spec.driveSizeUm === null ? clean(spec.driveTyped) : `${spec.driveSizeUm}`;
  return size === null ? null : `${clean(spec.drive) ?? ''} ${size}`.trim();
}

/** "5/16-18 UNC" and "#10-32" carry their threads per inch; "M8" and "5/16" do not. Pipe threads have one pitch each. */
function threadSaysPitch(thread: string | null): boolean {
  return (
    thread !== null &&
    (/\d-\d/.test(thread) || /\b(UNC|UNF|UNEF|BSW|BSF|BSP|NPT|NPTF)\b|^(G|R|Rc|Rp)\s?\d/i.test(thread))
  );
}

function clean(text: string | null): string | null {
  const plain = (text ?? '').trim().toLowerCase().replace(/\s+/g, ' ').replaceAll('|', '/');
  return plain === '' ? null : plain;
}
