/** A point in pixels, or in any unit that is the same along both axes. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** An ellipse by centre, half axes (major first) and the turn of the major axis in radians. */
export interface Ellipse {
  readonly centre: Point;
  readonly major: number;
  readonly minor: number;
  readonly turn: number;
}

/** Mean of points. */
export function centroid(points: readonly Point[]): Point {
  const n = Math.max(1, points.length);
  return {
    x: points.reduce((sum, p) => sum + p.x, 0) / n,
    y: points.reduce((sum, p) => sum + p.y, 0) / n,
  };
}

/** Spread of points along their own axes: variances (great first) and the direction of the greater. */
export function principalAxes(points: readonly Point[]): {
  readonly great: number;
  readonly small: number;
  readonly turn: number;
} {
  const c = centroid(points);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of points) {
    xx += (p.x - c.x) ** 2;
    xy += (p.x - c.x) * (p.y - c.y);
    yy += (p.y - c.y) ** 2;
  }
  const n = Math.max(1, points.length);
  const half = (xx + yy) / (2 * n);
  const root = Math.hypot((xx - yy) / (2 * n), xy / n);
  return { great: half + root, small: Math.max(0, half - root), turn: 0.5 * Math.atan2(2 * xy, xx - yy) };
}

/**
 * Least-squares ellipse through at least five points. The points are first brought to unit spread along their own
 * axes, which turns an even ring seen at an angle into a circle: the equations are then well behaved.
 * Undefined where the points lie on no ellipse (a line, two lines, a hyperbola).
 */
export function fitEllipse(points: readonly Point[]): Ellipse | undefined {
  const c = centroid(points);
  const axes = principalAxes(points);
  if (points.length < 5 || axes.small <= 1e-9 * axes.great) return undefined;
  const cos = Math.cos(axes.turn);
  const sin = Math.sin(axes.turn);
  const su = Math.sqrt(2 * axes.great);
  const sv = Math.sqrt(2 * axes.small);
  const rows = points.map((p) => {
    const u = ((p.x - c.x) * cos + (p.y - c.y) * sin) / su;
    const v = ((p.y - c.y) * cos - (p.x - c.x) * sin) / sv;
    return [u * u, u * v, v * v, u, v];
  });
  const conic = solveLeastSquares(rows);
  if (!conic) return undefined;
  return ellipseOfConic(conic, { centre: c, cos, sin, su, sv });
}

interface Frame {
  readonly centre: Point;
  readonly cos: number;
  readonly sin: number;
  readonly su: number;
  readonly sv: number;
}

/** A u² + B uv + C v² + D u + E v = 1 in the frame → ellipse in the picture. */
function ellipseOfConic(conic: readonly number[], frame: Frame): Ellipse | undefined {
  const [a = 0, b = 0, c = 0, d = 0, e = 0] = conic;
  const det = 4 * a * c - b * b;
  if (!(det > 1e-6) || a <= 0) return undefined;
  const u0 = (b * e - 2 * c * d) / det;
  const v0 = (b * d - 2 * a * e) / det;
  const level = 1 + a * u0 * u0 + b * u0 * v0 + c * v0 * v0;
  if (!(level > 0)) return undefined;
  // Quadratic form back in the picture: u = (cos x + sin y) / su, v = (cos y − sin x) / sv.
  const { cos, sin, su, sv } = frame;
  const pa = a / (su * su);
  const pb = b / (su * sv);
  const pc = c / (sv * sv);
  const xx = (pa * cos * cos - pb * cos * sin + pc * sin * sin) / level;
  const xy = (2 * (pa - pc) * cos * sin + pb * (cos * cos - sin * sin)) / level;
  const yy = (pa * sin * sin + pb * cos * sin + pc * cos * cos) / level;
  const half = (xx + yy) / 2;
  const root = Math.hypot((xx - yy) / 2, xy / 2);
  if (!(half - root > 0)) return undefined;
  return {
    centre: {
      x: frame.centre.x + u0 * su * cos - v0 * sv * sin,
      y: frame.centre.y + u0 * su * sin + v0 * sv * cos,
    },
    major: 1 / Math.sqrt(half - root),
    minor: 1 / Math.sqrt(half + root),
    turn: 0.5 * Math.atan2(xy, xx - yy) + Math.PI / 2,
  };
}

/** Where a point stands on an ellipse made round: radius (1 on the ellipse) and angle. */
export function onUnitCircle(
  ellipse: Ellipse,
  p: Point,
): { readonly radius: number; readonly angle: number } {
  const dx = p.x - ellipse.centre.x;
  const dy = p.y - ellipse.centre.y;
  const u = (dx * Math.cos(ellipse.turn) + dy * Math.sin(ellipse.turn)) / ellipse.major;
  const v = (dy * Math.cos(ellipse.turn) - dx * Math.sin(ellipse.turn)) / ellipse.minor;
  return { radius: Math.hypot(u, v), angle: Math.atan2(v, u) };
}

/** Solves rows · x = 1 in the least-squares sense by the normal equations with pivoting. Five unknowns. */
function solveLeastSquares(rows: readonly (readonly number[])[]): readonly number[] | undefined {
  const n = 5;
  const m: number[][] = Array.from({ length: n }, (_, i) => {
    const line = Array.from({ length: n }, (_unused, j) =>
      rows.reduce((sum, r) => sum + (r[i] ?? 0) * (r[j] ?? 0), 0),
    );
    return [...line, rows.reduce((sum, r) => sum + (r[i] ?? 0), 0)];
  });
  for (let col = 0; col < n; col += 1) {
    const pivot = m
      .slice(col)
      .reduce((best, row) => (Math.abs(row[col] ?? 0) > Math.abs(best[col] ?? 0) ? row : best));
    if (Math.abs(pivot[col] ?? 0) < 1e-10) return undefined;
    const at = m.indexOf(pivot);
    [m[col], m[at]] = [pivot, m[col] ?? pivot];
    for (const row of m) {
      if (row === pivot) continue;
      const share = (row[col] ?? 0) / (pivot[col] ?? 1);
      for (let k = col; k <= n; k += 1) row[k] = (row[k] ?? 0) - share * (pivot[k] ?? 0);
    }
  }
  return m.map((row, i) => (row[n] ?? 0) / (row[i] ?? 1));
}
