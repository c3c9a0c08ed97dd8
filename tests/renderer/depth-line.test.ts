import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawLine } from '../../core/drawing/line/drawing.ts';
import {
  fullSizes,
  gatePlaces,
  layLine,
  notchPlaces,
  placeRules,
  slimSizes,
} from '../../core/drawing/line/layout.ts';
import { fullChannel, notchLength, notchShape } from '../../core/drawing/line/shapes.ts';
import { gapAt } from '../../renderer/line/drag.ts';
import { drawTiny } from '../../renderer/line/tiny.ts';
import type { Did, LineData, LineItem, Notch } from '../../core/drawing/line/types.ts';

const dids: Did[] = ['off', 'slackened', 'opened', 'aside', 'safe'];

function removal(number: number, more: Partial<Notch> = {}): Notch {
  return {
    kind: 'removal',
    id: `r${number}`,
    number,
    title: `Part ${number}`,
    pieces: 1,
    did: 'off',
    back: false,
    place: '',
    note: '',
    ...more,
  };
}

const gate = (id: string): LineItem => ({
  kind: 'gate',
  id,
  title: 'Check before covering',
  passed: false,
  note: '',
});

function job(count: number, more: (n: number) => Partial<Notch> = () => ({})): LineItem[] {
  return Array.from({ length: count }, (_, i) => removal(i + 1, more(i + 1)));
}

const numbers = (items: readonly LineItem[], look: string | null, height: number) =>
  notchPlaces(layLine(items, look, look, height, fullSizes)).map(({ item }) => item.number);

describe('the depth line', () => {
  it('a short job stands there row by row', () => {
    const laid = layLine(job(6), 'r6', 'r6', 600, fullSizes);
    expect(laid.blocks.map((block) => block.kind)).toEqual(['row', 'row', 'row', 'row', 'row', 'row']);
  });

  it('order and number of notches never change, however far away they are and whatever is looked at', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 160 }),
        fc.integer({ min: 1, max: 160 }),
        fc.integer({ min: 200, max: 900 }),
        fc.integer({ min: 1, max: 9 }),
        (count, look, height, span) => {
          const items = job(count, (n) => ({ place: `place ${Math.floor(n / span)}` }));
          expect(numbers(items, `r${look}`, height)).toEqual(items.map((_, i) => i + 1));
        },
      ),
    );
  });

  it('notches go down the line, each below the one before', () => {
    const ys = notchPlaces(layLine(job(80), 'r40', 'r40', 640, fullSizes)).map(({ y }) => y);
    expect(ys.every((y, i) => i === 0 || y > (ys[i - 1] ?? 0))).toBe(true);
  });

  it('sixty removals fit a laptop window, with the one at hand and four neighbours near', () => {
    for (const look of ['r1', 'r30', 'r60']) {
      const laid = layLine(job(60), look, look, 520, fullSizes);
      expect(laid.height).toBeLessThanOrEqual(520);
      const near = laid.blocks.filter((block) => block.kind === 'row');
      expect(near.length).toBeGreaterThanOrEqual(5);
      expect(near.some((block) => block.item.id === look)).toBe(true);
    }
  });

  it('what is looked at is always near', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 120 }), fc.integer({ min: 0, max: 119 }), (count, at) => {
        const look = `r${(at % count) + 1}`;
        const laid = layLine(job(count), look, look, 500, slimSizes);
        expect(laid.blocks.some((block) => block.kind === 'row' && block.item.id === look)).toBe(true);
      }),
    );
  });

  it('a gate keeps its own bar between the removals it stands between', () => {
    const items = [...job(30), gate('g'), removal(31), removal(32)];
    const laid = layLine(items, 'r2', 'r2', 500, fullSizes);
    const bar = gatePlaces(laid)[0]?.y ?? 0;
    const above = notchPlaces(laid).filter(({ y }) => y < bar);
    expect(above.map(({ item }) => item.number)).toEqual(Array.from({ length: 30 }, (_, i) => i + 1));
  });

  it('many gates leave room for the step at hand: far ones share a label with the removals, and none is lost', () => {
    const gates = Array.from({ length: 7 }, (_, i) => gate(`g${i}`));
    const items = [...gates.slice(0, 4), removal(1), ...gates.slice(4), ...job(22).slice(1)];
    const laid = layLine(items, 'r14', 'r14', 520, fullSizes);
    expect(laid.height).toBeLessThanOrEqual(520);
    const near = laid.blocks.filter((block) => block.kind === 'row');
    expect(near.some((block) => block.item.id === 'r14')).toBe(true);
    expect(near.length).toBeGreaterThanOrEqual(3);
    const bars = gatePlaces(laid);
    expect(bars.map(({ item }) => item.id)).toEqual(gates.map(({ id }) => id));
    expect(bars.every(({ y }, i) => i === 0 || y > (bars[i - 1]?.y ?? 0))).toBe(true);
  });

  it('a place is named once above its neighbours and ruled along all of them', () => {
    const items = job(4, (n) => ({ place: n <= 2 ? 'Front' : 'Rear' }));
    const laid = layLine(items, 'r1', 'r1', 600, fullSizes);
    expect(laid.blocks.map((block) => (block.kind === 'place' ? block.name : block.kind))).toEqual([
      'Front',
      'row',
      'row',
      'Rear',
      'row',
      'row',
    ]);
    const rules = placeRules(laid);
    const ys = notchPlaces(laid).map(({ y }) => y);
    expect(rules).toHaveLength(2);
    expect(rules[0]?.from).toBeLessThan(ys[0] ?? 0);
    expect(rules[0]?.to).toBeGreaterThan(ys[1] ?? 0);
    expect(rules[0]?.to).toBeLessThan(rules[1]?.from ?? 0);
    expect(rules[1]?.to).toBeGreaterThan(ys[3] ?? 0);
  });
});

