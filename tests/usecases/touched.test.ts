import { describe, expect, it } from 'vitest';
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
});
