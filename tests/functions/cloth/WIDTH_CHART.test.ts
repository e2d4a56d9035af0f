import { expect, test } from "vitest";
import { WIDTH_CHART } from "../../../functions/cloth/WIDTH_CHART.ts";
import { readTape } from "../../../functions/fractions.ts";
import { isRefused, run } from "../../../functions/run.ts";

const chart = (...args: number[]) => run(WIDTH_CHART, args, { unit: "in" });

/** Cooperative-extension fabric width chart (New Jersey / Rutgers, from memory), yards, as found in several copies. */
const WIDTHS = [36, 39, 41, 45, 50, 54, 60, 66];
const PRINTED = `
  1 3/4 | 1 1/2 | 1 1/2 | 1 3/8 | 1 1/4 | 1 1/8 | 1     | 7/8
  2     | 1 3/4 | 1 3/4 | 1 5/8 | 1 1/2 | 1 3/8 | 1 1/4 | 1 1/8
  2 1/4 | 2     | 2     | 1 3/4 | 1 5/8 | 1 1/2 | 1 3/8 | 1 1/4
  2 1/2 | 2 1/4 | 2 1/4 | 2 1/8 | 1 3/4 | 1 3/4 | 1 5/8 | 1 1/2
  2 7/8 | 2 1/2 | 2 1/2 | 2 1/4 | 2     | 1 7/8 | 1 3/4 | 1 5/8
  3 1/8 | 2 3/4 | 2 3/4 | 2 1/2 | 2 1/4 | 2     | 1 7/8 | 1 3/4
  3 3/8 | 3     | 2 7/8 | 2 3/4 | 2 3/8 | 2 1/4 | 2     | 1 7/8
  3 3/4 | 3 1/4 | 3 1/8 | 2 7/8 | 2 5/8 | 2 3/8 | 2 1/4 | 2 1/8
  4 1/4 | 3 1/2 | 3 3/8 | 3 1/8 | 2 3/4 | 2 5/8 | 2 3/8 | 2 1/4
  4 1/2 | 3 3/4 | 3 5/8 | 3 3/8 | 3     | 2 3/4 | 2 5/8 | 2 1/2
  4 3/4 | 4     | 3 7/8 | 3 5/8 | 3 1/4 | 2 7/8 | 2 3/4 | 2 5/8
  5     | 4 1/4 | 4 1/8 | 3 7/8 | 3 3/8 | 3 1/8 | 2 7/8 | 2 3/4
`;

const LINES = PRINTED.trim()
  .split("\n")
  .map((line) => line.split("|").map((cell) => readTape(cell, "in")!.length));

test("every cell of the chart, as the leaflet prints it, is found from every other in its line", () => {
  expect(LINES.map((line) => line.length)).toEqual(Array(12).fill(8));
  for (const line of LINES) {
    WIDTHS.forEach((from, i) => {
      WIDTHS.forEach((to, j) => {
        expect(chart(line[i]! * 36, from, to)).toBeCloseTo(line[j]! * 36, 9);
      });
    });
  }
});

test("a width told by the narrow end of the chart's column is the same column", () => {
  for (const [from, to] of [
    [35, 36],
    [44, 45],
    [52, 54],
    [58, 60],
  ] as const)
    expect(chart(90, from, 66)).toBe(chart(90, to, 66));
});

test("lines and columns fall with width and rise with length", () => {
  LINES.forEach((line, i) => {
    line.forEach((yards, j) => {
      if (j > 0) expect(yards).toBeLessThanOrEqual(line[j - 1]!);
      if (i > 0) expect(yards).toBeGreaterThan(LINES[i - 1]![j]!);
    });
  });
});

test("a width between the chart's and a length past its end are refused with what there is", () => {
  const between = chart(90, 47.5, 60);
  expect(isRefused(between) && between.refusal).toBe(
    "from must be near one of the chart's widths (36 in, 39 in, 41 in, 45 in, 50 in, 54 in, 60 in, 66 in), not 47 1/2 in",
  );
  const long = chart(200, 36, 60);
  expect(isRefused(long) && long.refusal).toBe(
    "length must be at most 180 in, the chart's last line for that width, not 200 in",
  );
});
