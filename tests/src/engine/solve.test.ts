import fc from "fast-check";
import { expect, test } from "vitest";
import { numberOf } from "../../../src/engine/question-engine.ts";
import type { Solution } from "../../../src/engine/solve.ts";
import type { Target } from "../../../src/engine/target.ts";
import { often } from "../../often.ts";
import { solved } from "./ask.ts";
import { bookOf, laidPeplum, panelSkirt } from "./whatif-books.ts";

const figures = (answer: Solution | string) => (typeof answer === "string" ? answer : answer.found?.figures);
const made = (answer: Solution | string) => numberOf((answer as Solution).found!.readings[0]);

/** A cloth figure with whole breadths and take-ups in it, that may fall as well as rise, and the same in plain arithmetic. */
const jumping = fc
  .record({
    slope: fc.integer({ min: -3, max: 3 }),
    breadths: fc.integer({ min: -20, max: 20 }),
    width: fc.integer({ min: 1, max: 9 }),
    tucks: fc.integer({ min: -6, max: 6 }),
    every: fc.integer({ min: 1, max: 5 }),
  })
  .map(({ slope, breadths, width, tucks, every }) => ({
    formula: `=${slope}*depth+${breadths}*ROUNDUP(depth/${width};0)+${tucks}*INT(depth/${every})`,
    work: (depth: number) =>
      slope * depth + breadths * Math.ceil(depth / width) + tucks * Math.floor(depth / every),
  }));

const SPAN = { from: 4, to: 16, step: 0.125 };
const GRID = Array.from({ length: 97 }, (_, i) => 4 + i / 8);

test("of answers that jump, solving finds exactly the step that trying every step finds", () => {
  fc.assert(
    fc.property(
      jumping,
      fc.constantFrom("atmost" as const, "atleast" as const, "equal" as const),
      fc.integer({ min: -80, max: 160 }),
      fc.boolean(),
      ({ formula, work }, is, quarter, least) => {
        const value = quarter / 4;
        const does = (depth: number) =>
          is === "equal"
            ? work(depth) === value
            : is === "atmost"
              ? work(depth) <= value
              : work(depth) >= value;
        const all = GRID.filter(does);
        const answer = solved(
          bookOf({ depth: "9 in", cloth: formula }),
          ["depth"],
          "cloth",
          { is, value },
          [SPAN],
          least,
        );
        if (typeof answer === "string") throw new Error(answer);
        if (all.length > 0) {
          expect(answer.found?.figures).toEqual([least ? all[0] : all.at(-1)]);
          if (is === "equal") expect(answer.count).toBe(all.length);
          return;
        }
        const miss = GRID.map((depth) => Math.abs(work(depth) - value));
        const nearest = Math.min(...miss);
        expect(Math.abs(numberOf(answer.nearest.readings[0])! - value)).toBeCloseTo(nearest, 9);
        if (is !== "equal") expect(answer.found).toBeNull();
      },
    ),
    { seed: 15, numRuns: often(150) },
  );
});

test("the least and the greatest over two cells are those that trying every pair finds", () => {
  fc.assert(
    fc.property(
      jumping,
      fc.integer({ min: -4, max: 4 }),
      fc.boolean(),
      fc.boolean(),
      ({ formula, work }, each, low, least) => {
        const book = bookOf({ depth: "9 in", pleats: "6", cloth: `${formula}+IN(${each})*ABS(pleats-7)` });
        const pairs = Array.from({ length: 13 }, (_, i) => 9 + i / 4).flatMap((depth) =>
          [5, 6, 7, 8].map((pleats) => ({
            figures: [depth, pleats],
            cloth: work(depth) + each * Math.abs(pleats - 7),
          })),
        );
        const best = (low ? Math.min : Math.max)(...pairs.map(({ cloth }) => cloth));
        const ties = pairs.filter(({ cloth }) => cloth === best);
        const spans = [
          { from: 9, to: 12, step: 0.25 },
          { from: 5, to: 8 },
        ];
        const answer = solved(
          book,
          ["depth", "pleats"],
          "cloth",
          { is: low ? "lowest" : "highest" },
          spans,
          least,
        );
        expect(figures(answer)).toEqual((least ? ties[0] : ties.at(-1))!.figures);
        expect((answer as Solution).count).toBe(ties.length);
      },
    ),
    { seed: 16, numRuns: often(40) },
  );
});

