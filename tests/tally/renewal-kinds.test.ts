import { describe, expect, it } from 'vitest';
import { Connection } from '../../core/model/part.ts';
import {
  countLines,
  RENEWAL_RULES,
  renewalFor,
  renewalOfPart,
  renewalOfSet,
  sealExpected,
} from '../../core/tally/index.ts';
import type { RenewalAsk, RenewalKind } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const ruleOf = (ask: RenewalAsk) => renewalFor(ask)?.rule.id ?? null;

/** A name of each family, and the row of the list that it is. */
const NAMED = {
  pin: ['split pin', 'cotter-pin'],
  washer: ['tab washer', 'tab-washer'],
  nut: ['staked nut', 'staked-nut'],
  bolt: ['shear bolt', 'breakaway-bolt'],
  ring: ['spiral snap ring', 'spiral-snap-ring'],
  rivet: ['push rivet', 'plastic-push-rivet'],
  clamp: ['ear clamp', 'crimp-clamp'],
  clip: ['trim clip', 'trim-clip'],
  seal: ['oil seal', 'lip-seal'],
  joint: ['brake line', 'brake-flare'],
  part: ['timing belt', 'timing-belt'],
  fluid: ['brake fluid', 'drained-brake-fluid'],
} as const;
type Family = keyof typeof NAMED;
const ANY: readonly Family[] = ['pin', 'washer', 'nut', 'bolt', 'ring', 'rivet', 'clamp', 'clip'];

describe('a kind is only ever taken for what it can be', () => {
  it.each<[RenewalKind, readonly Family[]]>([
    ['bolt', ['bolt']],
    ['screw', ['bolt']],
    ['set screw', ['bolt']],
    ['stud', ['bolt']],
    ['banjo bolt', ['bolt']],
    ['wood screw', []],
    ['self-tapping screw', []],
    ['nut', ['nut']],
    ['washer', ['washer']],
    ['spacer', []],
    ['clip', ['clip', 'ring']],
    ['pin', ['pin']],
    ['clevis pin', []],
    ['R-clip', []],
    ['clamp', ['clamp']],
    ['cable tie', []],
    ['key', []],
    ['plug', []],
    ['other', ANY],
    ['unknown', ANY],
    ['part', [...ANY, 'seal', 'joint', 'part']],
    ['filter', ['part']],
    ['sleeve', []],
    ['shim', []],
    ['kit', []],
    ['new part', []],
    ['connection', ['joint', 'clamp']],
    ['fluid', ['fluid']],
  ])('%s: %s', (kind, families) => {
    for (const [family, [name, rule]] of Object.entries(NAMED))
      expect(ruleOf({ kind, name }), name).toBe(families.some((one) => one === family) ? rule : null);
  });

  it.each<[RenewalKind, string, readonly Family[]]>([
    ['split pin', 'cotter-pin', ['pin']],
    ['roll pin', 'roll-pin', ['pin']],
    ['dowel pin', 'taper-pin', ['pin']],
    ['taper pin', 'taper-pin', ['pin']],
    ['circlip', 'circlip', ['ring']],
    ['E-clip', 'e-clip', ['ring']],
    ['push rivet', 'plastic-push-rivet', ['rivet']],
    ['rivet', 'rivet', ['rivet']],
    ['gasket', 'flat-gasket', ['washer', 'seal']],
    ['o-ring', 'o-ring', ['seal']],
    ['O-ring', 'o-ring', ['seal']],
    ['seal', 'rubber-seal', ['washer', 'seal']],
  ])('%s is %s whatever it is called, unless its name says more', (kind, own, families) => {
    expect(ruleOf({ kind })).toBe(own);
    for (const [family, [name, rule]] of Object.entries(NAMED))
      expect(ruleOf({ kind, name }), name).toBe(families.some((one) => one === family) ? rule : own);
  });
});

