import { describe, expect, it, vi } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { search } from '../../core/usecases/search.ts';
import { searchNear } from '../../core/usecases/search-near.ts';
import { clientOf, command, good, logJob, stateOf } from '../support/client.ts';
import { newWorkshop, openTest, tempFolder } from '../support/workshop.ts';

const LINES = [
  'mains locked out',
  'side cover, gasket, 12 M8x25 hex 13, bag 4',
  'retainer, 1 snap ring',
  'end cap, 2 M80x2, bag 40',
  'hose, lower, 2 ends, clamp 35 mm',
  '4 hexalobular T30 M6x16, 1 stripped',
  'drained hydraulic oil 2,5 l ISO VG 46',
];

async function workshopOf() {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Winch gearbox, left drum', LINES);
  await logJob(workshop, 'Column drill', ['quill, 3 split pins', 'spindle, 2 grub screws']);
  const find = (text: string) =>
    search({ workshop, actor: null }, text).map(
      (hit) => `${hit.jobTitle.split(',')[0]}: ${hit.kind}: ${hit.text}`,
    );
  return { workshop, jobId, find };
}

describe('a search without a hit', () => {
  it('offers the nearest names, each of which is found, and says where it looked', async () => {
    const { workshop, find } = await workshopOf();
    const { near, lookedIn } = searchNear({ workshop, actor: null }, 'side covr');
    expect(near[0]).toBe('side cover');
    for (const name of near) expect(find(name), name).not.toEqual([]);
    expect(lookedIn).toMatch(/parts.*threads.*bags/);
    expect(searchNear({ workshop, actor: null }, 'zzzz').near).toEqual([]);
  });

  it('is said by the verb, which then ends with 1; without words it is wrong usage', async () => {
    const { workshop } = await workshopOf();
    const { dir } = workshop;
    workshop.close();
    const none = await runCommand(['search', 'side', 'covr', '--workshop', dir]);
    expect(none).toMatchObject({ code: 1, value: [] });
    expect(none.lines[0]).toBe('Nothing found for “side covr”.');
    expect(none.lines[1]).toContain('Nearest: “side cover”');
    expect(none.lines[2]).toMatch(/^Looked in .*bags/);
    expect((await runCommand(['search', 'side', 'cover', '--workshop', dir])).code).toBe(0);
    expect((await runCommand(['search', '--workshop', dir])).code).toBe(2);
  });
});

