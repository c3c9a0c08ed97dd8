import {
  classesFor,
  convert,
  findThread,
  formatTorqueBoth,
  fullTorque,
  judgeTorque,
  nutFactor,
  parseClass,
  parseDecimal,
  parseLength,
  parseLubrication,
  parseStages,
  preloadFromTorque,
  PROOF_SHARE,
  referenceTorque,
  refuse,
  sayClass,
  sayHand,
  sayStage,
  showNumber,
  formatTyped,
  torqueFromPreload,
  type FullTorque,
  type Lubrication,
  type Outcome,
  type PropertyClass,
  type ReferenceTorque,
  type Thread,
  type Tightening,
  type TorqueCase,
  type TorqueJudgement,
} from '../../fastening/index.ts';
import {
  basisLines,
  missing,
  optional,
  parsePercent,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  { name: 'thread', also: ['t'], says: 'M8, M10x1.25, 5/16-18' },
  { name: 'class', also: ['c', 'grade'], says: '8.8, 10.9, grade 5, A2-70; left out: unknown' },
  { name: 'lubrication', also: ['lube'], says: 'dry, black, zinc, oiled, greased, moly, low-friction' },
  { name: 'k', also: ['K'], says: 'nut factor, instead of the lubrication: 0.2' },
  { name: 'share', says: 'share of proof load: 75 %' },
  { name: 'mu', also: ['mu-total', 'friction'], says: 'friction for the fuller metric formula: 0.12' },
  { name: 'mu-head', says: 'friction under the head, where it differs' },
  { name: 'preload', also: ['force'], says: 'preload instead of a share: 25230 N, 25 kN, 5853 lbf' },
  { name: 'torque', also: ['wanted'], says: 'torque to judge: 25 N·m, 18 lbf·ft, 20 N·m + 90°' },
  { name: 'reached', says: 'torque reached, against --torque' },
  { name: 'across-flats', also: ['af', 'head'], says: 'head size where the thread is unknown: 13' },
  { name: 'maker', also: ['page'], says: "page of the maker's manual that gives the torque" },
];

interface Read {
  readonly thread: Thread | undefined;
  readonly cls: PropertyClass | undefined;
  readonly lubrication: Lubrication | undefined;
  readonly k: number | undefined;
  readonly share: number | undefined;
  readonly mu: number | undefined;
  readonly muHead: number | undefined;
  readonly preloadN: number | undefined;
  readonly wanted: Tightening | undefined;
  readonly reached: Tightening | undefined;
  readonly headMm: number | undefined;
  readonly maker: string | undefined;
}

function parseForce(text: string): Outcome<number> {
  const parts = /^([\d.,\s]*\d)\s*(N|kN|lbf?|kip|kgf)?$/i.exec(text.trim());
  const number = parts && parseDecimal(parts[1] ?? '');
  if (!parts || !number?.ok)
    return refuse('torque.preload', 'a preload such as 25 kN or 5853 lbf', text.trim());
  const unit = (parts[2] ?? 'N').replace(/^lb$/i, 'lbf');
  return convert(number.value, unit, 'N');
}

function readAll(get: (name: string) => string | undefined): Outcome<Read> {
  const thread = optional(get('thread'), findThread);
  const cls = optional(get('class'), parseClass);
  const lubrication = optional(get('lubrication'), parseLubrication);
  const [k, mu, muHead] = ['k', 'mu', 'mu-head'].map((name) => optional(get(name), parseDecimal));
  const share = optional(get('share'), parsePercent);
  const preload = optional(get('preload'), parseForce);
  const wanted = optional(get('torque'), (text) => parseStages(text));
  const reached = optional(get('reached'), (text) => parseStages(text));
  const head = optional(get('across-flats'), (text) => parseLength(text));
  if (!thread.ok) return thread;
  if (!cls.ok) return cls;
  if (!lubrication.ok) return lubrication;
  if (!k?.ok) return k ?? missing('a nut factor');
  if (!mu?.ok) return mu ?? missing('a friction');
  if (!muHead?.ok) return muHead ?? missing('a friction');
  if (!share.ok) return share;
  if (!preload.ok) return preload;
  if (!wanted.ok) return wanted;
  if (!reached.ok) return reached;
  if (!head.ok) return head;
  return {
    ok: true,
    value: {
      thread: thread.value,
      cls: cls.value,
      lubrication: lubrication.value,
      k: k.value,
      share: share.value,
      mu: mu.value,
      muHead: muHead.value,
      preloadN: preload.value,
      wanted: wanted.value,
      reached: reached.value,
      headMm: head.value?.lengthMm,
      maker: get('maker'),
    },
  };
}

