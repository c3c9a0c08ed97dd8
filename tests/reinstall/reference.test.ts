import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runs } from '../support/runs.ts';
import { differs } from './agree.ts';
import { anyRecipe } from './any-job.ts';

describe('the planner agrees with a planner written from the specification alone', () => {
  test('on steps, order, states and what can go ahead, when the work so far was done in order', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        expect(differs(recipe, true)).toBeNull();
      }),
      runs(300),
    );
  });

  test('on steps, order, done and behind, whatever was ticked out of turn', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        expect(differs(recipe, false)).toBeNull();
      }),
      runs(300),
    );
  });
});
