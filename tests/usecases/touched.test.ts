import { describe, expect, it } from 'vitest';
import { dayOf, momentOf } from '../../core/cli/day.ts';
import { runCommand } from '../../core/cli/main.ts';
import { touchedLines } from '../../renderer/model/touched.ts';
import { logJob } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

describe('whether a joint was touched at all', () => {
  it('says who put it back and when, with what torque, and what was new, by verb and on the screen', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Hand winch', ['side cover, gasket, 3 bolts M8x25']);
    const { dir } = workshop;
    workshop.close();
    const run = async (...words: string[]) => {
      const answer = await runCommand([...words, '--workshop', dir]);
      expect(answer.code, answer.lines.join(' ')).toBe(0);
      return answer.lines.join('\n');
    };
    expect(await run('touched', 'side cover')).toMatch(/1 Side cover: off on \S+; not back$/);
    await run('people', '--add', 'Ana');
    await run('receive', 'gasket', '--qty', '1', '--who', 'Ana');
    await run('tick', '1/1', '--what', 'tightened', '--value', '25 Nm', '--who', 'Ana');
    await run('tick', '1', '--who', 'Ana');
    expect(await run('touched', 'side cover')).toMatch(
      /; back on \d{4}-\d\d-\d\d by Ana, torque read 25 Nm?.*; new with it: gasket$/,
    );
    const opened = await runCommand(['touched', 'side cover', '--workshop', dir]);
    const value = opened.value as Parameters<typeof touchedLines>[0];
    expect(value.jobs[0]?.jobId).toBe(jobId);
    const [line] = touchedLines(value, Date.now());
    expect(line).toMatch(/^1 Side cover: off, .*\. Back .*, Ana\. Torque read 25.*\. New with it: gasket\.$/);
  });

  it('tells each time that it was off, by whom and why', async () => {
    const workshop = newWorkshop();
    await logJob(workshop, 'Hand winch', ['side cover, gasket, 3 bolts M8x25']);
    const { dir } = workshop;
    workshop.close();
    const run = async (...words: string[]) =>
      (await runCommand([...words, '--workshop', dir])).lines.join('\n');
    for (const name of ['Ana', 'Ben']) await run('people', '--add', name);
    await run('receive', 'gasket', '--qty', '2');
    await run('tick', '1', '--who', 'Ana');
    await run('again', '1', '--why', 'it leaks', '--who', 'Ben');
    const twice = await run('touched', 'side cover');
    expect(twice).toMatch(/1 Side cover: off on .*; back on \S+ by Ana, .*new with it: gasket\n/);
    expect(twice).toMatch(/off again on \S+ by Ben: it leaks; not back$/);
    await run('tick', '1', '--who', 'Ben');
    expect(await run('touched', 'side cover')).toMatch(
      /off again on .*it leaks; back on \S+ by Ben, no torque/,
    );
    const { value } = await runCommand(['touched', 'side cover', '--workshop', dir]);
    expect(touchedLines(value as Parameters<typeof touchedLines>[0], Date.now())[0]).toMatch(
      /Back .*Ana\..* Off again, .*, Ben: it leaks\. Back .*, Ben\. No torque/,
    );
  });
});

describe('a day as the command line says it', () => {
  it.each([
    ['Europe/Berlin', '2030-03-02', '2030-03-02 00:30'],
    ['America/Anchorage', '2030-03-01', '2030-03-01 14:30'],
    ['UTC', '2030-03-01', '2030-03-01 23:30'],
  ])('is that of the clock in %s', (zone, date, moment) => {
    const at = Date.UTC(2030, 2, 1, 23, 30);
    expect([dayOf(at, zone), momentOf(at, zone)]).toEqual([date, moment]);
    expect(dayOf(at, 'Nowhere/At all')).toBe(dayOf(at));
  });
});
