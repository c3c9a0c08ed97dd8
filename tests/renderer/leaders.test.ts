import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { air, placeDiscs, washerOf, wedge, type Joint } from '../../core/drawing/leaders.ts';

const box = { width: 800, height: 600 };
const radius = 27;

function ring(
  count: number,
  around: { x: number; y: number },
  reach: number,
  head: number | null = 34,
): Joint[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (i / count) * 2 * Math.PI + 0.2;
    return {
      id: `${i + 1}`,
      at: { x: around.x + Math.cos(angle) * reach, y: around.y + Math.sin(angle) * reach },
      group: 'cover',
      radius: head,
    };
  });
}

const far = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

describe('discs beside the bolts of a photo', () => {
  it('every joint gets its disc, in the order given', () => {
    const joints = ring(8, { x: 400, y: 300 }, 190);
    expect(placeDiscs(joints, box, radius).map((placed) => placed.id)).toEqual(
      joints.map((joint) => joint.id),
    );
  });

  it('no disc stands on a head and none on another, where there is room', () => {
    for (const count of [1, 2, 3, 4, 6, 8]) {
      const joints = ring(count, { x: 400, y: 300 }, 180);
      const placed = placeDiscs(joints, box, radius);
      for (const one of placed) {
        for (const joint of joints)
          expect(far(one.disc, joint.at)).toBeGreaterThanOrEqual(radius + 34 - 0.01);
        for (const other of placed)
          if (other !== one) expect(far(one.disc, other.disc)).toBeGreaterThanOrEqual(radius * 2);
      }
    }
  });

  it('a disc finds its way between two rows of heads', () => {
    const inner = ring(4, { x: 400, y: 300 }, 80).map((joint) => ({
      ...joint,
      id: `in ${joint.id}`,
      group: 'in',
    }));
    const joints = [...ring(4, { x: 400, y: 300 }, 170), ...inner];
    for (const placed of placeDiscs(joints, box, radius))
      for (const joint of joints)
        expect(far(placed.disc, joint.at)).toBeGreaterThanOrEqual(radius + 34 - 0.01);
  });

  it('a disc stands further from the middle of its joint than the bolt does', () => {
    const middle = { x: 400, y: 300 };
    const joints = ring(8, middle, 160);
    placeDiscs(joints, box, radius).forEach((placed, i) => {
      expect(far(placed.disc, middle)).toBeGreaterThan(far(joints[i]?.at ?? middle, middle));
    });
  });

  it('two bolts side by side do not push their discs onto one another', () => {
    const joints = [0, 1, 2].map((i) => ({
      id: `${i}`,
      at: { x: 380 + i * 36, y: 420 },
      group: `${i}`,
      radius: 10,
    }));
    const [a, b, c] = placeDiscs(joints, box, radius).map((placed) => placed.disc);
    for (const [p, q] of [
      [a, b],
      [b, c],
      [a, c],
    ])
      expect(far(p ?? { x: 0, y: 0 }, q ?? { x: 0, y: 0 })).toBeGreaterThanOrEqual(radius * 2);
  });

  it('while half of a joint is marked, discs stand away from the middle that is given, not on the next bolts', () => {
    const middle = { x: 400, y: 300 };
    const whole = ring(20, middle, 200, 12);
    const half = whole.slice(0, 3);
    placeDiscs(half, box, 20, 40, middle).forEach((placed) => {
      for (const joint of whole) expect(far(placed.disc, joint.at)).toBeGreaterThanOrEqual(20 + 12 - 0.01);
      expect(far(placed.disc, middle)).toBeGreaterThan(212);
    });
  });

  it('the leader ends at the washer, never on the head', () => {
    const joints = ring(6, { x: 400, y: 300 }, 150);
    placeDiscs(joints, box, radius).forEach((placed, i) => {
      expect(far(placed.dot, joints[i]?.at ?? placed.dot)).toBeCloseTo(34, 6);
    });
  });

  it('near the edge the leader turns: wherever the bolts are, no disc and so no number is cut', () => {
    const joint = fc.record({ x: fc.integer({ min: 0, max: 800 }), y: fc.integer({ min: 0, max: 600 }) });
    fc.assert(
      fc.property(fc.array(joint, { minLength: 1, maxLength: 20 }), (ats) => {
        const joints = ats.map((at, i) => ({ id: `${i}`, at, group: `${i % 3}`, radius: null }));
        for (const { disc } of placeDiscs(joints, box, radius)) {
          expect(disc.x).toBeGreaterThanOrEqual(radius + air - 1e-9);
          expect(disc.y).toBeGreaterThanOrEqual(radius + air - 1e-9);
          expect(disc.x).toBeLessThanOrEqual(box.width - radius - air + 1e-9);
          expect(disc.y).toBeLessThanOrEqual(box.height - radius - air + 1e-9);
        }
      }),
    );
  });

  it('in a shallow picture a bolt at its foot sends its disc sideways, not into the joint', () => {
    const shallow = { width: 570, height: 330 };
    const middle = { x: 285, y: 165 };
    const joints = ring(8, middle, 132, null);
    placeDiscs(joints, shallow, radius).forEach((placed, i) => {
      expect(far(placed.disc, middle)).toBeGreaterThan(far(joints[i]?.at ?? middle, middle));
    });
  });

  it('a joint that was zoomed out of sight gets no disc, and the others still go outwards from its middle', () => {
    const all = ring(8, { x: 700, y: 500 }, 400);
    const placed = placeDiscs(all, box, radius);
    const inSight = all.filter(
      (joint) => joint.at.x >= 0 && joint.at.x <= 800 && joint.at.y >= 0 && joint.at.y <= 600,
    );
    expect(placed.map((one) => one.id)).toEqual(inSight.map((joint) => joint.id));
    expect(inSight.length).toBeLessThan(8);
  });

  it('the same marks give the same picture every time', () => {
    const joints = ring(7, { x: 333, y: 210 }, 140, null);
    expect(placeDiscs(joints, box, radius)).toEqual(placeDiscs(joints, box, radius));
  });
});

describe('wedges of the tightening order', () => {
  it('a wedge is broad where the move starts and pointed where it goes, and stops at the washers', () => {
    const [a, b, c, d] = wedge({ x: 100, y: 100 }, { x: 500, y: 100 }, 40, 16);
    expect([a?.x, d?.x]).toEqual([140, 140]);
    expect([b?.x, c?.x]).toEqual([460, 460]);
    expect(Math.abs((a?.y ?? 0) - (d?.y ?? 0))).toBeCloseTo(16, 9);
    expect(Math.abs((b?.y ?? 0) - (c?.y ?? 0))).toBeLessThan(3);
  });

  it('between two washers that touch there is no wedge', () => {
    expect(wedge({ x: 0, y: 0 }, { x: 60, y: 0 }, 40, 16)).toEqual([]);
  });
});

describe('where a move of the tightening order stops', () => {
  it('is at the washer, nearer to the hole in a joint that is small on its photo', () => {
    const holes = (reach: number) => ring(6, { x: 400, y: 300 }, reach).map((joint) => joint.at);
    expect(washerOf(holes(300), 48)).toBe(48);
    expect(washerOf(holes(60), 48)).toBeCloseTo(18, 6);
    expect(washerOf(holes(4), 48)).toBe(6);
    expect(washerOf(holes(60).slice(0, 1), 48)).toBe(48);
  });
});
