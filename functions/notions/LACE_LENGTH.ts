import { CORDS, LACING } from "../cautions.ts";
import { define } from "../define.ts";
import { LACINGS, laceRuns } from "../drafting/lacing.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of lace for an opening, in the book's unit, hanging ends included. Measure `gap` from
 * eyelet to eyelet when the opening is as wide as it must ever go, to get in and out. The lace is
 * taken as thin and drawn straight; its thickness, its stretch and the turn round the edges are
 * not considered. "loops" is laced from both ends to two loops at the waist, each hanging `tails`
 * long; the other styles have two ends that hang `tails` long. Source: geometry.
 */
export const LACE_LENGTH = define({
  name: "LACE_LENGTH",
  summary: "How long a lace to cut for an opening with eyelets, its hanging ends included.",
  source: "geometry",
  words: "lacing cord corset stays bodice criss-cross spiral ladder loops string tie",
  takes: {
    gap: {
      kind: "length",
      usual: [0, 40],
      about:
        "distance across the opening from eyelet to eyelet at its widest, as when putting the garment on",
      from: 0,
      to: 200,
    },
    pairs: { kind: "count", about: "how many pairs of eyelets there are", from: 2, to: 200 },
    spacing: {
      kind: "length",
      usual: [0.5, 8],
      about: "distance from one eyelet to the next along the edge",
      from: 0.3,
      to: 50,
    },
    style: { kind: "text", about: "how it is laced", choices: LACINGS, otherwise: "cross" },
    tails: {
      kind: "length",
      about: "length that hangs from each end, or from each loop, to hold and tie",
      from: 0,
      to: 300,
      otherwise: 0,
    },
  },
  returns: "length",
  alike: {
    "gap, spacing": "the opening may be narrower than the eyelets stand apart",
    "gap, tails": "the ends may be longer or shorter than the gap",
  },
  compute({ gap, pairs, spacing, style, tails }, { step }) {
    const fall = step(
      "fall",
      'IF(style="spiral";spacing / 2;spacing)',
      style === "spiral" ? spacing / 2 : spacing,
    );
    const slant = step("slant", "SQRT(gap^2 + fall^2)", Math.hypot(gap, fall));
    const bars = { cross: 1, loops: 2, spiral: 0, zigzag: pairs, ladder: pairs }[style];
    const across = step(
      "across",
      'gap * IF(style="cross";1;IF(style="loops";2;IF(style="spiral";0;pairs)))',
      gap * bars,
    );
    const slants = { cross: 2 * (pairs - 1), loops: 2 * (pairs - 2), spiral: 2 * pairs - 1 };
    const down = step(
      "down",
      'IF(style="cross";2 * (pairs - 1) * slant;IF(style="loops";2 * (pairs - 2) * slant;IF(style="spiral";(2 * pairs - 1) * slant;(pairs - 1) * IF(style="zigzag";slant;spacing))))',
      style === "zigzag" || style === "ladder"
        ? (pairs - 1) * (style === "zigzag" ? slant : spacing)
        : slants[style] * slant,
    );
    const laced = step("laced", "across + down", across + down);
    const ends = style === "loops" ? 4 : 2;
    return step("length", 'laced + IF(style="loops";4;2) * tails', laced + ends * tails);
  },
  draw({ gap, pairs, spacing, style, tails }) {
    const right = style === "spiral" ? spacing / 2 : 0;
    const holes = Array.from({ length: pairs }, (_, i): Point[] => [
      [0, i * spacing],
      [gap, i * spacing + right],
    ]).flat();
    const runs = laceRuns(style, gap, pairs, spacing);
    const out = Math.max(gap, spacing) / 4;
    const shapes: Shape[] = [
      { kind: "marks", at: holes, mark: "dot", label: phrase`eyelets` },
      ...runs.map((run) => stroke(run, "stitch", runs.length === 1 ? { shows: "laced" } : {})),
      dimension([0, -out], [gap, -out], { label: phrase`gap` }),
      dimension([-out, 0], [-out, spacing], { label: phrase`spacing` }),
    ];
    if (tails === 0) return shapes;
    // Ends hang straight out to the sides, loops side by side at the waist.
    for (const run of runs) {
      for (const end of [run[0]!, run.at(-1)!])
        shapes.push(stroke([end, [end[0] < gap / 2 ? -tails : gap + tails, end[1]]], "stitch"));
    }
    return shapes;
  },
  examples: [
    {
      given: { gap: 4, pairs: 6, spacing: 2.5 },
      gives: 51.1699056603,
      within: 1e-9,
      unit: "cm",
      because: "criss-cross with one bar: 4 + 2 × 5 × √(4² + 2.5²), geometry in 50 digits",
    },
    {
      given: { gap: 3, pairs: 12, spacing: 1, style: "spiral", tails: 10 },
      gives: 23 * Math.sqrt(9.25) + 20,
      because: "twelve pairs make 23 slants of √(3² + (1/2)²)",
    },
    {
      given: { gap: 4, pairs: 5, spacing: 3, style: "zigzag" },
      gives: 40,
      because: "five bars of 4 in and four slants of 5 in",
    },
    {
      given: { gap: 4, pairs: 5, spacing: 3, style: "ladder" },
      gives: 32,
      because: "five bars of 4 in and four runs of 3 in along the edge",
    },
    {
      given: { gap: 4, pairs: 8, spacing: 3, style: "loops", tails: 20 },
      gives: 148,
      because: "two bars of 4 in, twelve slants of 5 in, two loops of twice 20 in",
    },
  ],
  cautions: `${LACING} ${CORDS}`,
});
