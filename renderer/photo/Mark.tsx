import { halves, head, outlines, textOf } from '../../core/drawing/mark-shapes.ts';
import type { MarkKind, MarkState } from './types.ts';

const paper = 'var(--mk-paper)';
const ink = 'var(--mk-ink)';

export interface MarkProps {
  readonly kind: MarkKind;
  readonly state: MarkState;
  readonly text: string;
  /** At hand: a ring round it in the accent. */
  readonly at?: boolean;
  readonly size?: number;
  /** Spoken name; left out where the button round it is named. */
  readonly label?: string;
}

/** A mark: what it stands for by its outline, its state by how that is filled. The number is never cut. */
export function Mark({ kind, state, text, at = false, size = 54, label }: MarkProps) {
  const named = label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label };
  return (
    <svg className="mark" width={size} height={size} viewBox="-3 -3 54 54" {...named}>
      {at && <AtHand radius={kind === 'position' ? 28 : 31} />}
      <MarkBody kind={kind} state={state} />
      <MarkText kind={kind} state={state} text={text} />
    </svg>
  );
}

function AtHand({ radius }: { readonly radius: number }) {
  const ring = (stroke: string, width: number) => (
    <circle cx="24" cy="24" r={radius} fill="none" stroke={stroke} strokeWidth={width} />
  );
  return (
    <>
      {ring(ink, 8.5)}
      {ring(paper, 6)}
      {ring('var(--accent)', 4.25)}
    </>
  );
}

function MarkBody({ kind, state }: { readonly kind: MarkKind; readonly state: MarkState }) {
  const untouched = state === 'in' || state === 'slackened';
  const outline = untouched && kind === 'position' ? head : outlines[kind];
  const full = state === 'in' || state === 'tightened' || state === 'paint-checked';
  return (
    <>
      <path d={outline} fill={paper} stroke="rgba(18,17,14,.6)" strokeWidth="10.5" strokeLinejoin="round" />
      {state === 'blocked' && <path d="M4 44 44 4" stroke={paper} strokeWidth="9.5" />}
      {state === 'paint-checked' && <path d="M32 32 45 45" stroke={paper} strokeWidth="14" />}
      <path d={outline} fill={paper} stroke={paper} strokeWidth="8" strokeLinejoin="round" />
      <path
        d={outline}
        fill={full ? ink : paper}
        stroke={ink}
        strokeWidth="3.5"
        strokeDasharray={state === 'left out' ? '6.4 3.8' : undefined}
        strokeDashoffset={state === 'left out' ? 3 : undefined}
      />
      {state === 'in' && kind === 'position' && (
        <circle cx="24" cy="24" r="14.6" fill="none" stroke={paper} strokeWidth="1.75" />
      )}
      {state === 'started' && <HalfFill kind={kind} />}
      {kind === 'temporary' && <circle cx="24" cy="9" r="2.6" fill={full ? paper : ink} />}
      <StateBadge state={state} />
    </>
  );
}

function HalfFill({ kind }: { readonly kind: MarkKind }) {
  return <path d={halves[kind]} fill={ink} stroke={ink} strokeWidth="1" />;
}

function StateBadge({ state }: { readonly state: MarkState }) {
  if (state === 'blocked') return <path d="M6 42 42 6" stroke={ink} strokeWidth="4.5" />;
  if (state === 'paint-checked')
    return (
      <>
        <path d="M31.5 31.5 45 45" stroke={ink} strokeWidth="10.5" />
        <path d="M32.5 32.5 43.5 43.5" stroke={paper} strokeWidth="5" />
      </>
    );
  if (state === 'later')
    return (
      <>
        <circle cx="38" cy="10" r="11.5" fill={paper} />
        <circle cx="38" cy="10" r="8" fill={paper} stroke={ink} strokeWidth="2.75" />
        <path d="M38 5.5V10l3.2 2.2" fill="none" stroke={ink} strokeWidth="2.25" />
      </>
    );
  if (state === 'missing')
    return (
      <>
        <rect x="27.5" y="-.5" width="21" height="21" rx="3" fill={paper} />
        <rect x="29.5" y="1.5" width="17" height="17" rx="1.5" fill={ink} />
        <path
          d="M35 7.4c0-4 6.2-3.9 6.2-.3 0 2-3.1 2.3-3.1 4.9M38.1 14.2v2.1"
          fill="none"
          stroke={paper}
          strokeWidth="2.4"
        />
      </>
    );
  return null;
}

function MarkText({ kind, state, text }: Pick<MarkProps, 'kind' | 'state' | 'text'>) {
  const { size, y, full } = textOf(kind, state, text);
  const edge = state === 'blocked' ? { stroke: paper, strokeWidth: 4.5, paintOrder: 'stroke' } : {};
  return (
    <text x="24" y={y} dy=".355em" textAnchor="middle" fontSize={size} fill={full ? paper : ink} {...edge}>
      {text}
    </text>
  );
}
