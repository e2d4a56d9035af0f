import { Bezier } from "bezier-js";
import { expect, test } from "vitest";
import { GORE } from "../../../functions/flare/GORE.ts";
import { direction, distance, pointAt } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceBounds } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(GORE, "cm");

test("with a curved hem the sides are as long as the middle, straight or shaped over the hip", () => {
  for (const args of [[12, 30, 75], [12, 30, 75, 18, 20], [8, 60, 70], [15, 40, 90, 26, 22]]) {
    const { edges } = piece(...args);
    expect(edgeLength(edges[1]!)).toBeCloseTo(args[2]!, 9);
    expect(edgeLength(edges[3]!)).toBeCloseTo(args[2]!, 9);
    expect(pieceBounds(piece(...args)).high).toBeCloseTo(args[2]!, 9);
    expect(pointAt(edges[2]![0]!, 0.5)[0]).toBeCloseTo(0, 9);
  }
}); // biome-ignore format: one row a gore

test("gores for a hem of 130 all round are sewn 130 round, along the curve, whatever their number and shape", () => {
  for (const count of [4, 6, 8, 12]) {
    for (const hip of [[], [108 / count, 20]]) {
      const gore = piece(76 / count, 130 / count, 40, ...hip);
      const [stroke] = gore.edges[2]!;
      // Measured as a tape would, by many short chords.
      let along = 0;
      for (let i = 0; i < 4000; i += 1)
        along += distance(pointAt(stroke!, i / 4000), pointAt(stroke!, (i + 1) / 4000));
      expect(count * along).toBeCloseTo(130, 5);
      expect(edgeLength(gore.edges[1]!)).toBeCloseTo(40, 9);
      expect(distance(stroke!.from, stroke!.to)).toBeLessThan(130 / count);
    }
  }
  expect(edgeLength(piece(76 / 6, 130 / 6, 40, null, null, "straight").edges[2]!)).toBeCloseTo(130 / 6, 12);
});

test("a general-purpose curve library measures the same shaped side", () => {
  const [curve, straight] = piece(12, 30, 75, 18, 20).edges[1]!;
  if (curve?.kind !== "curve" || straight?.kind !== "line") throw new Error("a curve and a line");
  const points = [curve.from, curve.c1, curve.c2, curve.to].flat();
  expect(new Bezier(...points).length() + edgeLength([straight])).toBeCloseTo(75, 8);
});

test("the hip is as wide as told, and the side runs on from it without a corner", () => {
  const [curve, straight] = piece(12, 30, 75, 18, 20).edges[1]!;
  expect(curve!.to).toEqual([9, 20]);
  const [ax, ay] = direction(curve!, 1);
  const [bx, by] = direction(straight!, 0);
  expect((ax * by - ay * bx) / (Math.hypot(ax, ay) * Math.hypot(bx, by))).toBeCloseTo(0, 9);
});

test("mirrored sides are equal, so that gores can be sewn in any order", () => {
  const { edges } = piece(12, 30, 75, 18, 20);
  expect(step("side", 12, 30, 75, 18, 20)).toBeCloseTo(edgeLength(edges[3]!), 9);
});

test("hip without its drop, a hip at the hem, and a hem too wide for the length are refused", () => {
  expect(refusal(12, 30, 75, 18)).toBe("hip_drop must be given when hip is given");
  expect(refusal(12, 30, 75, 18, 74)).toBe("hip_drop must be well above the hem at 75 cm, not 74 cm");
  expect(refusal(10, 200, 50)).toMatch(
    /^length must be more for sides that go out from 10 cm to 200 cm, not 50 cm/,
  );
});
