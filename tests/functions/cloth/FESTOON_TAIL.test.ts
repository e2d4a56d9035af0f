import { expect, test } from "vitest";
import { FESTOON_TAIL } from "../../../functions/cloth/FESTOON_TAIL.ts";
import { isRefused, run } from "../../../functions/run.ts";

const inches = (part: string) => run(FESTOON_TAIL, [72, part], { unit: "in" });

test("a tail six feet long is three feet at the front, one at the top and sixteen inches at its widest", () => {
  // Stephenson, Cutting and Draping, 1905, irregular festoon (printed).
  expect(["front", "top", "widest"].map(inches)).toEqual([36, 12, 16]);
});

test("another part than these is refused with their names", () => {
  const answer = inches("hem");
  expect(isRefused(answer) && answer.refusal).toBe('part must be "front", "top" or "widest", not "hem"');
});
