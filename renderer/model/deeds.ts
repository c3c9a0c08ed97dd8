import type { JobView } from '../../core/contract/views.ts';
import type { Row } from '../../core/model/tables.ts';

type What = Row<'deed'>['what'];

/** The last of these deeds for each thing: by round, then by time. */
export function lastAmong(view: JobView, whats: readonly What[]): Map<string, What> {
  const last = new Map<string, Row<'deed'>>();
  for (const deed of view.state.deed) {
    if (!whats.includes(deed.what)) continue;
    const known = last.get(deed.thingId);
    if (!known || deed.round > known.round || (deed.round === known.round && deed.at >= known.at))
      last.set(deed.thingId, deed);
  }
  return new Map([...last].map(([thingId, deed]) => [thingId, deed.what]));
}
