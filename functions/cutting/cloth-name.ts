/** How a list names a cloth: under one of these headings; what follows a comma is a note, so that "linen, lies across" is linen. */
import type { Cell } from "../define.ts";

export const CLOTH_HEADINGS = ["cloth", "fabric", "material"] as const;

/** The cloth that a cell names; "" for a blank cell. */
export const clothIn = (cell: Cell | undefined): string =>
  String(cell ?? "")
    .split(",")[0]!
    .trim();
