import { useEffect, useState } from 'react';
import { client, valueOf } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { type OpenJob } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { keyIsTaken } from '../data/keys.ts';
import { remember } from '../data/remember.ts';
import type { Shot } from '../model/gallery.ts';
import { rollsData } from '../model/rolls.ts';
import { type Pause, RollsScreen } from '../screens/photos/RollsScreen.tsx';
import { paneOf, useStatus } from './pane.ts';

interface RollsPageProps {
  readonly job: OpenJob;
  readonly photoIds: readonly string[];
  readonly shots: readonly Shot[];
  readonly onEnd: () => void;
}

/** Draft removals from photos, laid at their pauses and then by hand; nothing is made before the key says so. */
export function RollsPage({ job, photoIds, shots, onEnd }: RollsPageProps) {
  const status = useStatus(job);
  const [pause, setPause] = useState<Pause>('5');
  const [rolls, setRolls] = useState<readonly (readonly string[])[]>([]);
  useEffect(() => {
    let current = true;
    client.photo.rolls({ jobId: job.id, photoIds: [...photoIds], pauseMs: Number(pause) * 60_000 }).then(
      (reply) => {
        if (current) setRolls(valueOf(reply).value.rolls.map((roll) => roll.photoIds));
      },
      (error: unknown) => journal.getState().refuse(String(error)),
    );
    return () => {
      current = false;
    };
  }, [job.id, photoIds, pause]);
  const make = () => {
    if (rolls.length === 0) return;
    void send(job.id, (command) =>
      client.photo.draft({ command, jobId: job.id, rolls: rolls.map((roll) => [...roll]) }),
    ).then((made) => {
      const first = made?.ids[0];
      if (first === undefined) return;
      onEnd();
      remember.getState().go({ removalId: first });
    });
  };
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') onEnd();
      else if (event.key === 'Enter' && !keyIsTaken(event)) make();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
  return (
    <RollsScreen
      pane={paneOf(job, 'photos', 'apart', null)}
      status={status}
      rolls={rollsData(rolls, shots, job.now)}
      photos={photoIds.length}
      pause={pause}
      onPause={setPause}
      onJoin={(id) => setRolls((now) => joined(now, id))}
      onSplit={(id) => setRolls((now) => split(now, id))}
      onMake={make}
      onBack={onEnd}
    />
  );
}

/** The group that begins with this photo and the one after it, as one. */
function joined(rolls: readonly (readonly string[])[], id: string): (readonly string[])[] {
  const at = rolls.findIndex((roll) => roll[0] === id);
  if (at < 0 || at === rolls.length - 1) return [...rolls];
  return [...rolls.slice(0, at), [...(rolls[at] ?? []), ...(rolls[at + 1] ?? [])], ...rolls.slice(at + 2)];
}

/** The group of this photo cut before it. */
function split(rolls: readonly (readonly string[])[], id: string): (readonly string[])[] {
  return rolls.flatMap((roll) => {
    const at = roll.indexOf(id);
    return at <= 0 ? [roll] : [roll.slice(0, at), roll.slice(at)];
  });
}
