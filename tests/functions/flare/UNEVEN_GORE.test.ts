import { expect, test } from "vitest";
import { worn } from "../../../functions/as-worn.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { GORE } from "../../../functions/flare/GORE.ts";
import { UNEVEN_GORE } from "../../../functions/flare/UNEVEN_GORE.ts";
import { direction, type Point } from "../../../functions/geometry/strokes.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";
import { lengthOf } from "../edges-measured.ts";

const { piece, refusal, step, answer } = calls(UNEVEN_GORE, "cm");

/** Gores, waist, hip, hip drop, front, back, hem, side, what lies at centre front. */
type Skirt = readonly (number | string | null)[];
const SKIRTS: readonly Skirt[] = [
  [6, 72, 102, 20, 96, 118, 340],
  [7, 68, 100, 20, 98, 130, 380, 104],
  [8, 72, 104, 22, 100, 112, 300, null, "seam"],
  [5, 72, 104, 22, 110, 100, 260, null, "seam"],
  [3, 70, 96, 20, 90, 96, 200],
];

const gore = (skirt: Skirt, number: number) => piece(number, ...skirt);
const goresOf = (skirt: Skirt) => skirt[0] as number;
const whole = (skirt: Skirt) => Array.from({ length: goresOf(skirt) }, (_, i) => gore(skirt, i + 1));

test.each(SKIRTS)(
  "of a skirt of %d gores each side seam is as long as its neighbour's, and the same line mirrored",
  (...skirt) => {
    const gores = whole(skirt);
    gores.forEach(({ edges }, i) => {
      const next = gores[(i + 1) % gores.length]!.edges[3]!;
      expect(Math.abs(lengthOf(edges[1]!) - lengthOf(next))).toBeLessThan(1e-9);
      const long = lengthOf(next);
      for (const share of [0.1, 0.3, 0.6, 0.9]) {
        const [x, y] = placeAlong(edges[1]!, long * share).point;
        const [u, v] = placeAlong(next, long * (1 - share)).point;
        expect(x).toBeCloseTo(-u, 8);
        expect(y).toBeCloseTo(v, 8);
      }
    });
  },
);

/** The angle inside a piece between two directions that leave a corner. */
const between = ([a, b]: Point, [c, d]: Point) => Math.abs(Math.atan2(a * d - b * c, a * c + b * d));
const back = ([x, y]: Point): Point => [-x, -y];

test.each(SKIRTS)(
  "of a skirt of %d gores the hems of neighbours run on at every seam without a corner",
  (...skirt) => {
    const gores = whole(skirt);
    gores.forEach(({ edges: [, right, hem] }, i) => {
      const [, , other, left] = gores[(i + 1) % gores.length]!.edges;
      const one = between(back(direction(right!.at(-1)!, 1)), direction(hem![0]!, 0));
      const two = between(direction(left![0]!, 0), back(direction(other!.at(-1)!, 1)));
      expect(one + two).toBeCloseTo(Math.PI, 9);
      // And in the middle of the gore.
      expect(between(direction(hem![0]!, 1), direction(hem![1]!, 0))).toBeLessThan(1e-9);
    });
  },
);

test.each(SKIRTS)(
  "the hem of a skirt of %d gores is as long all round as wanted, its waist too",
  (...skirt) => {
    const gores = whole(skirt);
    const round = (edge: number) => gores.reduce((sum, { edges }) => sum + lengthOf(edges[edge]!), 0);
    expect(Math.abs(round(2) - (skirt[6] as number))).toBeLessThan(1e-6);
    expect(round(0)).toBeCloseTo(skirt[1] as number, 9);
  },
);

