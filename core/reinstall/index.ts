/** The reinstall list: what goes back in which order, what holds it up, what is wrong, what can go ahead. */
export { buriedBy } from './buried.ts';
export { planJob } from './plan.ts';
export { needsBroken, reachOf, wouldCloseCycle } from './questions.ts';
export type * from './types.ts';
