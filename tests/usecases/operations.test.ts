import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand, VERBS } from '../../core/cli/main.ts';
import { newWorkshop } from '../support/workshop.ts';

/** Whatever a screen can do to a job, a script can do. */

const RENDERER = join(import.meta.dirname, '..', '..', 'renderer');

/** The source text of the screens. */
const source = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => readFileSync(join(RENDERER, name), 'utf8'))
  .join('\n');

const used = [
  ...new Set([...source.matchAll(/\bclient\.(\w+)\.(\w+)/g)].map(([, group, name]) => `${group}.${name}`)),
];
const offered = (await runCommand(['operation'])).value as string[];

describe('what the screens can do', () => {
  it('is found by looking through them', () => {
    expect(used.length).toBeGreaterThan(30);
    expect(used).toContain('tick.do');
  });

  it.each(used)('%s can be done by a script', (name) => {
    expect(offered).toContain(name);
  });

  it('leaves only addresses that have a verb of their own: photos in, pictures, the sheet, news of changes', () => {
    const addresses = new Set([...source.matchAll(/[`'"]\/(\w+)(?=\/|[`'"])/g)].map(([, first]) => first));
    expect([...addresses].sort()).toEqual(['changes', 'photo', 'sheet', 'upload']);
    const verbs = VERBS.map((verb) => verb.name);
    for (const verb of ['photos-add', 'sheet']) expect(verbs).toContain(verb);
  });
});

describe('operation NAME', () => {
  it.each(offered)(
    '%s is called with the id of its write where it has one, and without where it has none',
    async (name) => {
      const workshop = newWorkshop();
      const { dir } = workshop;
      workshop.close();
      const answer = await runCommand(['operation', name, '{}', '--workshop', dir]);
      expect(answer.lines.join(' ')).not.toMatch(/Unrecognized key|\bcommand: /);
      expect(answer.code).not.toBe(2);
    },
  );
});
