import { expect, test } from "vitest";
import { BUTTONHOLE_MARK } from "../../../functions/notions/BUTTONHOLE_MARK.ts";
import { run } from "../../../functions/run.ts";

test("holes 3/4 in long and as far apart, the first half an inch down, begin at 1/2, 2 and 3 1/2 in", () => {
  // McGlauflin, Handicraft for Girls, 1910, exercise 45 (numbers printed; starts derived).
  const starts = [1, 2, 3, 4].map((n) => run(BUTTONHOLE_MARK, [n, 3, 0.75, 0.75, 0.5], { unit: "in" }));
  expect(starts).toEqual([0.5, 2, 3.5, ""]);
});

test("holes and gaps together fill the row", () => {
  const [count, hole, gap, first] = [7, 1.9, 6.3, 2];
  const last = run(BUTTONHOLE_MARK, [count, count, hole, gap, first], { unit: "cm" }) as number;
  expect(last + hole).toBeCloseTo(first + count * hole + (count - 1) * gap, 12);
});
