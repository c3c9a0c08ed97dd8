import type { EntryItem, MadeSafeItem } from './meaning.ts';
import { QUOTED, unquote } from './scan-value.ts';
import { ENERGY_WORDS } from './vocabulary.ts';

/** Reads a stretch as one whole item, or null when it is none. */
export type Reader = (stretch: string) => EntryItem | null;

/** A pattern for a whole stretch. */
export const only = (source: string): RegExp => new RegExp(`^(?:${source})$`, 'isu');

const SAFE_PREFIX = only(
  String.raw`(?:made safe|make safe|safe|isolated)(?:\s*\((\w+)\))?\s*:?\s+(?:${QUOTED}|(.+))`,
);

/** "my lock", "lock 7", "her padlock": whose it is or which number it has; a lock without either may be a door's. */
const OWN = String.raw`(?:my|our|his|her|their|own|\p{L}+[’']s)(?: own)?`;
const LOCK = String.raw`(?:${OWN} (?:pad)?(?:locks?|tags?)(?: [\p{L}\p{N}]*\p{N})?|(?:pad)?locks? (?:no\.? ?)?(?:[\p{L}\p{N}]*\p{N}|\p{L}(?!\p{L})))`;
/** "locked", "tagged out", "locked off and tagged". */
const LOCKED = String.raw`(?:pad)?(?:locked|tagged)(?: (?:out|off|up))?(?: (?:and|&) (?:pad)?(?:locked|tagged)(?: (?:out|off|up))?)*`;
const SWITCH = String.raw`(?:isolator|disconnector|main switch|mains switch|breaker|circuit breaker)s?`;
const STATE = String.raw`(?:off|open|opened|isolated|pulled|out|drawn|disconnected|unplugged|dead|${LOCKED})`;
/** "breaker cover off": what covers a switch comes off like any part. */
const NO_COVER = String.raw`(?!.*\b(?:cover|lid|box|panel|door|guard|bracket|plate)\b)`;

/** What says by itself that a lock hangs on something: electricity, where no other energy is named. */
const LOCK_PHRASES = [
  String.raw`${LOCK}(?: is| are)? (?:on|fitted|in place)(?:\s.+)?`,
  String.raw`lock(?:ed)? ?(?:out|off)(?:\s.+)?`,
  LOCKED,
].map(only);
const SAFE_PHRASES = [
  String.raw`battery (?:(?:earth|ground|negative|neg|minus|lead|leads|terminals?|cable|clamp)\s)*(?:is |was )?(?:off|disconnected|isolated)`,
  String.raw`${NO_COVER}(?:mains|power|supply|electrics|electricity|breaker|isolator|main switch|circuit|fuses?)\b(?:\s\p{L}+){0,3}\s(?:off|isolated|pulled|out|drawn|disconnected|unplugged|dead|locked|locked out)`,
  String.raw`(?:[\p{L}\p{N}]+\s){0,2}${SWITCH}(?:\s(?:is|was|are|were|switched|turned))*\s${STATE}(?:(?: and| &)? ${STATE})*`,
  String.raw`unplugged(?: from (?:the )?(?:mains|wall|socket))`,
  String.raw`(?:\p{L}+\s){0,2}(?:pressure|air|steam|gas|water|hydraulics|accumulator|vacuum)(?:\s(?:is|was|supply))?\s(?:let off|let down|released|relieved|vented|bled off|bled down|dumped|off|shut|shut off|turned off|isolated)`,
  String.raw`depressuri[sz]ed(?:\s.+)?`,
  String.raw`(?:\p{L}+\s){0,2}springs?(?:\s(?:is|was|are))?\s(?:caged|compressed|released|relaxed|unloaded|let down|held)(?:\s(?:with|by)\s.+)?`,
  String.raw`(?:\p{L}+\s){0,3}(?:up on|on) (?:\d+ |an? |the |two |four )?(?:axle |jack |safety )?stands?`,
  String.raw`(?:the )?(?:load|ram|table|arm|boom|lift|hoist|beam)(?:\s(?:is|was))?\s(?:lowered|propped|supported|blocked|slung|down|pinned)(?:\s.+)?`,
  String.raw`(?:wheels? )?chocked(?:\s.+)?`,
  String.raw`(?:\p{L}+\s){0,3}(?:valve|tap|cock|stopcock|stop cock)(?:\s(?:is|was))?\s(?:shut|shut off|closed|turned off)`,
  String.raw`(?:ignition off|key out|airbags? (?:disabled|isolated)|parking brake on|hand ?brake on)`,
  String.raw`(?:left to cool|cooled down|let cool|left to go cold)`,
].map(only);

function energyOf(how: string): MadeSafeItem['energy'] {
  const named = ENERGY_WORDS.find(([, words]) => words.test(how))?.[0];
  if (named !== undefined) return named;
  return LOCK_PHRASES.some((phrase) => phrase.test(how)) ? 'electricity' : 'other';
}

/** "mains plug drawn", "my lock on isolator", "made safe (pressure): valve 3 shut". */
export const madeSafe: Reader = (stretch) => {
  const prefixed = SAFE_PREFIX.exec(stretch);
  if (prefixed) {
    const how = prefixed[2] === undefined ? (prefixed[3] ?? '').trim() : unquote(prefixed[2]);
    const named = [...ENERGY_WORDS.map(([energy]) => energy), 'other' as const].find(
      (e) => e === prefixed[1],
    );
    return { kind: 'made safe', energy: named ?? energyOf(how), how };
  }
  if (![...SAFE_PHRASES, ...LOCK_PHRASES].some((phrase) => phrase.test(stretch))) return null;
  return { kind: 'made safe', energy: energyOf(stretch), how: stretch };
};

const LOCK_BEHIND = new RegExp(
  String.raw`^(?:,\s*(?:(?:and )?${LOCKED}|(?:pad)?(?:lock|tag)s? (?:on|fitted|in place)|${LOCK}(?: (?:on|fitted|in place)(?: [\p{L}\p{N} ]+)?)?)(?=\s*(?:[,;\n]|$)))+`,
  'iu',
);

/** ", lock 7", ", locked and tagged" right behind what was made safe: it tells how, and is no part that came off. */
export const lockBehind = (rest: string): string => LOCK_BEHIND.exec(rest)?.[0] ?? '';

/** What was made safe with the lock on it; the lock may name the energy that was not said before. */
export function withLock(item: MadeSafeItem, lock: string): MadeSafeItem {
  if (lock === '') return item;
  const how = `${item.how}${lock}`;
  return { ...item, how, energy: item.energy === 'other' ? energyOf(how) : item.energy };
}
