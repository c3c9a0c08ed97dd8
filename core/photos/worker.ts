import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, rm, stat } from 'node:fs/promises';
import { constants, setPriority } from 'node:os';
import { watchMemory } from './memory.ts';
import { readPicture, renderPicture } from './pictures.ts';
import {
  type Answer,
  type Ask,
  type Message,
  type Outcome,
  PictureProblem,
  type Taken,
  type Values,
} from './protocol.ts';

/**
 * The picture process: takes one task after another over its channel and answers each. Whatever a hostile or broken
 * file does here ends this process at worst; who asked starts another.
 */

/** Hash of a file, and a copy of it where asked: one reading. The copy has reached the disk when this answers. */
async function take(from: string, to: string | null, maxBytes: number): Promise<Taken> {
  let size: number;
  try {
    const about = await stat(from);
    if (!about.isFile())
      throw new PictureProblem(
        'unreadable',
        `Expected a file, got ${about.isDirectory() ? 'a folder' : 'something else'}.`,
      );
    size = about.size;
  } catch (error) {
    throw unreadable(error);
  }
  if (size === 0) throw new PictureProblem('empty', 'Expected a picture, got an empty file. Copy it again.');
  if (size > maxBytes)
    throw new PictureProblem(
      'too-big',
      `Expected a file of at most ${Math.round(maxBytes / 1024 / 1024)} MB, got ${Math.ceil(size / 1024 / 1024)} MB.`,
    );
  const hash = createHash('sha256');
  const copy = to === null ? null : await open(to, 'w', 0o600);
  let bytes = 0;
  try {
    for await (const chunk of createReadStream(from, {
      highWaterMark: 1024 * 1024,
    }) as AsyncIterable<Buffer>) {
      hash.update(chunk);
      bytes += chunk.length;
      await copy?.writeFile(chunk);
    }
    await copy?.sync();
  } catch (error) {
    if (to !== null) await rm(to, { force: true });
    throw unreadable(error);
  } finally {
    await copy?.close();
  }
  return { sha256: hash.digest('hex'), bytes };
}

function unreadable(error: unknown): Error {
  if (error instanceof PictureProblem) return error;
  const code = (error as { code?: string }).code ?? '';
  if (code === 'ENOSPC' || code === 'EDQUOT')
    return new PictureProblem('disk', 'Expected room on the disk for the photo, got a full disk.');
  const why =
    code === 'ENOENT'
      ? 'it is not there'
      : code === 'EACCES' || code === 'EPERM'
        ? 'it may not be read'
        : code;
  return new PictureProblem(
    'unreadable',
    `Expected a file that can be read, but ${why || 'it cannot be read'}.`,
  );
}

async function work(ask: Ask): Promise<Values[keyof Values]> {
  switch (ask.op) {
    case 'take':
      return take(ask.from, ask.to, ask.maxBytes);
    case 'read':
      return readPicture(ask.path, ask.sha256, ask.renditions);
    case 'render':
      return renderPicture(ask.path, ask.sha256, ask.renditions, ask.size);
  }
}

async function outcomeOf(ask: Ask): Promise<Outcome<Values[keyof Values]>> {
  try {
    return { ok: true, value: await work(ask) };
  } catch (error) {
    if (error instanceof PictureProblem)
      return { ok: false, fault: { code: error.code, sentence: error.message } };
    const { code } = unreadable(error) as PictureProblem;
    if (code === 'disk')
      return { ok: false, fault: { code, sentence: (unreadable(error) as Error).message } };
    console.error(error);
    return {
      ok: false,
      fault: {
        code: 'damaged',
        sentence: 'Expected a picture that can be read, got one that the program cannot.',
      },
    };
  }
}

function start(): void {
  try {
    setPriority(process.pid, constants.priority.PRIORITY_BELOW_NORMAL);
  } catch {
    // Where the system does not allow it the work is done all the same.
  }
  watchMemory(Number(process.env['EVERYBOLT_PICTURE_MB'] ?? 0));
  let last: Promise<void> = Promise.resolve();
  process.on('message', (message: Message) => {
    last = last.then(async () => {
      const answer: Answer = { id: message.id, outcome: await outcomeOf(message.ask) };
      process.send?.(answer);
    });
  });
  // Whoever asks is gone: nothing is left to do.
  process.once('disconnect', () => process.exit(0));
}

start();
