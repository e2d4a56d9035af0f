import { expect, test } from "vitest";
import { AGE_CHECK } from "../../../functions/body/AGE_CHECK.ts";
import { run } from "../../../functions/run.ts";
import { evaluate } from "../laws.ts";

const age = (...args: number[]) => run(AGE_CHECK, args, { unit: "in" });

test("the last allowed day is still good, the next is not", () => {
  expect(age(46000, 46090)).toBe("ok");
  expect(age(46000, 46091)).toBe(
    "check: taken 91 days ago, 90 are allowed; please measure again before cutting",
  );
  expect(age(46000, 46000, 0)).toBe("ok");
});

test("dates are counted as the calendar counts them, over the end of a leap February", () => {
  expect(evaluate("=DATE(2028; 3; 1) - DATE(2028; 2; 28)", "in")).toBe(2);
  const day = (year: number, month: number, date: number) =>
    Date.UTC(year, month - 1, date) / 86_400_000 + 25_569;
  expect(age(day(2028, 2, 28), day(2028, 3, 1), 2)).toBe("ok");
  expect(age(day(2028, 2, 28), day(2028, 3, 1), 1)).toMatch(/^check: taken 2 days ago/);
});

test("a day not written down is asked for", () => {
  expect(run(AGE_CHECK, [null, 46000], { unit: "in" })).toMatchObject({
    refusal: "taken is empty: a date or a number of days is needed there",
  });
  expect(run(AGE_CHECK, ["in spring", 46000], { unit: "in" })).toHaveProperty("refusal");
});

test("a today outside this century is refused, and one ten years away is doubted with its cell", () => {
  for (const today of [0, 20_260, 35.98, 202_600])
    expect(run(AGE_CHECK, [46_000, today], { unit: "in" }), String(today)).toEqual({
      refusal: expect.stringMatching(/^today /),
      at: { position: 1, cell: 0 },
    });
  for (const today of [46_000 + 3654, 46_000 - 3654]) {
    const pointed: unknown[] = [];
    const points = (at: unknown) => pointed.push(at);
    expect(run(AGE_CHECK, [46_000, today], { unit: "in", points })).toBe(
      "check: today is more than ten years from the day of the measurement; please check both dates",
    );
    expect(pointed).toEqual([{ position: 1, cell: 0 }]);
  }
});
