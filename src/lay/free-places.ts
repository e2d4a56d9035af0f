/**
 * The free places for a copy that is moved by hand: the copy goes where it is put, or to the nearest
 * place where it overlaps nothing, keeps the gap, and stays on its cloth and on the repeat.
 */

import type { Point } from "../../functions/geometry/strokes.ts";
import type { LayQuestion, Placement } from "../../functions/lay.ts";
import { obstaclesOf } from "./fields.ts";
import { wholeTurn } from "./outline.ts";
import { type Shape, shapesOf } from "./shape.ts";
import { simplified } from "./simplify.ts";
import { type Lying, Touch } from "./touch.ts";

/** Overlaps up to this share of the widest cloth count as touching. */
const TOUCHING = 2e-7;

/** Points kept per outline; what is simplified holds the whole of the true outline. */
const MOST_POINTS = 60;

export class FreePlaces {
  private readonly shapes: readonly (readonly Shape[])[];
  private readonly outlines = new Map<Shape, readonly Point[]>();
  private readonly obstacles: readonly { readonly cloth: number; readonly outline: readonly Point[] }[];
  private readonly widest: number;

  constructor(private readonly question: LayQuestion) {
    this.shapes = shapesOf(question);
    this.obstacles = obstaclesOf(question.cloths);
    this.widest = Math.max(...question.cloths.map(({ width }) => width));
  }

  /**
   * The place nearest to the wanted one, among the other copies as they lie. Null when there is
   * none on that cloth. An open cloth may become as long as it takes.
   */
  nearest(placements: readonly Placement[], wanted: Placement): Placement | null {
    const shape = this.shapeOf(wanted);
    const cloth = this.question.cloths[wanted.cloth];
    if (!shape || !cloth) return null;
    const others = placements.filter(
      (p) => p.cloth === wanted.cloth && !(p.piece === wanted.piece && p.copy === wanted.copy),
    );
    const lying = others.map((p): Lying => ({ outline: this.outlineOf(this.shapeOf(p)!), x: p.x, y: p.y }));
    for (const { outline, cloth: on } of this.obstacles)
      if (on === wanted.cloth) lying.push({ outline, x: 0, y: 0 });
    const { left, right, low, high } = shape.bounds;
    const end = cloth.length ?? this.farthest(placements) + 2 * (right - left);
    const span = { left: 0 - left, right: end - right, low: 0 - low, high: cloth.width - high };
    const slack = 1e-9 * cloth.width;
    if (span.right < span.left - slack || span.high < span.low - slack) return null;
    span.right = Math.max(span.left, span.right);
    span.high = Math.max(span.low, span.high);
    const touch = new Touch(this.outlineOf(shape), lying, span, TOUCHING * this.widest);
    const columns = this.columnsFor(shape, others, span);
    const [x, y] = [
      nearestOf(columns, Math.min(Math.max(wanted.x, span.left), span.right)),
      Math.min(Math.max(wanted.y, span.low), span.high),
    ];
    if (x === null) return null;
    if (touch.isFree(x, y)) return { ...wanted, x, y };
    const far = (p: Point) => Math.hypot(p[0] - wanted.x, p[1] - wanted.y);
    const most = 2 * Math.max(end, cloth.width) + Math.hypot(wanted.x - x, wanted.y - y);
    for (let reach = (right - left + high - low) / 8; ; reach *= 2) {
      // Places in the corners of the box may be farther than some that lie outside it.
      const box = {
        left: wanted.x - reach,
        right: wanted.x + reach,
        low: wanted.y - reach,
        high: wanted.y + reach,
      };
      const places = touch
        .places(box, [wanted.x, wanted.y], columns ?? undefined)
        .filter((p) => far(p) <= reach)
        .sort((a, b) => far(a) - far(b));
      const free = places.find(([px, py]) => touch.isFree(px, py));
      if (free) return { ...wanted, x: free[0], y: free[1] };
      if (reach > most) return null;
    }
  }

  private shapeOf({ piece, turn }: Placement): Shape | undefined {
    return this.shapes[piece]?.find((shape) => shape.turn === wholeTurn(turn));
  }

  private outlineOf(shape: Shape): readonly Point[] {
    let outline = this.outlines.get(shape);
    if (!outline) {
      const { left, right, low, high } = shape.bounds;
      const reach = Math.min(0.004 * this.widest, 0.01 * Math.min(right - left, high - low));
      outline = shape.full.length > MOST_POINTS ? simplified(shape.full, MOST_POINTS, reach) : shape.full;
      this.outlines.set(shape, outline);
    }
    return outline;
  }

  private farthest(placements: readonly Placement[]): number {
    return placements.reduce((most, p) => Math.max(most, p.x + (this.shapeOf(p)?.bounds.right ?? 0)), 0);
  }

  /** With a repeat, the places along the cloth that keep the shape on it; null when any will do. */
  private columnsFor(
    shape: Shape,
    others: readonly Placement[],
    span: { left: number; right: number },
  ): number[] | null {
    const { repeat } = this.question;
    if (shape.match === null) return null;
    const lead = others.find((p) => this.shapeOf(p)!.match !== null);
    if (!lead) return null;
    const from = lead.x + this.shapeOf(lead)!.match! - shape.match;
    const first = Math.ceil((span.left - from) / repeat - 1e-9);
    const last = Math.floor((span.right - from) / repeat + 1e-9);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => from + (first + k) * repeat);
  }
}

function nearestOf(columns: readonly number[] | null, x: number): number | null {
  if (!columns) return x;
  return columns.reduce<number | null>(
    (best, c) => (best === null || Math.abs(c - x) < Math.abs(best - x) ? c : best),
    null,
  );
}
