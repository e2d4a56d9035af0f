import fc from "fast-check";
import { expect, test } from "vitest";
import { CARTRIDGE_STITCH } from "../../../functions/pleats/CARTRIDGE_STITCH.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(CARTRIDGE_STITCH, "in");

test("120 inches drawn up to 15 with eight pleats to the inch are sewn in half-inch stitches", () => {
  // Common practice: eight pleats to the inch; two stitches to a pleat, so 240 stitches in 120 in.
  expect(figure(120, 15, 1 / 8)).toBeCloseTo(0.5, 12);
  expect(step("fullness", 120, 15, 1 / 8)).toBeCloseTo(8, 12);
});

test("all stitches laid end to end are the flat cloth, all pleats side by side the band", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 60, noNaN: true }),
      fc.double({ min: 1.2, max: 12, noNaN: true }),
      fc.double({ min: 0.1, max: 1, noNaN: true }),
      (band, fullness, pitch) => {
        const args = [band * fullness, band, pitch] as const;
        const pleats = step("pleats", ...args);
        expect(Number.isInteger(pleats)).toBe(true);
        expect(figure(...args) * 2 * pleats).toBeCloseTo(band * fullness, 9);
        expect(step("true_pitch", ...args) * pleats).toBeCloseTo(band, 9);
        expect(Math.abs(pleats - band / pitch)).toBeLessThan(0.5 + 1e-7);
      },
    ),
    { seed: 51 },
  );
});

test("pleats are never crowded closer than two thicknesses of the cloth", () => {
  // 25.75 pleats of 0.4 in would round up to 26 of 0.396: too close for cloth 0.2 in thick.
  expect(step("pleats", 80, 10.3, 0.4, 0.2)).toBe(25);
  expect(step("pleats", 80, 10.3, 0.4, 0.1)).toBe(26);
  expect(step("pleats", 80, 10, 0.4, 0.2)).toBe(25);
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 50, noNaN: true }),
      fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      fc.double({ min: 1, max: 3, noNaN: true }),
      (band, thickness, room) => {
        const pitch = step("true_pitch", band * 4, band, 2 * thickness * room, thickness);
        expect(pitch).toBeGreaterThan(2 * thickness * (1 - 1e-8));
      },
    ),
    { seed: 52 },
  );
});

test("cloth no wider than its band, and a pitch too fine or too coarse for it, are refused", () => {
  expect(refusal(15, 15, 0.125)).toBe(
    "flat must be wider than finished to be drawn up, not 15 in against 15 in",
  );
  expect(refusal(120, 15, 0.125, 0.1)).toBe(
    "pitch must be at least 1/4 in, two thicknesses of the cloth, not 1/8 in",
  );
  expect(refusal(120, 2, 3)).toBe("pitch must be at most the finished 2 in, not 3 in");
});