interface Parts {
  value: Record<string, unknown>;
  text: string[];
}

function runTorque(options: Options): VerbAnswer {
  const opened = readOptions(torque, options);
  if (!opened.ok) return opened;
  const read = readAll(opened.value.get);
  if (!read.ok) return read;
  const input = read.value;
  if (!input.thread && input.headMm === undefined)
    return missing('a thread (--thread M8), or a head size (--across-flats 13)');
  if (!input.thread && !input.wanted)
    return missing('a torque to judge beside the head size (--torque 25 N·m)');
  const parts: Parts = { value: {}, text: [] };
  // The maker's value stands above whatever is reckoned here.
  if (input.wanted) sayWanted(input, input.wanted, parts);
  const refused = input.thread ? reckon(input, input.thread, parts) : undefined;
  if (refused && !refused.ok) return refused;
  if (input.wanted || input.reached) judged(input, parts);
  return { ok: true, value: parts.value, text: parts.text };
}

function reckon(input: Read, thread: Thread, parts: Parts): Outcome<unknown> | undefined {
  if (input.preloadN !== undefined) return fromPreload(input, thread, input.preloadN, parts);
  if (input.mu !== undefined) return full(input, thread, input.mu, parts);
  if (input.cls) return reference(input, thread, input.cls, parts);
  if (!input.wanted && !input.reached) return everyClass(input, thread, parts);
  return undefined;
}

function fromPreload(
  input: Read,
  thread: Thread,
  preloadN: number,
  parts: Parts,
): Outcome<unknown> | undefined {
  const k = input.k ?? nutFactor(input.lubrication ?? 'as received').k;
  if (!(k >= 0.05 && k <= 0.5)) return refuse('torque.k', 'a nut factor K from 0.05 to 0.5', k);
  const torqueNm = torqueFromPreload(k, thread.nominalMm, preloadN);
  const basis = {
    formula: 'T = K · d · F',
    inputs: [`K ${showNumber(k)}`, `d ${showNumber(thread.nominalMm)} mm`, `F ${showNumber(preloadN)} N`],
    source: input.k === undefined ? nutFactor(input.lubrication ?? 'as received').source : 'K as given',
    limits: ['K scatters by about 25 to 30 % from bolt to bolt.'],
    cautions: ["Arithmetic, not an instruction: the maker's figure comes first."],
  };
  parts.value['reference'] = { torqueNm, preloadN, k, ...basis };
  parts.text.push(`Torque for that preload: ${formatTorqueBoth(torqueNm)}`, ...basisLines(basis));
  return undefined;
}

function full(input: Read, thread: Thread, mu: number, parts: Parts): Outcome<unknown> | undefined {
  if (!input.cls) return missing('a class beside the friction (--class 8.8)');
  const found: Outcome<FullTorque> = fullTorque({
    thread,
    propertyClass: input.cls,
    threadFriction: mu,
    headFriction: input.muHead,
    utilisation: input.share,
  });
  if (!found.ok) return found;
  parts.value['full'] = found.value;
  parts.text.push(
    `Reference by the fuller formula: ${formatTorqueBoth(found.value.torqueNm)}, preload ${showNumber(Math.round(found.value.preloadN))} N`,
    ...basisLines(found.value),
  );
  return undefined;
}

