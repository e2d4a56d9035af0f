import fc from "fast-check";
import { expect, test } from "vitest";
import { BODICE_FOUNDATION } from "../../../functions/bodice/BODICE_FOUNDATION.ts";
import { FLAT_COLLAR } from "../../../functions/bodice/FLAT_COLLAR.ts";
import { SET_IN_SLEEVE } from "../../../functions/bodice/SET_IN_SLEEVE.ts";
import { SHOULDER_YOKE } from "../../../functions/bodice/SHOULDER_YOKE.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { direction, distance, type Edge, type Point } from "../../../functions/geometry/strokes.ts";
import { edgeLength, type Piece, pieceBounds } from "../../../functions/pieces/piece.ts";
import { isRefused, run } from "../../../functions/run.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step, answer } = calls(BODICE_FOUNDATION, "in");
const NAMES = ["shoulder", "armhole", "side", "waist", "centre", "neckline"] as const;
type Name = (typeof NAMES)[number];
const edge = (of: Piece, name: Name): Edge => of.edges[NAMES.indexOf(name)]!;
const start = (one: Edge): Point => one[0]!.from;
const end = (one: Edge): Point => one.at(-1)!.to;

/** bust, waist, neck, back length, back depth, back width, front length, front depth, chest, shoulder, dart height, eases, darts. */
const FIGURES: readonly (readonly number[])[] = [
  [36, 24, 12.5, 15.5, 7, 13.5, 14, 5, 13, 5, 6.5],
  [38, 31, 14.5, 16, 7.5, 14, 14, 5.5, 13.5, 4.75, 6.5, 2, 1],
  [46, 38, 15.5, 16.5, 8.5, 15.5, 15.5, 6.5, 15, 5, 7, 1, 1, 2],
  [30, 22, 12, 14, 6.25, 11.5, 12, 4.5, 11, 4.25, 5.5],
]; // biome-ignore format: one figure's measurements a row

const close = (a: Point, b: Point) => expect(distance(a, b)).toBeLessThan(1e-9);

test("the back has the points of Rosenfeld's size 36: 3 and 1 in at the neck, 7 deep, 7 1/2 across, a shoulder of 6, 15 1/2 to the waist", () => {
  // The Practical Designer, underwear (1918), first foundation lines: J 3 from A, K an inch above it, I 7 1/2
  // from A on the top line, the shoulder from K through I, 6 long. A neck of 15 gives his 3 in.
  const back = piece("back", 36, 25, 15, 15.5, 7, 15, 14, 5, 14, 6, 6.5);
  close(end(edge(back, "neckline")), [3, -1]);
  close(start(edge(back, "neckline")), [0, 0]);
  const [tip, neck] = [end(edge(back, "shoulder")), [3, -1] as Point];
  expect(distance(neck, tip)).toBeCloseTo(6, 12);
  expect((tip[1] + 1) / (tip[0] - 3)).toBeCloseTo(1 / 4.5, 12);
  expect(end(edge(back, "armhole"))[1]).toBe(7);
  expect(pieceBounds(back).high).toBe(15.5);
  // H: half-way down, the armhole is 7 1/2 from the centre and runs straight down.
  close(edge(back, "armhole")[0]!.to, [7.5, 3.5]);
});

test("the front has the dots of Ingalls's draft for a neck of 12 1/2, a chest of 13 and a front of 14", () => {
  const front = piece("front", ...FIGURES[0]!);
  // Dot 1: a fifth of the neck and 1/4 below A; dot 7: 2 1/2 to the right of A.
  close(start(edge(front, "neckline")), [0, 2.75]);
  close(end(edge(front, "neckline")), [2.5, 0]);
  // Dot 9: half of the chest from the centre and an inch above dot 1; the shoulder runs from dot 7 towards it.
  const tip = end(edge(front, "shoulder"));
  expect(tip[1] / (tip[0] - 2.5)).toBeCloseTo(1.75 / 4, 12);
  // Dot 2: 5 below dot 1. Dot 5: the front length below dot 1 and 3/4 to the right.
  const centre = edge(front, "centre");
  close(end(centre.slice(0, 1)), [0, 7.75]);
  close(start(centre), [0.75, 16.75]);
  // Dots 10 and 11 together: bust less back, halved, as far as the side seams of front and back lie apart.
  const back = piece("back", ...FIGURES[0]!);
  const width = end(edge(front, "armhole"))[0] + end(edge(back, "armhole"))[0] - 6.75;
  expect(width).toBeCloseTo((36 - 13.5) / 2, 12);
});

