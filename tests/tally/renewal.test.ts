import { describe, expect, it } from 'vitest';
import { Connection, Part } from '../../core/model/part.ts';
import { Spec } from '../../core/model/fastener.ts';
import {
  RENEWAL_RULES,
  renewalFor,
  renewalOfPart,
  renewalOfSet,
  renewalRule,
  sealExpected,
} from '../../core/tally/index.ts';
import type { RenewalAsk, RenewalKind } from '../../core/tally/index.ts';
import { RENEWAL_WORDS } from '../../core/tally/renewal-words.ts';
import { TallyJob } from '../support/build-tally.ts';

const ruleOf = (ask: RenewalAsk) => renewalFor(ask)?.rule.id ?? null;

describe('the list of what must be renewed', () => {
  it('has every row with reason, source and confidence', () => {
    expect(RENEWAL_RULES).toHaveLength(65);
    expect(new Set(RENEWAL_RULES.map((rule) => rule.id)).size).toBe(65);
    for (const rule of RENEWAL_RULES) {
      expect(rule.reason, rule.id).not.toBe('');
      expect(rule.source, rule.id).not.toBe('');
      expect(rule.confidence, rule.id).toMatch(/^(memory|verified-[1-4])$/);
    }
  });

  it('never claims a source read where the confidence is from memory, and names one where it is not', () => {
    // Cells of the list as published: FAA AC 43.13-1B par. 7-38 (cotter pins), par. 7-64 and 7-122c (locking nuts).
    expect(renewalRule('cotter-pin')).toMatchObject({
      rule: 'never reuse',
      source: 'FAA AC 43.13-1B par. 7-38; TB 43-0218; TM 55-2840-251-23',
      confidence: 'verified-4',
    });
    expect(renewalRule('nylon-insert-nut')).toMatchObject({
      rule: 'reuse only if',
      confidence: 'verified-2',
    });
    for (const rule of RENEWAL_RULES)
      if (rule.source.startsWith('common practice')) expect(rule.confidence, rule.id).toBe('memory');
  });

  it('is found by its item as well as by its id', () => {
    expect(renewalRule('cotter pin (split pin)')?.id).toBe('cotter-pin');
    expect(renewalRule('no such thing')).toBeNull();
  });

  it('knows words only for rows that exist', () => {
    for (const words of RENEWAL_WORDS) expect(renewalRule(words.ruleId), words.ruleId).not.toBeNull();
  });
});

