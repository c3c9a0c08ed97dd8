import { v7 } from 'uuid';
import type { Row } from '../../core/model/tables.ts';
import { client } from './client.ts';
import { send } from './commands.ts';

/** The person of this name; written down in the workshop when new. Null when that was refused. */
export async function personNamed(
  jobId: string,
  people: readonly Row<'person'>[],
  name: string,
  role: Row<'person'>['role'] = 'works',
): Promise<string | null> {
  const known = people.find((person) => person.name.toLowerCase() === name.trim().toLowerCase());
  if (known) return known.id;
  const id = v7();
  const made = await send(jobId, (command) =>
    client.workshop.put({ command, table: 'person', id, values: { name: name.trim(), role } }),
  );
  return made === null ? null : id;
}
