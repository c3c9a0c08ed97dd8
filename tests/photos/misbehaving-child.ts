import { readFileSync } from 'node:fs';
import type { Message } from '../../core/photos/protocol.ts';

/** Stands in for the picture process: does what the file in hand says, as native code may. */
process.on('message', ({ id, ask }: Message) => {
  const wanted = readFileSync(ask.path, 'utf8').trim();
  if (wanted === 'crash') process.kill(process.pid, 'SIGSEGV');
  else if (wanted === 'hang') for (;;);
  else if (wanted === 'exit') process.exit(3);
  else process.send?.({ id, outcome: { ok: true, value: { said: wanted } } });
});
