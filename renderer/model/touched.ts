import type { Touched } from '../../core/contract/answers.ts';
import { ahead as say } from '../texts/ahead.ts';
import { day } from './time.ts';

/** More than these are not read on a screen; the newest count. */
const MOST = 6;

/** Each time it was touched, the newest first: when and by whom off and back, with what torque, what was new. */
export function touchedLines(touched: Touched, now: number): string[] {
  return [...touched.jobs]
    .reverse()
    .flatMap((job) =>
      job.hits.map((hit) => {
        const off = say.touchedOff(
          hit.number,
          hit.title,
          say.dids[hit.did],
          hit.at === null ? '' : day(hit.at, now),
          hit.by ?? '',
        );
        const back =
          hit.backAt === null
            ? [say.touchedNotBack]
            : [
                say.touchedBack(day(hit.backAt, now), hit.backBy ?? ''),
                say.touchedRead(hit.read.join(', ')),
                say.touchedNew(hit.renewed.join('; ')),
              ];
        const line = [off, ...back].join(' ');
        return touched.jobs.length === 1 ? line : say.touchedIn(job.title, line);
      }),
    )
    .slice(0, MOST);
}
