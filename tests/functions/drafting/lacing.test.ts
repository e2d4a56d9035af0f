import { expect, test } from "vitest";
import { LACINGS, laceRuns } from "../../../functions/drafting/lacing.ts";
import { distance } from "../../../functions/geometry/strokes.ts";

test("every lacing passes once through every eyelet of both edges", () => {
  for (const style of LACINGS) {
    for (const pairs of [2, 3, 7, 8]) {
      const points = laceRuns(style, 4, pairs, 3).flat();
      const wanted = Array.from({ length: pairs }, (_, i) => [
        `0 ${3 * i}`,
        `4 ${3 * i + (style === "spiral" ? 1.5 : 0)}`,
      ]).flat();
      expect(points.map((p) => p.join(" ")).sort(), `${style}, ${pairs} pairs`).toEqual(wanted.sort());
    }
  }
});

test("a crossed lace lies straight across once, at the last pair", () => {
  const [run] = laceRuns("cross", 4, 5, 3);
  const level = run!.slice(1).filter((point, i) => point[1] === run![i]![1]);
  expect(level).toHaveLength(1);
  expect(distance(run![4]!, run![5]!)).toBe(4);
});

test("loops are left out between the two middle pairs", () => {
  const runs = laceRuns("loops", 4, 7, 3);
  expect(runs.map((run) => run.length)).toEqual([8, 6]);
  expect([runs[0]![0]![1], runs[0]!.at(-1)![1]]).toEqual([9, 9]);
});
