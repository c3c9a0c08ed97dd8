/** Threads, drives, torque, order of tightening: pure functions, the same for screen, commands and job. */
export * from './drives.ts';
export * from './friction.ts';
export * from './judge.ts';
export * from './order.ts';
export * from './outcome.ts';
export * from './strengths.ts';
export * from './threads.ts';
export * from './torque.ts';
export * from './units.ts';
