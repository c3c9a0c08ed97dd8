import { CONDITIONS, DRIVES, FASTENERS, FASTENERS_WITH_HEAD, HEADS } from './words.ts';

/** Words that mean the same on both sides of the ocean and in both trades (common practice, no source). */
const BOTH = `
spanner = spanner, wrench
earth = earth, ground
caliper = caliper, calliper
carburettor = carburettor, carburetor, carb
gearbox = gearbox, transmission
damper = damper, shock absorber, shock
silencer = silencer, muffler
bonnet = bonnet, hood
mudguard = mudguard, fender
lifter = lifter, tappet, follower
sump = sump, oil pan
rocker cover = rocker cover, valve cover, cam cover
inlet manifold = inlet manifold, intake manifold
push rod = push rod, pushrod
petrol = petrol, gasoline
alternator = alternator, generator, dynamo
starter = starter, starter motor
turbo = turbo, turbocharger
aluminium = aluminium, aluminum
tyre = tyre, tire
`;

/** Longest phrase of the tables, words. */
const LONGEST = 4;

let phrases: ReadonlyMap<string, string> | null = null;

/** Every phrase of the tables with the one word that stands for all of its kind. */
function known(): ReadonlyMap<string, string> {
  if (phrases) return phrases;
  const all = new Map<string, string>();
  for (const table of [FASTENERS, FASTENERS_WITH_HEAD, DRIVES, HEADS, CONDITIONS, BOTH])
    for (const line of table.trim().split('\n')) {
      const [sense = '', words = ''] = line.split('=');
      for (const word of words.split(',')) if (!all.has(word.trim())) all.set(word.trim(), sense.trim());
    }
  phrases = all;
  return all;
}

const singular = (phrase: string): string => phrase.replace(/(?<=[a-z]{2})s$/, '');

/** Text made plain for comparing: small letters, no hyphens between letters, "M8x1.25" however it was written. */
export function plainText(text: string): string {
  return text
    .toLowerCase()
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/([\d.])\s*[x×*]\s*(?=\d)/g, '$1x')
    .replace(/(?<=\p{L})-(?=\p{L})/gu, ' ')
    .replace(/\b(bag|tin|tray|shelf)\s+([\p{L}\p{N}]+)/gu, '$1:$2')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * The words of a text cut into what both trades call by several names, each by its one word ("cotter pin" and "split
 * pin" both give "split pin"), and the rest as it is. `text` as `plainText` gives it.
 */
export function sameWords(text: string): {
  readonly senses: readonly string[];
  readonly rest: readonly string[];
} {
  const words = text.split(/[^\p{L}\p{N}.:/#]+/u).filter((word) => word !== '');
  const senses: string[] = [];
  const rest: string[] = [];
  for (let i = 0; i < words.length; ) {
    let taken = 0;
    for (let length = Math.min(LONGEST, words.length - i); length > 0 && taken === 0; length -= 1) {
      const phrase = words.slice(i, i + length).join(' ');
      const sense = known().get(phrase) ?? known().get(singular(phrase));
      if (sense === undefined) continue;
      senses.push(sense);
      taken = length;
    }
    if (taken === 0) rest.push(words[i] ?? '');
    i += Math.max(1, taken);
  }
  return { senses, rest };
}
