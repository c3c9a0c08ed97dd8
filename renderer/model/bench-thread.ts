import { readEntry, threadsThatFit } from '../../core/entry/index.ts';
import { THREADS } from '../../core/fastening/index.ts';
import { ok, type Result, refuse } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import { bench as say } from '../texts/bench.ts';
import type { Option, Write } from './bench-fields.ts';

type Set = Row<'fset'>;
type Spec = Row<'spec'>;

/** Threads to choose from in one touch: as many as fit a hand. */
const CANDIDATES = 8;

/** A change of what the fasteners of a set are. */
export const spec = (set: Set, values: Partial<Spec>): Result<Write> =>
  ok({ verb: 'spec', setId: set.id, values } as Write);

/** "M8" of "M8", "5/16" of "5/16-18 UNC": the size without pitch and series. */
const sizeOf = (thread: string): string => /^(M[\d.]+|#?\d+(?:-\d+\/\d+|\/\d+)?)/.exec(thread)?.[1] ?? thread;

function nameOfThread(size: string, pitchMm: number, designation: string): string {
  return size.startsWith('M') ? `${size} × ${pitchMm}` : designation;
}

/** Every thread that it may be, the likeliest first: of the thread noted, then of all that fit its head or key. */
export function threadCandidates(of: Spec): Option[] {
  if (of.threadKnown) return [];
  const drive = {
    style: of.drive ?? 'hex external',
    size: of.driveTyped === '' ? null : of.driveTyped,
    acrossFlatsMm: of.driveSizeUm === null ? null : of.driveSizeUm / 1000,
  } as Parameters<typeof threadsThatFit>[0];
  const fits = threadsThatFit(drive, of.head as Parameters<typeof threadsThatFit>[1]);
  const sizes = [...new Set([...(of.thread === null ? [] : [sizeOf(of.thread)]), ...fits])];
  return sizes
    .flatMap((size) => THREADS.filter((thread) => thread.size === size))
    .slice(0, CANDIDATES)
    .map((thread) => ({
      value: thread.designation,
      label: nameOfThread(thread.size, thread.pitchMm, thread.designation),
    }));
}

/** A thread taken by a touch is known from then on. */
export function takeThread(set: Set, designation: string): Result<Write> {
  const thread = THREADS.find((one) => one.designation === designation);
  if (!thread) return refuse('input', say.threadExpected(designation));
  return spec(set, {
    thread: thread.system === 'metric' ? thread.size : thread.designation,
    threadKnown: true,
    pitchUm: Math.round(thread.pitchMm * 1000),
  });
}

/** A thread as typed; without its pitch the usual one is taken and stays to be confirmed. */
export function typeThread(set: Set, typed: string): Result<Write> {
  if (typed.trim() === '') return spec(set, { thread: null, threadKnown: false, pitchUm: null });
  const [item] = readEntry(`1 ${typed}`).items;
  const thread = item?.kind === 'fasteners' ? item.thread : null;
  if (!thread) return refuse('input', say.threadExpected(typed));
  return spec(set, {
    thread: thread.designation,
    threadKnown: !thread.pitchAssumed,
    pitchUm: thread.pitchMm === null ? null : Math.round(thread.pitchMm * 1000),
  });
}

/** The thread as one would type it again: "M8 × 1.25"; without its pitch where that is not known. */
export function threadShown(of: Spec): string {
  const thread = of.thread ?? '';
  return of.pitchUm === null ? thread : nameOfThread(sizeOf(thread), of.pitchUm / 1000, thread);
}
