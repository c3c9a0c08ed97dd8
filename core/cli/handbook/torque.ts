import {
  aircraftTorque,
  classesFor,
  formatTorqueBoth,
  formatTyped,
  fromNewtonMetres,
  fullTorque,
  judgeTorque,
  leastDragNm,
  nutFactor,
  preloadFromTorque,
  PROOF_SHARE,
  referenceTorque,
  refuse,
  sayClass,
  sayHand,
  sayStage,
  showNumber,
  strengthAt,
  torqueFromPreload,
  type FullTorque,
  type Outcome,
  type PropertyClass,
  type ReferenceTorque,
  type Thread,
  type Tightening,
  type TorqueCase,
  type TorqueJudgement,
} from '../../fastening/index.ts';
import { isPlain, kOf, type Parts, plain, poundsForce, scattered, withDrag } from './torque-plain.ts';
import { readAll, TORQUE_OPTIONS, type Read } from './torque-options.ts';
import {
  basisLines,
  missing,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

function runTorque(options: Options): VerbAnswer {
  const opened = readOptions(torque, options);
  if (!opened.ok) return opened;
  const read = readAll(opened.value.get);
  if (!read.ok) return read;
  const input = read.value;
  const alone = isPlain(input);
  if (!input.thread && input.headMm === undefined && !alone)
    return missing('a thread (--thread M8), or a head size (--across-flats 13)');
  if (!input.thread && !input.wanted && !alone)
    return missing('a torque to judge beside the head size (--torque 25 N·m)');
  const parts: Parts = { value: {}, text: [] };
  // The maker's value stands above whatever is reckoned here.
  if (input.wanted) sayWanted(input, input.wanted, parts);
  const refused = input.thread ? reckon(input, input.thread, parts) : alone ? plain(input, parts) : undefined;
  if (refused && !refused.ok) return refused;
  if (input.thread) {
    listed(input.thread, parts);
    parts.value['k'] = kOf(input);
    if (input.cls) parts.value['strength'] = strengthAt(input.thread, input.cls);
  }
  const dragged = input.drag ? withDrag(input, parts) : undefined;
  if (dragged && !dragged.ok) return dragged;
  const known = input.thread !== undefined || input.headMm !== undefined || input.reached !== undefined;
  const findings = known && (input.wanted || input.reached) ? judged(input, parts) : 0;
  return { ok: true, value: parts.value, text: parts.text, ...(findings > 0 ? { findings } : {}) };
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
  const k = kOf(input);
  if (!(k >= 0.05 && k <= 0.5)) return refuse('torque.k', 'a nut factor K from 0.05 to 0.5', k);
  const torqueNm = torqueFromPreload(k, thread.nominalMm, preloadN);
  const basis = {
    formula: 'T = K · d · F',
    inputs: [`K ${showNumber(k)}`, `d ${showNumber(thread.nominalMm)} mm`, `F ${showNumber(preloadN)} N`],
    source: input.k === undefined ? nutFactor(input.lubrication ?? 'as received').source : 'K as given',
    limits: ['K scatters by about 25 to 30 % from bolt to bolt.'],
    cautions: ["Arithmetic, not an instruction: the maker's figure comes first."],
  };
  parts.value['reference'] = {
    torqueNm,
    torqueLbfFt: fromNewtonMetres(torqueNm, 'lbf·ft'),
    torqueLbfIn: fromNewtonMetres(torqueNm, 'lbf·in'),
    preloadN,
    preloadLbf: poundsForce(preloadN),
    k,
    ...basis,
  };
  parts.text.push(`Torque for that preload: ${formatTorqueBoth(torqueNm)}`, ...basisLines(basis));
  return input.scatter === undefined ? undefined : scattered(preloadN, input.scatter, parts);
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
  return input.scatter === undefined ? undefined : scattered(found.value.preloadN, input.scatter, parts);
}

/** What aircraft practice lists for the thread, as another basis: never mixed with the reckoned value. */
function listed(thread: Thread, parts: Parts): void {
  const found = aircraftTorque(thread);
  const drag = leastDragNm(thread);
  if (found) {
    const inchPounds = (torqueNm: number): number =>
      Number(fromNewtonMetres(torqueNm, 'lbf·in').toPrecision(9));
    parts.value['aircraft'] = {
      ...found,
      tensionLbfIn: found.tensionNm.map(inchPounds),
      shearLbfIn: found.shearNm.map(inchPounds),
      mostLbfIn: inchPounds(found.mostNm),
    };
    const range = ([low, high]: readonly [number, number]): string =>
      `${formatTorqueBoth(low)} to ${formatTorqueBoth(high)}`;
    parts.text.push(
      `Listed in ${found.source} (${found.confidence}; plated steel, threads free of oil): tension-type nut ${range(found.tensionNm)}, shear-type nut ${range(found.shearNm)}; never above ${formatTorqueBoth(found.mostNm)}.`,
    );
  }
  if (drag !== undefined) {
    parts.value['leastDragNm'] = drag;
    parts.value['leastDragLbfIn'] = Number(fromNewtonMetres(drag, 'lbf·in').toPrecision(9));
    parts.text.push(
      `A used self-locking nut that drags less than ${formatTorqueBoth(drag)} is replaced (FAA AC 43.13-1B table 7-2).`,
    );
  }
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
  parts.value['reference'] = {
    ...found.value,
    torqueLbfFt: fromNewtonMetres(torqueNm, 'lbf·ft'),
    torqueLbfIn: fromNewtonMetres(torqueNm, 'lbf·in'),
    preloadLbf: poundsForce(preloadN),
  };
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

/** Adds the judgement; answers how many findings are more than a note. */
function judged(input: Read, parts: Parts): number {
  const question: TorqueCase = {
    thread: input.thread?.designation,
    propertyClass: input.cls && sayClass(input.cls).replace('stainless ', ''),
    lubrication: input.lubrication,
    head: input.headMm === undefined ? undefined : { drive: 'hex external', size: input.headMm },
    wanted: input.wanted?.torque,
    wantedHighNm: input.wantedHigh?.torqueNm,
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
  return answer.findings.filter((finding) => finding.severity !== 'note').length;
}

function sayWanted(input: Read, wanted: Tightening, parts: Parts): void {
  const hand = sayHand(wanted.leftHand);
  parts.value['wanted'] = wanted;
  parts.text.push(
    `Wanted${input.maker ? ` by the maker (${input.maker})` : ''}: ${wanted.torque && wanted.stages.length === 1 ? formatTyped(wanted.torque) : wanted.stages.map(sayStage).join(', then ')}`,
    ...(hand ? [hand] : []),
  );
  if (!input.thread || !wanted.torque) return;
  const k = kOf(input);
  const preloadN = preloadFromTorque(k, input.thread.nominalMm, wanted.torque.torqueNm);
  parts.value['preloadN'] = preloadN;
  parts.value['preloadLbf'] = poundsForce(preloadN);
  parts.text.push(
    `Preload from it: about ${showNumber(Number(preloadN.toPrecision(3)))} N with K ${showNumber(k)} (F = T / (K·d)).`,
  );
}

/** `torque`: reference by class, share and lubrication; and the judgement of a given one. */
export const torque: HandbookVerb = {
  name: 'torque',
  says: 'a reference torque, and what speaks against a given one',
  options: TORQUE_OPTIONS,
  word: 'thread',
  run: runTorque,
};
