import {
  appliedTorque,
  formatTorque,
  formatTorqueBoth,
  fromNewtonMetres,
  parseAngle,
  parseLength,
  parseReach,
  parseTorque,
  toNewtonMetres,
  wrenchSetting,
} from '../../fastening/index.ts';
import {
  basisLines,
  missing,
  optional,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  { name: 'torque', also: ['t'], says: 'torque wanted at the fastener: 100 N·m, 135 lbf·in (bare: N·m)' },
  {
    name: 'set',
    also: ['setting', 'inverse'],
    says: 'instead: what the wrench is set to; answers what the fastener gets',
  },
  { name: 'wrench', also: ['length', 'l', 'L'], says: 'grip to drive square: 500, 12 in' },
  {
    name: 'extension',
    also: ['offset', 'e', 'E'],
    says: 'drive square to fastener: 100; "1.5 in back" or =-1.5 when it points back to the grip',
  },
  { name: 'angle', also: ['a'], says: 'angle between them in degrees: 0 in line, 90 across' },
];

function runExtension(options: Options): VerbAnswer {
  const opened = readOptions(extension, options);
  if (!opened.ok) return opened;
  const get = opened.value.get;
  const inverse = get('set') !== undefined;
  const typed = get('torque') ?? get('set');
  const wrench = get('wrench');
  const reach = get('extension');
  if (typed === undefined || (inverse && get('torque') !== undefined))
    return missing('either --torque or --set');
  if (wrench === undefined) return missing('the length of the wrench (--wrench 500)');
  if (reach === undefined) return missing('the length of the extension (--extension 100)');
  const torque = parseTorque(typed, 'N·m');
  const wrenchMm = parseLength(wrench);
  const extensionMm = parseReach(reach);
  const angle = optional(get('angle'), parseAngle);
  if (!torque.ok) return torque;
  if (!wrenchMm.ok) return wrenchMm;
  if (!extensionMm.ok) return extensionMm;
  if (!angle.ok) return angle;
  const { unit } = torque.value;
  const found = (inverse ? appliedTorque : wrenchSetting)({
    torque: fromNewtonMetres(torque.value.torqueNm, unit),
    wrenchLength: wrenchMm.value.lengthMm,
    extensionLength: extensionMm.value,
    angleDeg: angle.value,
    torqueUnit: unit,
    lengthUnit: 'mm',
  });
  if (!found.ok) return found;
  const torqueNm = toNewtonMetres(found.value.torque, unit);
  const shown =
    unit === 'N·m'
      ? formatTorqueBoth(torqueNm, 4)
      : `${formatTorque(torqueNm, unit, 4)} (${formatTorque(torqueNm, 'N·m', 4)})`;
  return {
    ok: true,
    value: { ...found.value, unit, torqueNm, [inverse ? 'appliedTorque' : 'setting']: found.value.torque },
    text: [
      inverse
        ? `The fastener gets ${shown}.`
        : `Wrench setting: ${shown} for ${/[a-z]/i.test(torque.value.typed) ? torque.value.typed : `${torque.value.typed} ${unit}`} at the fastener.`,
      ...basisLines(found.value),
    ],
  };
}

/** `extension`: wrench setting with a crowfoot or offset extension. */
export const extension: HandbookVerb = {
  name: 'extension',
  says: 'wrench setting with a crowfoot or an offset extension',
  options: OPTIONS,
  run: runExtension,
};
