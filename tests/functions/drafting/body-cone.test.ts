import fc from "fast-check";
import { expect, test } from "vitest";
import { developedLevel, developedPoint, developSeam } from "../../../functions/drafting/body-cone.ts";
import { distance, strokeLength } from "../../../functions/geometry/strokes.ts";

const lengths = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bodies = fc
  .record({
    waist: lengths(50, 130),
    hip: lengths(50, 150),
    hip_drop: lengths(16, 30),
    front: lengths(0, 15),
  })
  .filter(({ waist, hip, hip_drop, front }) => waist + ((hip - waist) / hip_drop) * front > 10);

test("level lines on the flat are as long as the girths they stand for", () => {
  fc.assert(
    fc.property(bodies, ({ waist, hip, hip_drop }) => {
      const angle = (hip - waist) / hip_drop;
      expect(strokeLength(developedLevel(waist, angle, 0, 0, 1))).toBeCloseTo(waist, 8);
      expect(strokeLength(developedLevel(waist, angle, hip_drop, 0, 0.5))).toBeCloseTo(hip / 2, 8);
    }),
    { seed: 3 },
  );
});

test("level lines end where the places they run between lie, and stay on their level", () => {
  fc.assert(
    fc.property(bodies, ({ waist, hip, hip_drop, front }) => {
      const angle = (hip - waist) / hip_drop;
      const stroke = developedLevel(waist, angle, front, 0.1, 0.4);
      expect(distance(stroke.from, developedPoint(waist, angle, front, 0.1))).toBeLessThan(1e-9);
      expect(distance(stroke.to, developedPoint(waist, angle, front, 0.4))).toBeLessThan(1e-9);
      if (stroke.kind === "arc") {
        const start = Math.atan2(stroke.from[1] - stroke.centre[1], stroke.from[0] - stroke.centre[0]);
        const end = start + stroke.sweep;
        const reached: [number, number] = [
          stroke.centre[0] + stroke.radius * Math.cos(end),
          stroke.centre[1] + stroke.radius * Math.sin(end),
        ];
        expect(distance(reached, stroke.to)).toBeLessThan(1e-8 * stroke.radius + 1e-9);
      }
    }),
    { seed: 4 },
  );
});

test("the straight part of the seam is the distance of its ends on the flat", () => {
  fc.assert(
    fc.property(bodies, lengths(-3, 5), lengths(0, 0.99), ({ waist, hip, hip_drop, front }, back, start) => {
      const seam = developSeam(waist, hip, hip_drop, front, back, start);
      const bend = developedPoint(waist, seam.angle, back, seam.slope_from);
      const point = developedPoint(waist, seam.angle, front, seam.slope_to);
      expect(seam.sloped).toBeCloseTo(distance(bend, point), 8);
    }),
    { seed: 5 },
  );
});

test("radii are girths over the angle, and the drops their differences", () => {
  const seam = developSeam(76, 108, 20, 7, 1);
  expect(seam.apex).toBeCloseTo(47.5, 12);
  expect(seam.front_radius - seam.back_radius).toBeCloseTo(6, 12);
  expect(seam.back_radius * seam.angle).toBeCloseTo(seam.back_girth, 12);
  expect(developSeam(70, 70, 20, 6).apex).toBe(Number.POSITIVE_INFINITY);
});

test("a body that grows faster than a flat disc is refused, and so is a seam past the tip", () => {
  expect(() => developSeam(60, 200, 20, 5)).toThrow(
    "hip_drop must be more than 22.2817 to get from a waist of 60 to a hip of 200, not 20",
  );
  expect(() => developSeam(80, 40, 20, 45)).toThrow(
    "front_drop must be less than 40, where a line from waist 80 to hip 40 reaches 0, not 45",
  );
});
