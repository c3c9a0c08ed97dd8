import { refuse } from '../../model/result.ts';
import type { JobState, Row } from '../../model/tables.ts';
import { removalIdOf, thingWords } from '../../model/thing-words.ts';
import type { Verb } from '../frame.ts';
import { text } from './in-job.ts';
import { overThing } from './over-thing.ts';

/** What is away of a thing: itself, and with a removal whatever came off with it. */
function awayOf(state: JobState, thingId: string): Row<'away'>[] {
  return state.away.filter(
    (away) =>
      away.backAt === null && (away.thingId === thingId || removalIdOf(state, away.thingId) === thingId),
  );
}

const withWhom = ({ toWhom }: Row<'away'>): string => (toWhom === '' ? 'away' : `away, with ${toWhom}`);

/** Verbs of what comes and goes: new ones in hand, sent out, and back from there. */
export const AWAY_VERBS: readonly Verb[] = [
  overThing(
    'receive',
    'receive TARGET --qty N [--new]',
    'new pieces in hand for a set or a part; --new: although the old one is away (what was sent out comes with: back)',
    (client, { thingId, ...rest }, options, state) => {
      const [away] = awayOf(state, thingId).filter((one) => one.thingId === thingId);
      if (away && options.flags['new'] !== true) {
        const typed = options.words.join(' ');
        return refuse(
          'refused',
          `${thingWords(state, thingId)} is ${withWhom(away)}. If that one came back: back “${typed}”. If a new one came instead of it: receive “${typed}” --qty ${text(options, 'qty') ?? '1'} --new.`,
        );
      }
      return client.piece.receive({
        ...rest,
        thingId,
        qty: Number(text(options, 'qty') ?? '1'),
        stowId: null,
      });
    },
    { options: ['qty'], switches: ['new'] },
  ),
  overThing(
    'send',
    'send TARGET --to NAME [--due DATE]',
    'sent out: to be repaired, coated, measured; it comes again with: back',
    async (client, input, options) =>
      client.away.send({
        ...input,
        toWhom: text(options, 'to') ?? '',
        due: text(options, 'due') === undefined ? null : Date.parse(text(options, 'due') ?? ''),
        note: text(options, 'why') ?? '',
      }),
    { options: ['to', 'due'] },
    ['to'],
  ),
  overThing(
    'back',
    'back TARGET',
    'back from where it was sent',
    (client, { thingId, ...rest }, _, state) => {
      const own = awayOf(state, thingId);
      const [one] = own;
      if (one && own.length === 1) return client.away.back({ ...rest, awayId: one.id });
      const all = own.length > 1 ? own : state.away.filter((away) => away.backAt === null);
      const names = all.map((away) => `“${thingWords(state, away.thingId)}” (${withWhom(away)})`).join(', ');
      return refuse(
        'refused',
        `Expected ${own.length > 1 ? 'one thing' : 'something'} that was sent out. Away now: ${names || 'nothing'}.`,
      );
    },
  ),
];