describe('both trades’ words', () => {
  it.each<[string, RenewalAsk, string, 'must' | 'if worn']>([
    ['split pin', { kind: 'part', name: 'split pin' }, 'cotter-pin', 'must'],
    ['cotter pin', { kind: 'part', name: 'cotter pins' }, 'cotter-pin', 'must'],
    ['split pin by kind', { kind: 'split pin' }, 'cotter-pin', 'must'],
    ['circlip', { kind: 'part', name: 'circlip 30 mm, internal' }, 'circlip', 'if worn'],
    ['snap ring', { kind: 'part', name: 'Snap ring' }, 'circlip', 'if worn'],
    ['retaining ring', { kind: 'circlip', name: 'retaining ring' }, 'circlip', 'if worn'],
    ['E-clip', { kind: 'E-clip' }, 'e-clip', 'if worn'],
    [
      'drive-shaft snap ring',
      { kind: 'circlip', name: 'driveshaft snap ring' },
      'drive-shaft-snap-ring',
      'must',
    ],
    ['nyloc', { kind: 'nut', head: 'nyloc' }, 'nylon-insert-nut', 'if worn'],
    ['nylon-insert nut', { kind: 'nut', name: 'nylon-insert nut' }, 'nylon-insert-nut', 'if worn'],
    ['all-metal lock nut', { kind: 'nut', head: 'all-metal lock' }, 'all-metal-lock-nut', 'if worn'],
    ['staked nut', { kind: 'nut', name: 'staked nut' }, 'staked-nut', 'must'],
    ['hub nut', { kind: 'nut', name: 'front hub nut' }, 'wheel-hub-nut', 'must'],
    ['copper washer', { kind: 'washer', name: 'copper washer 12 mm' }, 'crush-washer', 'must'],
    ['crush washer', { kind: 'part', name: 'crush washers' }, 'crush-washer', 'must'],
    ['drain plug washer', { kind: 'washer', name: 'drain plug washer' }, 'drain-plug-washer', 'must'],
    ['bonded seal', { kind: 'seal', name: 'bonded seal' }, 'bonded-seal', 'must'],
    ['spring washer', { kind: 'washer', name: 'spring washer' }, 'lock-washer', 'must'],
    ['lock washer', { kind: 'washer', name: 'lock washers' }, 'lock-washer', 'must'],
    ['lock plate', { kind: 'part', name: 'lock plate' }, 'tab-washer', 'must'],
    ['tab washer', { kind: 'washer', name: 'tab washer' }, 'tab-washer', 'must'],
    ['gasket', { kind: 'gasket', name: 'rocker cover gasket' }, 'flat-gasket', 'must'],
    ['head gasket', { kind: 'gasket', name: 'cylinder head gasket' }, 'head-gasket', 'must'],
    ['paper gasket', { kind: 'gasket', name: 'paper gasket' }, 'paper-gasket', 'must'],
    ['rubber gasket', { kind: 'gasket', name: 'rubber gasket' }, 'moulded-gasket', 'if worn'],
    ['O-ring', { kind: 'o-ring' }, 'o-ring', 'must'],
    ['O ring in words', { kind: 'part', name: 'O-rings 20x2' }, 'o-ring', 'must'],
    ['O-ring as the line reads it', { kind: 'O-ring', name: 'ring' }, 'o-ring', 'must'],
    ['shaft seal', { kind: 'seal', name: 'oil seal' }, 'lip-seal', 'must'],
    ['seal', { kind: 'seal', name: 'rear seal' }, 'rubber-seal', 'must'],
    ['torque plus angle', { kind: 'bolt', angleDeg: 90 }, 'torque-plus-angle-bolt', 'must'],
    ['angle in the stages', { kind: 'bolt', stages: ['30 N·m', '+ 90°'] }, 'torque-plus-angle-bolt', 'must'],
    [
      'stretch bolt',
      { kind: 'bolt', name: 'bolt', typed: '10 stretch bolts' },
      'torque-plus-angle-bolt',
      'must',
    ],
    ['threadlock', { kind: 'screw', lubrication: 'threadlock' }, 'threadlocked-bolt', 'if worn'],
    ['ear clamp', { kind: 'clamp', name: 'ear clamp' }, 'crimp-clamp', 'must'],
    ['worm-drive hose clip', { kind: 'clamp', name: 'worm-drive hose clip' }, 'worm-drive-clamp', 'if worn'],
    ['roll pin', { kind: 'pin', name: 'spring pin' }, 'roll-pin', 'if worn'],
    ['pop rivet', { kind: 'rivet' }, 'rivet', 'must'],
    ['push rivet', { kind: 'push rivet' }, 'plastic-push-rivet', 'if worn'],
    ['oil filter', { kind: 'filter', name: 'oil filter' }, 'oil-filter', 'must'],
    ['timing belt', { kind: 'part', name: 'timing belt' }, 'timing-belt', 'must'],
    ['fan belt', { kind: 'part', name: 'fan belt' }, 'drive-belt', 'if worn'],
    ['brake fluid', { kind: 'fluid', name: 'brake fluid' }, 'drained-brake-fluid', 'must'],
  ])('%s', (_said, ask, id, renew) => {
    expect(ruleOf(ask)).toBe(id);
    expect(renewalFor(ask)?.renew).toBe(renew);
  });

  it('says why in the sentence', () => {
    expect(renewalFor({ kind: 'split pin' })?.sentence).toBe(
      'Cotter pin (split pin): never used again; fit a new one of the same diameter and material. ' +
        'Why: bent legs have been work-hardened and crack or loosen when bent again.',
    );
  });
});

