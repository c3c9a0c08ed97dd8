/** The entry line: trade notation in, meaning, chips and trade notation out. Pure. */
export { takesNothingOff } from './beside.ts';
export { chips } from './chips.ts';
export { threadDoubt, threadsThatFit } from './fits.ts';
export { readLengths, writeLengths } from './lengths.ts';
export type * from './meaning.ts';
export { type Offer, offerNouns } from './offer.ts';
export { readEntry } from './read.ts';
export { plainText, sameWords } from './same-words.ts';
export { type Sticky, stickyLine } from './sticky.ts';
export { sameMeaning, writeEntry } from './write.ts';
