/** The reinstall list: what goes back in which order, what holds it up, what is wrong, what can go ahead. */
export { buriedBy } from './buried.ts';
export { planJob } from './plan.ts';
export { SERVED_FIRST } from './promised.ts';
export { needsBroken, wouldCloseCycle } from './questions.ts';
export { reachOf } from './reach.ts';
export { assumedNeeds, loosened, suggestionsOf, waitsThrough } from './suggestions.ts';
export { workedOn } from './worked.ts';
export { timeLeftOf } from './time-left.ts';
export { sharedHoles } from './nodes.ts';
export { dayAheadOf, outlookOf } from './outlook.ts';
export { toolPlan } from './job-tools.ts';
export { walked } from './walk.ts';
export type * from './types.ts';
