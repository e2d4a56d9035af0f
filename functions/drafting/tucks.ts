/** A row of tucks on the flat cloth: its arguments, and the strip of paper by which it is marked. */

import type { EdgeStrip, StripMark, Takes } from "../define.ts";
import { phrase } from "../phrase.ts";

export const TUCK_SPACING = {
  width: {
    kind: "length",
    usual: [0.05, 20],
    about: "from a tuck's fold to its stitching",
    from: 0.05,
    to: 50,
  },
  space: {
    kind: "length",
    about: "the space that shows from a tuck's fold to the next tuck's stitching",
    from: 0,
    to: 200,
  },
  start: {
    kind: "length",
    about: "from the beginning to the first stitching line",
    from: 0,
    to: 1000,
    otherwise: 0,
  },
} as const satisfies Takes;

/** Why nothing is said when two of these arguments have changed places. */
export const TUCKS_ALIKE = {
  "width, space": "tucks may be wider or narrower than what shows between them",
  "width, start": "the first tuck may begin anywhere",
  "space, start": "the first tuck may begin anywhere",
} as const;

/** The stitching lines and the crease of each tuck; `each` is from tuck to tuck on the flat cloth. */
export const tuckStrip = (count: number, start: number, each: number, width: number): EdgeStrip => ({
  length: start + count * each,
  marks: Array.from({ length: count }, (_, i): StripMark[] => {
    const first = start + i * each;
    return [
      { at: first, role: "stitch", says: phrase`tuck ${i + 1} stitching` },
      { at: first + width, role: "fold", says: phrase`tuck ${i + 1} crease` },
      { at: first + 2 * width, role: "stitch", says: phrase`tuck ${i + 1} stitching` },
    ];
  }).flat(),
  goesOn: true,
});
