import fc from 'fast-check';
import { v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { JobState } from '../../core/model/tables.ts';
import { planJob } from '../../core/reinstall/index.ts';
import { checkDatabase } from '../../core/store/check.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { balances, bookDifference, countLines, moveProblems } from '../../core/tally/index.ts';
import { jobExport, jobImport } from '../../core/usecases/job-file.ts';
import { clientOf, command, logJob, stateOf, type TestClient } from '../support/client.ts';
import { READY_JOBS } from '../support/jobs.ts';
import { newWorkshop } from '../support/workshop.ts';

/**
 * Long random histories of the operations that a screen or a script can send, refusals included, with undo in between.
 * Numbers pick from what is there, so that most of them mean something.
 */
interface Step {
  readonly kind: (typeof KINDS)[number];
  readonly a: number;
  readonly b: number;
}
const KINDS = [
  'log',
  'log more',
  'started',
  'tightened',
  'fitted',
  'done',
  'again',
  'count',
  'found',
  'gone',
  'tray',
  'lost',
  'receive',
  'scrap',
  'send',
  'back',
  'lengths',
  'stow',
  'holes',
  'take out',
  'title',
  'need',
  'reorder',
  'split',
  'merge',
  'repeat',
  'begin',
  'void',
  'remove',
  'accept',
  'undo',
  'redo',
] as const;

const LINES = READY_JOBS.flatMap((job) => job.lines.map((line) => line.replace(/^\+\s*/, '')));
const pick = <T>(rows: readonly T[], n: number): T | undefined => rows[n % Math.max(1, rows.length)];

const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom(...KINDS, 'log', 'log', 'tightened', 'undo'),
  a: fc.nat(10_000),
  b: fc.nat(10_000),
}) as fc.Arbitrary<Step>;

type Sent = Promise<{ ok: boolean }> | null;

function sendLog(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const text = pick(LINES, a) ?? '5 13';
  const removalId = kind === 'log more' ? (pick(state.removal, b)?.id ?? null) : null;
  return client.log.add({ ...command(), jobId, text, removalId });
}

function sendTick(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const base = { ...command(), jobId };
  const thing = pick<{ id: string }>(b % 2 === 0 ? state.thing : state.removal, a);
  if (!thing) return null;
  if (kind === 'again') return client.tick.again({ ...base, thingId: thing.id, why: 'it leaked' });
  return client.tick.do({ ...base, thingIds: [thing.id], what: kind as 'tightened' });
}

function sendPiece(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const base = { ...command(), jobId };
  const home = pick([...state.fset, ...state.part], a);
  const search = pick(
    state.counting.filter((row) => row.ended === null),
    a,
  );
  const stow = pick(state.stow, a);
  const away = pick(state.away, a);
  if (kind === 'count')
    return stow ? client.piece.count({ ...base, stowId: stow.id, counted: b % 12 }) : null;
  if (kind === 'found')
    return search ? client.piece.found({ ...base, countingId: search.id, where: 'bench' }) : null;
  if (kind === 'gone')
    return search ? client.piece.gone({ ...base, countingId: search.id, why: 'looked twice' }) : null;
  if (kind === 'back') return away ? client.away.back({ ...base, awayId: away.id }) : null;
  if (!home) return null;
  if (kind === 'receive')
    return client.piece.receive({ ...base, thingId: home.id, qty: 1 + (b % 4), stowId: null });
  if (kind === 'send')
    return client.away.send({ ...base, thingId: home.id, toWhom: 'machinist', due: null, note: '' });
  return client.piece.scrap({
    ...base,
    thingId: home.id,
    qty: 1 + (b % 3),
    to: b % 2 ? 'scrap' : 'stock',
    fresh: b % 5 === 0,
    why: '',
  });
}

