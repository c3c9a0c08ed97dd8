import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { logJob } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

describe('the command line in plain words', () => {
  it('names what is meant by removal, says what it expected, and what was taken back', async () => {
    const workshop = newWorkshop();
    await logJob(workshop, 'Hand winch', ['side cover, gasket', 'end cover, gasket']);
    const { dir } = workshop;
    workshop.close();
    const run = async (...words: string[]) => {
      const { code, lines } = await runCommand([...words, '--workshop', dir]);
      return `${code} ${lines.join(' ')}`;
    };
    expect(await run('receive', 'gasket')).toMatch(/^1 .*found 2: “1\/gasket”, “2\/gasket”/);
    expect(await run('receive', '2/gasket')).toBe('0 1 new in hand.');
    expect(await run('undo')).toBe('0 Taken back: new pieces in hand.');
    expect(await run('receive', '2/gasket', '--qty', 'x')).toBe(
      '2 Expected --qty as a whole number, got “x”.',
    );
    expect(await run('receive')).toMatch(/^2 Expected a number such as 4/);
    expect(await run('send', '2/gasket', '--to', 'Shop', '--due', 'soon')).toMatch(
      /^2 Expected --due as a day/,
    );
    expect(await run('keep-old', '2/gasket')).toMatch(/^2 Expected --why\./);
    expect(await run('accept')).toMatch(/^2 Expected an open point/);
    expect(await run('people')).toBe('0 Nobody yet. Add one with: people --add NAME');
    expect(await run('jobs', '--foo')).toBe('2 There is no option --foo here. Usage: jobs');
    expect(await run('done', '--job', 'hand wnch')).toMatch(/^1 No job is called .* Nearest: “Hand winch”/);
  });
});
