/** A bolt as it is drawn to scale, seen from the side. All in mm. */
export interface BoltShape {
  readonly threadMm: number;
  readonly lengthMm: number;
  readonly pitchMm: number;
  readonly acrossFlatsMm: number;
  readonly headHeightMm: number;
  /** Plain shank under the head; 0 where the thread goes up to it. */
  readonly shankMm: number;
}

export interface BoltDrawing {
  readonly head: string;
  readonly edges: string;
  readonly body: string;
  readonly threads: string;
  /** Height that it takes, px. */
  readonly height: number;
}

/**
 * Path data of a hexagon bolt lying on its side: the underside of its head at x 0, its point to the right. The hexagon
 * shows its corners (2/√3 times the width across flats), since that is how it lies on a bench.
 *
 * @param scale px for a mm
 */
export function drawBolt(bolt: BoltShape, scale: number): BoltDrawing {
  const px = (mm: number) => Math.round(mm * scale * 10) / 10;
  const corners = bolt.acrossFlatsMm * (2 / Math.sqrt(3));
  const height = px(corners);
  const middle = height / 2;
  const back = -px(bolt.headHeightMm);
  const chamfer = px(bolt.headHeightMm * 0.2);
  const radius = px(bolt.threadMm) / 2;
  const end = px(bolt.lengthMm);
  const point = Math.min(px(bolt.pitchMm * 0.75), end);
  const from = px(bolt.shankMm);
  const turns = Math.max(0, Math.floor((end - point - from) / px(bolt.pitchMm)));
  const threads = Array.from({ length: turns }, (_, i) => {
    const x = from + i * px(bolt.pitchMm);
    return `M${r(x)} ${r(middle - radius)}l${r(px(bolt.pitchMm) / 2)} ${r(radius * 2)}`;
  });
  return {
    head: `M${back} ${chamfer}L${r(back + chamfer)} 0H0V${height}H${r(back + chamfer)}L${back} ${r(height - chamfer)}Z`,
    edges: `M${r(back + chamfer * 0.7)} ${r(height / 4)}H0M${r(back + chamfer * 0.7)} ${r(height * 0.75)}H0`,
    body:
      `M0 ${r(middle - radius)}H${r(end - point)}L${end} ${r(middle - radius + point)}` +
      `V${r(middle + radius - point)}L${r(end - point)} ${r(middle + radius)}H0Z`,
    threads: `M${from} ${r(middle - radius)}V${r(middle + radius)}${threads.join('')}`,
    height,
  };
}

function r(value: number): number {
  return Math.round(value * 10) / 10;
}
