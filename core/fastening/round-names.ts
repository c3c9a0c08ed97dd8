import { parseStages, type Stage } from './stages.ts';

/** What one round does to a hole: snug by hand, pulled to a share or stage, tight, or turned over once more. */
export type RoundDeed =
  | { readonly kind: 'snug' }
  | { readonly kind: 'pulled'; readonly share: number }
  | { readonly kind: 'stage'; readonly stage: number }
  | { readonly kind: 'tight' }
  | { readonly kind: 'once around' };

/** Reads the name of a round as the rounds of a joint are named: "snug", "30 %", "100 %", "stage 2", "once around". */
export function readRound(name: string): RoundDeed | undefined {
  const typed = name.trim().toLowerCase();
  if (typed === 'snug' || typed === 'once around') return { kind: typed };
  const share = /^(\d{1,3})\s*%$/.exec(typed)?.[1];
  if (share !== undefined) {
    const percent = Number(share);
    if (percent === 100) return { kind: 'tight' };
    return percent > 0 && percent < 100 ? { kind: 'pulled', share: percent / 100 } : undefined;
  }
  const stage = /^stage ([1-9]\d?)$/.exec(typed)?.[1];
  return stage === undefined ? undefined : { kind: 'stage', stage: Number(stage) };
}

/**
 * The maker's stages of a set after snug, from what was typed of them; empty where there is no more than one torque,
 * because then the usual rounds hold. The first text that reads wins.
 */
export function makerStages(...texts: readonly string[]): readonly Stage[] {
  for (const text of texts) {
    const read = parseStages(text);
    if (!read.ok) continue;
    const stages = read.value.stages.filter((stage) => stage.kind !== 'snug');
    return stages.length > 1 ? stages : [];
  }
  return [];
}
