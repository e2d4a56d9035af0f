import { expect, test } from "vitest";
import { WIDTH_CHANGE } from "../../../functions/cloth/WIDTH_CHANGE.ts";
import { CHART_WIDTHS, CHART_YARDS } from "../../../functions/cutting/width-chart.ts";
import { run } from "../../../functions/run.ts";

const change = (...args: number[]) => run(WIDTH_CHANGE, args, { unit: "in" }) as number;

const middle = ([from, to]: readonly [number, number]) => (from + to) / 2;

test("equal areas come within a seventh of every pair of cells of the published width chart, mostly within an eighth of a yard", () => {
  // Cooperative-extension fabric width chart (Rutgers; origin from memory).
  let exact = 0;
  let near = 0;
  let pairs = 0;
  for (const line of CHART_YARDS) {
    for (const [i, from] of CHART_WIDTHS.entries()) {
      for (const [j, to] of CHART_WIDTHS.entries()) {
        if (i === j) continue;
        const yards = change(line[i]! * 36, middle(from), middle(to)) / 36;
        expect(Math.abs(yards / line[j]! - 1), `${line[i]} yd from ${from} to ${to} in`).toBeLessThan(1 / 7);
        const eighths = Math.ceil(yards * 8 - 1e-9) - line[j]! * 8;
        pairs += 1;
        if (eighths === 0) exact += 1;
        if (Math.abs(eighths) <= 1) near += 1;
      }
    }
  }
  // Put up to an eighth of a yard it hits 253 cells of 672, and 554 within an eighth (as counted beforehand on the middles of the widths).
  expect([exact, near, pairs]).toEqual([253, 554, 672]);
});

test("there and back is the same length, and the area stays", () => {
  const other = change(100, 36, 60);
  expect(other * 60).toBeCloseTo(100 * 36, 9);
  expect(change(other, 60, 36)).toBeCloseTo(100, 9);
});
