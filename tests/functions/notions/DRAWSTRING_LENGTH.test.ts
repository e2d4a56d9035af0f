import { expect, test } from "vitest";
import { DRAWSTRING_LENGTH } from "../../../functions/notions/DRAWSTRING_LENGTH.ts";
import { run } from "../../../functions/run.ts";

test("with the casing flat each end still hangs as told", () => {
  const length = run(DRAWSTRING_LENGTH, [44, 10], { unit: "in" }) as number;
  expect((length - 44) / 2).toBe(10);
});

test("it warns of cords on children's clothes", () => {
  expect(DRAWSTRING_LENGTH.cautions).toMatch(/children/);
  expect(DRAWSTRING_LENGTH.cautions).toMatch(/EN 14682/);
});