test("with two cells the largest of the first comes first, then the largest of the second", () => {
  const book = bookOf({ depth: "9 in", pleats: "6", cloth: "=ROUNDUP(depth/2;0)*pleats" });
  const spans = [
    { from: 6, to: 12 },
    { from: 4, to: 9, step: 1 },
  ];
  const pairs = Array.from({ length: 49 }, (_, i) => 6 + i / 8).flatMap((depth) =>
    [4, 5, 6, 7, 8, 9].map((pleats) => [depth, pleats]),
  );
  const fits = pairs.filter(([depth, pleats]) => Math.ceil(depth! / 2) * pleats! <= 27);
  expect(figures(solved(book, ["depth", "pleats"], "cloth", { is: "atmost", value: 27 }, spans))).toEqual(
    fits.at(-1),
  );
  expect(
    figures(solved(book, ["depth", "pleats"], "cloth", { is: "atmost", value: 27 }, spans, true)),
  ).toEqual(fits[0]);
});

// Full circle: the waist is 2 pi r. CHECKS CI-04: waist 72 cm, radius 11.4591559026 (geometry, computed in 50-60 digit decimals).
test("the waist of a circle skirt is found from its radius, to the tape's mark and exactly", () => {
  const book = bookOf({ waist: "70 cm", radius: "=waist/(2*PI())" }, "cm");
  const answer = solved(book, ["waist"], "radius", { is: "equal", value: 11.4591559026 }, [
    { from: 60, to: 90 },
  ]) as Solution;
  expect(answer.found?.figures).toEqual([72]);
  const off = solved(book, ["waist"], "radius", { is: "equal", value: 11.5 }, [
    { from: 60, to: 90 },
  ]) as Solution;
  expect(off.found?.figures).toEqual([72.3]);
  expect(off.exactly).toBeCloseTo(2 * Math.PI * 11.5, 8);
});

// Three-quarter circle, CHECKS CI-06: waist 72 cm, radius 15.2788745368.
test("a three-quarter circle's waist is 72 cm for the handbook's radius", () => {
  const book = bookOf({ waist: "60 cm", radius: "=waist/(1.5*PI())" }, "cm");
  const answer = solved(book, ["waist"], "radius", { is: "equal", value: 15.2788745368 }, [{}]);
  expect(figures(answer)).toEqual([72]);
});

// A quadratic has its roots in closed form: the area of a square panel with a 3 in band, x² + 3x.
test("both settings that make a smooth answer are told, and the larger is given", () => {
  const book = bookOf({ x: "4 in", y: "=(x-IN(10))*(x-IN(10))+IN(1)*IN(1)" });
  const wish: Target = { is: "equal", value: 6 };
  const larger = solved(book, ["x"], "y", wish, [{ from: 2, to: 18 }]) as Solution;
  const smaller = solved(book, ["x"], "y", wish, [{ from: 2, to: 18 }], true) as Solution;
  expect(larger.count).toBe(2);
  expect(larger.exactly).toBeCloseTo(10 + Math.sqrt(5), 8);
  expect(smaller.exactly).toBeCloseTo(10 - Math.sqrt(5), 8);
  expect(larger.found?.figures).toEqual([12.25]);
  expect(larger.sentence).toContain("7 3/4, 12 1/4");
});

test("a jump over the value is no answer: the nearest is told", () => {
  const answer = solved(panelSkirt(), ["fullness"], "cloth", { is: "equal", value: 80 }, [
    { from: 1, to: 3 },
  ]) as Solution;
  expect(answer.found).toBeNull();
  expect(answer.sentence).toBe(
    "no fullness from 1 to 3 makes cloth 80; nearest is fullness 2.2, which makes it 66",
  );
});

