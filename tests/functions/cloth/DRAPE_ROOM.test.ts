import { expect, test } from "vitest";
import { DRAPE_ROOM } from "../../../functions/cloth/DRAPE_ROOM.ts";
import { run } from "../../../functions/run.ts";

const feet = (...args: number[]) =>
  (run(
    DRAPE_ROOM,
    args.map((figure) => figure * 12),
    { unit: "in" },
  ) as number) / 12;

test("an arch of 5 by 8 ft gets half its width more both ways: 7 ft 6 in by 10 ft 6 in", () => {
  // Stephenson, Cutting and Draping, 1905, figure 111 (printed).
  expect([feet(5, 5), feet(8, 5)]).toEqual([7.5, 10.5]);
});

test("without a share the cloth is the opening's size", () => {
  expect(run(DRAPE_ROOM, [80, 60, 0], { unit: "in" })).toBe(80);
});
