/** The entry line: trade notation in, what it means, chips for the screen. Pure and total: any text gives an entry. */
export { chips } from './chips.ts';
export type * from './meaning.ts';
export { readEntry } from './read.ts';
