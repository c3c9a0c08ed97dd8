import {
  formatLength,
  formatTorqueBoth,
  fromNewtonMetres,
  parseAngle,
  parseLength,
  parseReach,
  parseTorque,
  toNewtonMetres,
  wrenchSetting,
} from '../../../core/fastening/index.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, basisOf, Reading } from './answer.ts';

const FIELDS = ['torque', 'wrench', 'reach', 'angle'] as const;

/** What the wrench is set to with a crowfoot or an offset extension. */
const extension: Answering = (typed) => {
  const reading = new Reading(typed);
  const torque = reading.read('torque', (text) => parseTorque(text, 'N·m'));
  const wrench = reading.read('wrench', (text) => parseLength(text));
  const reach = reading.read('reach', parseReach);
  const angle = reading.read('angle', parseAngle);
  if (!torque || !wrench || reach === undefined) return reading.end(null);
  const { unit } = torque;
  const found = wrenchSetting({
    torque: fromNewtonMetres(torque.torqueNm, unit),
    wrenchLength: wrench.lengthMm,
    extensionLength: reach,
    angleDeg: angle,
    torqueUnit: unit,
    lengthUnit: 'mm',
  });
  const field = !found.ok && found.code === 'extension.angle' ? 'angle' : 'reach';
  const setting = reading.take(field, found);
  if (!setting) return reading.end(null);
  const both = formatTorqueBoth(toNewtonMetres(setting.torque, unit), 4);
  const [, other = ''] = unit === 'N·m' ? (/\((.*)\)/.exec(both) ?? []) : ['', both];
  return reading.end(
    answerOf({
      figure: { value: String(Number(setting.torque.toPrecision(4))), unit, other },
      whose: say.settingFor(torque.typed),
      says: [
        say.effective(formatLength(setting.effectiveLength, 0)),
        ...(Math.abs(angle ?? 0) === 90 ? [say.rightAngle] : []),
      ],
      basis: basisOf(setting),
    }),
  );
};

export const extensionTopic = { topic: 'extension' as const, fields: FIELDS, answer: extension };
