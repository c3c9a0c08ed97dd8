import { keepPreviousData, QueryClient, skipToken, useQuery } from '@tanstack/react-query';
import { client, valueOf } from './client.ts';
import { windowText } from '../texts/window.ts';
import { journal } from './journal.ts';

export const queries = new QueryClient({
  defaultOptions: { queries: { staleTime: Number.POSITIVE_INFINITY, gcTime: 60_000, retry: 2 } },
});

/** Cure timers and promised days move without a change of the record: asked again once a minute. */
const MINUTE = 60_000;

/** Readings are keyed by the journal number: a newer number is another reading, an older one never shows again. */
export function useView(jobId: string | null) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['view', jobId, seq],
    enabled: jobId !== null,
    placeholderData: keepPreviousData,
    refetchInterval: MINUTE,
    queryFn: async () => valueOf(await client.jobs.view({ jobId: jobId ?? '' })),
  });
}

/** Photos that are alike or very dark: asked for only where they are shown. */
export function usePhotoTray(jobId: string) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['tray', jobId, seq],
    placeholderData: keepPreviousData,
    queryFn: async () => valueOf(await client.photo.tray({ jobId })),
  });
}

export function useJobs() {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['jobs', seq],
    placeholderData: keepPreviousData,
    refetchInterval: MINUTE,
    queryFn: async () => valueOf(await client.jobs.list({})),
  });
}

export function usePeople() {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['people', seq],
    placeholderData: keepPreviousData,
    queryFn: async () => valueOf(await client.workshop.people({})),
  });
}

/** Nearest names for a search that found nothing; asked only then. */
export function useNearNames(text: string, wanted: boolean) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['near', text, seq],
    queryFn: wanted ? async () => valueOf(await client.workshop.near({ text })) : skipToken,
  });
}

export function useSearch(text: string) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['search', text, seq],
    enabled: text.trim() !== '',
    placeholderData: keepPreviousData,
    queryFn: async () => valueOf(await client.workshop.search({ text })),
  });
}

type Tray = Omit<Parameters<typeof client.tray.match>[0], 'jobId'>;

/** Where the pieces of a tray belong, asked again as the list or the record changes. */
export function useTrayMatch(jobId: string, tray: Tray) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['tray', jobId, tray, seq],
    enabled: tray.rows.length > 0,
    placeholderData: keepPreviousData,
    queryFn: async () => valueOf(await client.tray.match({ jobId, ...tray })),
  });
}

/** A bolt against the open holes of every job; a measure that cannot be read is an answer too. */
export function useWhose(asked: Parameters<typeof client.bolt.whose>[0] | null) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['whose', asked, seq],
    placeholderData: keepPreviousData,
    queryFn: asked === null ? skipToken : () => client.bolt.whose(asked),
  });
}

/** What must come off to reach these things; nothing is asked while nothing is named. */
export function useReach(jobId: string, targetIds: readonly string[]) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['reach', jobId, targetIds, seq],
    placeholderData: keepPreviousData,
    queryFn:
      targetIds.length === 0
        ? skipToken
        : async () => valueOf(await client.plan.reach({ jobId, targetIds: [...targetIds] })),
  });
}

/** Whether anything of that name was touched in any job of this machine. */
export function useTouched(jobId: string, text: string) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['touched', jobId, text, seq],
    placeholderData: keepPreviousData,
    queryFn: text === '' ? skipToken : async () => valueOf(await client.jobs.touched({ jobId, text })),
  });
}

/** What can go ahead by a time, UTC ms. Cures run on and days pass without a change of the record. */
export function useDay(jobId: string, on: number) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['day', jobId, on, seq],
    placeholderData: keepPreviousData,
    refetchInterval: MINUTE,
    queryFn: async () => valueOf(await client.plan.day({ jobId, on })),
  });
}

export function useTools(jobId: string) {
  const seq = journal((now) => now.seq);
  return useQuery({
    queryKey: ['tools', jobId, seq],
    placeholderData: keepPreviousData,
    queryFn: async () => valueOf(await client.plan.tools({ jobId })),
  });
}

/** Chooses the order in which a job is put back. It is kept beside the record, so that no journal number tells of it. */
export async function walkBy(jobId: string, by: 'list' | 'tools'): Promise<void> {
  try {
    const reply = await client.plan.walk({ jobId, by });
    if (!reply.ok) journal.getState().refuse(reply.fault.sentence);
    await queries.invalidateQueries({ queryKey: ['view', jobId] });
  } catch {
    journal.getState().refuse(windowText.noAnswer);
  }
}
