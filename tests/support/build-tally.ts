import { blank } from '../../core/model/blank.ts';
import { emptyState } from '../../core/model/tables.ts';
import type { JobState, JobTable, Row } from '../../core/model/tables.ts';
import { M8, rowOf } from './build-rows.ts';

type Rows = { -readonly [K in keyof JobState]: JobState[K] extends readonly (infer R)[] ? R[] : JobState[K] };
type Move = Row<'move'>;

/** A job written row by row for tests of the counting: no clock, no chance, ids and times that run on. */
export class TallyJob {
  readonly rows: Rows;
  now = 1_000;
  private next = 0;

  constructor() {
    this.rows = emptyState(blank('job', this.id(), '', { title: 'Bench machine' })) as Rows;
  }

  get state(): JobState {
    return this.rows;
  }

  id(): string {
    this.next += 1;
    return `00000000-0000-7000-8000-${this.next.toString(16).padStart(12, '0')}`;
  }

  add<T extends Parameters<typeof blank>[0] & JobTable>(table: T, values: Partial<Row<T>>): Row<T> {
    const row = blank(table, this.id(), this.rows.job.id, values);
    (this.rows[table] as unknown as Row<T>[]).push(row);
    return row;
  }

  bag(label: string): string {
    const row = blank('stow', this.id(), '', { label });
    this.rows.stow.push(row);
    return row.id;
  }

  removal(values: Partial<Row<'removal'>> = {}): string {
    const ord = `a${String(this.rows.removal.length).padStart(5, '0')}`;
    this.now += 1000;
    return this.add('removal', { ord, phase: 'off', startedAt: this.now, endedAt: this.now, ...values }).id;
  }

  /** A specification of which everything that matters is known: M8 × 1.25 × 25, hex 13, 8.8. */
  spec(values: Partial<Row<'spec'>> = {}): string {
    return this.add('spec', { ...M8, lengthUm: 25_000, ...values }).id;
  }

  /** A set with so many holes. Nothing is booked yet. */
  set(holes: number, values: Partial<Row<'fset'>> = {}): { id: string; holes: string[]; specId: string } {
    const removalId = values.removalId ?? this.removal();
    const specId = values.specId ?? this.spec();
    const set = this.add('fset', { ord: `a${this.rows.fset.length}`, ...values, removalId, specId });
    const ids = Array.from({ length: holes }, (_, i) => this.add('position', { setId: set.id, n: i + 1 }).id);
    return { id: set.id, holes: ids, specId };
  }

  change<T extends JobTable>(table: T, id: string, values: Partial<Row<T>>): void {
    const rows = this.rows[table] as unknown as (Row<T> & { id: string })[];
    const at = rows.findIndex((row) => row.id === id);
    rows[at] = { ...(rows[at] as Row<T> & { id: string }), ...values };
  }

  move(values: Partial<Move> & Pick<Move, 'src' | 'dst'>): Move {
    this.now += 1000;
    const row: Move = {
      id: this.id(),
      jobId: this.rows.job.id,
      specId: null,
      homeSetId: null,
      partId: null,
      qty: 1,
      positionId: null,
      srcStowId: null,
      dstStowId: null,
      cause: 'moved',
      countId: null,
      fresh: false,
      at: this.now,
      personId: null,
      ...values,
    };
    this.rows.move.push(row);
    return row;
  }

  cameOff(set: { id: string; specId: string }, qty: number, bag: string | null = null): Move {
    const own = { homeSetId: set.id, specId: set.specId };
    return this.move({ ...own, src: 'hole', dst: 'stow', qty, dstStowId: bag, cause: 'came off' });
  }

  refit(set: { id: string; specId: string }, qty: number, bag: string | null = null, fresh = false): Move {
    const own = { homeSetId: set.id, specId: set.specId, fresh };
    return this.move({
      ...own,
      src: 'stow',
      dst: 'hole',
      qty,
      srcStowId: bag,
      cause: fresh ? 'renewed' : 'refitted',
    });
  }

  buy(set: { id: string; specId: string }, qty: number, bag: string | null = null): Move {
    const own = { homeSetId: set.id, specId: set.specId, fresh: true };
    return this.move({ ...own, src: 'supply', dst: 'stow', qty, dstStowId: bag, cause: 'received' });
  }

  deed(thingId: string, what: Row<'deed'>['what'], values: Partial<Row<'deed'>> = {}): void {
    this.now += 1000;
    this.rows.deed.push(
      rowOf('deed', this.id(), this.rows.job.id, { thingId, round: 1, what, at: this.now, ...values }),
    );
  }

  counted(values: Partial<Row<'counting'>> & Pick<Row<'counting'>, 'expected' | 'counted'>): Row<'counting'> {
    this.now += 1000;
    const row = rowOf('counting', this.id(), this.rows.job.id, { at: this.now, ...values });
    this.rows.counting.push(row);
    return row;
  }
}
