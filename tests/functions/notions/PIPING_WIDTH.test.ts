import { expect, test } from "vitest";
import { PIPING_WIDTH } from "../../../functions/notions/PIPING_WIDTH.ts";
import { run } from "../../../functions/run.ts";

test("the strip goes once round the cord, as a many-sided wrapping shows, and leaves both allowances", () => {
  const width = run(PIPING_WIDTH, [0.5, 1.5], { unit: "cm" }) as number;
  const sides = 5000;
  const round = sides * 0.5 * Math.sin(Math.PI / sides);
  expect(width - 3).toBeCloseTo(round, 6);
});
