import type { Finding, Plan, Step } from '../reinstall/index.ts';

const SIGN: Record<Step['state'], string> = {
  done: '[x]',
  ready: '[ ]',
  behind: '[.]',
  waiting: '[w]',
  held: '[!]',
};

function stepLines(step: Step, at: number): string[] {
  const name = step.title === '' ? step.kind : step.title;
  const head = `${String(at).padStart(3)} ${SIGN[step.state]} ${step.number === null ? '' : `${step.number} `}${name}${step.state === 'done' ? '' : ` (${step.state}${step.why === '' ? '' : `: ${step.why}`})`}`;
  if (step.state === 'done') return [head];
  return [
    head,
    ...step.cautions.map((caution) => `        Caution: ${caution}`),
    ...step.actions.map((action) => `        ${action.done ? 'x' : '-'} ${action.sentence}`),
    ...step.notes.map((note) => `        “${note}”`),
  ];
}

const findingLine = (finding: Finding): string =>
  `${finding.severity.toUpperCase().padEnd(4)} ${finding.sentence} ${finding.clears}${finding.accepted ? ' (passed by name)' : ''} [${finding.key}]`;

/** The reinstall list as lines: steps in order, then the open points. */
export function planLines(plan: Plan): string[] {
  const { depth } = plan;
  return [
    `${depth.off} off, ${depth.back} back, ${depth.left} left.`,
    ...plan.steps.flatMap((step, i) => stepLines(step, i + 1)),
    ...(plan.findings.length > 0 ? ['', 'Open points'] : []),
    ...plan.findings.map(findingLine),
  ];
}
