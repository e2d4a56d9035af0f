/**
 * Drawings as data: shapes in the book's unit, x to the right and y downwards. A shape that
 * `shows` a step is drawn so that its own measure is that step's value; the tests measure it.
 */
import { degrees, distance, type Edge, line, type Point } from "../geometry/strokes.ts";
import { edgeLength, type Piece, pieceArea, type Role } from "../pieces/piece.ts";

export type Shape =
  /** A closed outline; shows its area. `context` is another piece, drawn to show where the answer lies on it; paper leaves it out. */
  | {
      readonly kind: "outline";
      readonly piece: Piece;
      readonly label?: string;
      readonly shows?: string;
      readonly context?: true;
    }
  /** A run of strokes; shows its length. `arrows` puts one at each end, as a grain line has them. */
  | {
      readonly kind: "edge";
      readonly edge: Edge;
      readonly role: Role;
      readonly arrows?: true;
      readonly label?: string;
      readonly shows?: string;
    }
  /** A dimension between two points; shows their distance. `label` stands before the figure. */
  | {
      readonly kind: "dimension";
      readonly from: Point;
      readonly to: Point;
      readonly label?: string;
      readonly shows?: string;
    }
  /** An angle at a point between two arms, as the smaller turn unless `reflex`; shows degrees. */
  | {
      readonly kind: "angle";
      readonly at: Point;
      readonly from: Point;
      readonly to: Point;
      readonly reflex?: boolean;
      readonly label?: string;
      readonly shows?: string;
    }
  /** Marks in a row (buttons, eyelets, pleat marks); shows how many. */
  | {
      readonly kind: "marks";
      readonly at: readonly Point[];
      readonly mark: "notch" | "dot" | "cross";
      readonly label?: string;
      readonly shows?: string;
    }
  | Layer
  | { readonly kind: "note"; readonly at: Point; readonly text: string };

/**
 * A part of a view of something solid. Layers are painted in order, each over those before it:
 * cloth and the figure as filled areas, which hide what is behind them; hems, edges and folds as lines.
 * A silhouette is not painted: it is there to be laid over a later state of the same view.
 */
export interface Layer {
  readonly kind: "layer";
  readonly points: readonly Point[];
  readonly of: "figure" | "cloth" | "inside" | "hem" | "edge" | "fold" | "silhouette";
  /** From 0 in full light to 1 in the shade. */
  readonly shade?: number;
}

/** The measure a shape shows: an area, a length, degrees or a count; null for notes and layers. */
export function measureShape(shape: Shape): number | null {
  switch (shape.kind) {
    case "outline":
      return pieceArea(shape.piece);
    case "edge":
      return edgeLength(shape.edge);
    case "dimension":
      return distance(shape.from, shape.to);
    case "marks":
      return shape.at.length;
    case "angle": {
      const [ax, ay] = [shape.from[0] - shape.at[0], shape.from[1] - shape.at[1]];
      const [bx, by] = [shape.to[0] - shape.at[0], shape.to[1] - shape.at[1]];
      const turn = Math.abs(degrees(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)));
      return shape.reflex ? 360 - turn : turn;
    }
    case "note":
    case "layer":
      return null;
  }
}

/** The `shows` of a shape, as a part to spread into it; nothing when no step is named. */
export const showing = (step: string | undefined): { shows?: string } => (step ? { shows: step } : {});

/** A straight run through points, as an edge shape. */
export function stroke(
  points: readonly Point[],
  role: Role,
  more: { label?: string; shows?: string } = {},
): Shape {
  return { kind: "edge", edge: points.slice(1).map((to, i) => line(points[i]!, to)), role, ...more };
}

/** A dimension from one point to another. */
export function dimension(from: Point, to: Point, more: { label?: string; shows?: string } = {}): Shape {
  return { kind: "dimension", from, to, ...more };
}

/** The piece itself with its marks, each in its role. */
export function outline(piece: Piece, more: { label?: string; shows?: string } = {}): Shape[] {
  return [{ kind: "outline", piece, ...more }, ...marksDrawn(piece)];
}

/** The marks of a piece, each in its role. */
export function marksDrawn({ marks }: Piece): Shape[] {
  return marks.map(({ line, role }) => ({ kind: "edge", edge: line, role }));
}
