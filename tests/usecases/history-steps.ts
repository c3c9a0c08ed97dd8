import type { JobState } from '../../core/model/tables.ts';
import { planJob } from '../../core/reinstall/index.ts';
import { command, type TestClient } from '../support/client.ts';
import { READY_JOBS } from '../support/jobs.ts';
import type { Step } from './history-kinds.ts';
import { sendPhoto } from './history-photos.ts';

const LINES = READY_JOBS.flatMap((job) => job.lines.map((line) => line.replace(/^\+\s*/, '')));
export const pick = <T>(rows: readonly T[], n: number): T | undefined => rows[n % Math.max(1, rows.length)];

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
  if (kind === 'round') {
    const hole = pick(state.position, a);
    const round = pick(['snug', '30 %', 'stage 1', '100 %', 'once around'], b) ?? '30 %';
    return hole ? client.tick.round({ ...base, holeIds: [hole.id], round }) : null;
  }
  if (kind === 'broke') {
    const hole = pick(state.position, a);
    return hole
      ? client.tick.broke({ ...base, thingId: hole.id, stuck: b % 2 === 0, why: 'it sheared' })
      : null;
  }
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

/** The other job of the workshop as pattern, what must come off to reach two things; a planned removal begun with other counts than expected. */
async function sendPattern(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step) {
  const base = { ...command(), jobId };
  if (kind === 'pattern') {
    const jobs = await client.jobs.list({});
    const other = jobs.ok ? jobs.value.find(({ job }) => job.id !== jobId) : undefined;
    return client.pattern.use({ ...base, fromJobId: other?.job.id ?? jobId });
  }
  if (kind === 'come off') {
    // What was worked on may be back; anything else is refused, or planned already.
    const things =
      state.deed.length > 0 ? state.deed.map((deed) => deed.thingId) : state.thing.map(({ id }) => id);
    const targetIds = [a, b].flatMap((n) => pick(things, n) ?? []);
    return targetIds.length > 0 ? client.plan.comeOff({ ...base, targetIds }) : { ok: false };
  }
  const planned = state.removal.filter(({ phase }) => phase === 'planned');
  const removal = pick(planned.length > 0 ? planned : state.removal, a);
  if (!removal) return { ok: false };
  const found = state.fset
    .filter((set, i) => set.removalId === removal.id && (b + i) % 2 === 0)
    .map((set) => ({ setId: set.id, count: b % 6 }));
  return client.pattern.begin({ ...base, removalId: removal.id, found });
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
  if (kind === 'all lengths')
    return client.set.lengths({ ...base, setId: set.id, allUm: 20_000 + (b % 3) * 5_000, holes: [] });
  if (kind === 'spec') {
    const values = { thread: b % 2 ? 'M8' : 'M10', threadKnown: b % 3 > 0, grade: b % 5 ? '8.8' : null };
    return client.set.spec({ ...base, setId: set.id, values });
  }
  if (kind === 'torque') {
    const typed = pick(['25 Nm', '20 Nm + 90°', 'by feel', ''], b) ?? '';
    return client.set.torque({ ...base, setId: set.id, typed, from: 'own', page: '' });
  }
  if (kind === 'holes') return client.set.count({ ...base, setId: set.id, count: b % 12 });
  if (kind === 'promise') return client.piece.promise({ ...base, setId: set.id, qty: 1 + (b % 4) });
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
  if (kind === 'did') {
    const did = pick(['off', 'slackened', 'opened', 'aside'] as const, b) ?? 'off';
    return client.removal.did({ ...base, removalId: id, did });
  }
  if (kind === 'begin')
    return client.record.change({ ...base, table: 'removal', id, values: { phase: 'off' } });
  if (kind === 'need')
    return client.record.make({ ...base, table: 'need', values: { removalId: id, needsId: other.id } });
  if (kind === 'settle')
    return client.need.settle({
      ...base,
      removalId: id,
      needsId: other.id,
      answer: b % 3 ? 'loosened' : 'confirmed',
      why: 'seen',
    });
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

function sendRest(client: TestClient, jobId: string, state: JobState, { kind, a, b }: Step): Sent {
  const base = { ...command(), jobId };
  if (kind === 'undo') return client.history.undo(base);
  if (kind === 'redo') return client.history.redo(base);
  if (kind === 'accept') {
    const finding = pick(planJob(state, 0).findings, a);
    return finding ? client.finding.accept({ ...base, finding: finding.key, why: 'seen' }) : null;
  }
  if (kind === 'part stow' || kind === 'pieces') {
    const part = pick(state.part, a);
    if (!part) return null;
    const values = b % 2 ? { qty: b % 5 } : { how: b % 3 ? 'aside' : 'off' };
    return kind === 'pieces'
      ? client.record.change({ ...base, table: 'part', id: part.id, values })
      : client.part.stow({ ...base, partId: part.id, kind: 'shelf', label: `S${a % 3}` });
  }
  const tables = ['fset', 'part', 'position', 'removal', 'connection'] as const;
  const table = pick(tables, a) ?? 'part';
  const row = pick(state[table] as readonly { id: string }[], a);
  return row ? client.record.remove({ ...base, table, id: row.id }) : null;
}

export const SENDERS: Record<Step['kind'], typeof sendLog> = {
  log: sendLog,
  'log more': sendLog,
  started: sendTick,
  tightened: sendTick,
  round: sendTick,
  fitted: sendTick,
  done: sendTick,
  again: sendTick,
  broke: sendTick,
  count: sendPiece,
  found: sendPiece,
  gone: sendPiece,
  tray: sendTray,
  lost: sendTray,
  pattern: sendPattern,
  'begin planned': sendPattern,
  'come off': sendPattern,
  receive: sendPiece,
  scrap: sendPiece,
  send: sendPiece,
  back: sendPiece,
  lengths: sendSet,
  'all lengths': sendSet,
  spec: sendSet,
  torque: sendSet,
  'part stow': sendRest,
  pieces: sendRest,
  stow: sendSet,
  holes: sendSet,
  'take out': sendSet,
  title: sendRemoval,
  did: sendRemoval,
  need: sendRemoval,
  settle: sendRemoval,
  promise: sendSet,
  reorder: sendRemoval,
  split: sendRemoval,
  merge: sendRemoval,
  repeat: sendRemoval,
  begin: sendRemoval,
  void: sendRemoval,
  remove: sendRest,
  accept: sendRest,
  photo: sendPhoto,
  mark: sendPhoto,
  join: sendPhoto,
  part: sendPhoto,
  number: sendPhoto,
  file: sendPhoto,
  role: sendPhoto,
  draft: sendPhoto,
  'photos away': sendPhoto,
  undo: sendRest,
  redo: sendRest,
};
