import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { OLD_MEASURE } from "../../../functions/tape/OLD_MEASURE.ts";

test("cloth measure is as the school books print it", () => {
  // A Complete System of Practical Arithmetic (Scottish School-Book Association, 1869), printed:
  // 2 1/4 in a nail, 4 nails a quarter, 4 quarters a yard; Flemish ell 3, English 5, French 6
  // quarters, Scotch ell 37 in. The nail and the English ell also in Nicholson, Men and Measures,
  // 1912, ch. III and XVI.
  const inches = (x: number, measure: string) => run(OLD_MEASURE, [x, measure], { unit: "in" });
  expect(inches(4, "nail")).toBe(9);
  expect(inches(4, "quarter")).toBe(36);
  expect(inches(1, "Flemish ell")).toBe(27);
  expect(inches(1, "English ell")).toBe(45);
  expect(inches(1, "French ell")).toBe(54);
  expect(inches(1, "Scotch ell")).toBe(37);
});

test("a measure it does not know is answered with those it does", () => {
  expect(run(OLD_MEASURE, [1, "cubit"], { unit: "in" })).toHaveProperty(
    "refusal",
    'measure must be "nail", "quarter", "flemish ell", "scotch ell", "english ell" or "french ell", not "cubit"',
  );
});