test("the deepest skirt that 90 inches of cloth allow is found without a range", () => {
  const answer = solved(panelSkirt(), ["depth"], "buy", { is: "atmost", value: 90 }, [{}]);
  expect(figures(answer)).toEqual([27]);
  expect((answer as Solution).sentence).toBe(
    "depth 27 makes buy 90; no larger step up to depth 60 keeps it at most 90",
  );
  // 3 panels of depth + 3 in: at 27 in exactly 90, at 27 1/8 in over it.
  expect(made(answer)).toBe(90);
});

test("an open range is widened until its end no longer decides", () => {
  const book = bookOf({ depth: "4 in", cloth: "=2*depth+IN(1)" });
  expect(figures(solved(book, ["depth"], "cloth", { is: "atmost", value: 41 }, [{}]))).toEqual([20]);
  expect(figures(solved(book, ["depth"], "cloth", { is: "atleast", value: 41 }, [{}], true))).toEqual([20]);
  expect(figures(solved(book, ["depth"], "cloth", { is: "equal", value: 41 }, [{}]))).toEqual([20]);
  const ended = solved(book, ["depth"], "cloth", { is: "atmost", value: 41 }, [{ to: 12 }]) as Solution;
  expect(ended.sentence).toBe(
    "depth 12 makes cloth 25; it is the end of the range, so a larger one may do too",
  );
});

test("laid cloth is solved as trying every depth solves it", () => {
  const answer = solved(laidPeplum(), ["depth"], "cloth", { is: "atmost", value: 13 }, [
    { from: 8, to: 14, step: 0.25 },
  ]) as Solution;
  const each = solved(laidPeplum(), ["depth"], "cloth", { is: "lowest" }, [
    { from: 8, to: 14, step: 0.25 },
  ]) as Solution;
  const all = each.rows.filter(({ readings }) => numberOf(readings[0])! <= 13);
  expect(each.rows).toHaveLength(25);
  expect(answer.found?.figures).toEqual(all.at(-1)!.figures);
});

test("pleats are solved in whole numbers", () => {
  const book = bookOf({ pleats: "6", width: '=28+PLEAT_ALLOWANCE(pleats;IN(1);"knife")' });
  const answer = solved(book, ["pleats"], "width", { is: "atmost", value: 45 }, [{}]);
  // Knife pleats take twice their depth each: (45 - 28) / 2 = 8.5.
  expect(figures(answer)).toEqual([8]);
});

test("what can't be solved is told in one sentence", () => {
  const book = panelSkirt();
  expect(solved(book, ["depth"], "panels", { is: "equal", value: 4 }, [{}])).toBe(
    "panels does not rest on depth: it is 3 whatever depth is",
  );
  expect(
    (solved(book, ["depth"], "buy", { is: "atmost", value: 5 }, [{ from: 8, to: 14 }]) as Solution).sentence,
  ).toBe("no depth from 8 to 14 keeps buy at most 5; nearest is depth 9, which makes it 36");
  expect(solved(book, ["depth"], "buy", { is: "atmost", value: 90 }, [{ from: 14, to: 8 }])).toMatch(
    /^from must be at most to/,
  );
  expect(solved(book, ["depth", "fullness"], "cloth", { is: "lowest" }, [{ from: 8, to: 14 }, {}])).toBe(
    "two cells need a range each: give a from and a to for fullness",
  );
  const broken = bookOf({ waist: "28 in", hem: "40 in", spread: "=SPREAD_PER_GAP(waist;hem;5)" });
  expect(solved(broken, ["hem"], "spread", { is: "atleast", value: 1 }, [{ from: 10, to: 20 }])).toMatch(
    /^spread has no answer at any step from 10 to 20: at the first, hem must be at least as long as top/,
  );
  // Half of the range fails; the other half still answers.
  const half = solved(broken, ["hem"], "spread", { is: "atmost", value: 1 }, [{ from: 20, to: 40 }], true);
  expect(figures(half)).toEqual([28]);
});
