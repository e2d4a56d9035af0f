import { expect, test } from "vitest";
import { WIDTH_CHART } from "../../../functions/cloth/WIDTH_CHART.ts";
import { CHART_WIDTHS, CHART_YARDS } from "../../../functions/widthchart.ts";
import { isRefused, run } from "../../../functions/work.ts";

const chart = (...args: number[]) => run(WIDTH_CHART, args, { unit: "in" });

test("every cell of the chart is found again from every other in its line", () => {
  for (const line of CHART_YARDS) {
    CHART_WIDTHS.forEach(([from], i) => {
      CHART_WIDTHS.forEach(([, to], j) => {
        expect(chart(line[i]! * 36, from, to)).toBeCloseTo(line[j]! * 36, 9);
      });
    });
  }
});

test("some cells as the leaflet prints them", () => {
  // Cooperative-extension fabric width chart, read from several copies.
  const yards = (length: number, from: number, to: number) => (chart(length * 36, from, to) as number) / 36;
  expect(yards(5, 36, 45)).toBeCloseTo(3.875, 9);
  expect(yards(2, 36, 60)).toBeCloseTo(1.25, 9);
  expect(yards(3.375, 45, 54)).toBeCloseTo(2.75, 9);
  expect(yards(1.75, 35, 66)).toBeCloseTo(0.875, 9);
});

test("lines and columns fall with width and rise with length", () => {
  CHART_YARDS.forEach((line, i) => {
    line.forEach((yards, j) => {
      if (j > 0) expect(yards).toBeLessThanOrEqual(line[j - 1]!);
      if (i > 0) expect(yards).toBeGreaterThan(CHART_YARDS[i - 1]![j]!);
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
