import { expect, test } from 'vitest';
import { JOB_TABLES, TABLES } from '../../core/model/tables.ts';
import { build } from '../support/build.ts';

test('every row that the builder makes is one that the store would take', () => {
  const job = build();
  job.person();
  const bag = job.bag();
  const cover = job.removal('Cover');
  const part = cover.part('Cover', { stowId: bag });
  const set = cover.set(4, { stowId: bag });
  const plug = cover.connection('Plug');
  const safe = job.removal('Battery earth off', { did: 'safe' });
  const isolation = safe.isolation('electricity');
  safe.protects(isolation, cover);
  cover.temporary('Rag', 'blocks');
  cover.measure('End float');
  cover.mark('Arrow to the front');
  cover.action('Pull the plug', plug);
  cover.needs(safe);
  job.fluid('Oil', [plug]);
  job.holds(set.holes[0] ?? '', part);
  job.first(job.ownStep('Turn by hand'), cover.id);
  job.consumable(cover.id);
  job.want(part, 'here');
  job.away(part);
  job.counting(4, 4, { stowId: bag });
  job.deed(set.holes[0] ?? '', 'tightened');
  job.accept({ key: 'a', digest: 'b' });
  const state = job.state();
  expect(TABLES.job.schema.safeParse(state.job).error).toBeUndefined();
  for (const name of [...JOB_TABLES, 'person', 'stow'] as const) {
    for (const row of state[name]) expect(TABLES[name].schema.safeParse(row).error, name).toBeUndefined();
  }
  expect(state.move.length).toBe(5);
});

test('coming off again opens the next round of the thing', () => {
  const job = build();
  const hole = job.removal('Cover').set(1).holes[0] ?? '';
  job.deed(hole, 'tightened').deed(hole, 'came off again').deed(hole, 'tightened');
  expect(job.state().deed.map((deed) => deed.round)).toEqual([1, 2, 2]);
});
