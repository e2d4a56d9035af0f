/** The no-fit fields of all pairs of shapes in a question, each made when it is first asked for. */
import { difference, FillRule } from "clipper2-ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import type { LayCloth, LayQuestion } from "../../functions/lay.ts";
import { makeField } from "./inner/field.ts";
import type { Room } from "./inner/room.ts";
import { noFitPolygon } from "./no-fit-polygon.ts";
import { boundingBox, cosSin, signedArea, wholeTurn, withoutRepeats } from "./outline.ts";
import { counterClockwise, distinctTurns, type Shape } from "./shape.ts";
import { simplified } from "./simplify.ts";

/** Something of the cloth to keep clear of. */
export interface Obstacle {
  readonly cloth: number;
  readonly outline: readonly Point[];
}

/** Points kept per outline, by how many kinds there are: making the fields grows with both squared. */
function pointsFor(kinds: number): number {
  if (kinds <= 12) return 100;
  if (kinds <= 25) return 64;
  return kinds <= 40 ? 40 : 28;
}

export class Fields {
  /** Outlines the search works with: those of the pieces, fewer points, then the obstacles. */
  readonly outlines: (readonly Point[])[];
  private readonly made = new Map<string, number>();

  constructor(
    question: LayQuestion,
    obstacles: readonly Obstacle[],
    private readonly gap: number,
  ) {
    const most = pointsFor(question.pieces.length);
    const widest = Math.max(...question.cloths.map((c) => c.width));
    this.pieces = question.pieces.length;
    this.outlines = question.pieces.map((piece) => {
      const outline = counterClockwise(withoutRepeats(piece.outline));
      const { left, right, low, high } = boundingBox(outline);
      // No step moves the border by more than a tenth of a percent of the cloth or a percent of the piece.
      const reach = Math.max(0.001 * widest, 0.01 * Math.min(right - left, high - low));
      return simplified(outline, most, Math.min(reach, 0.004 * widest));
    });
    for (const { outline } of obstacles) this.outlines.push(counterClockwise(outline));
  }

  private readonly pieces: number;

  /** The field of kind b turned by `turn` seen from kind a, with a ≤ b. */
  field(room: Room, a: number, b: number, turn: number): number {
    const key = `${a} ${b} ${turn}`;
    let field = this.made.get(key);
    if (!field) {
      const [c, s] = cosSin(turn);
      const other = this.outlines[b]!.map(([x, y]) => [c * x - s * y, s * x + c * y] as const);
      field = makeField(room, noFitPolygon(this.outlines[a]!, other), b >= this.pieces ? 0 : this.gap);
      this.made.set(key, field);
    }
    return field;
  }
}

/** A shape of the search: which kind in which turn, and its bounds. Obstacles follow the pieces' shapes. */
export interface Stance {
  readonly kind: number;
  readonly turn: number;
  readonly match: number | null;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** One stance per kind and turn, obstacles unturned. Bounds are those of the true outlines. */
export function stancesOf(
  question: LayQuestion,
  shapes: readonly Shape[][],
  obstacles: readonly Obstacle[],
): Stance[] {
  const stances: Stance[] = question.pieces.flatMap((piece, kind) =>
    distinctTurns(piece).map((turn, t) => {
      const { match, bounds } = shapes[kind]![t]!;
      return { kind, turn: wholeTurn(turn), match, ...bounds };
    }),
  );
  obstacles.forEach(({ outline }, i) => {
    stances.push({ kind: question.pieces.length + i, turn: 0, match: null, ...boundingBox(outline) });
  });
  return stances;
}

/** Bounds of the simplified outline in a stance. */
export function boundsOfStance(stance: Stance, source: Fields) {
  const angle = (stance.turn * Math.PI) / 180;
  const quarter = stance.turn % 90 === 0;
  const c = quarter ? Math.round(Math.cos(angle)) : Math.cos(angle);
  const s = quarter ? Math.round(Math.sin(angle)) : Math.sin(angle);
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of source.outlines[stance.kind]!) {
    left = Math.min(left, c * x - s * y);
    right = Math.max(right, c * x - s * y);
    low = Math.min(low, s * x + c * y);
    high = Math.max(high, s * x + c * y);
  }
  return { left, right, low, high };
}

/** Flaws, and what an odd outline leaves out of its cloth, as outlines without holes. */
export function obstaclesOf(cloths: readonly LayCloth[]): Obstacle[] {
  return cloths.flatMap((cloth, i) => [
    ...(cloth.flaws ?? []).map((outline) => ({ cloth: i, outline: withoutRepeats(outline) })),
    ...(cloth.outline ? outsideOf(cloth.outline, cloth).map((outline) => ({ cloth: i, outline })) : []),
  ]);
}

/**
 * The cloth's rectangle, and a margin, less its outline. It is cut upright through the middle of
 * the outline first, so that no part goes all the way round.
 */
function outsideOf(outline: readonly Point[], cloth: LayCloth): Point[][] {
  const { left, right, low, high } = boundingBox(outline);
  const margin = 0.05 * cloth.width;
  const scale = 2 ** Math.floor(26 - Math.log2(Math.max(right, high, cloth.width)));
  const steps = (ring: readonly Point[]) =>
    ring.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) }));
  const middle = (left + right) / 2;
  const [y0, y1] = [Math.min(0, low) - margin, Math.max(cloth.width, high) + margin];
  return [
    [Math.min(0, left) - margin, middle] as const,
    [middle, Math.max(cloth.length ?? 0, right) + margin] as const,
  ].flatMap(([x0, x1]) => {
    const frame: Point[] = [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
    return difference([steps(frame)], [steps(outline)], FillRule.NonZero)
      .map((ring) => ring.map(({ x, y }) => [x / scale, y / scale] as const))
      .filter((ring) => signedArea(ring) > 1e-9 * cloth.width ** 2);
  });
}
