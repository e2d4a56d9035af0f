import { define } from "../define.ts";
import { dimension, outline, stroke } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * A round piece about (0, 0), in the book's unit: one edge all round, the rim. `less` makes the radius
 * smaller, as for a lining or the padding inside a turning; a negative value makes it larger, as
 * for a seam allowance. Source: geometry; smaller by 1/4 in: McGlauflin, Handicraft for Girls,
 * 1910, a round holder.
 */
export const DISC = define({
  name: "DISC",
  summary: "A round piece of cloth: a hat's crown tip, the base of a bag, a button's cover, a patch.",
  source: "geometry; McGlauflin, Handicraft for Girls, 1910, a round holder and case",
  words: "circle round crown tip hat base bag bottom lining smaller yoyo patch cover",
  takes: {
    radius: { kind: "length", about: "from the middle to the edge", from: 0.2, to: 500 },
    less: {
      kind: "length",
      about: "how much smaller to make the radius; negative for larger",
      from: -50,
      to: 500,
      otherwise: 0,
    },
  },
  returns: "piece",
  usual: ["less <= 0.5 * radius"],
  compute({ radius, less }, { step }) {
    if (less >= radius * (1 - 1e-9))
      throw new Refusal(
        (say) => phrase`less must be below the radius of ${say(radius, less)}, not ${say(less, radius)}`,
      );
    const cut = step("cut_radius", "radius - less", radius - less);
    step("all_round", "2 * PI() * cut_radius", 2 * Math.PI * cut);
    step("area", "PI() * cut_radius ^ 2", Math.PI * cut * cut);
    const half = (start: number) => arc([0, 0], cut, start, start + Math.PI);
    const [first, second] = [half(-Math.PI / 2), half(Math.PI / 2)];
    return pieceOf([[first, { ...second, from: first.to, to: first.from }]], ["rim"]);
  },
  draw(_, { cut_radius = 0 }, piece) {
    if (typeof piece !== "object") return [];
    return [
      ...outline(piece, { shows: "area" }),
      { kind: "edge", edge: piece.edges[0]!, role: "seam", label: phrase`all round`, shows: "all_round" },
      dimension([0, 0], [cut_radius, 0], { label: phrase`radius`, shows: "cut_radius" }),
      stroke([[-cut_radius / 3, -cut_radius / 2], [-cut_radius / 3, cut_radius / 2]], "grain"),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { radius: 3.625, less: 0.25 },
      gives: { area: Math.PI * 3.375 ** 2, width: 6.75, edges: [6.75 * Math.PI] },
      because:
        "McGlauflin, Handicraft for Girls, 1910: a holder 1/4 in smaller than its case's 3 5/8 in radius",
    },
    {
      given: { radius: 9 },
      gives: { area: 81 * Math.PI, width: 18, length: 18 },
      unit: "cm",
      because: "π r²",
    },
  ],
});
