import { describe, expect, it } from 'vitest';
import type { JobView } from '../../../core/contract/views.ts';
import type { Row } from '../../../core/model/tables.ts';
import { shotsOf, tileOf } from '../../../renderer/model/gallery.ts';
import { unfiledOf } from '../../../renderer/model/photos.ts';
import { clock } from '../../../renderer/model/time.ts';
import { sampleState } from '../../../core/usecases/sample.ts';

const state = sampleState('half-apart');
const original = state.original.find((one) => one.takenUtc !== null) as Row<'original'>;
const photo = state.photo.find((one) => one.originalId === original.id) as Row<'photo'>;

/** The strip and the page of all photos, of one photo that no removal has. */
function shown(taken: Pick<Row<'original'>, 'takenUtc' | 'takenLocal'>): string[] {
  const view = {
    state: {
      ...state,
      original: [{ ...original, ...taken }],
      photo: [{ ...photo, removalId: null }],
      marker: [],
    },
  } as unknown as JobView;
  const now = taken.takenUtc ?? Date.parse(taken.takenLocal ?? '');
  return [
    unfiledOf(view, 0, []).thumbs[0]?.taken ?? '',
    ...shotsOf(view, { groups: [], dark: [] }).map((shot) => tileOf(shot, now).taken),
  ];
}

describe('when a photo was taken', () => {
  it('is told by the reader’s clock on the strip and on the page of all photos, wherever the camera was', () => {
    const at = Date.UTC(2025, 9, 6, 7, 41);
    // A camera five and three quarter hours away from everybody: its own clock must not be shown.
    const taken = { takenUtc: at, takenLocal: '2025-10-06T13:26:00' };
    expect(shown(taken)).toEqual([clock(at), clock(at)]);
  });

  it('is what the camera’s clock said where the file names no offset', () => {
    const noon = new Date(2025, 9, 6, 12, 5).getTime();
    expect(shown({ takenUtc: null, takenLocal: '2025-10-06T12:05:00' })).toEqual([clock(noon), clock(noon)]);
  });
});
