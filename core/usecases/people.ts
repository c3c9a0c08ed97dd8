import { basename } from 'node:path';
import manifest from '../../package.json' with { type: 'json' };
import { blank } from '../model/blank.ts';
import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { rowsOf } from '../store/read.ts';
import { type Context, inWorkshop, type Reply } from './frame.ts';

/** People, tools and bags of the workshop: made without an id, changed with one. Never deleted: records name them. */
export function workshopPut(
  context: Context,
  input: {
    command: string;
    table: 'person' | 'tool' | 'stow';
    id?: string | undefined;
    values: Record<string, unknown>;
  },
): Reply<{ id: string; said: string }> {
  const { table } = input;
  return inWorkshop(context, `${table}.put`, input, (writer, _at, newId) => {
    const id = input.id ?? newId();
    const known = writer.get(table, id);
    if (input.id !== undefined && input.id === known?.id && 'id' in input.values)
      return refuse('input', 'Expected fields to change, and the id is not one of them.');
    const row = { ...(known ?? blank(table, id, '', {})), ...input.values, id } as Row<typeof table>;
    writer.put(table, row);
    return ok({ id, said: 'Kept.' });
  });
}

/** Name and version for the window's title. */
export function workshopInfo(context: Context): { name: string; version: string } {
  return {
    name: basename(context.workshop.dir),
    version: manifest.version,
  };
}

/** Everyone and everything of the workshop that jobs can name. */
export function people(context: Context): {
  person: Row<'person'>[];
  tool: Row<'tool'>[];
  stow: Row<'stow'>[];
} {
  const { db } = context.workshop;
  return { person: rowsOf(db, 'person'), tool: rowsOf(db, 'tool'), stow: rowsOf(db, 'stow') };
}
