/** The entry line: trade notation in, meaning, chips and trade notation out. Pure. */
export { chips } from './chips.ts';
export type * from './meaning.ts';
export { readEntry } from './read.ts';
export { sameMeaning, writeEntry } from './write.ts';