/** A few loose fasteners as a tray, some of the bags spilled; or a tool that is missing. */
function sendTray(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const base = { ...command(), jobId };
  if (kind === 'lost')
    return client.item.lost({
      ...base,
      what: '10 mm socket',
      qty: 1 + (b % 2),
      thingId: b % 3 === 0 ? (pick(state.thing, a)?.id ?? null) : null,
      note: '',
    });
  const none = { diameter: '', pitch: '', tolerance: '', note: '' };
  const rows = ['M8', 'M6', ''].map((thread, i) => ({
    ...none,
    row: i + 1,
    count: String(1 + ((a + i) % 7)),
    thread,
    length: pick(['25', '16', '', '30'], b + i) ?? '',
    head: '',
    kind: i === 2 ? 'washer' : '',
  }));
  const from = state.stow.filter((_, i) => (a + i) % 3 === 0).map((stow) => stow.id);
  return client.tray.accept({ ...base, rows, from, into: b % 2 ? { kind: 'tray', label: 'S' } : null });
}

function sendSet(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const base = { ...command(), jobId };
  const set = pick(state.fset, a);
  if (!set) return null;
  const holes = state.position.filter((hole) => hole.setId === set.id);
  if (kind === 'lengths')
    return client.set.lengths({
      ...base,
      setId: set.id,
      holes: [{ n: 1 + (b % 9), lengthUm: 20_000 + (b % 3) * 5_000 }],
    });
  if (kind === 'holes') return client.set.count({ ...base, setId: set.id, count: b % 12 });
  if (kind === 'take out') return client.set.takeOut({ ...base, setId: set.id, stowId: null });
  const positionIds = b % 2 ? holes.slice(0, 1 + (b % 3)).map((hole) => hole.id) : [];
  return client.set.stow({ ...base, setId: set.id, positionIds, kind: 'tin', label: `T${b % 5}` });
}

function sendRemoval(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const base = { ...command(), jobId };
  const removal = pick(state.removal, a);
  const other = pick(state.removal, b);
  if (!removal || !other) return null;
  const id = removal.id;
  if (kind === 'title')
    return client.record.change({ ...base, table: 'removal', id, values: { title: `T${b}` } });
  if (kind === 'begin')
    return client.record.change({ ...base, table: 'removal', id, values: { phase: 'off' } });
  if (kind === 'need')
    return client.record.make({ ...base, table: 'need', values: { removalId: id, needsId: other.id } });
  if (kind === 'reorder')
    return client.removal.reorder({
      ...base,
      removalId: id,
      afterId: other.id === id ? null : other.id,
      loosen: b % 2 === 0,
    });
  if (kind === 'merge') return client.removal.merge({ ...base, intoId: id, fromId: other.id });
  if (kind === 'repeat')
    return client.removal.repeat({ ...base, removalId: id, side: 'left', mirrorThreads: b % 2 === 0 });
  if (kind === 'void')
    return client.removal.void({
      ...base,
      removalId: id,
      phase: b % 2 ? 'void' : 'given up',
      why: 'mistake',
    });
  const things = state.fset.filter((set) => set.removalId === id).map((set) => set.id);
  return things.length > 0
    ? client.removal.split({ ...base, removalId: id, thingIds: things.slice(0, 1), title: 'Split' })
    : null;
}

function sendRest(client: TestClient, jobId: string, state: JobState, { kind, a }: Step): Sent {
  const base = { ...command(), jobId };
  if (kind === 'undo') return client.history.undo(base);
  if (kind === 'redo') return client.history.redo(base);
  if (kind === 'accept') {
    const finding = pick(planJob(state, 0).findings, a);
    return finding ? client.finding.accept({ ...base, finding: finding.key, why: 'seen' }) : null;
  }
  const tables = ['fset', 'part', 'position', 'removal', 'connection'] as const;
  const table = pick(tables, a) ?? 'part';
  const row = pick(state[table] as readonly { id: string }[], a);
  return row ? client.record.remove({ ...base, table, id: row.id }) : null;
}

