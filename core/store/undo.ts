import { isDeepStrictEqual } from 'node:util';
import type { Database } from 'better-sqlite3';
import { ok, type Result, refuse } from '../model/result.ts';
import type { Row, TableName } from '../model/tables.ts';
import type { Command, Committed, Committer } from './commit.ts';
import type { Change, Entry, Payload } from './journal.ts';

/** What one press of undo takes back: one command, or one import. */
interface Unit {
  readonly seqs: number[];
  readonly batch: string | null;
  readonly what: string;
}

export interface Stacks {
  readonly undo: readonly Unit[];
  readonly redo: readonly Unit[];
}

type Brief = Pick<Entry, 'seq' | 'what' | 'undoes' | 'batch'>;

/** Rebuilds the stacks of one actor in one chain from the journal; nothing else is kept. */
function stacksOf(entries: Iterable<Brief>): Stacks {
  const undo: Unit[] = [];
  const redo: Unit[] = [];
  for (const entry of entries) {
    const undoes = JSON.parse(entry.undoes) as number[];
    if (entry.what === 'undo') {
      const unit = undo.pop();
      redo.push({ seqs: [entry.seq], batch: null, what: unit?.what ?? '' });
    } else if (entry.what === 'redo') {
      const unit = redo.pop();
      undo.push({ seqs: [entry.seq], batch: null, what: unit?.what ?? '' });
    } else if (undoes.length === 0) {
      redo.length = 0;
      const top = undo.at(-1);
      if (top && entry.batch !== null && top.batch === entry.batch) top.seqs.push(entry.seq);
      else undo.push({ seqs: [entry.seq], batch: entry.batch, what: entry.what });
    }
  }
  return { undo, redo };
}

/** Several payloads as one: first state before, last state after, per row. */
function netChanges(payloads: readonly Payload[]): Map<string, Change> {
  const net = new Map<string, Change>();
  for (const payload of payloads)
    for (const change of payload.changes) {
      const key = `${change.table}/${change.id}`;
      const known = net.get(key);
      net.set(key, known ? { ...change, before: known.before } : change);
    }
  return net;
}

const same = (a: unknown, b: unknown): boolean => isDeepStrictEqual(a, b);

/** Undo and redo: each a new entry, a stack per actor and chain, and only while every row is as it was left. */
export class History {
  private readonly db: Database;
  private readonly committer: Committer;

  constructor(db: Database, committer: Committer) {
    this.db = db;
    this.committer = committer;
  }

  /** What can be undone and redone by this actor in this chain. */
  stacks(chain: string, actor: string): Stacks {
    const rows = this.db
      .prepare('SELECT seq, what, undoes, batch FROM journal WHERE chain = ? AND actor = ? ORDER BY seq')
      .all(chain, actor) as Brief[];
    return stacksOf(rows);
  }

  undo(command: Omit<Command, 'what' | 'undoes'>): Result<Committed<{ what: string }>> {
    return this.turnBack({ ...command, what: 'undo' });
  }

  redo(command: Omit<Command, 'what' | 'undoes'>): Result<Committed<{ what: string }>> {
    return this.turnBack({ ...command, what: 'redo' });
  }

  private turnBack(command: Command & { what: string }): Result<Committed<{ what: string }>> {
    const done = this.db.prepare('SELECT seq, reply FROM journal WHERE command = ?').get(command.id) as
      | { seq: number; reply: string }
      | undefined;
    if (done)
      return ok({
        seq: done.seq,
        value: JSON.parse(done.reply) as { what: string },
        changes: [],
        repeated: true,
      });
    const stacks = this.stacks(command.chain, command.actor);
    const unit = (command.what === 'undo' ? stacks.undo : stacks.redo).at(-1);
    if (!unit) return refuse('refused', `There is nothing to ${command.what}.`);
    const sealed = this.signedAfter(command.chain, unit.seqs[0] ?? 0);
    if (sealed) return refuse('refused', 'This was signed off. What comes before a sign-off stays as it is.');
    const net = netChanges(unit.seqs.map((seq) => this.payload(seq)));
    return this.committer.commit<{ what: string }>({ ...command, undoes: unit.seqs }, (writer) => {
      for (const change of net.values()) {
        if (!same(writer.get(change.table, change.id), change.after))
          return refuse('conflict', this.sinceThen(change, unit.seqs.at(-1) ?? 0));
      }
      for (const change of net.values()) {
        if (change.before) writer.put(change.table, change.before as Row<TableName>);
        // The facts of a file stay: another job may use it by now, and the file itself is never thrown away.
        else if (change.table === 'original') continue;
        else writer.remove(change.table, change.id);
      }
      return ok({ what: unit.what });
    });
  }

  private payload(seq: number): Payload {
    const text = this.db.prepare('SELECT payload FROM journal WHERE seq = ?').pluck().get(seq) as string;
    return JSON.parse(text) as Payload;
  }

  private signedAfter(chain: string, seq: number): boolean {
    return (
      this.db
        .prepare(`SELECT 1 FROM journal WHERE chain = ? AND seq > ? AND what = 'signoff.add' LIMIT 1`)
        .get(chain, seq) !== undefined
    );
  }

  /** Says who changed the row since, so that the reader knows what to undo first. */
  private sinceThen(change: Change, after: number): string {
    const later = this.db
      .prepare(
        'SELECT actor, at, what FROM journal WHERE seq > ? AND instr(payload, ?) > 0 ORDER BY seq DESC LIMIT 1',
      )
      .get(after, change.id) as { actor: string; at: number; what: string } | undefined;
    const name = later
      ? ((this.db.prepare('SELECT name FROM person WHERE id = ?').pluck().get(later.actor) as
          | string
          | undefined) ?? 'someone')
      : 'someone';
    const time = later ? ` (${new Date(later.at).toISOString().slice(11, 16)} UTC)` : '';
    return `Since then ${name} changed ${nameOf(change)}${time}. Undo that first.`;
  }
}

function nameOf(change: Change): string {
  const row = (change.after ?? change.before) as Record<string, unknown> | null;
  if (change.table === 'position') return `hole ${String(row?.['n'])}`;
  const named = row?.['name'] ?? row?.['title'] ?? row?.['label'];
  return typeof named === 'string' && named !== '' ? `“${named}”` : `this ${change.table}`;
}
