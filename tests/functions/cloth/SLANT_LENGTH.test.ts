import { expect, test } from "vitest";
import { SLANT_LENGTH } from "../../../functions/cloth/SLANT_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const feet = (...args: number[]) =>
  (run(
    SLANT_LENGTH,
    args.map((figure) => figure * 12),
    { unit: "in" },
  ) as number) / 12;

test("an awning three feet out and three feet high is 4 ft 3 in, with a foot more 5 ft 3 in", () => {
  // Stephenson, Cutting and Draping, 1905, plate 155 (printed in feet and whole inches).
  expect(feet(3, 3)).toBeCloseTo(4.2426, 4);
  expect(Math.round(feet(3, 3) * 12)).toBe(4 * 12 + 3);
  expect(Math.round(feet(3, 3, 1) * 12)).toBe(5 * 12 + 3);
});

test("a cloth that goes straight out or straight up is as long as the way", () => {
  expect(feet(5, 0)).toBe(5);
  expect(feet(0, 5)).toBe(5);
});
