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
