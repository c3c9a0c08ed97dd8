import type { AllowedSkip } from './outcome.ts';

/**
 * The one list of tests that may be skipped, by the full name that the summary prints. Each needs a reason
 * that would convince a stranger; a skipped test that is not here is a failure.
 */
export const allowedSkips: readonly AllowedSkip[] = [];
