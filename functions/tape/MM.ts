import { define } from "../define.ts";
import { inBookUnit } from "../drafting/in-book-unit.ts";
import { tape } from "../drawing/tape-drawing.ts";

/** A length in millimetres, converted to the book's unit: exact, and negative for a length taken off. Source: NIST SP 811. */
export const MM = define({
  name: "MM",
  summary: "Converts a length in millimetres to the book's unit.",
  source: "NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m, exact",
  words: "millimetre millimeter metric convert",
  takes: { x: { kind: "figure", about: "how many millimetres", from: -1000000, to: 1000000 } },
  returns: "length",
  compute: ({ x }, context) => inBookUnit(x, "mm", context),
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { x: 25.4 }, gives: 1, because: "1 in = 25.4 mm exactly (NIST SP 811)" },
    { given: { x: 15 }, gives: 1.5, unit: "cm", because: "10 mm make a centimetre" },
  ],
});
