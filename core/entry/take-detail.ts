import { as, has, type Atom } from './atom.ts';
import { takeKeyAsPart } from './take-plug.ts';
import { takeTreatment } from './take-treatment.ts';
import { currentFasteners, describe, pass, peek, use, type State } from './state.ts';
import type { Torque } from './meaning.ts';

/** Values that describe what stands before them: class, torque, amount, ends, pins, stamped number. */
export function takeDetail(state: State, atom: Atom): boolean {
  return (
    takeOfFasteners(state, atom) ||
    takeOfFluid(state, atom) ||
    takeOfPart(state, atom) ||
    takeOfConnection(state, atom) ||
    takeText(state, atom)
  );
}

function takeOfFasteners(state: State, atom: Atom): boolean {
  const grade = as(atom, 'class');
  const torque = as(atom, 'torque');
  const treatment = as(atom, 'treatment');
  if (grade) {
    if ((currentFasteners(state)?.propertyClass ?? null) !== null) pass(state);
    else {
      describe(state, (it) => {
        it.propertyClass = grade.value;
      });
      use(state, 'class');
    }
  } else if (torque) takeTorque(state, torque.torque);
  else if (has(atom, 'by-feel')) {
    takeTorque(state, { value: null, unit: 'Nm', torqueNm: null, angleDeg: null, byFeel: true, stages: [] });
  } else if (treatment) {
    if (!takeTreatment(state, treatment.what)) takeRemark(state);
  } else if (has(atom, 'left-hand')) {
    describe(state, (it) => {
      it.leftHand = true;
    });
    use(state, 'thread');
  } else if (has(atom, 'coarse', 'fine')) takeSeries(state, has(atom, 'fine'));
  else if (has(atom, 'length-word')) {
    use(state, 'length');
    if (has(peek(state), 'colon')) use(state, 'separator');
    state.awaiting = 'length';
  } else if (has(atom, 'across-flats') && state.fresh?.kind === 'fasteners') use(state, 'drive');
  else return false;
  return true;
}

function takeTorque(state: State, torque: Torque): void {
  const item = currentFasteners(state);
  const before = item?.torque ?? null;
  if (before !== null && (before.angleDeg !== null || torque.value !== null)) {
    const next = item && nextStage(state, before, torque);
    if (!next) return pass(state);
    item.torque = next;
    return use(state, 'torque');
  }
  describe(state, (it) => {
    it.torque = before === null ? torque : { ...before, angleDeg: torque.angleDeg };
  });
  use(state, 'torque');
}

/**
 * "20 Nm, 40 Nm, 90°": a further stage behind a comma, "then" or "+". Less than the stage before, or in another unit,
 * it may be something else, so it is nothing.
 */
function nextStage(state: State, before: Torque, more: Torque): Torque | null {
  const { value, unit } = before;
  const led =
    has(peek(state, -1), 'hard', 'plus', 'and') || /^(?:then|plus)$/i.test(peek(state, -1)?.text ?? '');
  if (!led || value === null || before.byFeel || more.byFeel) return null;
  const turned = before.angleDeg !== null || before.stages.some((stage) => stage.endsWith('°'));
  if (more.value !== null && (turned || more.unit !== unit || more.value <= value)) return null;
  const stages = before.stages.length > 0 ? before.stages : stagesOf(before);
  return {
    ...before,
    value: more.value ?? value,
    torqueNm: more.torqueNm ?? before.torqueNm,
    angleDeg: more.angleDeg === null ? before.angleDeg : (before.angleDeg ?? 0) + more.angleDeg,
    stages: [...stages, ...stagesOf({ ...more, unit })],
  };
}

/** A torque and its angle as stages. */
function stagesOf({ value, unit, angleDeg }: Torque): string[] {
  return [...(value === null ? [] : [`${value} ${unit}`]), ...(angleDeg === null ? [] : [`${angleDeg}°`])];
}

/** "M10 fine": one of several pitches, so none; "M10 coarse": the coarse one, said. */
function takeSeries(state: State, fine: boolean): void {
  const thread = currentFasteners(state)?.thread;
  const item = currentFasteners(state);
  if (!item || !thread || thread.system !== 'metric' || !thread.pitchAssumed) return pass(state);
  item.thread = { ...thread, pitchMm: fine ? null : thread.pitchMm, pitchAssumed: false };
  use(state, 'thread');
}

function takeOfFluid(state: State, atom: Atom): boolean {
  const amount = as(atom, 'amount');
  const did = as(atom, 'fluid-did');
  const type = as(atom, 'fluid-type');
  const fluid = state.current?.kind === 'fluid' ? state.current : null;
  if (amount) {
    if (fluid && fluid.amountTyped === null) {
      fluid.amountMl = amount.ml;
      fluid.amountTyped = atom.text;
    } else if (state.amount === null) state.amount = { ml: amount.ml, typed: atom.text };
    else return false;
    use(state, 'amount');
  } else if (did) {
    if (fluid && fluid.did === null && (fluid === state.fresh || state.first)) fluid.did = did.did;
    else if (state.did === null) state.did = did.did;
    else return false;
    use(state, 'fluid');
  } else if (type && fluid && fluid.type === null) {
    fluid.type = type.type;
    use(state, 'fluid');
  } else return false;
  return true;
}

function takeOfPart(state: State, atom: Atom): boolean {
  const part = state.current?.kind === 'part' ? state.current : null;
  const stamped = as(atom, 'stamped');
  const renew = as(atom, 'renew');
  if (stamped && part) {
    part.stamped = stamped.value;
    use(state, 'stamped');
  } else if (renew && (part || currentFasteners(state))) {
    if (part) part.renew = renew.what;
    else {
      describe(state, (it) => {
        it.renew = renew.what;
      });
    }
    use(state, 'renew');
  } else if (has(atom, 'own-place') && !part && takeKeyAsPart(state)) use(state, 'own-place');
  else if (has(atom, 'own-place') && part) {
    part.ownPlace = true;
    use(state, 'own-place');
  } else return false;
  return true;
}

function takeOfConnection(state: State, atom: Atom): boolean {
  const connection = state.current?.kind === 'connection' ? state.current : null;
  const ends = as(atom, 'ends');
  const pins = as(atom, 'pins');
  if (pins && !connection && has(peek(state, 1), 'connection', 'word', 'place')) {
    state.pins = pins.pins;
    use(state, 'connection');
    return true;
  }
  if (!connection) return false;
  if (ends) {
    connection.ends = ends.ends;
    use(state, 'ends');
  } else if (pins) {
    connection.pins = pins.pins;
    use(state, 'connection');
  } else if (has(atom, 'leave-alone')) {
    connection.leaveAlone = true;
    use(state, 'connection');
  } else return false;
  return true;
}

/** Words that are known but that no field holds, and what stands in quotes: a note. */
function takeText(state: State, atom: Atom): boolean {
  const quoted = as(atom, 'quoted');
  if (quoted) {
    state.items.push({ start: atom.start, item: { kind: 'note', text: quoted.text } });
    use(state, 'note');
    return true;
  }
  if (has(atom, 'remark', 'own-place', 'long')) {
    takeRemark(state);
    return true;
  }
  if (has(atom, 'must-come-out') && state.current?.kind === 'temporary') {
    use(state, 'temporary');
    return true;
  }
  return false;
}

function takeRemark(state: State): void {
  const atom = peek(state);
  if (!atom) return;
  state.items.push({ start: atom.start, item: { kind: 'note', text: atom.text } });
  use(state, 'note');
}
