import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useTabText } from '../data/draft.ts';
import type { OpenJob } from '../data/job.ts';
import { usePlainKeys } from '../data/keys.ts';
import { useDay } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { comingDays, dayBeside, dayGroups, dayName, endOfDay, isoOf, servedName } from '../model/days.ts';
import { DaysScreen } from '../screens/ahead/DaysScreen.tsx';
import { ahead as say } from '../texts/ahead.ts';
import { Key } from '../ui/Key.tsx';
import { sidePane, useStatus } from './pane.ts';
import { useScreenKeys } from './use-screen-keys.ts';

/** What can go ahead by a day. */
export function DaysPage({ job }: { readonly job: OpenJob }) {
  const status = useStatus(job);
  const today = isoOf(job.now);
  const [kept, setKept] = useTabText(`${job.id}/day`);
  // A day that has gone by is today.
  const iso = endOfDay(kept) === null || kept < today ? today : kept;
  const answer = useDay(job.id, endOfDay(iso) ?? job.now).data?.value ?? null;
  const days = comingDays(job.view, job.now);
  const place = remember.getState();
  const back = () => place.go({ screen: 'putback', stepId: 'list' });
  usePlainKeys({
    arrowleft: () => setKept(dayBeside(days, iso, -1)),
    arrowright: () => setKept(dayBeside(days, iso, 1)),
  });
  useScreenKeys({ Escape: back });
  return (
    <DaysScreen
      pane={sidePane(job, 'days')}
      status={status}
      title={dayName(iso, job.now)}
      iso={iso}
      days={days}
      count={answer?.ahead.length ?? null}
      groups={answer === null ? [] : dayGroups(job.view, answer, job.now)}
      promises={<Promises job={job} />}
      onDay={setKept}
      onPick={(stepId) => place.go({ screen: 'putback', stepId })}
      onBack={back}
    />
  );
}

/** Pieces that lie ready for one set and could go to another first. */
function Promises({ job }: { readonly job: OpenJob }) {
  const { offers, promises } = job.view.outlook;
  if (offers.length + promises.length === 0) return null;
  const serve = (setId: string, qty: number) =>
    void send(job.id, (command) => client.piece.promise({ command, jobId: job.id, setId, qty }));
  const take = (id: string) =>
    void send(job.id, (command) => client.record.remove({ command, jobId: job.id, table: 'want', id }));
  return (
    <section>
      <h2 className="rows-title">{say.promised}</h2>
      {offers.map((offer) => (
        <div key={offer.setId} className="ahead-ask">
          <p>{offer.sentence}</p>
          <Key onPress={() => serve(offer.setId, offer.qty)}>{say.serve}</Key>
        </div>
      ))}
      {promises.map((one) => (
        <div key={one.wantId} className="ahead-ask">
          <p>
            {say.served}: {servedName(job.view, one.setId)}
          </p>
          <Key onPress={() => take(one.wantId)}>{say.serveNo}</Key>
        </div>
      ))}
    </section>
  );
}
