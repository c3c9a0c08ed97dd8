import type { Drive, FastenerItem, Thread, Torque } from './meaning.ts';
import { inchText, lengthText } from './numbers.ts';
import { isPitch } from './scan-thread.ts';
import { isSized } from './take-fastener.ts';
import { DRIVE_WORD, HEAD_WORD, kindWord, NUT_HEADS, RENEW_WORD, TREATMENT_WORD } from './text.ts';
import { quote, writeCondition, writeStow, type Style } from './write-words.ts';

type Coarse = (diameterMm: number) => number | undefined;

function writeThread(thread: Thread, coarse: Coarse): string {
  if (thread.system !== 'metric') return thread.designation;
  if (thread.pitchMm === null) {
    return coarse(Number(thread.designation.slice(1))) === undefined
      ? thread.designation
      : `${thread.designation} fine`;
  }
  return thread.pitchAssumed ? thread.designation : `${thread.designation}x${thread.pitchMm}`;
}

/** "x35" behind the thread where it can be nothing but the length; else null, and it is said in words. */
function lengthBehind(item: FastenerItem): string | null {
  const { thread, lengthMm, lengthUnit } = item;
  if (thread === null || lengthMm === null) return null;
  if (thread.system === 'unified') {
    if (lengthUnit === 'mm') return ` x ${lengthMm} mm`;
    // The mark keeps a whole number of inches apart from a fraction that follows.
    const text = inchText(lengthMm);
    return ` x ${text}${text.includes('/') ? '' : '"'}`;
  }
  if (thread.system !== 'metric' || lengthUnit !== 'mm' || thread.pitchMm === null) return null;
  return isPitch(Number(thread.designation.slice(1)), lengthMm) ? null : `x${lengthMm}`;
}

function writeDrive(drive: Drive): string {
  if (drive.size === null) return DRIVE_WORD[drive.style];
  return drive.acrossFlatsMm === null ? drive.size : `${drive.size} ${DRIVE_WORD[drive.style]}`;
}

/** Head and drive together: "hex 16 mm", "flange 10 mm", "pan head PH2", "13 mm AF". */
function writeHeadAndDrive(item: FastenerItem): string[] {
  const { head, drive } = item;
  const headWord = head === null || NUT_HEADS.has(head) ? [] : [HEAD_WORD[head]];
  if (drive === null) return headWord;
  if (
    drive.style === 'hex external' &&
    drive.acrossFlatsMm !== null &&
    drive.size !== null &&
    item.what !== 'set screw'
  ) {
    if (head === 'hex' || head === 'flange') return [`${HEAD_WORD[head]} ${drive.size}`];
    if (head === null) return [`${drive.size} AF`];
  }
  // "flange hex key" would be a flange hex and a key.
  return head === 'flange' ? [writeDrive(drive), ...headWord] : [...headWord, writeDrive(drive)];
}

/** Count, thread, kind, head and drive: the words that stand together without commas. */
function writeMain(item: FastenerItem, style: Style, coarse: Coarse): string {
  const thread =
    item.thread === null ? null : `${writeThread(item.thread, coarse)}${lengthBehind(item) ?? ''}`;
  const turning = writeHeadAndDrive(item);
  const nutHead = item.head !== null && NUT_HEADS.has(item.head) ? `${HEAD_WORD[item.head]} ` : '';
  // A lone "flange" is a part.
  const headless = turning.length === 0 || (item.drive === null && item.head === 'flange');
  const bare = thread === null && headless && (item.count === null || item.name !== null);
  const kind = item.what === 'unspecified' && !bare ? null : `${nutHead}${kindWord(item.what, item.count)}`;
  const name = item.name === null ? null : `for ${style === 'quoted' ? quote(item.name) : item.name}`;
  const size = item.sizeMm !== null && isSized(item.what) ? `${item.sizeMm} mm` : null;
  return [
    item.happened === 'slackened' ? 'slackened' : null,
    item.count,
    thread,
    kind,
    size,
    ...(isSized(item.what) ? [] : turning),
    name,
  ]
    .filter((word) => word !== null)
    .join(' ');
}

function writeLengths(item: FastenerItem): string[] {
  if (item.lengthMm !== null) {
    return lengthBehind(item) === null ? [`${lengthText(item.lengthMm, item.lengthUnit ?? 'mm')} long`] : [];
  }
  return item.lengths.map(({ count, lengthMm, unit, holes }) => {
    const length = `${lengthText(lengthMm, unit)} long`;
    if (holes.length > 0) return `${holes.length > 1 ? 'holes' : 'hole'} ${holes.join(' and ')} ${length}`;
    return count === null ? length : `${count} of them ${length}`;
  });
}

function writeTorque(torque: Torque): string {
  if (torque.byFeel) return 'by feel';
  if (torque.stages.length > 0) return torque.stages.join(' then ');
  const angle = torque.angleDeg === null ? '' : `${torque.angleDeg}°`;
  if (torque.value === null) return angle;
  return `${torque.value} ${torque.unit}${angle === '' ? '' : ` + ${angle}`}`;
}

function writeMissing(item: FastenerItem): string[] {
  if (item.missingAsFound === null) return [];
  const among = item.missingAre === 'among' ? ' of them' : item.missingAre === 'besides' ? ' more' : '';
  const rest = item.missingAsFound - item.missingHoles.length;
  const holes = item.missingHoles.map((hole) => `hole ${hole} missing as found`);
  return rest > 0 || holes.length === 0 ? [...holes, `${rest}${among} missing as found`] : holes;
}

function writeClass(propertyClass: string, style: Style): string {
  if (style === 'quoted') return `class ${quote(propertyClass)}`;
  return /^grade /.test(propertyClass) ? propertyClass : `class ${propertyClass}`;
}

/** Writes a fastener set in trade notation: what stands together first, then each description behind its comma. */
export function writeFasteners(item: FastenerItem, style: Style, coarse: Coarse): string {
  const stack = item.stack.map(({ what, qty }) => `${qty === 1 ? '' : `${qty} `}${kindWord(what, qty)}`);
  return [
    writeMain(item, style, coarse),
    // "wood screws 4 mm hex key": the size would be the key's, were it not for the comma.
    ...(isSized(item.what) ? [writeHeadAndDrive(item).join(' ')].filter((words) => words !== '') : []),
    ...writeLengths(item),
    ...(stack.length > 0 ? [`stack ${stack.join(' + ')}`] : []),
    ...(item.propertyClass === null ? [] : [writeClass(item.propertyClass, style)]),
    ...(item.leftHand ? ['LH'] : []),
    ...item.treatments.map((treatment) => TREATMENT_WORD[treatment]),
    ...(item.torque === null ? [] : [writeTorque(item.torque)]),
    ...(item.renew === null ? [] : [RENEW_WORD[item.renew]]),
    ...writeStow(item.stow, style),
    ...writeMissing(item),
    ...item.conditions.map(writeCondition),
  ].join(', ');
}
