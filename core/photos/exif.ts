/** What the tags of a photo say, in the program's own words. */
export interface TagFacts {
  /** `2026-09-01T14:02:03.45`: the wall clock of the camera. Null: not said, or no real time. */
  readonly takenLocal: string | null;
  /** `+02:00`. Null: not said, and then it stays unknown. */
  readonly takenZone: string | null;
  /** UTC milliseconds; only where an offset was said. */
  readonly takenUtc: number | null;
  /** Make and model. */
  readonly camera: string;
  readonly hasLocation: boolean;
  /** EXIF Orientation as it stands, or null. */
  readonly orientation: number | null;
}

/** Tags by group and name, as the reader gives them; nothing in them is believed to have the right type. */
export type Tags = Readonly<Record<string, Readonly<Record<string, unknown>> | undefined>>;

/** One line of clean text; cameras pad with zero bytes and blanks. */
function line(value: unknown): string {
  if (typeof value !== 'string') return '';
  const ended = value.split('\0', 1)[0] ?? '';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
  return ended.replace(/[\x00-\x1f\x7f]/g, ' ').trim();
}

/** Make and model as one; the make is not said twice where the model begins with it. */
export function cameraOf(make: unknown, model: unknown): string {
  const [a, b] = [line(make), line(model)];
  const twice = a !== '' && b.toLowerCase().startsWith(`${a.toLowerCase()} `);
  return (twice ? b : [a, b].filter((part) => part !== '').join(' ')).slice(0, 300);
}

const CLOCK =
  /^(\d{4})[:-](\d{2})[:-](\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,9}))?)?\s*(Z|[+-]\d{2}:?\d{2})?$/;

/** An offset as `+02:00`, or null. Range: -14:00 to +14:00, as the world has them. */
export function zoneOf(value: unknown): string | null {
  const typed = line(value);
  if (typed === 'Z') return '+00:00';
  const match = /^([+-])(\d{1,2}):?(\d{2})$/.exec(typed);
  if (!match) return null;
  const [, sign, hours = '', minutes = ''] = match;
  if (Number(hours) > 14 || Number(minutes) > 59) return null;
  return `${sign}${hours.padStart(2, '0')}:${minutes}`;
}

/** Minutes east of Greenwich of an offset as zoneOf gives it. */
function minutesOf(zone: string): number {
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4, 6));
  return zone.startsWith('-') ? -minutes : minutes;
}

type Clock = Pick<TagFacts, 'takenLocal' | 'takenZone' | 'takenUtc'>;
const UNKNOWN: Clock = { takenLocal: null, takenZone: null, takenUtc: null };

/** A time as cameras write it, with its fraction and offset where they said them. Times that no clock shows are unknown. */
export function clockOf(time: unknown, fraction: unknown, offset: unknown): Clock {
  const match = CLOCK.exec(line(time));
  if (!match) return UNKNOWN;
  const [, year = '', month = '', day = '', hour = '', minute = '', second = '00', inline, tail] = match;
  const whole = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const utc = Date.parse(`${whole}Z`);
  // Engines take the 31st of February for the 3rd of March: only what comes back as it went in is a time.
  if (Number.isNaN(utc) || new Date(utc).toISOString().slice(0, 19) !== whole) return UNKNOWN;
  const digits = /^\d{1,9}$/.exec(line(fraction))?.[0] ?? inline;
  const takenLocal = digits === undefined ? whole : `${whole}.${digits}`;
  const takenZone = zoneOf(offset) ?? zoneOf(tail);
  if (takenZone === null) return { takenLocal, takenZone: null, takenUtc: null };
  const ms = digits === undefined ? 0 : Math.floor(Number(`0.${digits}`) * 1000);
  const takenUtc = utc + ms - minutesOf(takenZone) * 60_000;
  // Cameras with an empty battery say 1970 or before; the record holds times from 1970 on.
  return { takenLocal, takenZone, takenUtc: takenUtc < 0 ? null : takenUtc };
}

function hasPlace(gps: Readonly<Record<string, unknown>>): boolean {
  const finite = (value: unknown): boolean =>
    Array.isArray(value)
      ? value.length > 0 && value.every((part) => Number.isFinite(part))
      : Number.isFinite(value);
  return finite(gps['GPSLatitude']) && finite(gps['GPSLongitude']);
}

/** The few things that are taken from XMP, where EXIF has none: written by editing programs and some phones. */
export function xmpValue(xmp: string, name: string): string | null {
  const escaped = name.replace(/[^\w:]/g, '');
  const found =
    new RegExp(`\\b${escaped}\\s*=\\s*["']([^"']{1,200})["']`).exec(xmp) ??
    new RegExp(`<${escaped}(?:\\s[^>]*)?>\\s*([^<]{1,200}?)\\s*</${escaped}>`).exec(xmp);
  return found?.[1] ?? null;
}

/** When it was taken: the moment of exposure, else of digitizing; EXIF first, then XMP. Never when it was last edited. */
function takenOf(exif: Readonly<Record<string, unknown>>, xmp: string): Clock {
  const tries: (() => Clock)[] = [
    () => clockOf(exif['DateTimeOriginal'], exif['SubSecTimeOriginal'], exif['OffsetTimeOriginal']),
    () => clockOf(xmpValue(xmp, 'exif:DateTimeOriginal'), null, null),
    () => clockOf(exif['CreateDate'], exif['SubSecTimeDigitized'], exif['OffsetTimeDigitized']),
    () => clockOf(xmpValue(xmp, 'photoshop:DateCreated'), null, null),
    () => clockOf(xmpValue(xmp, 'exif:DateTimeDigitized'), null, null),
    () => clockOf(xmpValue(xmp, 'xmp:CreateDate'), null, null),
  ];
  for (const attempt of tries) {
    const clock = attempt();
    if (clock.takenLocal !== null) return clock;
  }
  return UNKNOWN;
}

/** The facts of a photo from its EXIF tags and its XMP text. */
export function tagFacts(tags: Tags, xmp: string): TagFacts {
  const ifd0 = tags['ifd0'] ?? {};
  const exif = tags['exif'] ?? {};
  const camera =
    cameraOf(ifd0['Make'], ifd0['Model']) ||
    cameraOf(xmpValue(xmp, 'tiff:Make'), xmpValue(xmp, 'tiff:Model'));
  const orientation = ifd0['Orientation'];
  return {
    ...takenOf(exif, xmp),
    camera,
    hasLocation: hasPlace(tags['gps'] ?? {}) || xmpValue(xmp, 'exif:GPSLatitude') !== null,
    orientation: typeof orientation === 'number' ? orientation : null,
  };
}
