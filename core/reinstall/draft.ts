import type { Row } from '../model/tables.ts';
import type { Situation } from './situation.ts';
import { titleOf } from './situation.ts';
import type { Finding, FindingCode, Severity } from './types.ts';

/** A finding before it is placed in the list. */
export interface Draft {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly subjects: readonly string[];
  readonly sentence: string;
  readonly clears: string;
  /** Node that it lies on; -1 = the job as a whole. */
  readonly node: number;
  /** What it depends on beside its sentence: an acceptance holds only while all of it stays the same. */
  readonly facts?: readonly unknown[];
  /** Nodes that may not be done while it is open, beside what lies above it. */
  readonly holds?: readonly number[];
}

/** 53-bit hash of a text as hex (cyrb53, public domain, from memory): tells facts apart, protects nothing. */
function digestOf(text: string): string {
  let a = 0xdeadbeef;
  let b = 0x41c6ce57;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    a = Math.imul(a ^ c, 2654435761);
    b = Math.imul(b ^ c, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (4294967296 * (2097151 & b) + (a >>> 0)).toString(16).padStart(14, '0');
}

const ORDER: Record<Severity, number> = { stop: 0, warn: 1, note: 2 };

/** Places findings in the list: key, digest, the last step at which each can be mended, who passed it. Gravest first. */
export function placeFindings(at: Situation, drafts: readonly Draft[]): Finding[] {
  const accepted = new Map<string, Row<'accepted'>>();
  for (const row of at.state.accepted) accepted.set(`${row.finding}\n${row.digest}`, row);
  const place = new Map<number, number>();
  at.ordered.order.forEach((node, k) => place.set(node, k));
  const seen = new Set<string>();
  const found: Finding[] = [];
  for (const draft of drafts) {
    const key = `${draft.code}:${draft.subjects.join('+')}`.slice(0, 300);
    if (seen.has(key)) continue;
    seen.add(key);
    const digest = digestOf(
      JSON.stringify([draft.code, draft.severity, draft.subjects, draft.sentence, draft.facts ?? []]),
    );
    const row = accepted.get(`${key}\n${digest}`);
    found.push({
      code: draft.code,
      severity: draft.severity,
      subjects: draft.subjects,
      sentence: draft.sentence,
      clears: draft.clears,
      stepId: at.graph.nodes[draft.node]?.id ?? null,
      holds: (draft.holds ?? []).map((node) => at.graph.nodes[node]?.id ?? ''),
      latestStep: latestStep(at, draft.node, place),
      key,
      digest,
      accepted: row ? { personId: row.personId, why: row.why, at: row.at } : null,
    });
  }
  return found
    .map((finding) => ({ finding, at: place.get(at.graph.numberOf.get(finding.stepId ?? '') ?? -1) ?? -1 }))
    .sort(
      (a, b) =>
        ORDER[a.finding.severity] - ORDER[b.finding.severity] ||
        a.at - b.at ||
        (a.finding.key < b.finding.key ? -1 : a.finding.key > b.finding.key ? 1 : 0),
    )
    .map(({ finding }) => finding);
}

/** The first step in the list that covers this one: once that is done, mending means taking off again. */
function latestStep(at: Situation, node: number, place: ReadonlyMap<number, number>): string | null {
  if (node < 0) return null;
  let best = -1;
  for (let k = at.out.start[node] as number; k < (at.out.start[node + 1] as number); k++) {
    if (!at.graph.edges[at.out.edge[k] as number]?.covers) continue;
    const above = at.out.to[k] as number;
    if (best < 0 || (place.get(above) ?? 0) < (place.get(best) ?? 0)) best = above;
  }
  return best < 0 ? null : (at.graph.nodes[best]?.id ?? null);
}

/** "Front cover" or "step 3": how a step is called in a sentence. */
export function stepName(at: Situation, node: number): string {
  return titleOf(at.graph, node) || `removal ${(at.graph.nodes[node]?.index ?? 0) + 1}`;
}
