import type { Row } from '../../model/tables.ts';
import { type RenewalAsk, renewalFor } from '../../tally/index.ts';

/** Must it be renewed? Asked at removal, so that the new one is ordered while there is time. */
export function renewalOf(ask: RenewalAsk): Pick<Row<'part'>, 'renew' | 'renewRule' | 'renewWhy'> {
  const advice = renewalFor(ask);
  if (!advice) return { renew: 'no', renewRule: null, renewWhy: '' };
  return { renew: advice.renew, renewRule: advice.rule.id, renewWhy: advice.sentence };
}
