import { readEntry, type EntryItem, type Thread } from '../../core/entry/index.ts';

/** A thread in one word: "M10x1.5" as typed, "M10 (1.5)" assumed, "M10 (?)" unknown; inch threads with their count. */
function threadWord({ designation, system, pitchMm, threadsPerInch, pitchAssumed }: Thread): string {
  if (system !== 'metric') return pitchAssumed ? `${designation} (${threadsPerInch ?? '?'})` : designation;
  if (pitchMm === null) return `${designation} (?)`;
  return pitchAssumed ? `${designation} (${pitchMm})` : `${designation}x${pitchMm}`;
}

const SILENT: Readonly<Record<string, unknown>> = {
  what: 'unspecified',
  happened: 'off',
  missingAre: 'not said',
};
/** Follow from the drive, and have tests of their own. */
const DERIVED = new Set(['threadsPossible', 'threadToConfirm']);

function lean(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(lean);
  if (typeof value !== 'object' || value === null) return value;
  const out: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) {
    if (DERIVED.has(key) || inner === null || inner === false || SILENT[key] === inner) continue;
    if (key === 'unit' && inner === 'mm' && !('value' in value)) continue;
    if (key === 'lengthUnit' && inner === 'mm') continue;
    if (Array.isArray(inner) && inner.length === 0) continue;
    if (key === 'thread') out[key] = threadWord(inner as Thread);
    else if (key === 'drive') out[key] = driveWord(inner as { style: string; size: string | null });
    else if (key === 'stow') out[key] = stowWord(inner as { kind: string; label: string | null });
    else out[key] = lean(inner);
  }
  return out;
}

const driveWord = ({ style, size }: { style: string; size: string | null }): string =>
  size === null ? style : `${style} ${size}`;
const stowWord = ({ kind, label }: { kind: string; label: string | null }): string =>
  label === null ? kind : `${kind} ${label}`;

/** The items of a line with only what was said in them: exact, so that a field too many fails as well. */
export function said(line: string): unknown[] {
  return readEntry(line).items.map(lean);
}

/** What was not understood, each with its suggestion: "grezed → greased", "foo". */
export function notUnderstood(line: string): string[] {
  return readEntry(line)
    .tokens.filter((token) => !token.understood)
    .map((token) => (token.suggestion === undefined ? token.text : `${token.text} → ${token.suggestion}`));
}

/** A fastener set with these fields and nothing else said. */
export const set = (fields: Readonly<Record<string, unknown>>): unknown => ({ kind: 'fasteners', ...fields });
export const part = (name: string, fields: Readonly<Record<string, unknown>> = {}): unknown => ({
  kind: 'part',
  name,
  ...fields,
});
export const note = (text: string): EntryItem => ({ kind: 'note', text });
