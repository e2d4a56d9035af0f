import { expect, test } from "vitest";
import { PACKS_TO_BUY } from "../../../functions/notions/PACKS_TO_BUY.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(PACKS_TO_BUY, "in");

test("the packs hold what is missing, and one pack fewer does not", () => {
  for (const needed of [1, 5, 6, 7, 36, 37, 100])
    for (const stock of [0, 3, 6, 40]) {
      const packs = figure(needed, stock, 6);
      expect(packs * 6 + stock).toBeGreaterThanOrEqual(needed);
      if (packs > 0) expect((packs - 1) * 6 + stock).toBeLessThan(needed);
    }
  // A tenth more of exactly three packs is not rounded up by a rounding error.
  expect(figure(30, 0, 11, 0.1)).toBe(3);
  // A blank beside "on a card" would make every button cost as much as a card.
  expect(figure(34, 5, null)).toBe(29);
  expect(toLookAt(PACKS_TO_BUY, [34, 5, null], { unit: "in" })).toEqual([
    "PACKS_TO_BUY: how many a pack holds is not given, so each is counted as a pack of its own",
  ]);
  expect(toLookAt(PACKS_TO_BUY, [34, 5, 1], { unit: "in" })).toEqual([]);
  expect(refusal(2.5)).toBe("needed must be a whole number, not 2.5");
});