describe('no false alarm', () => {
  it.each<[RenewalKind, string]>([
    ['bolt', 'cover bolt'],
    ['nut', 'M8 nut'],
    ['nut', 'wheel nut'],
    ['washer', 'flat washer'],
    ['pin', 'clevis pin'],
    ['part', 'timing belt cover'],
    ['part', 'gasket scraper'],
    ['part', 'oil filter housing'],
    ['part', 'bearing cap'],
    ['part', 'cover for the gasket'],
    ['part', 'fuse box'],
    ['part', 'bearing'],
    ['part', 'fuse'],
    ['part', 'head'],
    ['seal', 'door seal'],
    ['seal', 'mechanical seal'],
    ['filter', 'air filter'],
    ['new part', 'gasket'],
    ['plug', 'drain plug'],
    ['connection', 'lower hose'],
    ['clamp', 'support clamp'],
  ])('%s “%s” has no rule', (kind, name) => {
    expect(ruleOf({ kind, name })).toBeNull();
  });

  it('does not take another thing of the same line for this one', () => {
    const typed = 'cover, 5 M8x25, gasket, circlip';
    expect(ruleOf({ kind: 'part', name: 'cover', typed })).toBeNull();
    expect(ruleOf({ kind: 'bolt', name: ' bolt', typed })).toBeNull();
    expect(ruleOf({ kind: 'unknown', name: ' unspecified', typed: '5 13' })).toBeNull();
    expect(ruleOf({ kind: 'seal', name: 'shaft seal', typed: 'shaft seal, head gasket' })).toBe('lip-seal');
    expect(ruleOf({ kind: 'seal', name: 'rear seal', typed: 'rear seal, head gasket' })).toBe('rubber-seal');
  });

  it('has an answer for every kind there is, and throws for none', () => {
    for (const kind of [...Spec.shape.kind.options, ...Part.shape.kind.options])
      expect(() => renewalFor({ kind, name: 'thing', typed: 'thing' }), kind).not.toThrow();
  });
});

describe('of rows', () => {
  it('asks every piece of a stack for itself', () => {
    const job = new TallyJob();
    const set = job.set(2, { angleDeg: 90 });
    const washer = job.spec({ kind: 'washer', head: null });
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
    job.add('stackItem', { setId: set.id, ord: 'a1', what: 'spring washer', specId: washer });
    expect(renewalOfSet(job.state, set.id).map((row) => [row.piece.what, row.advice.rule.id])).toEqual([
      ['bolt', 'torque-plus-angle-bolt'],
      ['spring washer', 'lock-washer'],
    ]);
  });

  it('asks a part by its name, and by what was typed where it has none', () => {
    const job = new TallyJob();
    const named = job.add('part', { name: 'cover', typed: 'cover, O-ring' });
    const unnamed = job.add('part', { name: '', typed: 'O-ring' });
    expect(renewalOfPart(named)).toBeNull();
    expect(renewalOfPart(unnamed)?.rule.id).toBe('o-ring');
  });
});

describe('what seals a joint', () => {
  // Common practice, no source.
  it.each([
    ['hose on stub', 'clamp', false],
    ['flare', 'seat', false],
    ['taper thread', 'sealant', false],
    ['face', 'seal or washer', true],
    ['port', 'seal or washer', true],
    ['plug', 'none', false],
    ['earth', 'none', false],
    ['linkage', 'none', false],
    ['unknown', 'ask', false],
  ] as const)('%s: %s', (joint, what, asks) => {
    expect(sealExpected(joint)).toMatchObject({ what, asks });
    expect(Connection.shape.joint.options).toHaveLength(9);
  });
});
