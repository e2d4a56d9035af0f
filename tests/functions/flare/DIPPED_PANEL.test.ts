import fc from "fast-check";
import { expect, test } from "vitest";
import { SEAM_GIRTH } from "../../../functions/body/SEAM_GIRTH.ts";
import { DIPPED_PANEL } from "../../../functions/flare/DIPPED_PANEL.ts";
import { FLARED_PANEL } from "../../../functions/flare/FLARED_PANEL.ts";
import { direction, distance, type Point, pointAt } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { OPEN_PLEATS } from "../../../functions/pleats/OPEN_PLEATS.ts";
import { run } from "../../../functions/run.ts";
import { calls } from "../calls.ts";
import { dippingSeam, taped } from "../dip.ts";

const { piece, refusal, step } = calls(DIPPED_PANEL, "cm");

const bodies = fc.record({
  waist: fc.double({ min: 55, max: 130, noNaN: true }),
  more: fc.double({ min: -10, max: 60, noNaN: true }),
  drop: fc.double({ min: 15, max: 30, noNaN: true }),
  front: fc.double({ min: 0, max: 14, noNaN: true }),
  back: fc.double({ min: -2, max: 4, noNaN: true }),
  start: fc.double({ min: 0, max: 0.9, noNaN: true }),
  depth: fc.double({ min: 18, max: 35, noNaN: true }),
  hem: fc.constantFrom("parallel", "level"),
  fullness: fc.double({ min: 1, max: 1.4, noNaN: true }),
});
type Body = typeof bodies extends fc.Arbitrary<infer B> ? B : never;

const given = (b: Body, fullness = b.fullness) =>
  [b.waist, b.waist + b.more, b.drop, b.front, b.depth, b.back, b.start, b.hem, null, fullness] as const;

const within = (found: number, wanted: number, share: number) =>
  expect(Math.abs(found / wanted - 1)).toBeLessThan(share);

test("its top is half of the waist seam of the body, however the hem is cut and spread", () => {
  let seen = 0;
  fc.assert(
    fc.property(bodies, (b) => {
      const seam = calls(SEAM_GIRTH, "cm").figure(
        b.waist,
        b.waist + b.more,
        b.drop,
        b.front,
        b.back,
        b.start,
      );
      within(edgeLength(piece(...given(b)).edges[0]!), seam / 2, 1e-9);
      within(step("half_seam", ...given(b)), seam / 2, 1e-12);
      seen += 1;
    }),
    { seed: 68, numRuns: 100 },
  );
  expect(seen).toBe(100);
});

test("a body of 76 and 108 cm dipping 7 cm has a seam of 80.788162 cm, half of it on the panel", () => {
  // Worked by hand on the cone: angle 1.6, radii 47.5 and 54.5 cm. Level part 19; sloped part by the law of cosines.
  const sloped = Math.sqrt(47.5 ** 2 + 54.5 ** 2 - 2 * 47.5 * 54.5 * Math.cos(0.4));
  expect(2 * (19 + sloped)).toBeCloseTo(80.788162, 6);
  expect(edgeLength(piece(76, 108, 20, 7, 18).edges[0]!)).toBeCloseTo(19 + sloped, 9);
});

test("without more fullness the seam lies on the developed cone: level about its tip, straight between, never outside its two levels", () => {
  fc.assert(
    fc.property(bodies, (b) => {
      const angle = b.more / b.drop;
      fc.pre(Math.abs(angle) > 0.02);
      // Centre back of the seam is (0, 0); the tip lies a radius above it, below when the hip is the smaller.
      const tip = b.waist / angle;
      const apex: Point = [0, -(tip + b.back)];
      const { level } = dippingSeam(b);
      const [highest, lowest] = [Math.min(b.back, b.front), Math.max(b.back, b.front)];
      const top = piece(...given(b, 1)).edges[0]!;
      const point = top.at(-1)!.to;
      const shareOf = ([x, y]: Point) =>
        Math.atan2(x * Math.sign(angle), (y - apex[1]) * Math.sign(angle)) / angle;
      expect(shareOf(point)).toBeCloseTo(0.5, 8);
      for (const stroke of top) {
        for (const share of [0, 0.2, 0.5, 0.8, 1]) {
          const place = pointAt(stroke, share);
          const found = distance(apex, place) * Math.sign(angle) - tip;
          expect(Math.abs(found - level(shareOf(place)))).toBeLessThan(2e-7);
          expect(found).toBeGreaterThan(highest - 1e-8);
          expect(found).toBeLessThan(lowest + 1e-8);
        }
      }
    }),
    { seed: 69, numRuns: 150 },
  );
});

test("a shallow dip: the level part goes on until the slope leaves it smoothly, and no dip at all is a plain flared section", () => {
  const top = piece(76, 108, 20, 3, 18).edges[0]!;
  expect(edgeLength(top)).toBeCloseTo(77.382899 / 2, 6);
  const [level, slope] = [top[0]!, top[1]!];
  expect(top).toHaveLength(2);
  const [a, b] = [direction(level, 1), direction(slope, 0)];
  expect(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])).toBeCloseTo(0, 6);
  const flared = calls(FLARED_PANEL, "cm").piece(38, 38 + 0.8 * 18, 18, "left");
  const plain = piece(76, 108, 20, 0, 18);
  expect(plain.edges.map(edgeLength)).toEqual(
    flared.edges.map((edge) => expect.closeTo(edgeLength(edge), 8)),
  );
  expect(pieceArea(plain)).toBeCloseTo(pieceArea(flared), 7);
});

