import { define } from "../define.ts";
import { tape } from "../drawing/tape-drawing.ts";
import { convert } from "../units.ts";

/** Old cloth measures in inches, as school arithmetics printed them until the yard displaced them. */
const INCHES = {
  nail: 2.25,
  quarter: 9,
  "flemish ell": 27,
  "scotch ell": 37,
  "english ell": 45,
  "french ell": 54,
} as const;

type Old = keyof typeof INCHES;

/**
 * A length in an old English cloth measure, converted to the book's unit. A yard has 16 nails or 4
 * quarters; the Flemish ell has 3 quarters, the English ell 5, the French ell 6, and the Scotch
 * ell 37 in. The inch is today's, which differs from the old ones by less than a thread. An ell in
 * a source from elsewhere may be another length. Source: A Complete System of Practical Arithmetic
 * (1869).
 */
export const OLD_MEASURE = define({
  name: "OLD_MEASURE",
  summary: "Converts nails, quarters or ells, as in an old bill or pattern book, to the book's unit.",
  source:
    "A Complete System of Practical Arithmetic (Scottish School-Book Association, 1869), cloth measure; Nicholson, Men and Measures (1912), ch. XVI",
  words: "nail ell quarter historical period source inventory cloth measure yard convert",
  takes: {
    x: { kind: "figure", about: "how many of the measure", from: 0, to: 10000 },
    measure: { kind: "text", about: "which measure", choices: Object.keys(INCHES) as Old[] },
  },
  returns: "length",
  compute({ x, measure }, { step, unit }) {
    const inch = convert(1, "in", unit);
    const each = convert(INCHES[measure], "in", unit);
    const sizes = Object.entries(INCHES).map(([name, size]) => `IF(measure = "${name}"; ${size}; `);
    const rule = `${sizes.join("")}0${")".repeat(sizes.length)}${inch === 1 ? "" : ` * ${inch}`}`;
    step("each", rule, each);
    return step("length", "x * each", x * each);
  },
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    {
      given: { x: 1, measure: "english ell" },
      gives: 45,
      because: "five quarters of a yard (Practical Arithmetic, 1869)",
    },
    { given: { x: 16, measure: "nail" }, gives: 91.44, unit: "cm", because: "sixteen nails make a yard" },
    { given: { x: 2.5, measure: "flemish ell" }, gives: 67.5, because: "three quarters each, 27 in" },
  ],
});