const SENDERS: Record<Step['kind'], typeof sendLog> = {
  log: sendLog,
  'log more': sendLog,
  started: sendTick,
  tightened: sendTick,
  fitted: sendTick,
  done: sendTick,
  again: sendTick,
  count: sendPiece,
  found: sendPiece,
  gone: sendPiece,
  tray: sendTray,
  lost: sendTray,
  receive: sendPiece,
  scrap: sendPiece,
  send: sendPiece,
  back: sendPiece,
  lengths: sendSet,
  stow: sendSet,
  holes: sendSet,
  'take out': sendSet,
  title: sendRemoval,
  need: sendRemoval,
  reorder: sendRemoval,
  split: sendRemoval,
  merge: sendRemoval,
  repeat: sendRemoval,
  begin: sendRemoval,
  void: sendRemoval,
  remove: sendRest,
  accept: sendRest,
  undo: sendRest,
  redo: sendRest,
};

/** The whole job as text, for comparing states; the workshop's bags too. */
const snap = (workshop: Workshop, jobId: string) => JSON.stringify(workshop.job(jobId));

function booksHold(state: JobState): void {
  expect(moveProblems(state)).toEqual([]);
  for (const line of countLines(state)) expect(bookDifference(line)).toBe(0);
  const all = [...balances(state, 'all').values()][0];
  if (!all) return;
  const { supply, ...rest } = all;
  expect(Object.values(rest).reduce((sum, qty) => sum + qty, supply)).toBe(0);
}

describe('random histories of operations', () => {
  it('keep the books closed, break no constraint, and undo to where they began', {
    timeout: 300_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...READY_JOBS),
        fc.array(step, { minLength: 10, maxLength: 45 }),
        async (job, steps) => {
          const workshop = newWorkshop();
          const jobId = await logJob(workshop, job.name, job.lines);
          const client = clientOf(workshop);
          const past: string[] = [];
          const future: string[] = [];
          for (const one of steps) {
            const state = stateOf(workshop, jobId);
            const before = snap(workshop, jobId);
            const seq = workshop.lastSeq();
            if (one.kind === 'undo' && past.length === 0) continue;
            const reply = await SENDERS[one.kind](client, jobId, state, one);
            if (reply === null) continue;
            const after = snap(workshop, jobId);
            if (!reply.ok || workshop.lastSeq() === seq) {
              expect(after).toBe(before);
              continue;
            }
            if (one.kind === 'undo') {
              expect(after).toBe(past.pop());
              future.push(before);
            } else if (one.kind === 'redo') {
              expect(after).toBe(future.pop());
              past.push(before);
            } else {
              past.push(before);
              future.length = 0;
            }
            booksHold(stateOf(workshop, jobId));
          }
          expect(await checkDatabase(workshop.db, 'none')).toEqual([]);
          planJob(stateOf(workshop, jobId), workshop.now());
          roundTrip(workshop, jobId);
          for (let wanted = past.pop(); wanted !== undefined; wanted = past.pop()) {
            const undone = await client.history.undo({ command: v7(), jobId });
            expect(undone.ok).toBe(true);
            expect(snap(workshop, jobId)).toBe(wanted);
          }
          workshop.close();
        },
      ),
      { numRuns: 40, seed: 11, endOnFailure: true },
    );
  });
});

/** Export → import → export gives the same text. */
function roundTrip(workshop: Workshop, jobId: string): void {
  const first = jobExport({ workshop, actor: null }, jobId, { withoutContact: false });
  if (!first.ok) throw new Error(first.fault.sentence);
  const other = newWorkshop();
  const reply = jobImport({ workshop: other, actor: null }, { ...command(), text: first.value.text });
  if (!reply.ok) throw new Error(reply.fault.sentence);
  const second = jobExport({ workshop: other, actor: null }, jobId, { withoutContact: false });
  expect(second.ok && second.value.text).toBe(first.value.text);
  other.close();
}
