import { parseDecimal } from './numbers.ts';
import { MAKER_FIRST, good, refuse, showNumber, type Basis, type Outcome } from './outcome.ts';
import { parseLength } from './units.ts';

export interface ExtensionInput {
  /** Torque wanted at the fastener, or set on the wrench when `inverse`; any unit of torque. */
  readonly torque: number;
  /** Wrench from the middle of the grip to the drive square; same unit as the extension. */
  readonly wrenchLength: number;
  /** Extension from the drive square to the fastener; negative when it points back towards the grip. */
  readonly extensionLength: number;
  /** Angle between wrench and extension in degrees; 0 in line, 90 across. */
  readonly angleDeg?: number | undefined;
  /** Units as they are said in the list of inputs. */
  readonly torqueUnit?: string | undefined;
  readonly lengthUnit?: string | undefined;
}

export interface ExtensionResult extends Basis {
  /** What the wrench is set to (or, inverse, what the fastener gets), in the unit that was given. */
  readonly torque: number;
  readonly effectiveLength: number;
}

/**
 * Wrench setting with a crowfoot or an offset extension: setting = T·L / (L + E·cos a).
 * Sources: FAA AC 43.13-1B figure 7-2, TM 9-254. L above 0; L + E·cos a above a tenth of L; angle from −180 to 180°.
 * A straight extension along the socket's axis changes nothing and is not meant.
 */
export function wrenchSetting(input: ExtensionInput): Outcome<ExtensionResult> {
  return reckon(input, false);
}

/** The inverse: torque that the fastener gets when the wrench is set to S. */
export function appliedTorque(input: ExtensionInput): Outcome<ExtensionResult> {
  return reckon(input, true);
}

function reckon(input: ExtensionInput, inverse: boolean): Outcome<ExtensionResult> {
  const { torque, wrenchLength, extensionLength } = input;
  const angleDeg = input.angleDeg ?? 0;
  if (!(torque > 0)) return refuse('extension.torque', 'a torque above 0', torque);
  if (!(wrenchLength > 0)) return refuse('extension.length', 'a wrench length above 0', wrenchLength);
  if (!Number.isFinite(extensionLength))
    return refuse('extension.length', 'an extension length', extensionLength);
  if (!(Math.abs(angleDeg) <= 180))
    return refuse('extension.angle', 'an angle from −180 to 180 degrees', angleDeg);
  const reach = extensionLength * exactCos(angleDeg);
  const effectiveLength = wrenchLength + reach;
  if (effectiveLength < 0.1 * wrenchLength) {
    return refuse(
      'extension.length',
      `an extension that points back by less than 90 % of the wrench (${showNumber(0.9 * wrenchLength)})`,
      showNumber(-reach),
    );
  }
  const factor = wrenchLength / effectiveLength;
  return good({
    torque: inverse ? torque / factor : torque * factor,
    effectiveLength,
    formula: inverse ? 'T = S · (L + E·cos a) / L' : 'setting = T · L / (L + E·cos a)',
    inputs: [
      `${inverse ? 'S' : 'T'} ${showNumber(torque)}${unit(input.torqueUnit)}`,
      `L ${showNumber(wrenchLength)}${unit(input.lengthUnit)} from grip to drive`,
      `E ${showNumber(extensionLength)}${unit(input.lengthUnit)}`,
      `a ${showNumber(angleDeg)}°`,
    ],
    source: 'FAA AC 43.13-1B figure 7-2, TM 9-254',
    limits: [
      'L runs from the middle of the grip to the drive square; hold the wrench there.',
      'For wrenches that click or bend by the force at the grip; at 90° nothing changes.',
    ],
    cautions: [MAKER_FIRST],
  });
}

function unit(name: string | undefined): string {
  return name === undefined ? '' : ` ${name}`;
}

/** cos with 90° exactly 0, so that a right-angle adapter needs no correction to the last digit. */
function exactCos(angleDeg: number): number {
  return Math.abs(angleDeg) === 90 ? 0 : Math.cos((angleDeg * Math.PI) / 180);
}

/** Reading when a self-locking nut drags: wanted torque plus the drag on the last turn before seating. Source: AC 43.13-1B 7-40. */
export function readingWithDrag(torque: number, drag: number): Outcome<number> {
  if (!(torque > 0)) return refuse('drag.torque', 'a torque above 0', torque);
  return drag >= 0 ? good(torque + drag) : refuse('drag.drag', 'a drag of 0 or more', drag);
}

/** A length that may be negative, because an extension may point back towards the grip: "-1.5 in", "1.5 in back". */
export function parseReach(text: string): Outcome<number> {
  const back = /^[-\u2212]|\bback(wards)?\b/i.test(text.trim());
  const bare = text
    .replace(/^\s*[-\u2212]\s*/, '')
    .replace(/\bback(wards)?\b/i, '')
    .trim();
  if (/^0+([.,]0+)?\s*(mm|in|")?$/i.test(bare)) return good(0);
  const length = parseLength(bare);
  if (!length.ok) return length;
  return good(back ? -length.value.lengthMm : length.value.lengthMm);
}

/** An angle in degrees: "45", "45°", "45 deg". */
export function parseAngle(text: string): Outcome<number> {
  const number = parseDecimal(text.replace(/\s*(°|deg(rees?)?)\s*$/i, ''));
  return number.ok ? number : refuse('extension.angle', 'an angle in degrees such as 45', text.trim());
}
