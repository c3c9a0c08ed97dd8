import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthOf, jobFileSchema } from '../../core/model/job-file.ts';
import { checkDatabase, originalPath } from '../../core/store/check.ts';
import { sha256 } from '../../core/store/journal.ts';
import { places, type Workshop } from '../../core/store/workshop.ts';
import { jobExport, jobImport } from '../../core/usecases/job-file.ts';
import { clientOf, command, good, logJob, refused, stateOf } from '../support/client.ts';
import { READY_JOBS } from '../support/jobs.ts';
import { newWorkshop } from '../support/workshop.ts';

async function textOf(job = READY_JOBS[5]): Promise<{ text: string; jobId: string }> {
  const workshop = newWorkshop();
  if (!job) throw new Error('Expected a ready-made job.');
  const jobId = await logJob(workshop, job.name, job.lines);
  const client = clientOf(workshop);
  good(
    await client.workshop.put({
      ...command(),
      table: 'person',
      values: { name: 'Ana', contact: 'Ana, Mill Lane 3' },
    }),
  );
  const ana = good(await client.workshop.people({})).person[0];
  good(await client.jobs.change({ ...command(), jobId, values: { ownerId: ana?.id ?? null } }));
  const set = stateOf(workshop, jobId).fset[0];
  if (set?.stowId) good(await client.piece.count({ ...command(), jobId, stowId: set.stowId, counted: 3 }));
  const done = jobExport({ workshop, actor: null }, jobId, { withoutContact: false });
  if (!done.ok) throw new Error(done.fault.sentence);
  return { text: done.value.text, jobId };
}

const read = (workshop: Workshop, text: string) =>
  jobImport({ workshop, actor: null }, { ...command(), text });

describe('job file', () => {
  it('is refused in words when it is not one, and nothing is written', async () => {
    const { text } = await textOf();
    const workshop = newWorkshop();
    const seq = workshop.lastSeq();
    const file = JSON.parse(text) as Record<string, unknown>;
    const rows = file['rows'] as Record<string, Record<string, unknown>[]>;
    const change = (edit: (copy: typeof file & { rows: typeof rows }) => void): string => {
      const copy = structuredClone(file) as typeof file & { rows: typeof rows };
      edit(copy);
      return JSON.stringify(copy);
    };
    const cases: [string, RegExp][] = [
      ['', /cannot be read as JSON/],
      ['null', /begins with "everybolt": "job"/],
      ['[]', /begins with "everybolt": "job"/],
      ['{"everybolt":"job","version":99}', /version 99.*up to version 1/],
      [`${'['.repeat(100_000)}${']'.repeat(100_000)}`, /nested at most 8 deep/],
      [change((copy) => (copy['surprise'] = 1)), /surprise/],
      [change((copy) => delete (copy as Record<string, unknown>)['job']), /job/],
      [
        change(
          (copy) =>
            (copy.rows['position'] as { n: unknown }[])[0] &&
            ((copy.rows['position'] as { n: unknown }[])[0] = { ...copy.rows['position']?.[0], n: '1' }),
        ),
        /position/,
      ],
      [change((copy) => copy.rows['position']?.push({ ...copy.rows['position'][0] })), /there twice/],
      [change((copy) => copy.rows['thing']?.pop()), /not listed among the things/],
      [
        change(
          (copy) =>
            (copy.rows['move'] = (copy.rows['move'] ?? []).filter((row) => row['cause'] !== 'came off')),
        ),
        /books of pieces do not close/,
      ],
      [
        change((copy) =>
          Object.assign(copy.rows['removal']?.[0] ?? {}, { jobId: '00000000-0000-7000-8000-000000000000' }),
        ),
        /another job/,
      ],
      [
        change((copy) =>
          Object.assign(copy.rows['part']?.[0] ?? {}, { removalId: '00000000-0000-7000-8000-000000000000' }),
        ),
        /to name a removal that is there/,
      ],
      [
        change((copy) => Object.assign(copy.rows['removal']?.[0] ?? {}, { ord: '../../etc/passwd' })),
        /order key/,
      ],
    ];
    for (const [bad, expected] of cases) {
      const reply = read(workshop, bad);
      expect(reply.ok, bad.slice(0, 80)).toBe(false);
      expect(reply.ok ? '' : reply.fault.sentence).toMatch(expected);
      expect(workshop.lastSeq()).toBe(seq);
    }
    expect(workshop.jobs()).toEqual([]);
  });

  it('stands up to 2 000 mutated files: no crash, nothing half written', { timeout: 240_000 }, async () => {
    const { text } = await textOf(READY_JOBS[0]);
    const workshop = newWorkshop();
    let taken = 0;
    fc.assert(
      fc.property(mutated(text), (bad) => {
        const seq = workshop.lastSeq();
        const reply = read(workshop, bad);
        if (!reply.ok) {
          expect(reply.fault.sentence.length).toBeGreaterThan(20);
          expect(workshop.lastSeq()).toBe(seq);
          expect(workshop.jobs()).toEqual([]);
          return;
        }
        taken += 1;
        const { id } = reply.value;
        const undone = workshop.undo({
          id: command().command,
          chain: id,
          actor: 'unnamed',
          at: workshop.now(),
        });
        expect(undone.ok).toBe(true);
        expect(workshop.jobs()).toEqual([]);
      }),
      { numRuns: 2_000, seed: 5, endOnFailure: true },
    );
    // Some mutations only change a word: then the file is still one, and is taken.
    expect(taken).toBeGreaterThan(20);
    expect(taken).toBeLessThan(1_500);
    expect(await checkDatabase(workshop.db, 'none')).toEqual([]);
  });

  it('leaves out an owner’s contact when asked to, and nothing else', async () => {
    const { text, jobId } = await textOf();
    const workshop = newWorkshop();
    good(read(workshop, text));
    const open = jobExport({ workshop, actor: null }, jobId, { withoutContact: false });
    const shut = jobExport({ workshop, actor: null }, jobId, { withoutContact: true });
    expect(open.ok && open.value.text).toContain('Mill Lane 3');
    expect(shut.ok && shut.value.text).not.toContain('Mill Lane 3');
    expect(shut.ok && shut.value.text.length).toBe(
      (open.ok ? open.value.text.length : 0) - 'Ana, Mill Lane 3'.length,
    );
  });

  it('is refused when the job is there already', async () => {
    const { text } = await textOf();
    const workshop = newWorkshop();
    good(read(workshop, text));
    const again = read(workshop, text);
    expect(again.ok ? '' : again.fault.sentence).toContain('in this workshop already');
  });

  it('is not taken back by the job’s own Undo, which stands on it', async () => {
    const { text, jobId } = await textOf();
    const workshop = newWorkshop();
    good(read(workshop, text));
    const client = clientOf(workshop);
    expect(refused(await client.history.undo({ ...command(), jobId }))).toBe('There is nothing to undo.');
    good(await client.jobs.change({ ...command(), jobId, values: { complaint: 'drips' } }));
    good(await client.history.undo({ ...command(), jobId }));
    expect(stateOf(workshop, jobId).job.complaint).not.toBe('drips');
    expect(refused(await client.history.undo({ ...command(), jobId }))).toBe('There is nothing to undo.');
  });

  it('gives a bag another label where the label is in use, and says so', async () => {
    const { text } = await textOf();
    const workshop = newWorkshop();
    await logJob(workshop, 'Other', ['5 13, bag 3']);
    const reply = good(read(workshop, text));
    expect(reply.relabelled.join()).toContain('bag 3 is bag 3 (Gearbox of a winch) here');
    const seen = good(await clientOf(workshop).jobs.view({ jobId: reply.id }));
    const used = seen.state.stow.filter((stow) => Object.keys(seen.inBag).includes(stow.id));
    expect(used.map((stow) => stow.label)).toContain('3');
    expect(JSON.stringify(seen.plan)).not.toContain('(Gearbox of a winch)');
  });

  it('has a published schema, and the copy in the project is the one that the program prints', () => {
    const path = join(import.meta.dirname, '..', '..', 'core', 'model', 'job-file.schema.json');
    expect(existsSync(path)).toBe(true);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual(JSON.parse(JSON.stringify(jobFileSchema())));
  });

  it('nesting is measured outside of texts only', () => {
    expect(depthOf('{"a":[1,{"b":"[[[[[["}]}')).toBe(3);
    expect(depthOf('"\\"[["')).toBe(0);
  });
});

