import { expect, test } from "vitest";
import { HOOP_GIRTH } from "../../../functions/notions/HOOP_GIRTH.ts";
import { type Argument, isRefused, run } from "../../../functions/run.ts";

const girth = (...args: Argument[]) => run(HOOP_GIRTH, args, { unit: "in" });
const all = (shape: string) => [1, 2, 3, 4, 5, 6].map((n) => girth(n, 50, 120, 6, shape) as number);

test("both shapes go from the top hoop's girth to the lowest's, each hoop larger than the one above", () => {
  for (const shape of ["cone", "bell"]) {
    const hoops = all(shape);
    expect(hoops[0]).toBeCloseTo(50, 9);
    expect(hoops[5]).toBeCloseTo(120, 9);
    for (let i = 1; i < 6; i += 1) expect(hoops[i]!).toBeGreaterThan(hoops[i - 1]!);
  }
});

test("a cone grows evenly, a bell ever more slowly towards the hem", () => {
  const grows = (hoops: number[]) => hoops.slice(1).map((hoop, i) => hoop - hoops[i]!);
  for (const step of grows(all("cone"))) expect(step).toBeCloseTo(14, 9);
  const bell = grows(all("bell"));
  for (let i = 1; i < 5; i += 1) expect(bell[i]!).toBeLessThan(bell[i - 1]!);
});

test("past the last hoop there is none, and a hem smaller than the top is refused", () => {
  expect(girth(7, 50, 120, 6)).toBe("");
  const answer = girth(1, 50, 40, 6);
  expect(isRefused(answer) && answer.refusal).toBe(
    "bottom must be at least as large as top, not 40 in against 50 in",
  );
});
