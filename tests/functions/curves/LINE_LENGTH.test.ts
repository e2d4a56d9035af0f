import { expect, test } from "vitest";
import { LINE_LENGTH } from "../../../functions/curves/LINE_LENGTH.ts";
import { run } from "../../../functions/run.ts";

test("3 ft out and 3 ft up is 4.2426 ft", () => {
  // YA-09: Stephenson, Cutting and Draping, 1905, plate 155 prints 4 ft 3 in; 4.2426 to four places.
  expect(run(LINE_LENGTH, [[0, 36], [36, 0]], { unit: "in" })).toBeCloseTo(12 * 4.2426, 3); // biome-ignore format: columns
});

test("a polygon in a circle is 2·n·r·sin(π/n) round", () => {
  const turns = Array.from({ length: 8 }, (_, i) => (2 * Math.PI * i) / 7);
  const length = run(LINE_LENGTH, [turns.map((t) => 9 * Math.cos(t)), turns.map((t) => 9 * Math.sin(t))], {
    unit: "cm",
  });
  expect(length).toBeCloseTo(2 * 7 * 9 * Math.sin(Math.PI / 7), 9);
});
