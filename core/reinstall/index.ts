/** The reinstall list: what goes back in which order, what holds it up, what is wrong, what can go ahead. */
export type * from './types.ts';