describe('the notches', () => {
  it('one piece is short, two to five are middle, six and more are long', () => {
    const of = (pieces: number) => notchLength(pieces, fullChannel);
    expect(of(1)).toBe(of(0));
    expect(of(2)).toBe(of(5));
    expect(of(6)).toBe(of(60));
    expect(of(1)).toBeLessThan(of(2));
    expect(of(5)).toBeLessThan(of(6));
  });

  it('each thing that can be done has a shape of its own, told without colour', () => {
    const shapes = dids.map((did) => JSON.stringify(notchShape(did, 100, 12, 18, fullChannel)));
    expect(new Set(shapes).size).toBe(dids.length);
  });

  it('every shape leaves the channel and comes back to it, and reaches as far as its length says', () => {
    for (const did of dids) {
      const shape = notchShape(did, 100, 12, 18, fullChannel);
      expect(shape[0]?.x).toBe(fullChannel.right);
      expect(shape.at(-1)?.x).toBe(fullChannel.right);
      expect(Math.max(...shape.map((point) => point.x))).toBe(fullChannel.right + 18);
      expect(shape[0]?.y).toBeLessThan(shape.at(-1)?.y ?? 0);
    }
  });
});

describe('taking apart opens the channel, putting back fills it', () => {
  const back = (items: readonly LineItem[], atId: string | null): LineData => ({
    direction: 'back',
    items,
    atId,
  });
  const draw = (line: LineData) =>
    drawLine(line, layLine(line.items, line.atId, line.atId, 600, fullSizes), fullChannel);

  it('while things come off there is no ink and no floor', () => {
    const drawing = draw({ direction: 'apart', items: job(5), atId: 'r5' });
    expect(drawing.level).toBe(drawing.end);
    expect(drawing.outline.match(/M/g)).toHaveLength(2);
  });

  it('the ink stands at the step at hand', () => {
    const items = job(6, (n) => ({ back: n > 3 }));
    const drawing = draw(back(items, 'r3'));
    expect(drawing.level).toBe(drawing.at?.y);
  });

  it('with everything back the line is full, with nothing back it is hollow', () => {
    expect(
      draw(
        back(
          job(4, () => ({ back: true })),
          null,
        ),
      ).level,
    ).toBe(0);
    const none = draw(back(job(4), null));
    expect(none.level).toBe(none.end);
  });

  it('what went back early is filled by itself, and what was left off below stays hollow', () => {
    const items = job(6, (n) => ({ back: n === 1 || n === 6 }));
    const drawing = draw(back(items, 'r3'));
    expect(drawing.filled).toHaveLength(1);
    expect(drawing.hollow).toHaveLength(2);
  });
});

describe('the silhouette on Jobs', () => {
  const tiny = (count: number, direction: 'apart' | 'back' = 'apart') =>
    drawTiny({ direction, items: job(count, (n) => ({ pieces: (n * 3) % 8 })), atId: null }, 164);

  it('never grows beyond its height, from no removal to two hundred', () => {
    for (const count of [0, 1, 2, 9, 22, 60, 200]) expect(tiny(count, 'back').end).toBeLessThanOrEqual(164);
  });

  it('a deeper job is a longer line until the height is used up', () => {
    expect(tiny(3).end).toBeLessThan(tiny(6).end);
  });

  it('notches too close for an outline become one stroke each, and none is lost', () => {
    const drawing = tiny(60);
    expect(drawing.ticks?.path.match(/M/g)).toHaveLength(60);
    expect(tiny(20).ticks).toBeNull();
  });
});

describe('a removal drawn along the line', () => {
  const row = (id: string, top: number) =>
    ({ kind: 'row', top, height: 44, item: { id } }) as unknown as Parameters<typeof gapAt>[0][number];
  const blocks = [row('a', 0), row('b', 44), row('c', 88)];

  it('goes before the first, between two, or after the last, as if it were not there itself', () => {
    expect(gapAt(blocks, -5, 'c')).toEqual({ top: 0, afterId: null });
    expect(gapAt(blocks, 50, 'c')).toEqual({ top: 44, afterId: 'a' });
    expect(gapAt(blocks, 300, 'a')).toEqual({ top: 132, afterId: 'c' });
    expect(gapAt(blocks, 80, 'b')).toEqual({ top: 88, afterId: 'a' });
  });
});
