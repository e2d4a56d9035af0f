import { define } from "../define.ts";
import { inBookUnit } from "../drafting/in-book-unit.ts";
import { tape } from "../drawing/tape-drawing.ts";

/** A length in yards, converted to the book's unit: exact, and negative for a length taken off. Source: NIST SP 811. */
export const YD = define({
  name: "YD",
  summary: "Converts a length in yards to the book's unit.",
  source: "NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m, exact",
  words: "yard yards cloth convert",
  takes: { x: { kind: "figure", about: "how many yards", from: -1000, to: 1000 } },
  returns: "length",
  compute: ({ x }, context) => inBookUnit(x, "yd", context),
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { x: 2.5 }, gives: 90, because: "36 in make a yard" },
    { given: { x: 1 }, gives: 91.44, unit: "cm", because: "1 yd = 0.9144 m exactly (NIST SP 811)" },
  ],
});
