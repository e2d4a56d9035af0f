import fc from "fast-check";
import { expect, test } from "vitest";
import { GATHER_WIDTH } from "../../../functions/pleats/GATHER_WIDTH.ts";
import { PANELS } from "../../../functions/pleats/PANELS.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(PANELS, "cm");

test("236 cm of pleats need three strips of 90 cm cloth, 45 cm of it when they are 15 cm deep", () => {
  // PL-04, printed: NIMI, Dress Making Trade Practical, p. 203 ex. 1c, 2 cm a strip lost to the seam.
  expect(figure(236, 90, 2)).toBe(3);
  expect(figure(236, 90, 2) * 15).toBe(45);
});

test("four yards round the hem are four breadths of 36-inch cloth", () => {
  // YA-13, rule printed: Ingalls, Text-Book on Domestic Art, 1911, Kilted skirt.
  expect(calls(PANELS, "in").figure(4 * 36, 36)).toBe(4);
});

test("a frill of 9.40 m from cloth of 1.19 m is eight strips, 76 cm of cloth at 9.5 cm each", () => {
  // GA-03, rule printed, answer worked: NIMI p. 212 ex. 2.
  expect(figure(940, 119) * 9.5).toBe(76);
});

test("ruffle strips: half as full again over both legs, by the width of the cloth, to whole strips", () => {
  // YA-12, rule read: Baldt, Clothing for Women, 1916, Quantity of material. Leg of 20 in, cloth of 36 in.
  const flat = calls(GATHER_WIDTH, "in").figure(2 * 20, 1.5);
  expect(calls(PANELS, "in").figure(flat, 36)).toBe(2);
});

test("so many breadths reach round, one fewer would not, and what is left over is the difference", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 3000, noNaN: true }),
      fc.double({ min: 40, max: 160, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      (flat, cloth, seam) => {
        const count = figure(flat, cloth, seam);
        expect(count * (cloth - seam)).toBeGreaterThan(flat * (1 - 1e-7));
        expect((count - 1) * (cloth - seam)).toBeLessThan(flat);
        expect(step("left_over", flat, cloth, seam)).toBeCloseTo(count * (cloth - seam) - flat, 9);
      },
    ),
    { seed: 54 },
  );
});

test("a breadth that comes out even is not rounded up for a hair", () => {
  expect(figure(3 * 0.1 * 1000, 100)).toBe(3);
  expect(figure(0.7 * 300 + 1e-9, 70)).toBe(3);
});

test("a seam that eats the whole breadth is refused", () => {
  expect(refusal(236, 50, 50)).toBe("seam must be less than the cloth width of 50 cm, not 50 cm");
  expect(refusal(236, 0)).toBe("cloth_width must be at least 5 cm, not 0");
});