test("bust lines are half of the bust, sewn waists half of the waist, sides and shoulders equal, to a millionth", () => {
  for (const figure of FIGURES) {
    const [bust, waist, bustEase, waistEase] = [figure[0]!, figure[1]!, figure[11] ?? 0, figure[12] ?? 0];
    const halves = [piece("front", ...figure), piece("back", ...figure)];
    const widths = halves.map((one) => end(edge(one, "armhole"))[0]);
    expect(widths[0]! + widths[1]!).toBeCloseTo((bust + bustEase) / 2, 9);
    const waists = halves.map((one) => {
      const ends = one.marks.filter(({ role }) => role === "dart").map(({ line }) => line);
      let taken = 0;
      for (let i = 0; i < ends.length; i += 2) {
        const [first, second] = [ends[i]!, ends[i + 1]!];
        expect(edgeLength(first)).toBeCloseTo(edgeLength(second), 9);
        taken += distance(start(first), end(second));
      }
      return edgeLength(edge(one, "waist")) - taken;
    });
    expect(Math.abs(waists[0]! + waists[1]! - (waist + waistEase) / 2)).toBeLessThan(1e-6);
    for (const name of ["side", "shoulder"] as const)
      expect(edgeLength(edge(halves[0]!, name))).toBeCloseTo(edgeLength(edge(halves[1]!, name)), 9);
    expect(edgeLength(edge(halves[0]!, "shoulder"))).toBeCloseTo(figure[9]!, 9);
  }
});

const turn = (a: Point, b: Point): number => Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);

test("neckline and armhole are smooth, also over the shoulder and the side once these are sewn", () => {
  for (const figure of FIGURES) {
    for (const part of ["front", "back"]) {
      const half = piece(part, ...figure);
      const armhole = edge(half, "armhole");
      expect(Math.abs(turn(direction(armhole[0]!, 1), direction(armhole[1]!, 0)))).toBeLessThan(1e-9);
      const shoulder = direction(edge(half, "shoulder")[0]!, 1);
      // Square to the shoulder at both of its ends, so that front and back go on in one line.
      expect(turn(shoulder, direction(armhole[0]!, 0))).toBeCloseTo(Math.PI / 2, 9);
      expect(Math.abs(turn(shoulder, direction(edge(half, "neckline").at(-1)!, 1)))).toBeCloseTo(
        Math.PI / 2,
        9,
      );
      // Level at the side, where both side seams lean alike, and at the centre.
      expect(direction(armhole.at(-1)!, 1)[1]).toBeCloseTo(0, 9);
      expect(direction(edge(half, "neckline")[0]!, 0)[1]).toBeCloseTo(0, 9);
    }
    const lean = ["front", "back"].map((part) => direction(edge(piece(part, ...figure), "side")[0]!, 0));
    expect(Math.abs(turn(lean[0]!, lean[1]!))).toBeLessThan(1e-9);
  }
});

test("a bust 12 in greater than the waist takes 3/4 in at both centres and both sides, as both books have it", () => {
  expect(step("taken_in", "front", ...FIGURES[0]!)).toBeCloseTo(0.75, 12);
  expect(step("taken_in", "back", ...FIGURES[0]!)).toBeCloseTo(0.75, 12);
  // And less where there is less to take in: nothing for a waist like the bust, and no dart behind.
  const straight = piece("back", 36, 36, ...FIGURES[0]!.slice(2));
  expect(straight.marks.filter(({ role }) => role === "dart")).toHaveLength(0);
  expect(edgeLength(edge(straight, "waist"))).toBeCloseTo(end(edge(straight, "armhole"))[0], 9);
});

test("a neckline is at least as long as the neck it goes round, and an armhole fits the arm, for usual figures", () => {
  for (const figure of FIGURES) {
    const sum = (name: string) => step(name, "front", ...figure) + step(name, "back", ...figure);
    expect(2 * sum("neckline")).toBeGreaterThan(figure[2]!);
    expect(2 * sum("neckline")).toBeLessThan(1.2 * figure[2]!);
    expect(sum("armhole") / figure[0]!).toBeGreaterThan(0.36);
    expect(sum("armhole") / figure[0]!).toBeLessThan(0.5);
  }
});