describe('search over every job', () => {
  it.each([
    ['circlip', /Winch gearbox: set: .*circlip/],
    ['snap ring', /Winch gearbox: set: /],
    ['cotter pin', /Column drill: set: .*split pin/],
    ['set screw', /Column drill: set: /],
    ['grub screws', /Column drill: set: /],
  ])('“%s” is found whatever the trade calls it', async (text, hit) => {
    const { find } = await workshopOf();
    expect(find(text).join('\n')).toMatch(hit);
  });

  it('a thread is found with and without pitch and length, however it is written, and no other', async () => {
    const { find } = await workshopOf();
    for (const text of ['M8', 'm8x1.25', 'M8 × 1,25', 'M8x25', 'm8 x 1.25 x 25']) {
      expect(find(text).join('\n'), text).toMatch(/set: .*M8/);
      expect(find(text).join('\n'), text).not.toMatch(/M80/);
    }
    expect(find('M8x1')).toEqual([]);
  });

  it('what went in, what was read and what was passed by name is found by those words', async () => {
    const { workshop, jobId, find } = await workshopOf();
    const client = clientOf(workshop);
    const by = good(
      await client.workshop.put({ ...command(), table: 'person', values: { name: 'Edda' } }),
    ).id;
    const hand = clientOf(workshop, by);
    const oil = stateOf(workshop, jobId).fluid[0]?.id ?? '';
    const fill = { thingIds: [oil], what: 'filled' as const, valueTyped: '800 ml', known: 'read' as const };
    good(await client.tick.do({ ...command(), jobId, ...fill }).then((reply) => reply));
    const { findings } = good(await client.jobs.view({ jobId })).plan;
    const finding = findings.find((one) => one.severity !== 'note')?.key ?? '';
    good(await hand.finding.accept({ ...command(), jobId, finding, why: 'Seen at the bench' }));
    expect(find('800 ml').join()).toContain('done: filled hydraulic oil 800 ml');
    expect(find('passed').join()).toContain('passed: passed by Edda: Seen at the bench');
  });

  it('a bag is found by its number, and not one whose number begins alike', async () => {
    const { find } = await workshopOf();
    const sets = (text: string) => find(text).filter((hit) => hit.includes(': set: '));
    expect(sets('bag 4')).toHaveLength(1);
    expect(sets('bag 4')[0]).toContain('M8');
    expect(sets('bag 40')[0]).toContain('M80');
  });

  it('notes, conditions, what was made safe and half a word are found; all words must be in one text', async () => {
    const { workshop, jobId, find } = await workshopOf();
    const removal = stateOf(workshop, jobId).removal[1];
    const values = { noteBack: 'Prise only at the two lugs' };
    const base = { ...command(), jobId, table: 'removal' as const, id: removal?.id ?? '', values };
    good(await clientOf(workshop).record.change(base));
    expect(find('lugs prise').join('\n')).toContain('removal');
    expect(find('stripped').join('\n')).toContain('set');
    expect(find('mains lock').join('\n')).toContain('made safe');
    expect(find('draul')).not.toEqual([]);
    expect(find('lugs quill')).toEqual([]);
    expect(find('  ')).toEqual([]);
  });

  it('whom a part was sent to, what is to get and what is looked for is found, with the thing it is about', async () => {
    const { workshop, jobId, find } = await workshopOf();
    const client = clientOf(workshop);
    const part = stateOf(workshop, jobId).part.find((one) => one.name === 'side cover');
    const sent = { thingId: part?.id ?? '', toWhom: 'Grinder in the yard', due: null, note: 'skim it' };
    expect(find('Grinder')).toEqual([]);
    good(await client.away.send({ ...command(), jobId, ...sent }));
    expect(find('Grinder')).toEqual(['Winch gearbox: away: Grinder in the yard, skim it, side cover']);
    const [hit] = search({ workshop, actor: null }, 'skim cover');
    expect(hit?.removalId).toBe(part?.removalId);
    expect(searchNear({ workshop, actor: null }, 'Grnder').near).toEqual(['Grinder in the yard']);
    const lost = { what: '10 mm socket', qty: 1, thingId: null, note: 'in the chip tray?' };
    good(await client.item.lost({ ...command(), jobId, ...lost }));
    expect(find('chip tray')).toEqual([expect.stringContaining('10 mm socket')]);
  });

  it('a hit leads to its removal', async () => {
    const { workshop, jobId } = await workshopOf();
    const hit = search({ workshop, actor: null }, 'M8x25').find((one) => one.kind === 'set');
    const removal = stateOf(workshop, jobId).removal.find((one) => one.id === hit?.removalId);
    expect(removal?.title).toBe('Side cover');
  });

  it('only a job that has changed is read again, and a change is found at once', async () => {
    const { workshop, jobId, find } = await workshopOf();
    find('circlip');
    const read = vi.spyOn(workshop, 'job');
    find('quill');
    expect(read).not.toHaveBeenCalled();
    good(await clientOf(workshop).log.add({ ...command(), jobId, text: 'thrust washer', removalId: null }));
    read.mockClear();
    expect(find('thrust').join('\n')).toContain('Winch gearbox');
    expect(read.mock.calls).toEqual([[jobId]]);
    read.mockRestore();
  });

  it('a workshop that is only read finds the same', async () => {
    const dir = tempFolder();
    const workshop = openTest(dir);
    await logJob(workshop, 'Winch gearbox', LINES);
    const found = search({ workshop, actor: null }, 'bag 4 M8');
    workshop.close();
    const reader = openTest(dir, { write: false });
    expect(search({ workshop: reader, actor: null }, 'bag 4 M8')).toEqual(found);
    expect(found).not.toEqual([]);
  });
});
