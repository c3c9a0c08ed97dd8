import { nearNames } from '../model/near-names.ts';
import { refuse, type Result } from '../model/result.ts';
import type { JobState } from '../model/tables.ts';
import { removalIdOf } from '../model/thing-words.ts';
import { logOrder } from '../usecases/log/order.ts';

interface Named {
  readonly id: string;
  readonly name: string;
}

function namedThings(state: JobState): Named[] {
  const pick = (rows: readonly { id: string; name: string }[]): Named[] =>
    rows.map(({ id, name }) => ({ id, name }));
  return [
    ...pick(state.part),
    ...pick(state.connection),
    ...pick(state.fluid),
    ...pick(state.temporary),
    ...pick(state.fset),
    ...state.isolation.map(({ id, how }) => ({ id, name: how })),
    ...state.measure.map(({ id, what }) => ({ id, name: what })),
    ...state.ownStep.map(({ id, title }) => ({ id, name: title })),
    ...state.consumable.map(({ id, name }) => ({ id, name })),
    ...state.removal.map(({ id, title }) => ({ id, name: title })),
  ].filter((one) => one.name !== '');
}

/**
 * A thing as typed in a command: its id; "4" = removal 4 of the log; "4/1" = its first set; "4/1/3" = hole 3 of that
 * set; "4/gasket" = by name within a removal; else a name that only one thing has.
 */
export function targetOf(state: JobState, typed: string): Result<string> {
  if (state.thing.some((thing) => thing.id === typed) || state.consumable.some((one) => one.id === typed))
    return { ok: true, value: typed };
  const address = /^(\d+)(?:\/(\d+))?(?:\/(\d+))?$/.exec(typed.trim());
  if (address) return addressed(state, typed, address);
  const within = /^(\d+)\/(.+)$/.exec(typed.trim());
  const owner = within && addressed(state, typed, [typed, within[1]]);
  if (owner && !owner.ok) return owner;
  const word = (within?.[2] ?? typed).trim();
  const low = word.toLowerCase();
  const all = namedThings(state).filter((one) => !owner?.ok || removalIdOf(state, one.id) === owner.value);
  const exact = all.filter((one) => one.name.toLowerCase() === low);
  const alike = exact.length > 0 ? exact : all.filter((one) => one.name.toLowerCase().includes(low));
  // A removal is often called like the part that came off with it; whoever types the name means the part.
  const removals = new Set(state.removal.map((removal) => removal.id));
  const things = alike.filter((one) => !removals.has(one.id));
  const near = things.length > 0 ? things : alike;
  const one = near[0];
  if (one && near.length === 1) return { ok: true, value: one.id };
  const order = logOrder(state.removal).map((row) => row.id);
  const names = near.slice(0, 8).map((item) => {
    const home = removalIdOf(state, item.id);
    return home === null ? `“${item.name}”` : `“${order.indexOf(home) + 1}/${item.name}”`;
  });
  return near.length === 0
    ? refuse(
        'not-found',
        `Expected a removal number, number/set, number/set/hole, a name or an id, got “${typed}”.${nearest(word, all)}`,
      )
    : refuse(
        'input',
        `Expected one thing for “${typed}”, found ${near.length}: ${names.join(', ')}. Put the number of its removal before it, as these do, or use its id.`,
      );
}

function nearest(typed: string, all: readonly Named[]): string {
  const near = nearNames(
    typed,
    all.map(({ name }) => name),
  );
  return near.length === 0 ? '' : ` Nearest: ${near.map((name) => `“${name}”`).join(', ')}.`;
}

function addressed(state: JobState, typed: string, address: readonly (string | undefined)[]): Result<string> {
  const order = logOrder(state.removal);
  const removal = order[Number(address[1]) - 1];
  if (!removal) return refuse('not-found', `Expected a removal from 1 to ${order.length}, got “${typed}”.`);
  if (address[2] === undefined) return { ok: true, value: removal.id };
  const sets = state.fset
    .filter((set) => set.removalId === removal.id)
    .sort((a, b) => (a.ord < b.ord ? -1 : 1));
  const set = sets[Number(address[2]) - 1];
  if (!set)
    return refuse(
      'not-found',
      `Expected a set from 1 to ${sets.length} of removal ${address[1]}, got “${typed}”.`,
    );
  if (address[3] === undefined) return { ok: true, value: set.id };
  const hole = state.position.find((one) => one.setId === set.id && one.n === Number(address[3]));
  return hole
    ? { ok: true, value: hole.id }
    : refuse('not-found', `Expected a hole of that set, got “${typed}”.`);
}

/** A bag as typed: its id, "bag 4", or just "4". */
export function stowOf(state: JobState, typed: string): Result<string> {
  const low = typed.trim().toLowerCase();
  const hit = state.stow.find(
    (stow) =>
      stow.id === typed ||
      (!stow.emptied &&
        (`${stow.kind} ${stow.label}`.toLowerCase() === low || stow.label.toLowerCase() === low)),
  );
  return hit
    ? { ok: true, value: hit.id }
    : refuse('not-found', `Expected a bag, tin, tray or shelf of this workshop, got “${typed}”.`);
}
