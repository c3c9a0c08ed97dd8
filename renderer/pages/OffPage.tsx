import { useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import { bagData, offGroups, offSummary, wantsCsv, wantsOf } from '../model/off.ts';
import { OffScreen, type OffPanel } from '../screens/off/OffScreen.tsx';
import type { WantData, WantState } from '../screens/off/Panels.tsx';
import { off as say } from '../texts/off.ts';
import { AskDialog } from '../ui/AskDialog.tsx';
import { paneOf, useStatus } from './pane.ts';

/** Hands a text to the user as a file. */
function save(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  URL.revokeObjectURL(url);
}

/** A line of the list to get changes its state; "here" books the pieces in. */
async function setWant(job: OpenJob, key: string, state: WantState): Promise<void> {
  const line = job.view.toGet.find((one) => one.key === key);
  if (!line) return;
  const wantId = line.wantIds[0];
  const thingId = line.thingIds[0] ?? null;
  const qty = Math.max(1, line.needed ?? line.noted);
  if (state === 'here' && thingId !== null && (line.needed ?? 0) > 0) {
    const specId = line.specId;
    await send(job.id, (command) =>
      client.piece.receive({
        command,
        jobId: job.id,
        thingId,
        qty,
        stowId: null,
        specId,
        ...(wantId ? { wantId } : {}),
      }),
    );
    return;
  }
  await send(job.id, (command) =>
    wantId
      ? client.record.change({ command, jobId: job.id, table: 'want', id: wantId, values: { state } })
      : client.record.make({
          command,
          jobId: job.id,
          table: 'want',
          values: { thingId, specId: line.specId, what: line.what, qty, state, cause: line.cause },
        }),
  );
}

interface PanelParts {
  readonly stowId: string | null;
  readonly counted: number | null;
  readonly setCounted: (count: number | null) => void;
  readonly setWriteOff: (countingId: string) => void;
  readonly wants: readonly WantData[];
}

/** What stands on the sheet at the right: the list to get, or the bag being counted. */
function panelOf(
  job: OpenJob,
  { stowId, counted, setCounted, setWriteOff, wants }: PanelParts,
): OffPanel | null {
  if (stowId === 'to get')
    return {
      kind: 'to get',
      wants,
      onState: (key, state) => void setWant(job, key, state),
      onSave: () => save('to-get.csv', wantsCsv(wants)),
    };
  const bag = stowId === null ? null : bagData(job.view, stowId, counted);
  if (!bag || stowId === null) return null;
  const search = job.view.searches.find((one) => one.stowId === stowId);
  const base = { jobId: job.id, countingId: search?.countingId ?? '' };
  return {
    kind: 'bag',
    bag,
    onCount: setCounted,
    onIs: () => {
      const number = bag.counted ?? bag.expected;
      void send(job.id, (command) => client.piece.count({ command, jobId: job.id, stowId, counted: number }));
      setCounted(null);
    },
    onAgain: () => setCounted(bag.expected),
    onFound: () =>
      search && void send(job.id, (command) => client.piece.found({ command, ...base, where: '' })),
    onGiveUp: () => search && setWriteOff(search.countingId),
  };
}

/** What is off, by bag and shelf; a bag is counted at the right. */
export function OffPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus();
  const stowId = remember((place) => place.stowId);
  const [counted, setCounted] = useState<number | null>(null);
  const [writeOff, setWriteOff] = useState<string | null>(null);
  const go = remember.getState().go;
  const wants = wantsOf(job.view);
  const panel = panelOf(job, { stowId, counted, setCounted, setWriteOff, wants });
  return (
    <>
      <OffScreen
        pane={paneOf(job, 'off', job.view.plan.depth.back > 0 ? 'back' : 'apart', null, (removalId) =>
          go({ removalId, screen: 'removal' }),
        )}
        status={status}
        summary={offSummary(job.view)}
        groups={offGroups(job.view, job.now)}
        atId={stowId}
        panel={panel}
        toGet={wants.filter(isOpen).length}
        onPick={(id) => {
          setCounted(null);
          const away = job.view.state.away.find((one) => one.thingId === id && one.backAt === null);
          if (away)
            void send(job.id, (command) => client.away.back({ command, jobId: job.id, awayId: away.id }));
          else if (job.view.state.stow.some((stow) => stow.id === id)) go({ stowId: id });
          else go({ screen: 'removal', removalId: removalOf(job, id) });
        }}
        onToGet={() => go({ stowId: 'to get' })}
      />
      {writeOff !== null && (
        <AskDialog
          title={say.giveUpTitle}
          label={say.giveUpAsk}
          example={say.giveUpExample}
          go={say.giveUpGo}
          onAnswer={(why) =>
            void send(job.id, (command) =>
              client.piece.gone({ command, jobId: job.id, countingId: writeOff, why }),
            )
          }
          onClose={() => setWriteOff(null)}
        />
      )}
    </>
  );
}

const isOpen = (want: WantData): boolean => want.state === 'needed' || want.state === 'ordered';

function removalOf(job: OpenJob, id: string): string | null {
  const { part, fset } = job.view.state;
  return part.find((one) => one.id === id)?.removalId ?? fset.find((one) => one.id === id)?.removalId ?? null;
}
