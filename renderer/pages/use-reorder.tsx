import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { logOf } from '../model/line.ts';
import { bench as say } from '../texts/bench.ts';
import { TellDialog } from '../ui/TellDialog.tsx';

interface Broken {
  readonly removalId: string;
  readonly afterId: string | null;
  readonly sentence: string;
}

/** Moves a removal in the log. A need that it would turn round is said, and loosened only by a yes. */
export function useReorder(job: OpenJob) {
  const [broken, setBroken] = useState<Broken | null>(null);
  const move = (removalId: string, afterId: string | null, loosen = false) =>
    void send(
      job.id,
      (command) => client.removal.reorder({ command, jobId: job.id, removalId, afterId, loosen }),
      { onLoosen: (sentence) => setBroken({ removalId, afterId, sentence }) },
    );
  /** One place earlier or later. */
  const step = (removalId: string, by: -1 | 1) => {
    const log = logOf(job.view);
    const at = log.findIndex((removal) => removal.id === removalId);
    if (at < 0 || at + by < 0 || at + by >= log.length) return;
    move(removalId, (by === 1 ? log[at + 1]?.id : log[at - 2]?.id) ?? null);
  };
  const dialog = broken && (
    <TellDialog
      title={say.brokenTitle}
      lines={[]}
      say={broken.sentence}
      go={say.loosen}
      onYes={() => move(broken.removalId, broken.afterId, true)}
      onClose={() => setBroken(null)}
    />
  );
  return { move: (removalId: string, afterId: string | null) => move(removalId, afterId), step, dialog };
}
