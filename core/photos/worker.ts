import { watchMemory } from './memory.ts';
import { readPicture, renderPicture } from './pictures.ts';
import {
  type Answer,
  diskFull,
  type Message,
  type Outcome,
  type PictureAsk,
  PictureProblem,
  type Values,
} from './protocol.ts';

/**
 * The picture process: takes one task after another over its channel and answers each. Whatever a hostile or broken
 * file does here ends this process at worst; who asked starts another.
 */

async function work(ask: PictureAsk): Promise<Values[PictureAsk['op']]> {
  switch (ask.op) {
    case 'read':
      return readPicture(ask.path, ask.sha256, ask.renditions);
    case 'render':
      return renderPicture(ask.path, ask.sha256, ask.renditions, ask.size);
  }
}

async function outcomeOf(ask: PictureAsk): Promise<Outcome<Values[PictureAsk['op']]>> {
  try {
    return { ok: true, value: await work(ask) };
  } catch (error) {
    const problem = error instanceof PictureProblem ? error : diskFull(error);
    if (problem) return { ok: false, fault: { code: problem.code, sentence: problem.message } };
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
