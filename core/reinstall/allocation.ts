import type { Row } from '../model/tables.ts';
import type { CountLine } from '../tally/index.ts';
import { promisesOf } from './promised.ts';
import { linesOf } from './lines.ts';
import type { Situation } from './situation.ts';

/** A line of the count that has fewer pieces than holes once all stock is given out. */
export interface ShortLine {
  readonly line: CountLine;
  /** At least 1. */
  readonly lacking: number;
  /** When enough of what is on order will be there; UTC ms, null = unknown. */
  readonly until: number | null;
}

export interface Allocation {
  /** What was promised first, then in list order. */
  readonly short: readonly ShortLine[];
  /** Pieces in hand of each line after promises were kept. */
  readonly have: ReadonlyMap<CountLine, number>;
  readonly keyOf: (line: CountLine) => string | null;
  /** Place in the list of the step of a line. */
  readonly placeOf: (line: CountLine) => number;
}

/**
 * Who gets which pieces. What the user promised comes first, from what is over and then from alike sets, last in the
 * list first; then stock goes to its own set, and what is left over of a pool to short sets in list order. Orders come
 * in on their days in the same turn, to the set they were ordered for first. Never pooled: own-place pieces, pieces of
 * which anything that matters is unknown, and old ones where only new will do.
 */
export function allocate(at: Situation): Allocation {
  const lines = linesOf(at).filter((line) => line.setId !== null);
  const spec = new Map(at.state.spec.map((one) => [one.id, one]));
  const keyOf = (line: CountLine) =>
    line.ownPlace || line.mustBeNew || !line.countKnown
      ? null
      : (spec.get(line.specId ?? '')?.poolKey ?? null);
  const place = new Map<number, number>();
  at.ordered.order.forEach((node, k) => place.set(node, k));
  const placeOf = (line: CountLine) => place.get(at.graph.stepOfThing(line.setId ?? '')) ?? 0;
  const have = new Map(lines.map((line) => [line, line.usable]));
  const promised = keepPromises(at, lines, have, keyOf, placeOf);
  const short = giveOut(lines, have, keyOf)
    .filter(({ lacking }) => lacking > 0)
    .sort((a, b) => placeOf(a.line) - placeOf(b.line));
  return { short, have, keyOf, placeOf };

  function giveOut(
    all: readonly CountLine[],
    stock: ReadonlyMap<CountLine, number>,
    key: (line: CountLine) => string | null,
  ): ShortLine[] {
    const spare = new Map<string, number>();
    for (const line of all) {
      const pool = key(line);
      const extra = (stock.get(line) ?? 0) - (line.toFill ?? 0);
      if (pool !== null && extra > 0) spare.set(pool, (spare.get(pool) ?? 0) + extra);
    }
    const orders = new Orders(at, spec);
    return all
      .filter((line) => (line.toFill ?? 0) > (stock.get(line) ?? 0))
      .sort(
        (a, b) =>
          Number(promised.has(b.setId ?? '')) - Number(promised.has(a.setId ?? '')) ||
          placeOf(a) - placeOf(b),
      )
      .map((line) => {
        const pool = key(line);
        const wanted = (line.toFill ?? 0) - (stock.get(line) ?? 0);
        const fromPool = pool === null ? 0 : Math.min(spare.get(pool) ?? 0, wanted);
        if (pool !== null) spare.set(pool, (spare.get(pool) ?? 0) - fromPool);
        const lacking = wanted - fromPool;
        return { line, lacking, until: lacking > 0 ? orders.forLine(line, pool, lacking) : null };
      });
  }
}

/** Hands pieces over to what was promised; gives the sets that were. */
function keepPromises(
  at: Situation,
  lines: readonly CountLine[],
  have: Map<CountLine, number>,
  keyOf: (line: CountLine) => string | null,
  placeOf: (line: CountLine) => number,
): ReadonlySet<string> {
  const promises = promisesOf(at.state);
  if (promises.length === 0) return new Set();
  const served = new Set(promises.map((one) => one.setId));
  const byPlace = [...lines].sort((a, b) => placeOf(b) - placeOf(a));
  for (const { setId, qty } of promises) {
    for (const line of lines) {
      const key = keyOf(line);
      if (line.setId !== setId || key === null) continue;
      let wanted = Math.min(qty, (line.toFill ?? 0) - (have.get(line) ?? 0));
      const givers = byPlace.filter(
        (other) => other !== line && keyOf(other) === key && !served.has(other.setId ?? ''),
      );
      for (const least of [(other: CountLine) => other.toFill ?? 0, () => 0])
        for (const other of givers) {
          const gives = Math.min(wanted, (have.get(other) ?? 0) - least(other));
          if (gives <= 0) continue;
          wanted -= gives;
          have.set(other, (have.get(other) ?? 0) - gives);
          have.set(line, (have.get(line) ?? 0) + gives);
        }
    }
  }
  return served;
}

interface Order {
  readonly want: Row<'want'>;
  readonly at: number;
  left: number;
}

/** What is on order with a day, taken in turn. */
class Orders {
  private readonly orders: Order[];
  private readonly spec: ReadonlyMap<string, Row<'spec'>>;
  private readonly poolOfSet: ReadonlyMap<string, string | null>;

  constructor(at: Situation, spec: ReadonlyMap<string, Row<'spec'>>) {
    this.spec = spec;
    this.orders = ordersOf(at.state.want);
    this.poolOfSet = new Map(at.state.fset.map((set) => [set.id, spec.get(set.specId)?.poolKey ?? null]));
  }

  /** The day on which the last of so many pieces comes; null where not enough is on order. */
  forLine(line: CountLine, pool: string | null, lacking: number): number | null {
    const own = this.orders.filter(({ want }) => want.thingId === line.setId && this.fits(want, line));
    const alike = this.orders.filter(
      ({ want }) =>
        want.thingId !== line.setId &&
        (want.thingId === null
          ? want.specId !== null &&
            (want.specId === line.specId || (pool !== null && this.poolOf(want.specId) === pool))
          : pool !== null && this.poolOfSet.get(want.thingId) === pool),
    );
    return take([...own, ...alike], lacking);
  }

  private fits(want: Row<'want'>, line: CountLine): boolean {
    if (want.specId === null) return line.main;
    return (
      want.specId === line.specId ||
      (this.poolOf(want.specId) !== null && this.poolOf(want.specId) === this.poolOf(line.specId))
    );
  }

  private poolOf(specId: string | null): string | null {
    return this.spec.get(specId ?? '')?.poolKey ?? null;
  }
}

function ordersOf(wants: readonly Row<'want'>[]): Order[] {
  return wants
    .flatMap((want) =>
      want.state === 'ordered' && want.promisedAt !== null
        ? [{ want, at: want.promisedAt, left: want.qty }]
        : [],
    )
    .sort((a, b) => a.at - b.at);
}

function take(orders: readonly Order[], lacking: number): number | null {
  let left = lacking;
  let latest = 0;
  for (const order of orders) {
    const taken = Math.min(left, order.left);
    if (taken === 0) continue;
    order.left -= taken;
    left -= taken;
    latest = Math.max(latest, order.at);
  }
  return left > 0 ? null : latest;
}

/** The day on which so many of what is on order for one thing will be there; UTC ms, null = unknown. */
export function promisedFor(at: Situation, thingId: string, lacking: number): number | null {
  return take(ordersOf(at.state.want.filter((want) => want.thingId === thingId)), lacking);
}
