/** What a line is taken for while a mode stands: plugs or hose ends come off one after the other. */
export type Sticky = 'plug' | 'hose';

const AROUND: Readonly<
  Record<Sticky, { readonly bare: string; readonly before: string; readonly after: string }>
> = {
  plug: { bare: 'plug', before: 'plug at ', after: '' },
  hose: { bare: 'hose, 1 end', before: 'hose at ', after: ', 1 end' },
};

/** The whole line that stands for what is typed in a mode, and where in it the typed text lies. Empty text is one more. */
export function stickyLine(
  mode: Sticky | null,
  typed: string,
): { readonly text: string; readonly from: number; readonly to: number } {
  if (mode === null) return { text: typed, from: 0, to: typed.length };
  const { bare, before, after } = AROUND[mode];
  if (typed.trim() === '') return { text: bare, from: bare.length, to: bare.length };
  return { text: `${before}${typed}${after}`, from: before.length, to: before.length + typed.length };
}
