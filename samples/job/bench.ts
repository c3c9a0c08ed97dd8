import { createRouterClient } from '@orpc/server';
import { v7 } from 'uuid';
import type { JobState, Row, TableName } from '../../core/model/tables.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { makeRouter } from '../../core/usecases/router.ts';

type Reply<T> = { ok: true; value: T } | { ok: false; fault: { sentence: string } };

/** The value of a reply; the sample's own story must never be refused. */
export function must<T>(reply: Reply<T>): T {
  if (!reply.ok) throw new Error(reply.fault.sentence);
  return reply.value;
}

/** A clock that is set to the times of the story and moves on by itself in between. */
export class Clock {
  private ms = 0;
  /** Milliseconds from one look to the next: a deed takes a while. */
  pace = 20_000;

  /** `time`: ISO 8601 with its offset. Never backwards. */
  set(time: string): void {
    const ms = Date.parse(time);
    if (Number.isNaN(ms) || ms < this.ms) throw new Error(`The story goes backwards at ${time}.`);
    this.ms = ms;
  }

  readonly now = (): number => {
    this.ms += this.pace;
    return this.ms;
  };
}

/** One copy of the sample job while it is being made: every change goes by an operation of the contract. */
export class Bench {
  readonly jobId = v7();
  readonly workshop: Workshop;
  readonly clock: Clock;
  private actor: string | null = null;

  /** Added to the number of every bag and tin, since a label is in use once in a workshop. */
  private readonly labelsFrom: number;

  constructor(workshop: Workshop, clock: Clock, labelsFrom = 0) {
    this.labelsFrom = labelsFrom;
    this.workshop = workshop;
    this.clock = clock;
  }

  /** A line with the labels of this copy: "bag 4" is bag 24 in the second. */
  labelled(line: string): string {
    const from = this.labelsFrom;
    if (from === 0) return line;
    return line
      .replace(/\b(bag|tin) (\d+)/g, (_all, kind: string, n: string) => `${kind} ${Number(n) + from}`)
      .replace(/\bshelf ([A-Z])\b/g, (_all, letter: string) => `shelf ${letter}${from}`);
  }

  /** From here on this person works. */
  by(personId: string | null): void {
    this.actor = personId;
  }

  get client() {
    return createRouterClient(makeRouter(), { context: { workshop: this.workshop, actor: this.actor } });
  }

  base() {
    return { command: v7(), jobId: this.jobId };
  }

  state(): JobState {
    const state = this.workshop.job(this.jobId);
    if (!state) throw new Error('The job is not there yet.');
    return state;
  }

  /** A row by its name or title, of the removal with that title where one is said. */
  find<T extends TableName & keyof JobState>(table: T, name: string, removal?: string): Row<T> {
    const removalId = removal === undefined ? undefined : this.find('removal', removal).id;
    const rows = this.state()[table] as unknown as readonly Record<string, unknown>[];
    const fits = rows.filter(
      (row) =>
        [row['name'], row['title'], row['what']].some(
          (text) => typeof text === 'string' && text.toLowerCase() === name.toLowerCase(),
        ) &&
        (removalId === undefined || row['removalId'] === removalId) &&
        row['phase'] !== 'void',
    );
    if (fits.length !== 1) {
      const there = rows.map((row) => row['name'] ?? row['title'] ?? row['what']).join(' | ');
      throw new Error(`Expected one “${name}” in ${table}, found ${fits.length}, of: ${there}`);
    }
    return fits[0] as unknown as Row<T>;
  }

  /** The fastener sets of a removal in order. */
  sets(removal: string): Row<'fset'>[] {
    const { id } = this.find('removal', removal);
    return this.state()
      .fset.filter((set) => set.removalId === id)
      .sort((a, b) => (a.ord < b.ord ? -1 : 1));
  }

  hole(set: Row<'fset'>, n: number): Row<'position'> {
    const hole = this.state().position.find((one) => one.setId === set.id && one.n === n);
    if (!hole) throw new Error(`Expected hole ${n}.`);
    return hole;
  }

  async make(
    table: Parameters<Bench['client']['record']['make']>[0]['table'],
    values: Record<string, unknown>,
  ): Promise<string> {
    return must(await this.client.record.make({ ...this.base(), table, values })).id;
  }

  async change(
    table: Parameters<Bench['client']['record']['change']>[0]['table'],
    id: string,
    values: Record<string, unknown>,
  ): Promise<void> {
    must(await this.client.record.change({ ...this.base(), table, id, values }));
  }
}
