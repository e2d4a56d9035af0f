/** Pleats that are not all of one depth, such as graduated ones, in a row along a finished width. */
import { Refusal, type Take } from "./define.ts";
import type { Pleat, Style } from "./folds.ts";

export const DEPTHS = {
  kind: "length",
  about:
    "from a pleat's outer fold to its inner one, a cell for each pleat in order; a blank cell is no pleat",
  from: 0.1,
  to: 200,
  many: true,
  blanks: true,
} as const satisfies Take;

export const PLACES = {
  kind: "length",
  about:
    "where each pleat's middle, or a knife pleat's fold, shows along the finished width; evenly set when left out",
  from: 0,
  to: 5000,
  many: true,
  blanks: true,
  otherwise: null,
} as const satisfies Take;

type Cells = readonly (number | null)[];

/** The depths that are given; refuses none. */
export function depthsOf(depths: Cells): number[] {
  const given = depths.filter((depth) => depth !== null);
  if (given.length === 0) throw new Refusal("depths is empty: give the depth of at least one pleat");
  return given;
}

/** The pleats in order; refuses places that are not as many as the depths, out of order or off the width. */
export function pleatsAt(style: Style, finished: number, depths: Cells, places: Cells | null): Pleat[] {
  const given = depthsOf(depths);
  const set = places?.filter((place) => place !== null) ?? null;
  if (set === null) {
    const spacing = finished / given.length;
    return given.map((depth, i) => room(style, { place: (i + 0.5) * spacing, depth, spacing }, i));
  }
  if (set.length !== given.length) {
    throw new Refusal(`places must be as many as depths, not ${set.length} against ${given.length}`);
  }
  return given.map((depth, i) => {
    const place = set[i]!;
    const before = set[i - 1];
    if (place > finished * (1 + 1e-9)) {
      throw new Refusal(`places, number ${i + 1}, must be at most ${plain(finished)}, not ${plain(place)}`);
    }
    if (before !== undefined && place <= before) {
      throw new Refusal(
        `places must grow from pleat to pleat, not go from ${plain(before)} to ${plain(place)} at number ${i + 1}`,
      );
    }
    // A pleat has the room to the middle between it and the next, on its narrower side.
    const sides = [place - (before ?? -place), (set[i + 1] ?? 2 * finished - place) - place];
    return room(style, { place, depth, spacing: Math.min(...sides) }, i);
  });
}

const plain = (x: number): number => Number(x.toPrecision(6));

/** A box pleat lies twice its depth wide at least half on either side; the fold of another may not lie on it. */
function room(style: Style, pleat: Pleat, i: number): Pleat {
  if (style === "box" && 2 * pleat.depth > pleat.spacing * (1 + 1e-9)) {
    throw new Refusal(
      `depths, number ${i + 1}, must be at most ${plain(pleat.spacing / 2)} for the boxes not to overlap, not ${plain(pleat.depth)}`,
    );
  }
  return pleat;
}
