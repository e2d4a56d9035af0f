/**
 * The places where an outline just touches what lies there already: corners of no-fit polygons,
 * crossings of two, and the ends of the cloth. A lay that is tight, and a piece put down by hand
 * beside another, have their pieces on such places.
 */
import type { Point } from "../../functions/geometry/strokes.ts";
import { DepthField } from "./depth.ts";
import { noFitPolygon } from "./no-fit-polygon.ts";

/** An outline that lies on the cloth; the gap is in it already. */
export interface Lying {
  readonly outline: readonly Point[];
  readonly x: number;
  readonly y: number;
}

/** Where the moving outline's (0, 0) may be for it to lie within the cloth. */
export interface Span {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

interface Pair {
  readonly rings: readonly (readonly Point[])[];
  readonly field: DepthField;
}

const known = new WeakMap<readonly Point[], WeakMap<readonly Point[], Pair>>();

/** The no-fit polygon of two outlines, remembered as long as both are. */
function pairOf(still: readonly Point[], moving: readonly Point[]): Pair {
  let own = known.get(still);
  if (!own) {
    own = new WeakMap();
    known.set(still, own);
  }
  let pair = own.get(moving);
  if (!pair) {
    const rings = noFitPolygon(still, moving);
    pair = { rings, field: new DepthField(rings, 0) };
    own.set(moving, pair);
  }
  return pair;
}

export class Touch {
  private readonly around: readonly { readonly pair: Pair; readonly x: number; readonly y: number }[];

  constructor(
    moving: readonly Point[],
    lying: readonly Lying[],
    private readonly span: Span,
    /** Overlaps no deeper than this count as touching. */
    private readonly tolerance: number,
  ) {
    this.around = lying.map(({ outline, x, y }) => ({ pair: pairOf(outline, moving), x, y }));
  }

  /** Whether the moving outline, put there, is on the cloth and overlaps nothing. */
  isFree(x: number, y: number): boolean {
    const { left, right, low, high } = this.span;
    const slack = this.tolerance;
    if (x < left - slack || x > right + slack || y < low - slack || y > high + slack) return false;
    for (const one of this.around)
      if (one.pair.field.depth(x - one.x, y - one.y) > this.tolerance) return false;
    return true;
  }

  /**
   * Touching places within a box, free or not, those nearest to (x, y) among them. Where `columns`
   * are given x has to be one of them.
   */
  places(box: Span, [x, y]: Point, columns?: readonly number[]): Point[] {
    const { span } = this;
    const left = Math.max(span.left, box.left);
    const right = Math.min(span.right, box.right);
    const low = Math.max(span.low, box.low);
    const high = Math.min(span.high, box.high);
    const found: Point[] = [];
    const add = (px: number, py: number) => {
      if (px >= left && px <= right && py >= low && py <= high) found.push([px, py]);
    };
    const edges = this.edges(left, right, low, high);
    const ups = columns ?? [span.left, span.right];
    for (const up of ups) for (const level of [span.low, span.high, y]) add(up, level);
    for (const edge of edges) {
      for (const up of ups) {
        const share = (up - edge.x) / edge.dx;
        if (share >= 0 && share <= 1) add(up, edge.y + share * edge.dy);
      }
      if (columns) continue;
      for (const level of [span.low, span.high]) {
        const share = (level - edge.y) / edge.dy;
        if (share >= 0 && share <= 1) add(edge.x + share * edge.dx, level);
      }
      add(edge.x, edge.y);
      const long = edge.dx ** 2 + edge.dy ** 2;
      const foot = ((x - edge.x) * edge.dx + (y - edge.y) * edge.dy) / long;
      if (foot > 0 && foot < 1) add(edge.x + foot * edge.dx, edge.y + foot * edge.dy);
    }
    if (!columns)
      for (let i = 0; i < edges.length; i += 1)
        for (let j = i + 1; j < edges.length; j += 1) {
          const [a, b] = [edges[i]!, edges[j]!];
          if (a.of === b.of) continue;
          const turn = a.dx * b.dy - a.dy * b.dx;
          if (turn === 0) continue;
          const s = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / turn;
          const t = ((b.x - a.x) * a.dy - (b.y - a.y) * a.dx) / turn;
          if (s >= 0 && s <= 1 && t >= 0 && t <= 1) add(a.x + s * a.dx, a.y + s * a.dy);
        }
    return found;
  }

  /** The borders of the no-fit polygons that come into a box. */
  private edges(left: number, right: number, low: number, high: number) {
    const edges: { of: number; x: number; y: number; dx: number; dy: number }[] = [];
    this.around.forEach(({ pair: { rings, field }, x, y }, of) => {
      if (x + field.left > right || x + field.right < left || y + field.low > high || y + field.high < low)
        return;
      for (const ring of rings)
        ring.forEach((p, i) => {
          const q = ring[(i + 1) % ring.length]!;
          const [ax, ay, bx, by] = [p[0] + x, p[1] + y, q[0] + x, q[1] + y];
          if (Math.max(ax, bx) < left || Math.min(ax, bx) > right) return;
          if (Math.max(ay, by) < low || Math.min(ay, by) > high) return;
          edges.push({ of, x: ax, y: ay, dx: bx - ax, dy: by - ay });
        });
    });
    return edges;
  }
}
