import { describe, expect, it } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { describeSpec } from '../../core/model/spec-words.ts';
import { nameOf } from '../../core/tally/describe.ts';
import { lookup } from '../../core/tally/lookup.ts';
import { TallyJob } from '../support/build-tally.ts';

const BARE: Partial<Row<'spec'>> = {
  kind: 'unknown',
  thread: null,
  threadKnown: false,
  pitchUm: null,
  lengthUm: null,
  head: null,
  drive: null,
  driveSizeUm: null,
  driveTyped: '',
  grade: null,
};

describe('a specification', () => {
  const said = (values: Partial<Row<'spec'>>): string => {
    const job = new TallyJob();
    job.spec(values);
    return describeSpec(job.state.spec[0] as Row<'spec'>);
  };

  it.each<[string, Partial<Row<'spec'>>]>([
    ['bolt M8 × 1.25 × 25 mm, hex 13 mm, class 8.8', {}],
    ['fastener', BARE],
    ['fastener M8?', { ...BARE, thread: 'M8' }],
    ['fastener M8', { ...BARE, thread: 'M8', threadKnown: true }],
    ['fastener M8', { ...BARE, thread: 'M8', pitchUm: 1250 }],
    [
      'bolt 5/16-18 UNC × 25 mm',
      { ...BARE, kind: 'bolt', thread: '5/16-18 UNC', threadKnown: true, pitchUm: 1411, lengthUm: 25_000 },
    ],
    ['fastener GM8', { ...BARE, thread: 'GM8', threadKnown: true, pitchUm: 1250 }],
    ['bolt 16.5 mm', { ...BARE, kind: 'bolt', lengthUm: 16_500 }],
    ['fastener, 13 mm', { ...BARE, driveSizeUm: 13_000 }],
    ['fastener, T30', { ...BARE, driveSizeUm: 5600, driveTyped: 'T30' }],
    ['fastener, hexalobular T30', { ...BARE, drive: 'hexalobular', driveTyped: 'T30' }],
    ['fastener, flange', { ...BARE, head: 'flange', drive: 'hex external' }],
    ['nut, class 8', { ...BARE, kind: 'nut', grade: '8' }],
    ['nut, left-hand thread', { ...BARE, kind: 'nut', hand: 'left' }],
    ['clip, black', { ...BARE, kind: 'clip', more: 'black' }],
    ['clip', { ...BARE, kind: 'clip', more: '  ' }],
  ])('%s', (sentence, values) => {
    expect(said(values)).toBe(sentence);
  });
});

describe('what a thing is called', () => {
  const job = new TallyJob();
  const called = (id: string | null): string => nameOf(lookup(job.state), id);
  const part = (values: Partial<Row<'part'>>) => job.add('part', values).id;
  const set = (values: Partial<Row<'fset'>>) => job.set(1, values);
  const cover = set({ name: 'cover bolts' });
  const spec = job.spec({ thread: 'M6', pitchUm: 1000, grade: null });

  it.each<[string, string | null]>([
    ['Sump', job.removal({ title: 'Sump', typed: 'sump, 8 M6' })],
    ['sump, 8 M6', job.removal({ typed: 'sump, 8 M6' })],
    ['a removal', job.removal()],
    ['cover bolts', cover.id],
    ['bolt M6 × 1 × 25 mm, hex 13 mm', set({ name: '', specId: spec }).id],
    ['3 bolts', set({ name: '', typed: '3 bolts', specId: job.id() }).id],
    ['fasteners', set({ name: '', specId: job.id() }).id],
    ['Cover', part({ name: 'Cover', typed: 'cover with clip' })],
    ['cover with clip', part({ typed: 'cover with clip' })],
    ['gasket', part({ kind: 'gasket' })],
    ['bag 4', job.bag('4')],
    ['bolt M6 × 1 × 25 mm, hex 13 mm', spec],
    ['hole 1 of cover bolts', cover.holes[0] ?? ''],
    ['Rag', job.add('temporary', { name: 'Rag' }).id],
    ['Hose', job.add('connection', { name: 'Hose' }).id],
    ['not recorded', job.add('connection', {}).id],
    ['not recorded', job.id()],
    ['not recorded', null],
  ])('%s', (name, id) => {
    expect(called(id)).toBe(name);
  });
});
