import type { Row } from './tables.ts';

/** Micrometres as millimetres without a tail of zeros: "25", "1.25". */
export function inMm(um: number): string {
  return String(um / 1000);
}

/** A specification as the trade writes it: "bolt M8 × 1.25 × 25, hex 13 mm, class 8.8". Unknown fields are left out. */
export function describeSpec(spec: Row<'spec'>): string {
  const kind = spec.kind === 'unknown' ? 'fastener' : spec.kind;
  const pitch =
    spec.pitchUm !== null && spec.thread !== null && /^M\d/i.test(spec.thread) && spec.threadKnown;
  const size = [
    spec.thread === null ? null : spec.threadKnown || spec.pitchUm !== null ? spec.thread : `${spec.thread}?`,
    pitch ? inMm(spec.pitchUm ?? 0) : null,
    spec.lengthUm === null ? null : `${inMm(spec.lengthUm)} mm`,
  ].filter((word) => word !== null);
  const drive =
    spec.driveTyped !== ''
      ? spec.driveTyped
      : spec.driveSizeUm === null
        ? ''
        : `${inMm(spec.driveSizeUm)} mm`;
  const rest = [
    [spec.head ?? spec.drive ?? '', drive].filter((word) => word !== '').join(' '),
    spec.grade === null ? '' : `class ${spec.grade}`,
    spec.hand === 'left' ? 'left-hand thread' : '',
    spec.more,
  ].filter((word) => word.trim() !== '');
  return [[kind, size.join(' × ')].filter((word) => word !== '').join(' '), ...rest].join(', ');
}
