import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { type Finding, type Plan, planJob } from '../../core/reinstall/index.ts';
import type { JobState } from '../../core/model/tables.ts';
import { openWorkshop, type Workshop } from '../../core/store/workshop.ts';
import type { PlainTable } from '../../core/contract/record.ts';
import { clientOf, command, good, named, stateOf } from '../support/client.ts';

/**
 * Jobs as somebody would log them, through the same operations as the screens and the command line. Numbered chance:
 * the same seed gives the same job.
 */
export type Chance = () => number;

/** Mulberry32 (public domain, from memory): small, even enough for choosing. */
export function chance(seed: number): Chance {
  let a = (seed * 2_654_435_761) | 0;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const whole = (rnd: Chance, below: number): number => Math.floor(rnd() * below);
export function pick<T>(rnd: Chance, list: readonly T[]): T {
  const one = list[whole(rnd, list.length)];
  if (one === undefined) throw new Error('Expected something to choose from.');
  return one;
}
export function shuffled<T>(rnd: Chance, list: readonly T[]): T[] {
  return list
    .map((one) => ({ one, at: rnd() }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);
}

/** A workshop on disk whose clock the test moves; one second goes by at each look. */
export function openYard(): { workshop: Workshop; wait: (minutes: number) => void; close: () => void } {
  const dir = mkdtempSync(join(tmpdir(), 'everybolt-story-'));
  let at = Date.UTC(2026, 8, 1);
  const now = () => {
    at += 1000;
    return at;
  };
  const opened = openWorkshop(dir, { write: true, unsafeFast: true, now });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  const workshop = opened.value;
  return {
    workshop,
    wait: (minutes) => {
      at += minutes * 60_000;
    },
    close: () => {
      workshop.close();
      rmSync(dir, { recursive: true, force: true });
    },
  };
}
export type Yard = ReturnType<typeof openYard>;

type Reply = { ok: true; value: unknown } | { ok: false; fault: { sentence: string } };
export interface TickMore {
  readonly valueTyped?: string;
  readonly known?: 'read' | 'ticked';
  readonly fresh?: boolean;
  readonly withThingId?: string;
  readonly withSpecId?: string;
}
type What = Parameters<ReturnType<typeof clientOf>['tick']['do']>[0]['what'];

/** One job in a yard, and everything that a script can do to it. */
export class Story {
  readonly yard: Yard;
  readonly client: ReturnType<typeof clientOf>;
  readonly jobId = v7();
  /** What was said and done, to tell a failure by. */
  readonly told: string[] = [];
  /** Holes into which something else went than belongs there, by its specification. */
  readonly wrong = new Map<string, string>();

  constructor(yard: Yard) {
    this.yard = yard;
    this.client = clientOf(yard.workshop);
  }

  private get base() {
    return { ...command(), jobId: this.jobId };
  }

  async begin(): Promise<this> {
    good(await this.client.jobs.add({ ...command(), id: this.jobId, title: 'Invented machine' }));
    return this;
  }

  /** Logs lines into one removal: the first opens it. Gives its id. */
  async off(...lines: readonly string[]): Promise<string> {
    let removalId: string | null = null;
    for (const text of lines) {
      this.told.push(`log ${text}`);
      const logged: { removalId: string } = good(
        await this.client.log.add({ ...this.base, text, removalId }),
      );
      removalId = logged.removalId;
    }
    return removalId ?? '';
  }

  get state(): JobState {
    const state = stateOf(this.yard.workshop, this.jobId);
    if (this.wrong.size === 0) return state;
    const went = (holeId: string | null): string | undefined => this.wrong.get(holeId ?? '');
    return {
      ...state,
      deed: state.deed.map((one) => ({ ...one, withSpecId: went(one.thingId) ?? one.withSpecId })),
      move: state.move.map((one) =>
        one.dst === 'hole' ? { ...one, specId: went(one.positionId) ?? one.specId } : one,
      ),
    };
  }

  plan(): Plan {
    return planJob(this.state, this.yard.workshop.now());
  }

  async make(table: PlainTable, values: Record<string, unknown>): Promise<string> {
    const made: { id: string } = good(await this.client.record.make({ ...this.base, table, values }));
    return made.id;
  }

  tryMake(table: PlainTable, values: Record<string, unknown>): Promise<Reply> {
    return this.client.record.make({ ...this.base, table, values });
  }

  async change(table: PlainTable, id: string, values: Record<string, unknown>): Promise<void> {
    good(await this.client.record.change({ ...this.base, table, id, values }));
  }

  part(removalId: string, name: string): string {
    return named(
      this.state.part.filter((part) => part.removalId === removalId),
      name,
    ).id;
  }

  set(removalId: string) {
    const set = this.state.fset.find((one) => one.removalId === removalId);
    if (!set) throw new Error('Expected a set in this removal.');
    return set;
  }

  holes(removalId: string): string[] {
    const sets = new Set(this.state.fset.filter((set) => set.removalId === removalId).map((set) => set.id));
    return this.state.position
      .filter((hole) => sets.has(hole.setId))
      .sort((a, b) => (a.setId < b.setId ? -1 : a.setId > b.setId ? 1 : a.n - b.n))
      .map((hole) => hole.id);
  }

  async receive(thingId: string, qty = 1): Promise<void> {
    good(await this.client.piece.receive({ ...this.base, thingId, qty, stowId: null }));
  }

  async tick(thingIds: readonly string[], what: What, more: TickMore = {}): Promise<Reply> {
    const reply = await this.client.tick.do({ ...this.base, thingIds: [...thingIds], what, ...more });
    this.told.push(
      `${what} ${thingIds.map((id) => this.nameOf(id)).join(', ')} ${JSON.stringify(more)}${reply.ok ? '' : ` → refused: ${reply.fault.sentence}`}`,
    );
    return reply;
  }

  async count(stowId: string, counted: number) {
    return good(await this.client.piece.count({ ...this.base, stowId, counted }));
  }

  close(): Promise<Reply> {
    return this.client.jobs.close({ ...this.base, phase: 'closed', recheckDue: null });
  }

  nameOf(id: string): string {
    const { state } = this;
    const tables = ['part', 'connection', 'fluid', 'temporary', 'measure', 'fset'] as const;
    for (const table of tables) {
      const row = (state[table] as readonly { id: string; name?: string; what?: string }[]).find(
        (one) => one.id === id,
      );
      if (row) return `${table} ${row.name ?? row.what ?? ''}`;
    }
    const hole = state.position.find((one) => one.id === id);
    if (hole) return `hole ${hole.n}`;
    return state.removal.find((one) => one.id === id)?.title ?? id;
  }
}

/** Findings that a clean job must not have. */
export function troubles(plan: Plan): Finding[] {
  return plan.findings.filter((one) => one.severity !== 'note' && one.accepted === null);
}