describe('tightened by angle, locked, greased', () => {
  it.each<[RenewalKind, string | null]>([
    ['bolt', 'torque-plus-angle-bolt'],
    ['stud', 'torque-plus-angle-bolt'],
    ['nut', 'torque-plus-angle-bolt'],
    ['washer', null],
    ['part', null],
    ['unknown', 'torque-plus-angle-bolt'],
  ])('%s by angle: %s', (kind, rule) => {
    expect(ruleOf({ kind, angleDeg: 90 })).toBe(rule);
    expect(ruleOf({ kind, stages: ['30 Nm', '90 deg'] })).toBe(rule);
    expect(ruleOf({ kind, stages: ['30 Nm', '60 Nm'] })).toBeNull();
    expect(ruleOf({ kind, angleDeg: 0 })).toBeNull();
  });

  it('what is on the thread counts for threads', () => {
    expect(ruleOf({ kind: 'bolt', lubrication: 'threadlock' })).toBe('threadlocked-bolt');
    expect(ruleOf({ kind: 'bolt', lubrication: 'anti-seize' })).toBe('anti-seize-bolt');
    expect(ruleOf({ kind: 'bolt', lubrication: 'oiled' })).toBeNull();
    expect(ruleOf({ kind: 'nut', lubrication: 'threadlock' })).toBeNull();
    expect(ruleOf({ kind: 'part', lubrication: 'anti-seize' })).toBeNull();
  });
});

describe('names as people write them', () => {
  it.each<[RenewalAsk, string | null]>([
    [{ kind: 'part', name: 'Split-pins, 4x40 mm' }, 'cotter-pin'],
    [{ kind: 'part', name: 'split   pin' }, 'cotter-pin'],
    [{ kind: 'part', name: 'split pin M8 lower left' }, 'cotter-pin'],
    [{ kind: 'part', name: 'split pin (new)' }, 'cotter-pin'],
    [{ kind: 'part', name: 'circlip ID 30' }, 'circlip'],
    [{ kind: 'part', name: 'circlip t30' }, 'circlip'],
    [{ kind: 'part', name: 'cover; gasket' }, 'flat-gasket'],
    [{ kind: 'part', name: 'gasket for the cover' }, 'flat-gasket'],
    [{ kind: 'part', name: 'bracket behind gasket' }, null],
    [{ kind: 'part', name: 'tab washer set' }, 'tab-washer'],
    [{ kind: 'part', name: 'lower' }, null],
    [{ kind: 'part', name: 'gas' }, null],
    [{ kind: 'part', name: '' }, null],
    [{ kind: 'seal', name: 'window rubber strip' }, null],
    [{ kind: 'seal', name: 'boot seal' }, null],
    [{ kind: 'nut', head: 'nyloc' }, 'nylon-insert-nut'],
    [{ kind: 'nut', head: null }, null],
    [{ kind: 'unknown', name: 'unspecified', typed: 'split pin' }, 'cotter-pin'],
    [{ kind: 'other', name: 'spring', typed: 'split pin' }, null],
    [{ kind: 'unknown', name: 'spring', typed: 'split pin' }, null],
    [{ kind: 'connection', name: 'hose', typed: 'ear clamp' }, null],
    [{ kind: 'connection', typed: 'ear clamp' }, 'crimp-clamp'],
    [{ kind: 'bolt', name: 'bolt', typed: 'stretch bolt' }, 'torque-plus-angle-bolt'],
  ])('%o', (ask, rule) => {
    expect(ruleOf(ask)).toBe(rule);
  });

  it('of a part, only its name, unless it has none', () => {
    const job = new TallyJob();
    expect(
      renewalOfPart(job.add('part', { kind: 'filter', name: 'Air filter', typed: 'oil filter' })),
    ).toBeNull();
    expect(renewalOfPart(job.add('part', { kind: 'filter', name: '', typed: 'oil filter' }))?.rule.id).toBe(
      'oil-filter',
    );
  });
});

