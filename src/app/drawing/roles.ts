/** What each line of a drawing is called in its legend; how it is drawn is in drawing.css, by the same word. */
import type { Role } from "../../../functions/drawing.ts";

export const ROLE_WORDS: Record<Role, string> = {
  cut: "cut line",
  seam: "seam line",
  fold: "fold",
  placement: "placement line",
  grain: "straight grain",
  stitch: "stitching",
  slash: "slash",
  guide: "guide line",
};
