import type { Row } from '../model/tables.ts';
import { action } from './action.ts';
import { takeOut } from './actions-temporary.ts';
import type { Content } from './content.ts';
import type { PlanNode } from './graph.ts';
import type { Situation } from './situation.ts';
import { last, standing } from './standing.ts';
import type { StepAction } from './types.ts';

/** Filling and looking for leaks, cold (C1); bleeding and looking for leaks while it runs, where either is asked for (C2). */
export function fluidActions(at: Situation, one: PlanNode, content: Content): StepAction[] {
  const fluid = at.graph.log.fluid.get(one.thingId);
  if (!fluid) return [];
  const has = (...what: Row<'deed'>['what'][]) =>
    last(standing(at.graph.log, fluid.id), ...what) !== undefined;
  const out = content.temporaries.map((row) => takeOut(at, row));
  if (one.kind === 'C1') {
    const ml = fluid.lost === 'all' ? (fluid.capacityMl ?? fluid.drainedMl) : fluid.drainedMl;
    const amount = ml === null ? '' : `, ${ml >= 1000 ? `${Math.round(ml / 10) / 100} l` : `${ml} ml`}`;
    const type = fluid.type ? ` (${fluid.type})` : '';
    const filling =
      fluid.lost === 'none'
        ? []
        : [action('fill', `Fill ${fluid.name}${type}${amount}.`, [fluid.id], has('filled', 'done'))];
    return [
      ...out,
      ...filling,
      action(
        'leak check cold',
        `Look for leaks, cold: ${fluid.name}.`,
        [fluid.id],
        has('cold leak checked', 'done'),
      ),
    ];
  }
  return [
    ...out,
    ...(fluid.bleed
      ? [action('prime and bleed', `Prime and bleed ${fluid.name}.`, [fluid.id], has('bled', 'done'))]
      : []),
    ...(fluid.liveEnergy !== null
      ? [
          action(
            'leak check hot',
            `Look for leaks, running: ${fluid.name}.`,
            [fluid.id],
            has('hot leak checked', 'done'),
          ),
        ]
      : []),
  ];
}
