import { emptyState, TABLES } from '../../core/model/tables.ts';
import type { JobState, JobTable, Row } from '../../core/model/tables.ts';
import { RemovalBuilder } from './build-removal.ts';
import { rowOf } from './build-rows.ts';

export { RemovalBuilder } from './build-removal.ts';

/**
 * Builds jobs for tests, row by row, in the order of the story: what came off, in what, with what. No clock, no chance:
 * the same calls give the same ids and times. Pieces are booked as the program books them (hole → bag → hole).
 */
export const START = Date.UTC(2026, 2, 2, 8);
const MINUTE = 60_000;

/** Fields of a row that are not left to the builder. */
export type More<T extends JobTable> = Partial<Row<T>>;
type Rows = { -readonly [K in keyof JobState]: JobState[K] extends readonly (infer R)[] ? R[] : JobState[K] };

/** Starts an empty job. */
export function build(more: Partial<Row<'job'>> = {}): JobBuilder {
  return new JobBuilder(more);
}

/** A made-up id that says what it is and which: valid where the program's own ids are. */
export function idOf(kind: number, n: number): string {
  return `${kind.toString(16).padStart(8, '0')}-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
}

const NAMES = Object.keys(TABLES);

export class JobBuilder {
  readonly rows: Rows;
  private readonly counters = new Map<string, number>();
  private now = START;

  constructor(more: Partial<Row<'job'>> = {}) {
    const job: Row<'job'> = {
      id: idOf(NAMES.indexOf('job'), 1),
      title: 'Test machine',
      machine: 'Bench machine',
      ownerId: null,
      complaint: '',
      cause: '',
      correction: '',
      sideNames: { left: 'left', right: 'right', seenFrom: 'the front' },
      earlierJobId: null,
      patternJobId: null,
      phase: 'open',
      recheckDue: null,
      zone: null,
      createdAt: START,
      ...more,
    };
    this.rows = emptyState(job) as Rows;
  }

  /** Adds a row: what is said, and for the rest what a row has of which nothing is recorded. */
  add<T extends JobTable>(table: T, id: string, more: Partial<Row<T>>): Row<T> {
    const row = rowOf(table, id, this.rows.job.id, more);
    (this.rows[table] as Row<T>[]).push(row);
    return row;
  }

  /** The next id of a table. */
  id(table: string): string {
    const n = (this.counters.get(table) ?? 0) + 1;
    this.counters.set(table, n);
    return idOf(NAMES.indexOf(table), n);
  }

  /** The next order key of a table: plain text that sorts as counted. */
  ord(table: string): string {
    const n = this.counters.get(`ord ${table}`) ?? 0;
    this.counters.set(`ord ${table}`, n + 1);
    return `a${n.toString(36).padStart(6, '0')}`;
  }

  /** The time of the story, UTC ms. Every event takes a minute. */
  tickTock(minutes = 1): number {
    this.now += minutes * MINUTE;
    return this.now;
  }

  get at(): number {
    return this.now;
  }

  person(name = 'Ana', more: Partial<Row<'person'>> = {}): string {
    const id = this.id('person');
    this.rows.person.push({ id, name, role: 'works', contact: '', retired: false, ...more });
    return id;
  }

  bag(label = '', more: Partial<Row<'stow'>> = {}): string {
    const id = this.id('stow');
    this.rows.stow.push({
      id,
      kind: 'bag',
      label: label || String(this.rows.stow.length + 1),
      place: '',
      emptied: false,
      ...more,
    });
    return id;
  }

  spec(more: More<'spec'> = {}): string {
    const id = this.id('spec');
    this.add('spec', id, { ...more });
    return id;
  }

  removal(title: string, more: More<'removal'> = {}): RemovalBuilder {
    const id = this.thing('removal');
    const at = this.tickTock();
    this.add('removal', id, {
      ord: this.ord('removal'),
      title,
      typed: title,
      startedAt: at,
      endedAt: at + 10 * MINUTE,
      ...more,
    });
    return new RemovalBuilder(this, id);
  }

  fluid(name: string, opens: readonly string[], more: More<'fluid'> = {}): string {
    const id = this.thing('fluid');
    this.add('fluid', id, { name, typed: name, ...more });
    for (const thingId of opens) this.opens(id, thingId);
    return id;
  }

  opens(fluidId: string, thingId: string): void {
    this.rows.opens.push({ id: this.id('opens'), jobId: this.rows.job.id, fluidId, thingId });
  }

  holds(positionId: string, partId: string): void {
    this.rows.holds.push({ id: this.id('holds'), jobId: this.rows.job.id, positionId, partId });
  }

  ownStep(title: string, more: More<'ownStep'> = {}): string {
    const id = this.thing('own step');
    this.add('ownStep', id, { ord: this.ord('ownStep'), title, ...more });
    return id;
  }

  /** The user's own order: first this, then that. */
  first(beforeId: string, afterId: string): string {
    const id = this.id('backOrder');
    this.rows.backOrder.push({ id, jobId: this.rows.job.id, beforeId, afterId, why: '' });
    return id;
  }

  /** A part that came with no removal: a new one, a kit. */
  part(name: string, more: More<'part'> = {}): string {
    const id = this.thing('part');
    this.add('part', id, { name, typed: name, ...more });
    return id;
  }

  temporary(name: string, more: More<'temporary'> = {}): string {
    const id = this.thing('temporary');
    this.add('temporary', id, { name, typed: name, ...more });
    return id;
  }

  consumable(thingId: string, more: More<'consumable'> = {}): string {
    const id = this.id('consumable');
    this.add('consumable', id, { thingId, ...more });
    return id;
  }

  want(thingId: string | null, state: Row<'want'>['state'], more: More<'want'> = {}): string {
    const id = this.id('want');
    this.add('want', id, { thingId, state, ...more });
    return id;
  }

  away(thingId: string, more: More<'away'> = {}): string {
    const id = this.id('away');
    this.add('away', id, { thingId, since: this.tickTock(), ...more });
    return id;
  }

  counting(expected: number, counted: number, more: More<'counting'> = {}): string {
    const id = this.id('counting');
    this.add('counting', id, { expected, counted, at: this.tickTock(), ...more });
    return id;
  }

  /** One thing done on the way back. */
  deed(thingId: string, what: Row<'deed'>['what'], more: More<'deed'> = {}): this {
    this.add('deed', this.id('deed'), {
      thingId,
      round: this.roundOf(thingId, what),
      what,
      at: this.tickTock(),
      ...more,
    });
    return this;
  }

  /** Coming off again opens the next round, and everything after it belongs to that. */
  private roundOf(thingId: string, what: Row<'deed'>['what']): number {
    const had = this.rows.deed.filter((deed) => deed.thingId === thingId);
    return Math.max(1, ...had.map((deed) => deed.round)) + (what === 'came off again' ? 1 : 0);
  }

  move(more: More<'move'>): string {
    const id = this.id('move');
    this.add('move', id, { at: this.now, ...more });
    return id;
  }

  accept(finding: { readonly key: string; readonly digest: string }, why = 'Seen and agreed.'): void {
    this.add('accepted', this.id('accepted'), {
      finding: finding.key,
      digest: finding.digest,
      why,
      at: this.tickTock(),
    });
  }

  thing(kind: Row<'thing'>['kind']): string {
    const table = kind === 'set' ? 'fset' : kind === 'own step' ? 'ownStep' : kind;
    const id = this.id(table);
    this.rows.thing.push({ id, jobId: this.rows.job.id, kind });
    return id;
  }

  /** Changes a row that is there: what a person would correct. */
  set<T extends JobTable>(table: T, id: string, more: Partial<Row<T>>): this {
    const list = this.rows[table] as unknown as { id: string }[];
    const at = list.findIndex((row) => row.id === id);
    if (at < 0) throw new Error(`No row ${id} in ${table}.`);
    list[at] = { ...list[at], ...more } as { id: string };
    return this;
  }

  /** The job as it stands; later calls do not change it. */
  state(): JobState {
    return Object.fromEntries(
      Object.entries(this.rows).map(([name, rows]) => [name, Array.isArray(rows) ? [...rows] : rows]),
    ) as unknown as JobState;
  }
}