describe('photos on disk', () => {
  it('an original that is gone or changed is named by the check', async () => {
    const workshop = newWorkshop();
    const id = sha256('picture');
    workshop.commit(
      { id: command().command, what: 'test', chain: 'workshop', actor: 'unnamed', at: 1 },
      (writer) => {
        writer.put('original', {
          id,
          bytes: 7,
          type: 'image/jpeg',
          width: 1,
          height: 1,
          turn: 1,
          takenLocal: null,
          takenZone: null,
          takenUtc: null,
          camera: '',
          sharpness: null,
          phash: null,
          hasLocation: false,
          gone: false,
          goneWhy: '',
        });
        return { ok: true, value: null };
      },
    );
    const { originals } = places(workshop.dir);
    const faults = () => checkDatabase(workshop.db, originals);
    expect(await faults()).toEqual([`Photo ${id}: the original is not on disk.`]);
    mkdirSync(join(originals, id.slice(0, 2)), { recursive: true });
    writeFileSync(originalPath(originals, id), 'picture');
    expect(await faults()).toEqual([]);
    writeFileSync(originalPath(originals, id), 'another');
    expect(await faults()).toEqual([`Photo ${id}: the file on disk is not the one that was added.`]);
  });
});

/** One change to the file: in its text, or to one value somewhere in it. */
function mutated(text: string): fc.Arbitrary<string> {
  const bytes = fc
    .tuple(fc.nat(text.length - 1), fc.nat(60), fc.string({ maxLength: 6 }))
    .map(([at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut));
  const junk = fc.oneof(
    fc.constant(null),
    fc.integer(),
    fc.double({ noNaN: true }),
    fc.string({ maxLength: 20 }),
    fc.boolean(),
    fc.constant([]),
    fc.constant({}),
    fc.constantFrom('../../../etc/passwd', 'x'.repeat(20_000), '__proto__', -1, 1e300, '2026-11-25'),
  );
  const value = fc.tuple(fc.nat(), fc.nat(2), junk).map(([at, how, put]) => changeAt(text, at, how, put));
  return fc.oneof(bytes, value, value);
}

function changeAt(text: string, at: number, how: number, put: unknown): string {
  const file = JSON.parse(text) as unknown;
  const spots: { holder: Record<string, unknown>; key: string }[] = [];
  const open = [file];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    if (typeof next === 'object' && next !== null)
      for (const key of Object.keys(next)) {
        spots.push({ holder: next as Record<string, unknown>, key });
        open.push((next as Record<string, unknown>)[key]);
      }
  const spot = spots[at % spots.length];
  if (!spot) return text;
  if (how === 0) delete spot.holder[spot.key];
  else if (how === 1) spot.holder[spot.key] = put;
  else spot.holder[`${spot.key}2`] = put;
  return JSON.stringify(file);
}
