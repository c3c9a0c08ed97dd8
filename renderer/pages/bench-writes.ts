import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { personNamed } from '../data/people.ts';
import type { Row } from '../../core/model/tables.ts';
import type { Write } from '../model/bench-fields.ts';

/** Sends what a field asks for: one command, so one undo. */
export async function sendWrite(job: OpenJob, people: readonly Row<'person'>[], write: Write): Promise<void> {
  const base = (command: string) => ({ command, jobId: job.id });
  switch (write.verb) {
    case 'change': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.record.change({ ...base(command), ...input }));
      return;
    }
    case 'did': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.removal.did({ ...base(command), ...input }));
      return;
    }
    case 'spec': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.set.spec({ ...base(command), ...input }));
      return;
    }
    case 'lengths': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.set.lengths({ ...base(command), ...input }));
      return;
    }
    case 'torque': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.set.torque({ ...base(command), ...input }));
      return;
    }
    case 'count': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.set.count({ ...base(command), ...input }));
      return;
    }
    case 'stow': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.set.stow({ ...base(command), ...input }));
      return;
    }
    case 'partStow': {
      const { verb: _verb, ...input } = write;
      await send(job.id, (command) => client.part.stow({ ...base(command), ...input }));
      return;
    }
    case 'who': {
      const personId = write.name === '' ? null : await personNamed(job.id, people, write.name);
      if (personId === null && write.name !== '') return;
      const values = { personId };
      await send(job.id, (command) =>
        client.record.change({ ...base(command), table: 'removal', id: write.removalId, values }),
      );
    }
  }
}
