import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { clock, day } from '../model/time.ts';
import { stopwork as say } from '../texts/stopwork.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Key } from '../ui/Key.tsx';

/** Whoever opens the job next reads the note of whoever stopped, before anything else. */
export function HandoverNotice({ job }: { readonly job: OpenJob }) {
  const halt = job.view.state.halt.filter((one) => one.seenAt === null).at(-1);
  if (!halt) return null;
  const by = job.view.state.person.find((person) => person.id === halt.personId)?.name ?? '';
  const read = () =>
    void send(job.id, (command) => client.halt.seen({ command, jobId: job.id, haltId: halt.id }));
  return (
    <Dialog open grave title={say.handover} onClose={read}>
      <p className="said from-before handover-said">{halt.note || say.noNote}</p>
      <p className="cap">{say.by(by, `${day(halt.at, job.now)}, ${clock(halt.at)}`)}</p>
      <div className="keys">
        <Key look="go" large onPress={read} first>
          {say.read}
        </Key>
      </div>
    </Dialog>
  );
}