test("box pleats opened in a section with a shallow dip hide their own cloth, whatever strokes the top is made of", () => {
  const section = run(DIPPED_PANEL, [76, 108, 20, 2, 18, 0.5, 0.2], { unit: "cm" }) as string;
  const opened = calls(OPEN_PLEATS, "cm").piece(section, [5, 20], 1.5, null, "box");
  expect(edgeLength(opened.edges[0]!)).toBeCloseTo(edgeLength(readPiece(section).edges[0]!) + 12, 6);
});

test("a tape laid round the standing body along the hem, and the cloth that covers it, measure the same", () => {
  fc.assert(
    fc.property(bodies, (b) => {
      fc.pre(Math.abs(b.more) > 1);
      const angle = b.more / b.drop;
      const { straight, level } = dippingSeam(b);
      const low = (share: number) => (b.hem === "level" ? b.back : level(share)) + b.depth;
      let [hem, area] = [0, 0];
      // In parts, for the seam has corners where its slope begins and ends.
      const ends = [0, ...straight, 0.5];
      ends.slice(1).forEach((to, part) => {
        const from = ends[part]!;
        const steps = 2000;
        hem += taped(b, from, to, low, steps);
        for (let i = 0; i < steps; i += 1) {
          const middle = from + ((to - from) * (i + 0.5)) / steps;
          const [a, z] = [level(middle), low(middle)];
          area += ((to - from) / steps) * (z - a) * (b.waist + (angle * (a + z)) / 2);
        }
      });
      within(step("body_hem", ...given(b, 1)), 2 * hem, 3e-6);
      within(pieceArea(piece(...given(b, 1))), area, 3e-6);
    }),
    { seed: 70, numRuns: 40 },
  );
});

test("spread, every strip fans out from the seam: the cloth gained is a wedge of the depth for the lean gained", () => {
  fc.assert(
    fc.property(bodies, (b) => {
      const args = given({ ...b, hem: "parallel" });
      const plain = given({ ...b, hem: "parallel" }, 1);
      const lean = ((step("front_lean", ...args) - step("front_lean", ...plain)) * Math.PI) / 180;
      const gained = pieceArea(piece(...args)) - pieceArea(piece(...plain));
      expect(Math.abs(gained - (lean * b.depth ** 2) / 2)).toBeLessThan(1e-6 * pieceArea(piece(...args)));
      within(step("hem_all_round", ...args), b.fullness * step("body_hem", ...args), 1e-6);
    }),
    { seed: 71, numRuns: 60 },
  );
});

test("centre back is as deep as told, centre front too below a parallel hem, and less by the dip below a level one", () => {
  for (const fullness of [1, 1.3]) {
    for (const hem of ["parallel", "level"]) {
      const { edges } = piece(76, 108, 20, 7, 18, 1, 0.4, hem, null, fullness);
      expect(edgeLength(edges[3]!)).toBeCloseTo(18, 9);
      expect(edgeLength(edges[1]!)).toBeCloseTo(hem === "parallel" ? 18 : 18 - (7 - 1), 9);
    }
  }
});

test("a hem asked for by its length comes out so long, and the seam keeps its own", () => {
  for (const hem of [150, 200, 300]) {
    const { edges } = piece(76, 108, 20, 7, 30, 0, 0.5, "parallel", hem);
    within(2 * edgeLength(edges[2]!), hem, 1e-6);
    expect(edgeLength(edges[0]!)).toBeCloseTo(step("half_seam", 76, 108, 20, 7, 30), 8);
  }
});

test("turned to be cut on the fold at centre front it is the same piece, centre front upright", () => {
  const args = [76, 108, 20, 7, 18, 0, 0.5, "parallel", 150, null] as const;
  const [back, front] = [piece(...args, "back"), piece(...args, "front")];
  for (const [i, edge] of front.edges.entries())
    expect(edgeLength(edge)).toBeCloseTo(edgeLength(back.edges[i]!), 8);
  expect(pieceArea(front)).toBeCloseTo(pieceArea(back), 7);
  const fold = front.edges[1]![0]!;
  expect(fold.from[0]).toBeCloseTo(fold.to[0], 9);
});

test("a hem too short for the body, a level hem above the point, and two ways of telling fullness are refused", () => {
  expect(refusal(76, 108, 20, 7, 18, 0, 0.5, "parallel", 80)).toMatch(
    /^hem_length must be at least [\d.]+ cm, where the section exactly goes round the body, not 80 cm$/,
  );
  expect(refusal(76, 108, 20, 7, 6, 0, 0.5, "level")).toBe(
    "depth must be more than 7 cm for a level hem to pass below the point in front, not 6 cm",
  );
  expect(refusal(76, 108, 20, 7, 18, 0, 0.5, "parallel", 150, 2)).toBe(
    "fullness must be left out when hem_length is given, not 2",
  );
  expect(refusal(76, 108, 20, 7, 18, 0, 0.5, "parallel", null, 3)).toMatch(
    /^fullness must be at most 2\.[\d]+, where each half comes round to a full circle, not 3: cut the section in more panels$/,
  );
  expect(refusal(76, 108, 20, 7, 18, 0, 0.5, "parallel", 400)).toMatch(
    /^hem_length must be at most 305 cm, where each half comes round to a full circle, not 400 cm: cut the section/,
  );
  expect(refusal(76, 108, 20, 7, 18, 0, 1)).toBe(
    "start must be less than 1 for the seam to dip at all, not 1",
  );
});

test("a section that would lie over itself is refused, on a body that narrows and where the seam drops steeply", () => {
  const sentence =
    "waist, hip, depth and hem give a section that would lie over itself: cut it in more panels";
  expect(refusal(40.84, 25.74, 22.52, 36.28, 19.04, -0.556, 0.192, "parallel", null, 3.33)).toBe(sentence);
  expect(refusal(10, 46.4, 38.9, 10, 0.5, -10.25, 0)).toBe(sentence);
});
