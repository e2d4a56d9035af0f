/** Pleats that are not all of one depth, such as graduated ones, in a row along a finished width. */

import { isAbove } from "../compared-figures.ts";
import type { Take } from "../define.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import type { Pleat, PleatStyle } from "./pleat-creases.ts";

export const PLEAT_DEPTHS = {
  kind: "length",
  about:
    "from a pleat's outer fold to its inner one, a cell for each pleat in order; a blank cell is skipped",
  from: 0.1,
  to: 200,
  many: true,
  blanks: true,
} as const satisfies Take;

export const PLEAT_PLACES = {
  kind: "length",
  about:
    "where each pleat's middle, or a knife pleat's fold, shows along the finished width; evenly set when left out",
  from: 0,
  to: 5000,
  many: true,
  blanks: true,
  otherwise: null,
} as const satisfies Take;

type LengthColumn = readonly (number | null)[];

/** The depths in the cells that are not blank; refuses a column without any. */
export function depthsOf(depths: LengthColumn): number[] {
  const given = depths.filter((depth) => depth !== null);
  if (given.length === 0) throw new Refusal(phrase`depths is empty: give the depth of at least one pleat`);
  return given;
}

/**
 * The pleats in order; refuses places that are not as many as the depths, out of order or off the
 * width, and boxes, each twice its depth wide, that would lie over one another or past an end.
 */
export function pleatsAt(
  style: PleatStyle,
  finished: number,
  depths: LengthColumn,
  places: LengthColumn | null,
): Pleat[] {
  const given = depthsOf(depths);
  const set =
    places?.filter((place) => place !== null) ?? given.map((_, i) => ((i + 0.5) * finished) / given.length);
  if (set.length !== given.length) {
    throw new Refusal(
      phrase`places must have as many values as depths, not ${set.length} against ${given.length}`,
    );
  }
  set.forEach((place, i) => {
    if (place > finished * (1 + 1e-9)) {
      throw new Refusal(
        (say) =>
          phrase`places, number ${i + 1}, must be at most ${say(finished, place)}, not ${say(place, finished)}`,
      );
    }
    if (i > 0 && !isAbove(place, set[i - 1]!)) {
      throw new Refusal(
        phrase`places must grow from pleat to pleat: number ${i + 1} is not beyond number ${i}`,
      );
    }
  });
  if (style === "box") {
    given.forEach((depth, i) => {
      const before = i === 0 ? set[0]! : set[i]! - set[i - 1]! - given[i - 1]!;
      const after = i === given.length - 1 ? finished - set[i]! : Number.POSITIVE_INFINITY;
      const room = Math.max(0, Math.min(before, after));
      if (depth > room * (1 + 1e-9)) {
        throw new Refusal(
          (say) =>
            phrase`depths, number ${i + 1}, must be at most ${say(room, depth)} for its box to lie clear of ${before <= after && i > 0 ? phrase`the box before it` : phrase`the end`}, not ${say(depth, room)}`,
        );
      }
    });
  }
  return given.map((depth, i) => ({ place: set[i]!, depth, spacing: 2 * depth }));
}
