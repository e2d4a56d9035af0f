import { define } from "../define.ts";
import { inBookUnit } from "../drafting/in-book-unit.ts";
import { tape } from "../drawing/tape-drawing.ts";

/** A length in centimetres, converted to the book's unit: exact, and negative for a length taken off. Source: NIST SP 811. */
export const CM = define({
  name: "CM",
  summary: "Converts a length in centimetres to the book's unit.",
  source: "NIST Special Publication 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 0.9144 m, exact",
  words: "centimetre centimeter metric convert",
  takes: { x: { kind: "figure", about: "how many centimetres", from: -100000, to: 100000 } },
  returns: "length",
  compute: ({ x }, context) => inBookUnit(x, "cm", context),
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { x: 2.54 }, gives: 1, because: "1 in = 25.4 mm exactly (NIST SP 811)" },
    { given: { x: 42 }, gives: 42, unit: "cm", because: "the book is in centimetres already" },
  ],
});
