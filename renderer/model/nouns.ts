import type { JobView } from '../../core/contract/views.ts';

const newestFirst = (a: { readonly id: string }, b: { readonly id: string }): number =>
  a.id < b.id ? 1 : -1;

/** What things of this job were called, newest first, each once: offered while the next line is typed. */
export function nounsOf(view: JobView): string[] {
  const { part, connection, fluid, fset, temporary } = view.state;
  const names = [...part, ...connection, ...fluid, ...fset, ...temporary]
    .sort(newestFirst)
    .map((row) => row.name.split(',')[0]?.trim() ?? '');
  const seen = new Set<string>();
  return names.filter((name) => {
    const low = name.toLowerCase();
    if (name === '' || seen.has(low)) return false;
    seen.add(low);
    return true;
  });
}
