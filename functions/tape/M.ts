import { define } from "../define.ts";
import { inBookUnit } from "../drafting/in-book-unit.ts";
import { tape } from "../drawing/tape-drawing.ts";

/** A length in metres, converted to the book's unit: exact, and negative for a length taken off. Source: NIST SP 811. */
export const M = define({
  name: "M",
  summary: "Converts a length in metres to the book's unit.",
  source: "NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m, exact",
  words: "metre meter metric cloth convert",
  takes: { x: { kind: "figure", about: "how many metres", from: -1000, to: 1000 } },
  returns: "length",
  compute: ({ x }, context) => inBookUnit(x, "m", context),
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { x: 0.9144 }, gives: 36, because: "1 yd = 0.9144 m exactly (NIST SP 811)" },
    { given: { x: 2.5 }, gives: 250, unit: "cm", because: "100 cm make a metre" },
  ],
});
