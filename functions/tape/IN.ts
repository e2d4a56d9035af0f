import { define } from "../define.ts";
import { inBookUnit } from "../drafting/in-book-unit.ts";
import { tape } from "../drawing/tape-drawing.ts";

/** A length in inches, converted to the book's unit: exact, and negative for a length taken off. Source: NIST SP 811. */
export const IN = define({
  name: "IN",
  summary: "Converts a length in inches to the book's unit.",
  source: "NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m, exact",
  words: "inch inches convert",
  takes: { x: { kind: "figure", about: "how many inches", from: -40000, to: 40000 } },
  returns: "length",
  compute: ({ x }, context) => inBookUnit(x, "in", context),
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { x: 36 }, gives: 91.44, unit: "cm", because: "36 in make a yard, 0.9144 m (NIST SP 811)" },
    { given: { x: 36.5 }, gives: 36.5, because: "the book is in inches already" },
  ],
});
