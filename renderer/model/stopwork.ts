import type { JobView } from '../../core/contract/views.ts';
import type { StopGroup } from '../screens/stopwork/StopWorkScreen.tsx';
import { begin } from '../texts/begin.ts';
import { off } from '../texts/off.ts';
import type { RowData } from '../ui/Rows.tsx';
import { lastAmong } from './deeds.ts';
import { logOf, plannedIds } from './line.ts';

const row = (id: string, name: string, count: number | string, about = ''): RowData => ({
  id,
  mark: '',
  name,
  count,
  about,
});

/** What the next person must know: loose, open, inside, made safe, not counted. A closed job asks nobody to count. */
export function stopGroups(view: JobView): { group: StopGroup; rows: RowData[] }[] {
  const { state, plan } = view;
  const titles = new Map(logOf(view).map((removal) => [removal.id, removal.title || removal.typed]));
  const started = plan.steps.flatMap((step) =>
    step.fasteners.flatMap((set) => {
      const count = set.holes.filter((hole) => hole.mark === 'started').length;
      return count > 0 ? [row(step.removalId ?? '', `${step.title} ${set.name}`.trim(), count)] : [];
    }),
  );
  const slackened = view.counts
    .filter((line) => line.slackened > 0)
    .map((line) =>
      row(line.removalId ?? '', titles.get(line.removalId ?? '') ?? '', line.slackened, off.looseAbout),
    );
  const open = new Set(
    plan.steps.filter((step) => step.kind === 'C1' && step.state !== 'done').map((step) => step.thingId),
  );
  const opened = state.fluid
    .filter((fluid) => open.has(fluid.id))
    .map((fluid) => row(fluid.id, fluid.name, ''));
  const put = lastAmong(view, ['taken out', 'put in', 'came off again']);
  const inside = state.temporary
    .filter((one) => put.get(one.id) !== 'taken out' && one.removalId !== null)
    .map((one) => row(one.removalId ?? '', one.name, one.qty));
  const given = lastAmong(view, ['given back', 'came off again']);
  const planned = plannedIds(view);
  const energy = state.isolation
    .filter((one) => given.get(one.id) !== 'given back' && titles.has(one.removalId))
    .filter((one) => !planned.has(one.removalId))
    .map((one) => row(one.removalId, one.how || begin.energies[one.energy], '', one.lockOwner));
  const uncounted = view.bags
    .filter((bag) => bag.due && bag.qty > 0 && state.job.phase === 'open')
    .map((bag) => {
      const stow = state.stow.find((one) => one.id === bag.stowId);
      return row(bag.stowId, stow ? off.bag(stow.kind, stow.label) : '', bag.qty);
    });
  const groups = [
    { group: 'loose' as const, rows: [...started, ...slackened] },
    { group: 'open' as const, rows: opened },
    { group: 'inside' as const, rows: inside },
    { group: 'energy' as const, rows: energy },
    { group: 'uncounted' as const, rows: uncounted },
  ];
  return groups.filter((one) => one.rows.length > 0);
}
