import type { Row } from '../../core/model/tables.ts';
import type { JobBuilder, More } from './build.ts';

/** One fastener set with its holes. */
interface BuiltSet {
  readonly id: string;
  readonly specId: string;
  readonly stowId: string | null;
  readonly holes: readonly string[];
}

export class RemovalBuilder {
  readonly job: JobBuilder;
  readonly id: string;

  constructor(job: JobBuilder, id: string) {
    this.job = job;
    this.id = id;
  }

  part(name: string, more: More<'part'> = {}): string {
    const { job } = this;
    const id = job.thing('part');
    const row = job.add('part', id, { removalId: this.id, name, typed: name, how: 'off', ...more });
    if (row.how === 'off') {
      job.move({ partId: id, qty: Math.max(1, row.qty), src: 'hole', dst: 'stow', dstStowId: row.stowId });
    }
    return id;
  }

  /** Holes and their fasteners, booked out into their bag unless they were only slackened. */
  set(count: number, more: More<'fset'> = {}, spec: More<'spec'> = {}): BuiltSet {
    const { job } = this;
    const id = job.thing('set');
    const specId = more.specId ?? job.spec(spec);
    const row = job.add('fset', id, { removalId: this.id, specId, ord: job.ord('fset'), ...more });
    const holes = Array.from({ length: count }, (_, i) => this.hole(id, i + 1));
    if (row.how === 'out') {
      for (const positionId of holes) {
        job.move({ specId, homeSetId: id, positionId, src: 'hole', dst: 'stow', dstStowId: row.stowId });
      }
    }
    return { id, specId, stowId: row.stowId, holes };
  }

  private hole(setId: string, n: number): string {
    const { job } = this;
    const id = job.thing('position');
    job.add('position', id, { setId, n });
    return id;
  }

  connection(name: string, more: More<'connection'> = {}): string {
    const id = this.job.thing('connection');
    this.job.add('connection', id, { removalId: this.id, name, typed: name, ...more });
    return id;
  }

  isolation(energy: Row<'isolation'>['energy'], more: More<'isolation'> = {}): string {
    const id = this.job.thing('isolation');
    this.job.add('isolation', id, { removalId: this.id, energy, ...more });
    return id;
  }

  /** An isolation that protects these removals and no others. */
  protects(isolationId: string, ...removals: readonly RemovalBuilder[]): this {
    for (const removal of removals) {
      this.job.add('protects', this.job.id('protects'), { isolationId, removalId: removal.id });
    }
    return this;
  }

  temporary(name: string, role: Row<'temporary'>['role'], more: More<'temporary'> = {}): string {
    return this.job.temporary(name, { removalId: this.id, role, ...more });
  }

  measure(what: string, more: More<'measure'> = {}): string {
    const id = this.job.thing('measure');
    this.job.add('measure', id, { removalId: this.id, what, ...more });
    return id;
  }

  mark(body: string, more: More<'mark'> = {}): string {
    const id = this.job.thing('mark');
    this.job.add('mark', id, { removalId: this.id, body, ...more });
    return id;
  }

  action(what: string, thingId: string | null = null): this {
    this.job.add('action', this.job.id('action'), {
      removalId: this.id,
      ord: this.job.ord('action'),
      what,
      thingId,
    });
    return this;
  }

  /** Confirmed unless said: a stored need on an earlier removal. */
  needs(...others: readonly RemovalBuilder[]): this {
    for (const other of others) this.need(other, true);
    return this;
  }

  need(other: RemovalBuilder, confirmed: boolean): this {
    this.job.add('need', this.job.id('need'), { removalId: this.id, needsId: other.id, confirmed });
    return this;
  }

  /** Changes the removal itself: phase, bench, place, whether the default need was loosened. */
  with(more: More<'removal'>): this {
    this.job.set('removal', this.id, more);
    return this;
  }

  /** The default need on the one before is loosened. */
  loose(): this {
    return this.with({ defaultNeed: 'loosened' });
  }
}
