import fc from "fast-check";
import { expect, test } from "vitest";
import { MATCH_MARK } from "../../../functions/curves/MATCH_MARK.ts";
import { isRefused, run } from "../../../functions/run.ts";

const match = (...args: (number | null)[]) => run(MATCH_MARK, args, { unit: "cm" });

test("both ends meet, places keep their order, and each side of the eased part matches length for length", () => {
  const figure = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(figure, figure, figure, fc.double({ min: -3, max: 3, noNaN: true }), (p, q, r, ease) => {
      const [from, to] = [Math.min(p, q) * 40, Math.max(p, q) * 40];
      fc.pre(to - from > Math.max(ease, 0) + 0.1);
      const place = (at: number) => {
        const found = match(at, 40, 40 - ease, from, to);
        if (isRefused(found)) throw new Error(found.refusal);
        return found as number;
      };
      expect(place(0)).toBeCloseTo(0, 9);
      expect(place(40)).toBeCloseTo(40 - ease, 9);
      expect(place(from)).toBeCloseTo(from, 9);
      expect(place(r * 40)).toBeLessThanOrEqual(place(Math.min(40, r * 40 + 0.5)) + 1e-9);
      expect(40 - to).toBeCloseTo(40 - ease - place(to), 9);
    }),
    { seed: 88 },
  );
});

test.each([
  [[50, 40, 38], "at must be at most 40 cm, the length of the notched edge, not 50 cm"],
  [[5, 40, 38, 10, 50], "ease_to must be at most 40 cm, the length of the notched edge, not 50 cm"],
  [[5, 40, 38, 20, 10], "ease_from must be less than 10 cm, where the easing ends, not 20 cm"],
  [[5, 40, 30, 12, 20], "ease_from must leave more than 10 cm of the notched edge for easing in, not 8 cm"],
])("%j is refused: %s", (args, refusal) => {
  expect(match(...args)).toMatchObject({ refusal });
});
