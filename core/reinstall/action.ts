import type { ActionCode, StepAction } from './types.ts';

/** One line of a step. */
export const action = (
  code: ActionCode,
  sentence: string,
  thingIds: readonly string[],
  done: boolean,
): StepAction => ({
  code,
  sentence,
  thingIds,
  done,
});
