import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { keepHost, type Refusal } from '../host/launch.ts';
import { defaultWorkshop, here, privateFolder } from '../host/private-folder.ts';
import { holderOf } from '../store/lock.ts';
import { preparePreload } from './desktop-preload.ts';
import { hostProcess } from './host-child.ts';
import { buildScreens, screensAreOld } from './screens.ts';
import { sampleLines } from './sample-lines.ts';
import { type Answering, newCodeLine, openBrowser } from './way-in.ts';
import { chooseWindow, findRuntime, onPath, type WindowChoice } from './window-choice.ts';

/** `npm start`: builds the screens if need be, starts the host, and shows the workshop in the best way there is. */

const ROOT = resolve(import.meta.dirname, '..', '..');

const say = (line: string) => process.stdout.write(`${line}\n`);

async function main(): Promise<number | null> {
  const { values } = parseArgs({ options: { workshop: { type: 'string' }, screens: { type: 'string' } } });
  const workshop = resolve(values.workshop ?? defaultWorkshop(here()));
  const choice = chooseWindow({
    platform: process.platform,
    env: process.env,
    runtime: findRuntime(ROOT, process.env),
    hasProgram: (name) => onPath(name, process.env),
  });
  const running = await runningHost(workshop);
  if (running !== null) {
    say(`Everybolt already runs on ${workshop}: opening that one.`);
    // Whatever shows it, it is shown by the host that is there; a window of its own would start another.
    await show(running, choice.kind === 'desktop' ? withoutDesktop() : choice);
    return 0;
  }
  if (values.screens === undefined && screensAreOld(ROOT)) {
    say('Building the screens …');
    const built = await buildScreens(ROOT);
    if (!built.ok) {
      say(built.fault.sentence);
      return 1;
    }
  }
  const screens = resolve(values.screens ?? join(ROOT, 'dist', 'renderer'));
  return choice.kind === 'desktop' ? desktop(choice, workshop, screens) : serve(choice, workshop, screens);
}

/** The host that holds the workshop, once it says where it answers; null when nobody holds it. */
async function runningHost(workshop: string): Promise<Answering | null> {
  for (let wait = 0; wait < 25; wait++) {
    const holder = holderOf(workshop);
    if (!holder.held) return null;
    if (holder.note) return holder.note;
    await new Promise((done) => setTimeout(done, 200));
  }
  // Somebody writes without a host; starting ours says so in words.
  return null;
}

function withoutDesktop(): WindowChoice {
  return chooseWindow({
    platform: process.platform,
    env: process.env,
    runtime: null,
    hasProgram: (name) => onPath(name, process.env),
  });
}

/** Runs the host until Ctrl+C, with a browser or a code as the way in. Null: goes on until then. */
function serve(choice: WindowChoice, workshop: string, screens: string): null {
  let answering: Answering | null = null;
  const kept = keepHost({
    start: hostProcess(ROOT, ['--workshop', workshop, '--renderer', screens]),
    secret: randomBytes(32).toString('hex'),
    onReady: (ready, again) => {
      const moved = answering !== null && answering.address !== ready.address;
      answering = ready;
      if (!again) say(`Everybolt runs on ${workshop}. Ctrl+C ends it.`);
      if (!again || moved) void show(ready, choice);
      else say('It runs again; open windows go on by themselves.');
    },
    onDown: (refusal) => end(refusal),
    onDeath: (pauseMs) => say(`The program ended unexpectedly and is started again in ${pauseMs / 1000} s.`),
  });
  let ending = false;
  const end = (refusal: Refusal | null) => {
    if (refusal) say(refusal.sentence);
    else if (!ending) say('Closing the workshop.');
    ending = true;
    void kept.close().then(() => process.exit(refusal ? 1 : 0));
  };
  // Not once: npm passes on a Ctrl+C that the terminal has sent already, and a second one must not cut the first short.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => end(null));
  if (process.stdin.isTTY)
    createInterface({ input: process.stdin }).on('line', () => {
      if (answering) say(newCodeLine(answering));
    });
  return null;
}

/** Shows a host in the browser, or says address and code; one line says which and why. */
async function show(host: Answering, choice: WindowChoice): Promise<void> {
  if (choice.kind === 'browser') {
    say(`Opening it in the browser: ${choice.why}. If no page comes, press Enter here for a code.`);
    if (await openBrowser(host, choice.opener, privateFolder(here()))) return;
    say('No browser came for it within its time.');
  } else {
    // So that the main job can be seen where there is nothing to show it on.
    for (const line of sampleLines()) say(line);
    say(`No window is opened: ${choice.why}.`);
  }
  say(newCodeLine(host));
}

/** Hands over to the desktop shell and waits for its end. */
async function desktop(
  choice: Extract<WindowChoice, { kind: 'desktop' }>,
  workshop: string,
  screens: string,
): Promise<number> {
  say(`Opening it in a window of its own: ${choice.why}.`);
  const preload = preparePreload(ROOT);
  const child = spawn(
    choice.runtime,
    [
      join(ROOT, 'electron', 'main.ts'),
      `--workshop=${workshop}`,
      `--screens=${screens}`,
      `--preload=${preload}`,
    ],
    // The shell starts the host with this Node, never with the one inside the runtime.
    { stdio: 'inherit', env: { ...process.env, EVERYBOLT_NODE: process.execPath } },
  );
  // The terminal sends Ctrl+C to both; the shell decides when all is put away.
  for (const signal of ['SIGINT', 'SIGHUP'] as const) process.on(signal, () => {});
  process.once('SIGTERM', () => child.kill('SIGTERM'));
  return new Promise((done) => {
    child.once('error', (error) => {
      say(`Expected the window's runtime to start, got: ${error.message}`);
      done(1);
    });
    child.once('exit', (code) => done(code ?? 1));
  });
}

const code = await main();
if (code !== null) process.exit(code);