test("front, side and back are as long as wanted, wherever a seam or the middle of a gore lies there", () => {
  // Eight gores: the middles of gores 1, 3, 5 and 7 at front, left side, back and right side.
  const eight = [8, 72, 104, 22, 96, 120, 320, 104] as const;
  const middle = (number: number) => gore(eight, number).edges[2]![0]!.to;
  for (const [number, long] of [[1, 96], [3, 104], [5, 120], [7, 104]] as const) {
    expect(middle(number)[0]).toBeCloseTo(0, 9);
    expect(middle(number)[1]).toBeCloseTo(long, 9);
  } // biome-ignore format: pairs
  const seamed = [8, 72, 104, 22, 96, 120, 320, 104, "seam"] as const;
  for (const [number, long] of [[1, 96], [3, 104], [5, 120], [7, 104]] as const)
    expect(lengthOf(gore(seamed, number).edges[3]!)).toBeCloseTo(long, 9); // biome-ignore format: pairs
});

test("gores on the two sides of a skirt are mirror images", () => {
  for (const skirt of SKIRTS) {
    const last = goresOf(skirt);
    const other = skirt[8] === "seam" ? (n: number) => last + 1 - n : (n: number) => last + 2 - n;
    const [one, two] = [gore(skirt, 2), gore(skirt, other(2))];
    expect(lengthOf(one.edges[1]!)).toBeCloseTo(lengthOf(two.edges[3]!), 9);
    expect(lengthOf(one.edges[2]!)).toBeCloseTo(lengthOf(two.edges[2]!), 9);
    expect(pieceArea(one)).toBeCloseTo(pieceArea(two), 6);
  }
});

test("a skirt as long at the back as in front has the gores of GORE, but for a hem drawn by other curves", () => {
  const level = piece(1, 6, 72, 102, 20, 90, 90, 240);
  const plain = calls(GORE, "cm").piece(12, 40, 90, 17, 20);
  expect(lengthOf(level.edges[1]!)).toBeCloseTo(90, 9);
  expect(Math.abs(pieceArea(level) - pieceArea(plain))).toBeLessThan(2e-3 * pieceArea(plain));
});

test("a longer hem leans the sides out more, one lean for each", () => {
  let before = -90;
  for (const hem of [110, 150, 200, 260, 340, 450, 600]) {
    const lean = step("lean", 1, 6, 72, 102, 20, 96, 108, hem);
    expect(lean).toBeGreaterThan(before);
    before = lean;
  }
});

test("as worn, the hem hangs lower at the back", () => {
  const view = worn(UNEVEN_GORE, [1, 6, 72, 102, 20, 80, 95, 300], { unit: "cm" });
  expect(view).not.toBeNull();
});

test("a gore takes allowances and a hem", () => {
  const one = answer(3, ...SKIRTS[0]!);
  expect(pieceArea(readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(one, 1.5, 4))))).toBeGreaterThan(
    pieceArea(readPiece(String(one))) + 1.5 * 200,
  );
});

test("a gore past the last, a hem too short or too steep, and a hip at the hem are refused", () => {
  expect(refusal(7, 6, 72, 102, 20, 96, 108, 300)).toBe("gore must be at most 6, the number of gores, not 7");
  expect(refusal(1, 6, 72, 102, 20, 96, 96, 15)).toMatch(/^hem must be at least \d.* all round for this hip/);
  expect(refusal(1, 6, 72, 102, 20, 40, 44, 1000)).toMatch(/^hem must be at most \d.*: take more gores$/);
  expect(refusal(1, 6, 72, 102, 20, 60, 300, 250)).toMatch(/: the hem would run too steeply$/);
  expect(refusal(1, 6, 72, 102, 40, 42, 60, 250)).toMatch(/^hip_drop must be well above the hem/);
});

test("at a seam the hem slopes as the length changes there", () => {
  // 96 in front and behind, 104 at the sides: half-way, at 45 degrees, the length grows by 8 for each radian of 320 / 2π along the hem.
  const [, right, hem] = piece(1, 8, 72, 104, 22, 96, 96, 320, 104, "seam").edges;
  const corner = between(back(direction(right!.at(-1)!, 1)), direction(hem![0]!, 0));
  expect(Math.abs(corner - Math.PI / 2)).toBeCloseTo(Math.asin((8 * 2 * Math.PI) / 320), 9);
});
