import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chips, readEntry } from '../../core/entry/index.ts';
import { differences, type Expected } from './neutral.ts';

const FOLDER = new URL('./data/', import.meta.url);
const LINES = readdirSync(FOLDER)
  .filter((name) => /^lines-\d+\.json$/.test(name))
  .flatMap((name) => {
    const file = JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')) as { lines: [string, Expected][] };
    return file.lines;
  });

describe('entry lines, each with what a person means by it', () => {
  it.each(LINES)('%s', (line, expected) => {
    const entry = readEntry(line);
    const doubtful = chips(entry).some((chip) => chip.doubtful);
    expect(differences(expected, entry, doubtful)).toEqual([]);
  });
});
