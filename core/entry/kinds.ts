/** The closed lists of words that a meaning can hold. They are codes; what the screen says is in text.ts. */

/** What a stretch of the line is. `unknown` is the only kind that is not understood. */
export type TokenKind =
  | 'space'
  | 'separator'
  | 'count'
  | 'fastener'
  | 'thread'
  | 'length'
  | 'head'
  | 'drive'
  | 'class'
  | 'stow'
  | 'condition'
  | 'missing'
  | 'torque'
  | 'treatment'
  | 'stack'
  | 'happened'
  | 'held-by'
  | 'name'
  | 'connection'
  | 'ends'
  | 'clamp'
  | 'fluid'
  | 'amount'
  | 'made-safe'
  | 'temporary'
  | 'own-place'
  | 'stamped'
  | 'renew'
  | 'measurement'
  | 'mark'
  | 'place'
  | 'note'
  | 'filler'
  | 'unknown';

/** `off` unless another word was typed: "slackened", "opened", "aside" (moved aside). */
export type Happened = 'off' | 'slackened' | 'opened' | 'aside';

export type Unit = 'mm' | 'in';

export type FastenerKind =
  | 'unspecified'
  | 'bolt'
  | 'screw'
  | 'set screw'
  | 'stud'
  | 'nut'
  | 'washer'
  | 'spring washer'
  | 'sealing washer'
  | 'spacer'
  | 'clip'
  | 'push rivet'
  | 'rivet'
  | 'pin'
  | 'split pin'
  | 'roll pin'
  | 'dowel pin'
  | 'taper pin'
  | 'clevis pin'
  | 'R-clip'
  | 'circlip'
  | 'E-clip'
  | 'clamp'
  | 'cable tie'
  | 'key'
  | 'banjo bolt'
  | 'wood screw'
  | 'self-tapping screw';

export type HeadForm =
  | 'hex'
  | 'flange'
  | 'socket cap'
  | 'button'
  | 'countersunk'
  | 'pan'
  | 'cheese'
  | 'round'
  | 'square'
  | 'wing'
  | 'coach'
  | 'eye'
  | 'knurled'
  | 'T-head'
  | 'shoulder'
  | 'headless'
  // nuts
  | 'nyloc'
  | 'castle'
  | 'thin'
  | 'domed'
  | 'all-metal lock';

export type DriveStyle =
  | 'hex external'
  | 'hex socket'
  | 'hexalobular'
  | 'hexalobular external'
  | 'slotted'
  | 'cross PH'
  | 'cross PZ'
  | 'triple square'
  | 'bi-hex'
  | 'square external'
  | 'square socket';

export type ThreadSystem = 'metric' | 'unified' | 'pipe' | 'whitworth' | 'trapezoidal';

export type TorqueUnit = 'Nm' | 'lbf ft' | 'lbf in' | 'kgf m';

export type Treatment = 'threadlock' | 'sealant' | 'greased' | 'oiled' | 'anti-seize' | 'dry';

export type ConditionKind =
  | 'stripped'
  | 'stretched'
  | 'cross-threaded'
  | 'bent'
  | 'cracked'
  | 'snapped'
  | 'seized'
  | 'rusted'
  | 'rounded'
  | 'worn'
  | 'scored'
  | 'leaking'
  | 'perished'
  | 'burnt'
  | 'milky'
  | 'dirty'
  | 'loose'
  | 'damaged'
  | 'wrong'
  | 'missing';

export type Renew = 'must' | 'if worn';

/** What a part looks like where that decides what it needs on the way back. */
export type PartLook = 'gasket' | 'O-ring' | 'seal' | 'filter' | 'sleeve' | 'shim';

export type ConnectionKind =
  | 'hose'
  | 'pipe'
  | 'plug'
  | 'connector'
  | 'cable'
  | 'earth lead'
  | 'union'
  | 'linkage';

export type Energy =
  | 'electricity'
  | 'pressure'
  | 'spring'
  | 'load'
  | 'fuel'
  | 'motion'
  | 'ignition'
  | 'heat'
  | 'other';

export type TemporaryRole = 'blocks' | 'supports' | 'cages' | 'locks' | 'aid';
