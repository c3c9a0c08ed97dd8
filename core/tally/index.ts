/**
 * Counting: what came off, where it is, what is short, what is looked for, what must be new. Pure functions over the
 * rows of one job; nothing here knows the time or writes anything.
 */
export { awayThings } from './away.ts';
export type { BagCount } from './contents.ts';
export type { GetLine } from './to-get.ts';
export type { LookAlike } from './look-alikes.ts';
export { bagCounts, contentsOf, expectedIn, expectedOf } from './contents.ts';
export { bookDifference, countLines, countOfSet, poolLines } from './count.ts';
export type { CountLine, PoolLine } from './count-types.ts';
export { describeSpec } from '../model/spec-words.ts';
export { damagesPiece, piecesOf } from './holes.ts';
export { balances, moveProblems, NONE } from './ledger.ts';
export { alike, lookAlikes, lookAlikesIfPutInto } from './look-alikes.ts';
export { newPartFor, newParts } from './new-parts.ts';
export { poolKeyOf } from './pool-key.ts';
export { RENEWAL_RULES } from './renewal-rules.ts';
export type { RenewalAsk, RenewalKind } from './renewal.ts';
export { renewalFor, renewalOfPart, renewalOfSet, renewalRule, sealExpected } from './renewal.ts';
export type { Search } from './searches.ts';
export { openSearches } from './searches.ts';
export { toGet } from './to-get.ts';
