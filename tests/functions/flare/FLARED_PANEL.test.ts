import fc from "fast-check";
import svgpath from "svgpath";
import { expect, test } from "vitest";
import { FLARED_PANEL } from "../../../functions/flare/FLARED_PANEL.ts";
import { signedArea } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceArea, pieceBounds } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { answer, piece, refusal } = calls(FLARED_PANEL, "cm");

test("72 at the top, 112 at the bottom and 12 deep cover 1104 square centimetres", () => {
  // CI-10, computed: (72 + 112)/2 × 12; the flounce is printed in Baldt, Clothing for Women, 1916.
  expect(pieceArea(piece(72, 112, 12))).toBeCloseTo(1104, 8);
});

test("edges have the lengths asked for, wider or narrower at the hem, however it lies on the grain", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 200, noNaN: true }),
      fc.double({ min: 5, max: 200, noNaN: true }),
      fc.double({ min: 35, max: 90, noNaN: true }),
      fc.constantFrom("left", "middle", "right"),
      (top, hem, depth, straight) => {
        const lengths = piece(top, hem, depth, straight).edges.map(edgeLength);
        for (const [i, wanted] of [top, depth, hem, depth].entries()) {
          expect(Math.abs(lengths[i]! - wanted)).toBeLessThan(1e-9 * wanted);
        }
      },
    ),
    { seed: 11 },
  );
});

test("a general-purpose path library reads the same outline", () => {
  // svgpath turns arcs into cubic curves of a quarter turn at most, true to about 3 in 10,000.
  const points: [number, number][] = [];
  svgpath(String(answer(30, 75, 20)))
    .abs()
    .unarc()
    .iterate((segment, _, x, y) => {
      const n = segment.slice(1) as number[];
      if (segment[0] !== "C") {
        if (segment[0] !== "Z") points.push([n[0]!, n[1]!]);
        return;
      }
      for (let k = 1; k <= 200; k += 1) {
        const t = k / 200;
        const mix = (a: number, b: number, c: number, d: number) =>
          (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t * t * (1 - t) * c + t ** 3 * d;
        points.push([mix(x, n[0]!, n[2]!, n[4]!), mix(y, n[1]!, n[3]!, n[5]!)]);
      }
    });
  expect(Math.abs(signedArea(points)) / 1050).toBeCloseTo(1, 3);
});

test("rolled up into a cone its sides meet: every place on the left side has its like on the right", () => {
  const { edges } = piece(40, 90, 15, "middle");
  const [right, left] = [edges[1]![0]!, edges[3]![0]!];
  expect(right.from[0]).toBeCloseTo(-left.to[0], 9);
  expect(right.to[0]).toBeCloseTo(-left.from[0], 9);
  expect(right.from[1]).toBeCloseTo(left.to[1], 9);
});

test("the left edge lies straight at x = 0 when it is to be cut on the fold", () => {
  const half = piece(20, 40, 15, "left");
  expect(half.edges[3]![0]!.from[0]).toBeCloseTo(0, 12);
  expect(pieceBounds(half).left).toBeCloseTo(0, 9);
});

test("a full circle can be cut, a hair more is sent to be cut in panels", () => {
  expect(pieceArea(piece(10, 10 + 40 * Math.PI, 20))).toBeCloseTo((10 + 20 * Math.PI) * 20, 6);
  expect(refusal(72, 500, 60)).toBe(
    "hem must be at most 449 cm at a depth of 60 cm, not 500 cm: it needs more than one circle (1.135 of them): cut it in 2 panels and join them",
  );
});
