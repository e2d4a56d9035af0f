import fc from "fast-check";
import { expect, test } from "vitest";
import { JOIN_MARK } from "../../../functions/pleats/JOIN_MARK.ts";
import { PANELS } from "../../../functions/pleats/PANELS.ts";
import { calls } from "../calls.ts";

const { answer, refusal } = calls(JOIN_MARK, "cm");

/** The panels that all joins cut the flat width into. */
function panels(flat: number, cloth: number, seam: number, arrange: string): number[] {
  const joins: number[] = [];
  for (let number = 1; ; number += 1) {
    const join = answer(number, flat, cloth, seam, arrange);
    if (join === "") break;
    joins.push(join as number);
  }
  return [...joins, flat].map((end, i) => end - (joins[i - 1] ?? 0));
}

test("the NIMI strip of 236 cm is joined at two places, a third of it from either end", () => {
  // PL-04, printed: NIMI, Dress Making Trade Practical, p. 203 ex. 1c: three strips; the places are geometry.
  expect(panels(236, 90, 2, "even")).toHaveLength(3);
  for (const panel of panels(236, 90, 2, "even")) expect(panel).toBeCloseTo(236 / 3, 9);
  const [first, second, rest] = panels(236, 90, 2, "full");
  expect([first, second, rest]).toEqual([88, 88, 60]);
});

test("panels laid side by side make the flat width, none is wider than the cloth, and there are as many as PANELS counts", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 2000, noNaN: true }),
      fc.double({ min: 60, max: 160, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.constantFrom("even", "full"),
      (flat, cloth, seam, arrange) => {
        const found = panels(flat, cloth, seam, arrange);
        expect(found.length).toBe(calls(PANELS, "cm").figure(flat, cloth, seam));
        expect(found.reduce((sum, panel) => sum + panel, 0)).toBeCloseTo(flat, 8);
        for (const panel of found) {
          expect(panel).toBeGreaterThan(-1e-7);
          expect(panel).toBeLessThan((cloth - seam) * (1 + 1e-7));
        }
        // Whole breadths first: all but the last are as wide as the cloth lets them be.
        if (arrange === "full")
          for (const panel of found.slice(0, -1)) expect(panel).toBeCloseTo(cloth - seam, 8);
      },
    ),
    { seed: 55 },
  );
});

test("one breadth wide enough has no join", () => {
  expect(answer(1, 100, 150)).toBe("");
});

test("a seam that eats the whole breadth, and an arrangement nobody knows, are refused", () => {
  expect(refusal(1, 236, 40, 45)).toBe("seam must be less than the cloth width of 40 cm, not 45 cm");
  expect(refusal(1, 236, 90, 2, "half")).toBe('arrange must be "even" or "full", not "half"');
});
