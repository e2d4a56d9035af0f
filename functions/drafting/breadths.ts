/** Breadths: a long strip made up of pieces that are cut across the whole width of the cloth and joined. */
import { isBelow } from "../compared-figures.ts";
import type { Take, Takes } from "../define.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The width of the cloth that breadths are cut from. */
export const CLOTH_WIDTH = {
  kind: "length",
  usual: [15, 330],
  about: "usable width of the cloth, between the selvedges",
  from: 5,
  to: 1000,
} as const satisfies Take;

/** The cloth, and what a breadth of it loses where breadths are joined. */
export const BREADTHS = {
  cloth_width: CLOTH_WIDTH,
  seam: {
    kind: "length",
    about: "width that each breadth loses to its joins",
    from: 0,
    to: 50,
    otherwise: 0,
  },
} as const satisfies Takes;

/** What remains of a breadth once it is joined; refuses joins that take the whole width. */
export function joinedBreadth(cloth_width: number, seam: number): number {
  if (!isBelow(seam, cloth_width))
    throw new Refusal(
      (say) =>
        phrase`seam must be less than the cloth width of ${say(cloth_width, seam)}, not ${say(seam, cloth_width)}`,
    );
  return cloth_width - seam;
}