function reference(
  input: Read,
  thread: Thread,
  cls: PropertyClass,
  parts: Parts,
): Outcome<unknown> | undefined {
  const found: Outcome<ReferenceTorque> = referenceTorque({
    thread,
    propertyClass: cls,
    lubrication: input.lubrication,
    k: input.k,
    share: input.share,
  });
  if (!found.ok) {
    // Stainless: the answer is that it is unknown, not that the question was wrong.
    if (found.code !== 'torque.unknown') return found;
    parts.value['unknown'] = found.sentence;
    parts.text.push(found.sentence);
    return undefined;
  }
  const { torqueNm, preloadN, proofTorqueNm } = found.value;
  parts.value['reference'] = found.value;
  parts.text.push(
    `Reference: ${formatTorqueBoth(torqueNm)}, preload ${showNumber(Math.round(preloadN))} N`,
    `Proof load is reached near ${formatTorqueBoth(proofTorqueNm)} at the lowest K that fits.`,
    ...basisLines(found.value),
  );
  return undefined;
}

function everyClass(input: Read, thread: Thread, parts: Parts): Outcome<unknown> | undefined {
  const rows = classesFor(thread).map((cls) => ({
    cls,
    found: referenceTorque({
      thread,
      propertyClass: cls,
      lubrication: input.lubrication,
      k: input.k,
      share: input.share,
    }),
  }));
  const first = rows[0]?.found;
  if (!first) return refuse('torque.class-size', 'a thread whose classes are listed', thread.designation);
  if (!first.ok) return first;
  parts.value['byClass'] = rows.map(({ cls, found }) => ({
    class: cls.name,
    ...(found.ok ? found.value : {}),
  }));
  parts.text.push(
    'The class is unknown; by class it would be:',
    ...rows.map(({ cls, found }) =>
      found.ok ? `${sayClass(cls)}: ${formatTorqueBoth(found.value.torqueNm)}` : '',
    ),
    ...basisLines({
      ...first.value,
      inputs: [thread.designation, `${showNumber((input.share ?? PROOF_SHARE) * 100)} % of proof`],
    }),
  );
  return undefined;
}

function judged(input: Read, parts: Parts): void {
  const question: TorqueCase = {
    thread: input.thread?.designation,
    propertyClass: input.cls && sayClass(input.cls).replace('stainless ', ''),
    lubrication: input.lubrication,
    head: input.headMm === undefined ? undefined : { drive: 'hex external', size: input.headMm },
    wanted: input.wanted?.torque,
    reached: input.reached?.torque,
    thenAngle: input.wanted?.thenAngle,
    makerPage: input.maker,
  };
  const answer: TorqueJudgement = judgeTorque(question);
  Object.assign(parts.value, answer);
  parts.text.push(
    ...answer.findings.map((finding) => `${finding.code} (${finding.severity}): ${finding.sentence}`),
    ...(answer.findings.length === 0 ? ['Nothing speaks against it.'] : []),
    ...answer.unknowns.map((unknown) => `Unknown: ${unknown}`),
    "Caution: the maker's figure comes first; the weak member may be the casting, a hollow bolt or a thin nut, and that is unknown here.",
  );
}

function sayWanted(input: Read, wanted: Tightening, parts: Parts): void {
  const hand = sayHand(wanted.leftHand);
  parts.value['wanted'] = wanted;
  parts.text.push(
    `Wanted${input.maker ? ` by the maker (${input.maker})` : ''}: ${wanted.torque && wanted.stages.length === 1 ? formatTyped(wanted.torque) : wanted.stages.map(sayStage).join(', then ')}`,
    ...(hand ? [hand] : []),
  );
  if (!input.thread || !wanted.torque) return;
  const k = input.k ?? nutFactor(input.lubrication ?? 'as received').k;
  const preloadN = preloadFromTorque(k, input.thread.nominalMm, wanted.torque.torqueNm);
  parts.value['preloadN'] = preloadN;
  parts.text.push(
    `Preload from it: about ${showNumber(Number(preloadN.toPrecision(3)))} N with K ${showNumber(k)} (F = T / (K·d)).`,
  );
}

/** `torque`: reference by class, share and lubrication; and the judgement of a given one. */
export const torque: HandbookVerb = {
  name: 'torque',
  says: 'a reference torque, and what speaks against a given one',
  options: OPTIONS,
  run: runTorque,
};
