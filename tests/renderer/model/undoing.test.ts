import { describe, expect, it } from 'vitest';
import { stillIn, undoingOf } from '../../../renderer/model/undoing.ts';
import type { PhotoData, PhotoMark } from '../../../renderer/photo/types.ts';
import { seeded } from './seed.ts';

const PHOTO: PhotoData = { id: 'p', src: '', width: 1600, height: 1200, alt: '' };

function marks(places: readonly (readonly [number, number])[]): PhotoMark[] {
  return places.map(([x, y], i) => ({
    id: `h${i + 1}`,
    text: String(i + 1),
    kind: 'position',
    state: 'in',
    x,
    y,
    name: `hole ${i + 1}`,
    group: 'set',
  }));
}

const HEAD = [0, 1, 2, 3, 4].flatMap((i) => [[0.2 + i * 0.15, 0.3] as const, [0.2 + i * 0.15, 0.6] as const]);
const FLANGE = Array.from(
  { length: 6 },
  (_, i) => [0.5 + 0.24 * Math.cos((Math.PI * i) / 3), 0.5 + 0.32 * Math.sin((Math.PI * i) / 3)] as const,
);

const all = (): boolean => true;

describe('the order of undoing', () => {
  it('goes from the ends inwards on a head, crosswise on a flange, each hole once, a move to each next one', () => {
    const head = undoingOf(marks(HEAD), PHOTO, all);
    expect(new Set(head?.order.slice(0, 4))).toEqual(new Set(['1', '2', '9', '10']));
    expect(new Set(head?.order.slice(-2))).toEqual(new Set(['5', '6']));
    expect(head?.says).toContain('from the ends inwards');
    const flange = undoingOf(marks(FLANGE), PHOTO, all);
    expect(flange?.order).toEqual(['1', '4', '2', '5', '3', '6']);
    expect(flange?.moves.map((move) => move.now)).toEqual([true, false, false, false, false]);
  });

  it('is shown before undoing only: nothing once a hole is out, nor with fewer than four marked', () => {
    expect(undoingOf(marks(FLANGE), PHOTO, (id) => id !== 'h3')).toBeNull();
    expect(undoingOf(marks(FLANGE.slice(0, 3)), PHOTO, all)).toBeNull();
    expect(undoingOf(marks(FLANGE), null, all)).toBeNull();
    expect(undoingOf(marks(FLANGE.slice(0, 5)), PHOTO, all)?.hint).toMatch(
      /Between holes (5 and 1|1 and 5) there is room/,
    );
  });

  it('holds for what is slackened or only planned, and no longer once it goes back', async () => {
    const job = await seeded(['slackened 4 M8x25', '4 M6x16']);
    const [loose, off] = job.view().state.fset;
    const holesOf = (setId: string | undefined) =>
      job
        .view()
        .state.position.filter((hole) => hole.setId === setId)
        .map((hole) => hole.id);
    expect([...stillIn(job.view().state)].sort()).toEqual(holesOf(loose?.id).sort());
    expect(off?.how).toBe('out');
    await job.tick('tightened', holesOf(loose?.id).slice(0, 1));
    expect(stillIn(job.view().state).size).toBe(3);
  });
});
