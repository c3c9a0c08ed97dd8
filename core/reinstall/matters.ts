import type { Matter } from '../fastening/index.ts';

/**
 * Words by which a joint is known to matter: where it comes loose or breaks, somebody is hurt. Common practice, no source;
 * kept to words that hardly mean anything else, because a false alarm is a defect like a miss.
 */
const WORDS: readonly (readonly [RegExp, Matter])[] = [
  [/\bbrakes?\b|\bcall?ipers?\b/, 'brakes'],
  [/\bsteering\b|\b(track|tie) ?rods?\b/, 'steering'],
  [/\bsuspension\b|\bwishbones?\b|\bcontrol arms?\b/, 'suspension'],
  [
    /\bflywheels?\b|\bprop ?shafts?\b|\bcon(necting)?[ -]?rods?\b|\bgrinding wheels?\b|\bsaw blades?\b/,
    'rotating',
  ],
  [/\bpressure vessels?\b|\bhydraulic accumulators?\b/, 'pressure'],
  [/\bfuel (rail|pump|line|pipe)s?\b|\binjectors?\b/, 'fuel'],
  [/\bhoists?\b|\blifting (eye|hook|beam|lug)s?\b|\bload hooks?\b/, 'lifting'],
  [/\bbus ?bars?\b/, 'electrical power'],
];

/** Where a joint matters, by the names that people gave it; what the user marked himself comes first. */
export function mattersOf(names: readonly string[], marked: boolean): readonly Matter[] {
  const text = names.join(' ').toLowerCase();
  const said = WORDS.flatMap(([words, matter]) => (words.test(text) ? [matter] : []));
  return marked ? ['by the user', ...said] : said;
}
