import type { Touched, TouchedRound } from '../../core/contract/answers.ts';
import { ahead as say } from '../texts/ahead.ts';
import { day } from './time.ts';

/** More than these are not read on a screen; the newest count. */
const MOST = 6;

/** One time off and back: "off, 2 November, Ana. Back 3 November, Ben. Torque read 25 Nm. New with it: gasket." */
function roundWords(round: TouchedRound, off: string, now: number): string {
  const back =
    round.backAt === null
      ? [say.touchedNotBack]
      : [
          say.touchedBack(day(round.backAt, now), round.backBy ?? ''),
          say.touchedRead(round.read.join(', ')),
          say.touchedNew(round.renewed.join('; ')),
        ];
  return [off, ...back].join(' ');
}

/** Each time it was touched, the newest removal first: when and by whom off and back, with what torque, what was new. */
export function touchedLines(touched: Touched, now: number): string[] {
  return [...touched.jobs]
    .reverse()
    .flatMap((job) =>
      job.hits.map((hit) => {
        const line = hit.rounds
          .map((round, i) => {
            const when = round.offAt === null ? '' : day(round.offAt, now);
            const who = round.offBy ?? '';
            const off =
              i === 0
                ? say.touchedOff(hit.number, hit.title, say.dids[hit.did], when, who)
                : say.touchedAgain(round.what.join('; '), when, who, round.why);
            return roundWords(round, off, now);
          })
          .join(' ');
        return touched.jobs.length === 1 ? line : say.touchedIn(job.title, line);
      }),
    )
    .slice(0, MOST);
}
