import { v7 } from 'uuid';
import {
  type Answer,
  fine,
  found,
  jobIdOf,
  ofReply,
  type Options,
  reading,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';
import { dayOf } from '../day.ts';
import { opWords } from '../op-words.ts';

/** Hits a line each; without one, the names that come nearest and where it was looked. */
function runSearch(options: Options): Promise<Answer> | Answer {
  const text = options.words.join(' ').trim();
  if (text === '') return wrongUsage('Expected words to look for: search gasket, or search “M8x25”.');
  return reading(options, async (_context, client) => {
    const reply = await client.workshop.search({ text });
    if (!reply.ok) return refusal(reply.fault);
    if (reply.value.length > 0)
      return fine(
        reply.value,
        reply.value.map((hit) => `${hit.jobTitle} · ${hit.kind}: ${hit.text}`),
      );
    const offered = await client.workshop.near({ text });
    if (!offered.ok) return refusal(offered.fault);
    const { near, lookedIn } = offered.value;
    return found(reply.value, [
      `Nothing found for “${text}”.`,
      ...(near.length > 0 ? [`Nearest: ${near.map((name) => `“${name}”`).join(', ')}.`] : []),
      `Looked in ${lookedIn}.`,
    ]);
  });
}

/** Job verbs: list, add, close, people, undo and redo, and any operation by its name. */
export const JOB_VERBS: readonly Verb[] = [
  {
    name: 'jobs',
    usage: 'jobs',
    says: 'list the jobs of the workshop',
    options: [],
    run: (options) =>
      reading(options, async (_context, client) => {
        const reply = await client.jobs.list({});
        if (!reply.ok) return refusal(reply.fault);
        const lines = reply.value.map(
          (card) =>
            `${card.job.id}  ${card.job.title}: ${card.depth.off} off, ${card.depth.back} back, ${card.depth.left} left; ${card.open.stop} stop, ${card.open.warn} warn${card.job.phase === 'open' ? '' : '; closed'}; last ${dayOf(card.changedAt, card.job.zone)}`,
        );
        return fine(reply.value, lines.length > 0 ? lines : ['No jobs yet. Start one with: job-add TITLE']);
      }),
  },
  {
    name: 'job-add',
    usage: 'job-add TITLE [--machine TEXT] [--complaint TEXT] [--zone ZONE]',
    says: 'start a job',
    options: ['machine', 'complaint', 'zone'],
    run: (options) => {
      const title = options.words.join(' ').trim();
      if (title === '') return wrongUsage('Expected a title: job-add “Bench grinder, left wheel”.');
      const { machine, complaint, zone } = options.flags;
      const values = {
        ...(typeof machine === 'string' ? { machine } : {}),
        ...(typeof complaint === 'string' ? { complaint } : {}),
        ...(typeof zone === 'string' ? { zone } : {}),
      };
      return writing(options, async (_context, client) =>
        ofReply(await client.jobs.add({ command: v7(), title, values })),
      );
    },
  },
  {
    name: 'job-close',
    usage: 'job-close [--job ID] [--open]',
    says: 'close a job when nothing stops it, or open it again',
    options: ['job'],
    switches: ['open'],
    run: (options) =>
      writing(options, async (context, client) => {
        const job = jobIdOf(context, options.flags['job']);
        if (!job.ok) return refusal(job.fault);
        const phase = options.flags['open'] === true ? 'open' : 'closed';
        return ofReply(await client.jobs.close({ command: v7(), jobId: job.value, phase, recheckDue: null }));
      }),
  },
  {
    name: 'people',
    usage: 'people [--add NAME]',
    says: 'list the people of the workshop, or add one',
    options: ['add'],
    run: (options) => {
      const name = options.flags['add'];
      if (typeof name === 'string' && name.trim() === '')
        return wrongUsage('Expected a name: people --add “Edda Marlow”.');
      if (typeof name === 'string')
        return writing(options, async (_context, client) =>
          ofReply(await client.workshop.put({ command: v7(), table: 'person', values: { name } })),
        );
      return reading(options, async (_context, client) => {
        const reply = await client.workshop.people({});
        if (!reply.ok) return refusal(reply.fault);
        const lines = reply.value.person.map((person) => `${person.id}  ${person.name}`);
        return fine(
          reply.value.person,
          lines.length > 0 ? lines : ['Nobody yet. Add one with: people --add NAME'],
        );
      });
    },
  },
  ...(['undo', 'redo'] as const).map(
    (name): Verb => ({
      name,
      usage: `${name} [--job ID] [--who NAME]`,
      says: name === 'undo' ? 'take back the last command in a job' : 'do again what was taken back',
      options: ['job'],
      run: (options) =>
        writing(options, async (context, client) => {
          const job = jobIdOf(context, options.flags['job']);
          if (!job.ok) return refusal(job.fault);
          const reply = await client.history[name]({ command: v7(), jobId: job.value });
          if (!reply.ok) return refusal(reply.fault);
          return fine(reply.value, [
            `${name === 'undo' ? 'Taken back' : 'Done again'}: ${opWords(reply.value.what)}.`,
          ]);
        }),
    }),
  ),
  {
    name: 'search',
    usage: 'search WORDS…',
    says: 'search every job: parts, notes, threads, bags',
    options: [],
    run: runSearch,
  },
];
