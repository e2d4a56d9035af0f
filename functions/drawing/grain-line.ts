/** Where the grain line is drawn on a piece: in the middle of the longest stretch of cloth along the grain. */

import { boundingBox, type Point } from "../geometry/strokes.ts";
import { flattenPiece, type Piece, pieceBounds } from "../pieces/piece.ts";
import { type Shape, stroke } from "./shapes.ts";

/** The grain line of a piece as it is drafted, the grain running down the page. */
export function grainDrawn(piece: Piece): Shape {
  const { left, right, low, high } = pieceBounds(piece);
  const outline = flattenPiece(piece, Math.max(right - left, high - low) / 200);
  const swap = ([x, y]: Point): Point => [y, x];
  return stroke(grainLine(outline.map(swap)).map(swap), "grain");
}

/** The grain line of an outline that lies on the cloth, the grain running along x; looked for at nine levels. */
export function grainLine(outline: readonly Point[]): [Point, Point] {
  const { low, high } = boundingBox(outline);
  let best: [Point, Point] = [outline[0]!, outline[0]!];
  // From the middle outwards, so that the level nearest the middle wins a tie.
  for (const level of [5, 4, 6, 3, 7, 2, 8, 1, 9]) {
    const y = low + ((high - low) * level) / 10;
    const cuts = outline
      .flatMap(([ax, ay], i) => {
        const [bx, by] = outline[(i + 1) % outline.length]!;
        return ay <= y === by <= y ? [] : [ax + ((y - ay) / (by - ay)) * (bx - ax)];
      })
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const [from, to] = [cuts[i]!, cuts[i + 1]!];
      const rest = (to - from) / 5;
      if (to - from - 2 * rest > (best[1][0] - best[0][0]) * 1.02)
        best = [
          [from + rest, y],
          [to - rest, y],
        ];
    }
  }
  return best;
}
