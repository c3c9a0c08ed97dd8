import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import { removal as say } from '../texts/removal.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Key } from '../ui/Key.tsx';

interface OtherSideProps {
  readonly job: OpenJob;
  readonly removalId: string;
  readonly onClose: () => void;
}

/** The same again on the other side: whether its threads are mirrored is asked, never assumed. */
export function OtherSide({ job, removalId, onClose }: OtherSideProps) {
  const removal = job.view.state.removal.find((one) => one.id === removalId);
  if (!removal) return null;
  const side = removal.side === 'left' ? 'right' : removal.side === 'right' ? 'left' : null;
  const names = job.view.state.job.sideNames;
  const threaded = job.view.state.fset.some((set) => set.removalId === removalId);
  const repeat = (mirrorThreads: boolean) => {
    onClose();
    void send(job.id, (command) =>
      client.removal.repeat({ command, jobId: job.id, removalId, side, mirrorThreads }),
    ).then((made) => {
      if (made) remember.getState().go({ removalId: made.id });
    });
  };
  return (
    <Dialog open title={say.otherTitle} onClose={onClose}>
      <p>
        {say.otherSay(
          removal.title,
          side === null ? say.otherSide.toLowerCase() : names[side] || say.sides[side],
        )}
      </p>
      {threaded && <p>{say.otherAsk}</p>}
      <div className="keys">
        <Key look="go" large first onPress={() => repeat(false)}>
          {threaded ? say.otherSame : say.otherNone}
        </Key>
        {threaded && (
          <Key large onPress={() => repeat(true)}>
            {say.otherMirror}
          </Key>
        )}
      </div>
    </Dialog>
  );
}
