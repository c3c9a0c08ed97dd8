/**
 * Counting: what came off, where it is, what is short, what is looked for, what must be new. Pure functions over the
 * rows of one job; nothing here knows the time or writes anything.
 */
export type { AwayThing } from './away.ts';
export { awayThings } from './away.ts';
export type { BagCount, Content } from './contents.ts';
export { bagCounts, contents, contentsOf, expectedIn, expectedOf } from './contents.ts';
export { bookDifference, countLines, countOfSet, poolLines } from './count.ts';
export type { CountLine, Holes, Pieces, PoolLine, Verdict } from './count-types.ts';
export { describeSpec } from './describe.ts';
export type { HolePiece } from './holes.ts';
export { damagesPiece, piecesOf } from './holes.ts';
export type { BalanceBy, Balances, MoveProblem } from './ledger.ts';
export { balances, moveProblems, NONE } from './ledger.ts';
export type { Alike, Difference, LookAlike } from './look-alikes.ts';
export { alike, lookAlikes, lookAlikesIfPutInto } from './look-alikes.ts';
export type { NewPart } from './new-parts.ts';
export { newPartFor, newParts } from './new-parts.ts';
export type { Opening } from './openings.ts';
export { poolKeyOf } from './pool-key.ts';
export type { RenewalRule } from './renewal-rules.ts';
export { RENEWAL_RULES } from './renewal-rules.ts';
export type { RenewalAdvice, RenewalAsk, RenewalKind, SealExpected } from './renewal.ts';
export { renewalFor, renewalOfPart, renewalOfSet, renewalRule, sealExpected } from './renewal.ts';
export type { LastSeen, Search } from './searches.ts';
export { openSearches } from './searches.ts';
export type { GetCause, GetLine } from './to-get.ts';
export { toGet } from './to-get.ts';
