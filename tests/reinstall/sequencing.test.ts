import { describe, expect, test } from 'vitest';
import { fewestChanges } from '../../core/reinstall/tool-order.ts';
import { groupsOf, shortest, sopOf, stepsOf } from './sop.ts';

/**
 * Sequencing under precedence as published: instances of TSPLIB 95 (G. Reinelt, TSPLIB, ORSA Journal on Computing 3,
 * 1991; type SOP, received there from L. Escudero and N. Ascheuer), in data/sop as they are, and the optimum of each
 * from the library's list of best known solutions. The optima first prove the plain dynamic programming that the
 * program is then compared with.
 */
const OPTIMA = [
  ['ESC07', 2125],
  ['ESC11', 2075],
  ['ESC12', 1675],
  ['br17.10', 55],
  ['br17.12', 55],
] as const;

describe('published sequencing instances', () => {
  test.each(OPTIMA)('%s: plain dynamic programming finds the published optimum %i', (name, optimum) => {
    const sop = sopOf(name);
    expect(shortest(sop, (i, j) => sop.cost[i]?.[j] ?? 0)).toBe(optimum);
  });

  // In br17 some places lie no way apart: a machine set up for one is set up for all of them. A change is a way longer
  // than nothing.
  test.each(['br17.10', 'br17.12'])('%s: fewest changes between its groups', (name) => {
    const sop = sopOf(name);
    const groups = groupsOf(sop);
    expect(new Set(groups).size).toBe(6);
    const least = shortest(sop, (i, j) => (groups[i] === groups[j] ? 0 : 1));
    expect(fewestChanges(stepsOf(sop, groups))).toMatchObject({ changes: least, exact: true });
  });

  // The ESC instances have no groups: their order is the published one, their tools are dealt out here.
  test.each(OPTIMA.flatMap(([name]) => [2, 3, 5].map((kinds) => [name, kinds] as const)))(
    '%s with %i tools dealt out: fewest changes',
    (name, kinds) => {
      const sop = sopOf(name);
      const tools = sop.cost.map((_, v) => (v * 5 + 2) % kinds);
      const least = shortest(sop, (i, j) => (tools[i] === tools[j] ? 0 : 1));
      expect(fewestChanges(stepsOf(sop, tools))).toMatchObject({ changes: least, exact: true });
    },
  );
});
