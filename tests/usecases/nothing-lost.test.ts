import { describe, expect, it } from 'vitest';
import type { JobState } from '../../core/model/tables.ts';
import { KNOWN, NOUN_WORDS } from '../support/known-words.ts';
import { clientOf, command, good, logJob, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

/** Fields that hold the whole line, or differ with every job. */
const ALWAYS = /^(?:id|jobId|typed|ord|.*Id|.*At|at|poolKey)$/;

/** What a job holds of a line besides the line itself: every row, without what differs from job to job. */
function content(state: JobState): string {
  const tables = Object.entries(state).filter(([, rows]) => Array.isArray(rows) && rows.length > 0);
  return JSON.stringify(tables, (key, value: unknown) => (ALWAYS.test(key) ? undefined : value));
}

describe('what is typed is stored, or kept as a note', () => {
  const stored = async (workshop: ReturnType<typeof newWorkshop>, line: string): Promise<string> =>
    content(stateOf(workshop, await logJob(workshop, 'Bench lathe', [line])));

  it.each(['cover_', 'cover, 4 M8x25_', 'M8x25_', 'hose_', 'drained oil 1 l_'])(
    'a word of every sense makes a difference to “%s”',
    async (frame) => {
      const workshop = newWorkshop();
      const without = await stored(workshop, frame.replace('_', ''));
      const lost: string[] = [];
      for (const { words } of KNOWN) {
        const [word = ''] = words;
        if ((await stored(workshop, frame.replace('_', `, ${word}`))) === without) lost.push(word);
      }
      expect(lost).toEqual([]);
    },
  );

  it('holds every noun of the trade word for word in a row of its own or in a note', async () => {
    const workshop = newWorkshop();
    const lost: string[] = [];
    for (const word of NOUN_WORDS)
      if (!(await stored(workshop, `cover, ${word}, 4 M8x25`)).toLowerCase().includes(`"${word}"`))
        lost.push(word);
    expect(lost).toEqual([]);
  });

  it('tells the same of the same line twice, so that a difference is one', async () => {
    const workshop = newWorkshop();
    const line = 'cover, gasket, sealant, 4 M8x25, one stripped, bag 3, rag in the port';
    expect(await stored(workshop, line)).toBe(await stored(workshop, line));
  });

  it('writes down that something was drained, also before it is said what', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', ['cover, drained']);
    expect(stateOf(workshop, jobId).fluid.map((one) => [one.name, one.lost])).toEqual([['fluid', 'all']]);
  });

  it.each([
    ['cover, 4 M8x25, hole 9 snapped', ['hole 9 snapped']],
    ['drained 1 l oil, milky', ['milky']],
    ['8 M6x20 stainless', ['stainless']],
    ['cover, dry', ['dry']],
    ['4 pop rivets drilled out', ['drilled out']],
    ['note: prise at the lugs', []],
    ['cover, 4 M8x25, bag 3', []],
  ])('says what it keeps as a note: %s', async (text, kept) => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', []);
    const { said } = good(await clientOf(workshop).log.add({ ...command(), jobId, text, removalId: null }));
    const words = kept.map((one) => `“${one}”`).join(', ');
    expect(/Kept as a note: (.*)\.$/.exec(said)?.[1] ?? '').toBe(words);
  });

  it.each([
    ['cover', 'bag 7'],
    ['cover', '2 stripped'],
    ['cover', 'hole 3 snapped'],
    ['cover, 4 M8x25', 'hole 9 snapped'],
    ['cover, 4 M8x25', '2 stripped'],
    ['cover, 4 M8x25', 'tray B'],
    ['cover, 4 M8x25', 'left, under'],
  ])('after “%s”, “%s” makes a difference', async (first, second) => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', [first]);
    const without = content(stateOf(workshop, jobId));
    good(await clientOf(workshop).log.add({ ...command(), jobId, text: second, removalId: null }));
    expect(content(stateOf(workshop, jobId))).not.toBe(without);
  });

  it.each([
    ['4 M8x25', '4 M8x25, renew'],
    ['M8x25', 'M8x25, 2 stripped'],
    ['drained 1 l oil', 'drained 1 l oil, milky'],
    ['drained oil', 'drained oil, 3 qt'],
    ['filled oil', 'filled oil, 2 l'],
    ['hose', 'hose, leaking'],
    ['hose', '2 hoses'],
    ['hose, 2 ends', '2 hoses, 2 ends'],
    ['cover, 4 M8x25', 'cover, 4 M8x25, hole 9 snapped'],
  ])('“%s” and “%s” are not stored alike', async (without, line) => {
    const workshop = newWorkshop();
    expect(await stored(workshop, line)).not.toBe(await stored(workshop, without));
  });
});
