/** What each line of a drawing is called in its legend, and the signs that stand at single points. */

import type { Shape } from "../../functions/drawing/shapes.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Role } from "../../functions/pieces/piece.ts";

export const ROLE_WORDS: Record<Role, string> = {
  cut: phrase`cut line`,
  seam: phrase`seam line`,
  // For translators: the line along which cloth is folded.
  fold: phrase`fold`,
  inner: phrase`inner fold`,
  placement: phrase`placement line`,
  dart: phrase`dart leg`,
  // For translators: a small mark on an edge that meets another on the edge it is sewn to.
  notch: phrase`notch`,
  grain: phrase`straight grain`,
  stitch: phrase`stitching`,
  // For translators: the line along which a piece is cut open to be spread.
  slash: phrase`slash`,
  guide: phrase`guide line`,
};

type Mark = Extract<Shape, { kind: "marks" }>["mark"];

/** Path data about the marked point at (0, 0), some 8 wide. */
export const MARK_SIGNS: Record<Mark, string> = {
  notch: "M -4 -7 L 0 0 L 4 -7",
  dot: "M -2.5 0 A 2.5 2.5 0 1 1 2.5 0 A 2.5 2.5 0 1 1 -2.5 0 Z",
  cross: "M -4 -4 L 4 4 M -4 4 L 4 -4",
};
