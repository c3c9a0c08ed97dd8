import { describe, expect, it } from 'vitest';
import { blank } from '../../core/model/blank.ts';
import type { Row } from '../../core/model/tables.ts';
import { Spec } from '../../core/model/fastener.ts';
import { poolKeyOf } from '../../core/tally/index.ts';
import { M8 } from '../support/build-rows.ts';

const ID = '00000000-0000-7000-8000-000000000001';
const bolt = (values: Partial<Row<'spec'>> = {}): Row<'spec'> =>
  blank('spec', ID, ID, { ...M8, lengthUm: 25_000, ...values });

describe('the pool key', () => {
  it('is the same for the same fastener, however it was written', () => {
    expect(poolKeyOf(bolt({ head: ' Hex ', grade: '8.8 ' }))).toBe(poolKeyOf(bolt()));
    expect(poolKeyOf(bolt())).not.toBeNull();
  });

  it.each([
    ['thread', { thread: null }],
    ['thread read', { threadKnown: false }],
    ['pitch', { pitchUm: null }],
    ['length', { lengthUm: null }],
    ['head', { head: null }],
    ['size of the tool', { driveSizeUm: null, driveTyped: '' }],
    ['class', { grade: null }],
  ])('is null while the %s of a bolt is unknown', (_what, values) => {
    expect(poolKeyOf(bolt(values))).toBeNull();
  });

  it.each([
    { thread: 'M10' },
    { pitchUm: 1000 },
    { lengthUm: 30_000 },
    { head: 'flange' },
    { driveSizeUm: 12_000 },
    { grade: '10.9' },
    { hand: 'left' as const },
    { kind: 'screw' as const },
    { more: 'with patch' },
  ])('differs with %o', (values) => {
    expect(poolKeyOf(bolt(values))).not.toBeNull();
    expect(poolKeyOf(bolt(values))).not.toBe(poolKeyOf(bolt()));
  });

  it('asks a stud for no head and a nut for no length', () => {
    expect(poolKeyOf(bolt({ kind: 'stud', head: null, driveSizeUm: null, driveTyped: '' }))).not.toBeNull();
    expect(poolKeyOf(bolt({ kind: 'nut', lengthUm: null, head: 'plain' }))).not.toBeNull();
    expect(poolKeyOf(bolt({ kind: 'nut', lengthUm: null, head: null }))).toBeNull();
  });

  it('takes the pitch of an inch thread from its name', () => {
    const inch = { pitchUm: null, thread: '5/16-18 UNC' };
    expect(poolKeyOf(bolt(inch))).not.toBeNull();
    expect(poolKeyOf(bolt({ ...inch, thread: '5/16' }))).toBeNull();
  });

  it('takes the size of a circlip from its own field, and is null without one', () => {
    const ring = blank('spec', ID, ID, { kind: 'circlip', head: 'internal' });
    expect(poolKeyOf({ ...ring, more: '30 mm' })).not.toBeNull();
    expect(poolKeyOf(ring)).toBeNull();
  });

  it('is null for what cannot be told apart by its fields, and for a key too long to store', () => {
    expect(poolKeyOf(bolt({ kind: 'unknown' }))).toBeNull();
    expect(poolKeyOf(bolt({ kind: 'other' }))).toBeNull();
    expect(poolKeyOf(bolt({ more: 'x'.repeat(400) }))).toBeNull();
  });

  it('has an answer for every kind there is', () => {
    for (const kind of Spec.shape.kind.options)
      expect(typeof poolKeyOf(bolt({ kind, more: '5 mm' })), kind).toBe(
        kind === 'unknown' || kind === 'other' ? 'object' : 'string',
      );
  });
});

/** What nobody may leave open before two of a kind are taken for each other. Common practice, no source. */
const MUST_BE_KNOWN = {
  'bolt, screw, set screw, banjo bolt': 'thread, pitch, length, head, drive, class',
  'wood screw, self-tapping screw': 'size, length, head, drive',
  stud: 'thread, pitch, length, class',
  nut: 'thread, pitch, head, drive, class',
  plug: 'thread, pitch, head, drive',
  washer: 'thread, head',
  'push rivet, rivet, pin, key': 'size, length, head',
  'spacer, split pin, roll pin, dowel pin, taper pin, clevis pin, cable tie': 'size, length',
  'circlip, clamp': 'size, head',
  'R-clip, E-clip': 'size',
  clip: 'description',
} as const;

const LEFT_OPEN: Readonly<Record<string, Partial<Row<'spec'>>>> = {
  thread: { thread: null },
  pitch: { pitchUm: null },
  length: { lengthUm: null },
  head: { head: null },
  drive: { driveSizeUm: null, driveTyped: '' },
  class: { grade: null },
  size: { thread: null, more: 'zinc' },
  description: { more: '' },
};

const CASES = Object.entries(MUST_BE_KNOWN).flatMap(([kinds, fields]) =>
  kinds.split(', ').map((kind) => ({ kind: Spec.shape.kind.parse(kind), fields: fields.split(', ') })),
);

describe('what may stand in for each other', () => {
  it.each(CASES)('a $kind needs $fields to be known, and nothing else', ({ kind, fields }) => {
    // The size is the thread, or words in its place.
    const other = fields.includes('size') ? 'thread' : 'size';
    for (const [field, open] of Object.entries(LEFT_OPEN)) {
      if (field === other) continue;
      const key = poolKeyOf(bolt({ kind, more: '5 mm', ...open }));
      expect(key === null, field).toBe(fields.includes(field));
    }
  });

  it('the size of what has no thread may be said in words, as long as they hold a figure', () => {
    const pin = { kind: 'dowel pin', thread: null, threadKnown: false } as const;
    expect(poolKeyOf(bolt({ ...pin, more: '6 mm' }))).not.toBe(poolKeyOf(bolt({ ...pin, more: '8 mm' })));
    expect(poolKeyOf(bolt({ ...pin, more: 'thick' }))).toBeNull();
    expect(poolKeyOf(bolt({ ...pin, more: '6' }))).not.toBeNull();
  });

  it.each(['1/4 NPT', '5/16-18', '#10-32', 'G1/2', 'G 1/2', 'Rc 3/8', 'rp1/2', '1/2 BSP', '3/8 unf'])(
    'the thread %s has one pitch',
    (thread) => {
      expect(poolKeyOf(bolt({ thread, pitchUm: null }))).not.toBeNull();
    },
  );

  it.each(['M8', '5/16', 'Tr20', 'M8-fine', 'fine-1', 'G', 'unc8'])(
    'the thread %s does not say its pitch',
    (thread) => {
      expect(poolKeyOf(bolt({ thread, pitchUm: null }))).toBeNull();
    },
  );

  it('how it was written, and whether the style of the tool was said beside its size, does not matter', () => {
    expect(poolKeyOf(bolt({ more: 'With   Patch' }))).toBe(poolKeyOf(bolt({ more: 'with patch' })));
    expect(poolKeyOf(bolt({ drive: null }))).not.toBeNull();
    expect(poolKeyOf(bolt({ driveSizeUm: null, driveTyped: 'T30' }))).not.toBe(
      poolKeyOf(bolt({ driveSizeUm: null, driveTyped: 'T40' })),
    );
    expect(poolKeyOf(bolt({ drive: 'hexalobular' }))).not.toBe(poolKeyOf(bolt()));
  });
});
