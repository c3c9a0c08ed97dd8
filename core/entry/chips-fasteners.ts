import { chip, chipOfCondition, chipsOfStow } from './chip.ts';
import { threadsOfSize } from '../fastening/index.ts';
import { couldBeHead, threadDoubt, threadFits, threadsThatFit } from './fits.ts';
import type { Chip, FastenerItem, Thread } from './meaning.ts';
import { lengthText } from './numbers.ts';
import { CAPTION, DRIVE_WORD, HEAD_WORD, kindWord, RENEW_WORD, TREATMENT_WORD } from './text.ts';

function threadCaption(thread: Thread): string {
  const doubt = threadDoubt(thread);
  if (doubt !== null)
    return threadsOfSize(thread.designation).length > 0
      ? CAPTION.noSuchPitch(thread.pitchMm ?? 0, thread.designation)
      : CAPTION.noSuchThread(doubt.near);
  if (thread.threadsPerInch !== null) return CAPTION.perInch(thread.threadsPerInch, thread.pitchAssumed);
  if (thread.pitchMm === null) return CAPTION.pitchUnknown;
  return thread.pitchAssumed ? CAPTION.pitchAssumed(thread.pitchMm) : CAPTION.pitch(thread.pitchMm);
}

const length = (item: FastenerItem): string | null =>
  item.lengthMm === null
    ? null
    : item.lengthUnit === 'in'
      ? lengthText(item.lengthMm, 'in')
      : String(item.lengthMm);

function threadChips(item: FastenerItem): Chip[] {
  const { thread, threadToConfirm, drive } = item;
  const long = length(item);
  if (thread !== null) {
    const label = `${thread.designation}${long === null ? '' : ` × ${long}`}`;
    return [chip(label, threadCaption(thread), thread.pitchMm === null || threadDoubt(thread) !== null)];
  }
  const chips: Chip[] = [];
  if (threadToConfirm !== null)
    chips.push(chip(`${threadToConfirm}?`, CAPTION.confirm(item.threadsPossible), true));
  else if (drive?.style === 'hex external' && drive.size !== null)
    chips.push(chip('?', CAPTION.noThread, true));
  if (item.lengthMm !== null)
    chips.push(chip(lengthText(item.lengthMm, item.lengthUnit ?? 'mm'), CAPTION.long));
  return chips;
}

function headChips(item: FastenerItem): Chip[] {
  const { head, drive, thread } = item;
  const headWord = head === null ? '' : HEAD_WORD[head];
  if (drive === null) return head === null ? [] : [chip(headWord, CAPTION.head)];
  if (drive.size === null)
    return [chip(DRIVE_WORD[drive.style], headWord === '' ? CAPTION.driveKey : headWord)];
  const hex = drive.style === 'hex external';
  const label = hex ? `${headWord === '' ? 'hex' : headWord} ${drive.size}` : drive.size;
  const plain = hex
    ? CAPTION.driveSize
    : [headWord, DRIVE_WORD[drive.style]].filter((word) => word !== '').join(', ');
  if (thread === null) return [chip(label, plain)];
  const fits = threadFits(thread, drive, head);
  if (fits === null) return [chip(label, plain)];
  if (fits) return [chip(label, CAPTION.fits(thread.designation))];
  return [chip(label, CAPTION.misfits(thread.designation, threadsThatFit(drive, head)), true)];
}

function classChips(item: FastenerItem): Chip[] {
  const value = item.propertyClass;
  if (value === null) return [];
  return value.startsWith('grade ')
    ? [chip(value.slice(6), CAPTION.grade)]
    : [chip(value, CAPTION.propertyClass)];
}

function missingChips(item: FastenerItem): Chip[] {
  if (item.missingAsFound === null) return [];
  const among = item.missingAre === 'among';
  const caption = among
    ? CAPTION.missingAmong
    : item.missingAre === 'besides'
      ? CAPTION.missingBesides
      : CAPTION.missing;
  return [
    chip(String(item.missingAsFound), caption, item.missingAre === 'not said' && item.missingAsFound > 0),
  ];
}

function torqueChips(item: FastenerItem): Chip[] {
  const { torque } = item;
  if (torque === null) return [];
  if (torque.byFeel) return [chip('snug', CAPTION.byFeel)];
  if (torque.stages.length > 0)
    return [chip(torque.stages.join(', then ').replaceAll('Nm', 'N·m'), CAPTION.torque)];
  const angle = torque.angleDeg === null ? '' : `${torque.angleDeg}°`;
  if (torque.value === null) return [chip(angle, CAPTION.angle)];
  const other =
    torque.unit === 'Nm' || torque.torqueNm === null ? '' : ` (${Math.round(torque.torqueNm * 10) / 10} N·m)`;
  const value = `${torque.value} ${torque.unit === 'Nm' ? 'N·m' : torque.unit}${other}`;
  return [chip(angle === '' ? value : `${value} + ${angle}`, CAPTION.torque)];
}

/** "13" alone: thirteen, or a head of 13 mm? From 7 mm on, as nobody counts on a smaller head. */
function couldBeWidth({ count, what, name, thread, drive, head, lengthMm, lengths }: FastenerItem): boolean {
  const alone = [name, thread, drive, head, lengthMm].every((one) => one === null) && lengths.length === 0;
  return alone && what === 'unspecified' && count !== null && count >= 7 && couldBeHead(null, count);
}

/** Chips of a fastener set: count first, thread with length, head, class, then what else was said. */
export function chipsOfFasteners(item: FastenerItem): Chip[] {
  const kind = item.what === 'unspecified' ? null : kindWord(item.what, item.count);
  const counted = [item.count === null ? '?' : String(item.count), kind]
    .filter((word) => word !== null)
    .join(' ');
  const countCaption = item.count === null ? CAPTION.countUnknown : CAPTION.count;
  return [
    couldBeWidth(item)
      ? chip(counted, CAPTION.countOrHead, true)
      : chip(counted, item.happened === 'slackened' ? CAPTION.slackened : countCaption, item.count === null),
    ...(item.name === null ? [] : [chip(item.name, CAPTION.holds)]),
    ...threadChips(item),
    ...item.lengths.map((g) =>
      chip(
        lengthText(g.lengthMm, g.unit),
        g.holes.length > 0 ? CAPTION.hole(g.holes) : g.count === null ? CAPTION.long : CAPTION.of(g.count),
      ),
    ),
    ...(item.sizeMm === null ? [] : [chip(`${item.sizeMm} mm`, CAPTION.size)]),
    ...headChips(item),
    ...classChips(item),
    ...(item.leftHand ? [chip('left-hand', CAPTION.leftHand)] : []),
    ...(item.stack.length === 0
      ? []
      : [
          chip(
            item.stack.map((p) => `${p.qty === 1 ? '' : `${p.qty} `}${kindWord(p.what, p.qty)}`).join(' + '),
            CAPTION.stack,
          ),
        ]),
    ...torqueChips(item),
    ...item.treatments.map((treatment) => chip(TREATMENT_WORD[treatment], CAPTION.treated)),
    ...(item.renew === null ? [] : [chip(RENEW_WORD[item.renew], CAPTION.renew)]),
    ...chipsOfStow(item.stow),
    ...missingChips(item),
    ...item.conditions.map(chipOfCondition),
  ];
}