test("a sleeve, a flat collar and a yoke are drafted from the foundation as it stands", () => {
  const [front, back] = ["front", "back"].map((part) => String(answer(part, ...FIGURES[0]!)));
  const hole = step("armhole", "front", ...FIGURES[0]!);
  const all = hole + step("armhole", "back", ...FIGURES[0]!);
  const sleeve = calls(SET_IN_SLEEVE, "in").piece(all, 1, 0.8 * all, 22, 9, "crown", null, hole);
  expect(edgeLength(sleeve.edges[0]!)).toBeCloseTo(all + 1, 6);
  const seams = [front!, "neckline", "shoulder", back!, "neckline", "shoulder"] as const;
  const collar = run(FLAT_COLLAR, [...seams, 2.5], { unit: "in" });
  expect(isRefused(collar), JSON.stringify(collar)).toBe(false);
  const yoke = run(SHOULDER_YOKE, [...seams, 2, 4], { unit: "in" });
  expect(isRefused(yoke), JSON.stringify(yoke)).toBe(false);
});

/** Their shoulders end far inside the lines across the chest and the back, so that the armholes begin with a bend. */
const NARROW_SHOULDERS: readonly (readonly number[])[] = [
  [41, 33, 15.5, 16, 8, 15.5, 14.5, 5.5, 15.5, 4.25, 6.5, 2, 1],
  [48, 41, 14, 15.75, 8, 18, 15, 6.5, 16, 4.25, 7, 2, 1],
]; // biome-ignore format: one figure's measurements a row

test("both halves take a seam allowance of 3/4 in, at the shallow back neck and below a narrow shoulder as well", () => {
  for (const figure of [...FIGURES, ...NARROW_SHOULDERS])
    for (const part of ["front", "back"]) {
      const cut = run(WITH_ALLOWANCE, [String(answer(part, ...figure)), 0.75], { unit: "in" });
      expect(isRefused(cut) ? cut.refusal : "cut").toBe("cut");
    }
});

test("any usual figure is drafted without lines that cross, front and back, or refused with a reason", () => {
  const spread = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
  let [drafted, asked] = [0, 0];
  fc.assert(
    fc.property(
      fc.record({ bust: spread(30, 50), waist: spread(0.62, 0.95), neck: spread(0.3, 0.38), back: spread(0.33, 0.38), chest: spread(0.92, 1.02), length: spread(14, 18), depth: spread(0.44, 0.52), shoulder: spread(4.25, 5.5), darts: fc.integer({ min: 1, max: 2 }) }), // biome-ignore format: one figure
      ({ bust, waist, neck, back, chest, length, depth, shoulder, darts }) => {
        const front = 0.9 * length;
        const figure = [bust, waist * bust, neck * bust, length, depth * length, back * bust, front, 0.37 * front, chest * back * bust, shoulder, 0.45 * front, 0, 0, darts]; // biome-ignore format: one figure
        for (const part of ["front", "back"]) {
          const found = run(BODICE_FOUNDATION, [part, ...figure], { unit: "in" });
          asked += 1;
          if (!isRefused(found)) drafted += 1;
          else expect(found.refusal).toMatch(/no room for darts/);
        }
      },
    ),
    { seed: 20261127, numRuns: 40 },
  );
  expect(drafted / asked).toBeGreaterThan(0.9);
});

test("what can't be drafted is refused in a sentence that says which figure to check", () => {
  const [bust, waist, ...rest] = FIGURES[0]!;
  expect(refusal("front", bust!, 37, ...rest)).toBe(
    "waist with its ease must not be more than bust with its ease, 36 in, because this draft takes the difference in with darts, not 37 in",
  );
  expect(refusal("front", bust!, waist!, ...rest.with(8, 14))).toMatch(/^dart_height must be at most 13 in/);
  expect(refusal("back", bust!, waist!, ...rest.with(2, 15.4))).toMatch(/^back_length must be at least/);
  expect(refusal("front", bust!, waist!, ...rest.with(6, 6.5))).toMatch(
    /^chest must be at least 7 in for a neck of 12 1\/2 in, not 6 1\/2 in$/,
  );
  expect(refusal("front", 28, 24, ...rest)).toMatch(/^bust must exceed chest and back_width/);
});
