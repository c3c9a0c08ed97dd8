import type { DayAhead } from '../../core/contract/answers.ts';
import type { JobView } from '../../core/contract/views.ts';
import type { DayRow } from '../screens/ahead/DaysScreen.tsx';
import { ahead as say } from '../texts/ahead.ts';
import type { RowData } from '../ui/Rows.tsx';
import { namesOf } from './ahead.ts';
import { day } from './time.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** "2026-11-26" where the reader is. */
export function isoOf(ms: number): string {
  const date = new Date(ms);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** The last moment of a day where the reader is, UTC ms; null where it is no day. */
export function endOfDay(iso: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!parts) return null;
  const [year = 0, month = 0, date = 0] = parts.slice(1).map(Number);
  const end = new Date(year, month - 1, date, 23, 59, 59, 999);
  return end.getMonth() === month - 1 && end.getDate() === date ? end.getTime() : null;
}

/** "Thursday, 26 November", with the year where it is another; "Today". */
export function dayName(iso: string, now: number): string {
  const end = endOfDay(iso) ?? now;
  if (iso === isoOf(now)) return say.today;
  const week = new Intl.DateTimeFormat(undefined, { weekday: 'long' }).format(end);
  return `${week}, ${day(end, now)}`;
}

/** Today and the days to come that matter: on which something arrives, comes back or has cured. What is late is none. */
export function comingDays(view: JobView, now: number): DayRow[] {
  const days = new Map<string, { what: Set<string>; steps: number }>([
    [isoOf(now), { what: new Set(), steps: view.plan.ahead.size }],
  ]);
  const at = (ms: number) => {
    const iso = isoOf(ms);
    const one = days.get(iso) ?? { what: new Set<string>(), steps: 0 };
    days.set(iso, one);
    return one;
  };
  for (const step of view.plan.steps)
    for (const lack of step.lacks)
      if (lack.until !== null && lack.until >= now) at(lack.until).what.add(lack.sentence);
  for (const line of view.outlook.dates) at(line.at).steps += line.stepIds.length;
  return [...days]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([iso, { what, steps }], i) => ({
      iso,
      name: dayName(iso, now),
      about: [...what].join(' '),
      more: i === 0 || steps === 0 ? '' : say.days(steps),
    }));
}

/** The day that the arrows lead to from this one. */
export function dayBeside(days: readonly DayRow[], iso: string, by: 1 | -1): string {
  const known = days.map((one) => one.iso);
  const next = by === 1 ? known.find((one) => one > iso) : known.findLast((one) => one < iso);
  return next ?? iso;
}

/** Begun as a sentence: what is lacking begins with the name of a thing. */
const asSentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What can go ahead by the day, what cannot and why, what one more item would free, what is late. */
export function dayGroups(
  view: JobView,
  answer: DayAhead,
  now: number,
): { readonly title: string; readonly rows: RowData[] }[] {
  const steps = new Map(view.plan.steps.map((step) => [step.id, step]));
  const nameOf = (id: string) => steps.get(id)?.title || (steps.get(id)?.kind ?? '');
  const row = (id: string, about: string, grave = false): RowData => ({
    id,
    mark: steps.get(id)?.number === null ? '' : String(steps.get(id)?.number ?? ''),
    name: nameOf(id),
    count: '',
    about,
    grave,
  });
  const groups = [
    {
      title: say.canGo,
      rows: answer.ahead.map(({ stepId, at }) => row(stepId, at === null ? '' : say.from(day(at, now)))),
    },
    {
      title: say.notByThen,
      rows: answer.not.map(({ stepId, lacks, firstId }) =>
        lacks.length > 0
          ? row(stepId, lacks.map(asSentence).join(' '), firstId === null)
          : row(stepId, firstId === null ? say.heldOpen : say.firstDo(nameOf(firstId)), firstId === null),
      ),
    },
    {
      title: say.oneMore,
      rows: answer.oneMore.slice(0, 12).map((line) => ({
        id: line.stepIds[0] ?? '',
        mark: '',
        name: line.sentence,
        count: line.stepIds.length,
        about: say.frees(line.stepIds.length),
      })),
    },
    {
      title: say.lateTitle,
      rows: view.outlook.late.map((line) => ({
        id:
          view.plan.steps.find((step) => step.lacks.some((lack) => lack.thingId === line.thingId))?.id ?? '',
        mark: '',
        name: line.sentence,
        count: '',
        about: say.late(day(line.due, now)),
        grave: true,
      })),
    },
  ];
  return groups.filter((group) => group.rows.length > 0);
}

/** Sets that were served first, by name. */
export const servedName = (view: JobView, setId: string): string => namesOf(view, [setId]);
