import { define } from "../define.ts";
import { inBookUnit } from "../drafting/in-book-unit.ts";
import { tape } from "../drawing/tape-drawing.ts";

/** A length in feet, converted to the book's unit: exact, and negative for a length taken off. Source: NIST SP 811. */
export const FT = define({
  name: "FT",
  summary: "Converts a length in feet to the book's unit.",
  source: "NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m, exact",
  words: "foot feet convert",
  takes: { x: { kind: "figure", about: "how many feet", from: -3000, to: 3000 } },
  returns: "length",
  compute: ({ x }, context) => inBookUnit(x, "ft", context),
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { x: 5.25 }, gives: 63, because: "12 in make a foot" },
    { given: { x: 1 }, gives: 30.48, unit: "cm", because: "1 ft = 0.3048 m exactly (NIST SP 811)" },
  ],
});