describe('the sentence', () => {
  const said = (id: string): string => {
    const rule = RENEWAL_RULES.find((one) => one.id === id);
    expect(rule, id).toBeDefined();
    const found = renewalFor(
      { 'nylon-insert-nut': { kind: 'nut' as const, head: 'nyloc' }, circlip: { kind: 'circlip' as const } }[
        id
      ] ?? { kind: 'part', name: 'driveshaft snap ring' },
    );
    expect(found?.rule.id).toBe(id);
    return found?.sentence ?? '';
  };

  it('says by its verb whether it may go back: used again only if, looked at, replaced', () => {
    expect(said('nylon-insert-nut')).toMatch(/^[A-Z].*: used again only if [a-z].*\. Why: .*\.$/);
    expect(said('circlip')).toMatch(/^[A-Z].*: looked at before it goes back; .*\. Why: .*\.$/);
    expect(said('drive-shaft-snap-ring')).toMatch(/^[A-Z].*: replaced; .*\. Why: .*\.$/);
  });

  it('a rule with a condition of its own is no must: a bearing that was pulled by its own ring may stay', () => {
    expect(renewalFor({ kind: 'part', name: 'pressed in bearing' })).toMatchObject({
      renew: 'if worn',
      rule: { id: 'press-fit-bearing' },
    });
  });

  it('says of every kind of joint what seals it', () => {
    const sentences = Connection.shape.joint.options.map((joint) => sealExpected(joint).sentence);
    expect(new Set(sentences).size).toBe(sentences.length);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(sealExpected('hose on stub').sentence).toContain('clamp');
    expect(sealExpected('flare').sentence).toContain('seat');
    expect(sealExpected('taper thread').sentence).toContain('Sealant');
    expect(sealExpected('face').sentence).toContain('gasket, seal or washer');
    expect(sealExpected('port').sentence).toContain('seal or washer');
    expect(sealExpected('earth').sentence).toContain('clean metal');
  });
});

describe('which pieces of a stack must be new', () => {
  const stack = (more: Parameters<TallyJob['set']>[1]) => {
    const job = new TallyJob();
    const set = job.set(2, more);
    const washer = job.spec({ kind: 'washer', head: null });
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
    job.add('stackItem', { setId: set.id, ord: 'a1', what: 'spring washer', specId: washer });
    job.add('stackItem', { setId: set.id, ord: 'a2', what: 'spacer' });
    const must = () =>
      countLines(job.state)
        .filter((line) => line.mustBeNew)
        .map((line) => line.what);
    return { job, set, must };
  };

  it('those that the rule is about, and not the bolts beside them', () => {
    expect(stack({ renew: 'must', renewRule: 'lock-washer' }).must()).toEqual(['spring washer']);
    expect(stack({ renew: 'must', renewRule: 'torque-plus-angle-bolt', angleDeg: 90 }).must()).toEqual([
      'bolt',
    ]);
  });

  it('all of them where no rule was named, or one that fits no single piece', () => {
    for (const renewRule of [null, 'no such rule', 'cotter-pin'])
      expect(stack({ renew: 'must', renewRule }).must(), String(renewRule)).toHaveLength(3);
    expect(stack({ renew: 'if worn', renewRule: null }).must()).toEqual([]);
  });

  it('a bolt of another length in one hole is as much a bolt of the set', () => {
    const { job, set, must } = stack({ renew: 'must', renewRule: 'torque-plus-angle-bolt', angleDeg: 90 });
    job.change('position', set.holes[1] ?? '', { specId: job.spec({ lengthUm: 45_000 }) });
    expect(must()).toEqual(['bolt', 'bolt']);
  });

  it('nothing is said of a set that is not there, nor of pieces without a rule', () => {
    const { job, set } = stack({});
    expect(renewalOfSet(job.state, job.id())).toEqual([]);
    expect(renewalOfSet(job.state, set.id).map((row) => row.piece.what)).toEqual(['spring washer']);
  });
});
