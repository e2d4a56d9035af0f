import fc from "fast-check";
import { expect, test } from "vitest";
import { TWO_PIECE_SLEEVE } from "../../../functions/bodice/TWO_PIECE_SLEEVE.ts";
import { EDGE_LENGTH } from "../../../functions/curves/EDGE_LENGTH.ts";
import { SEAM_CHECK } from "../../../functions/curves/SEAM_CHECK.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { direction, type Edge, type Point } from "../../../functions/geometry/strokes.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { flattenPiece, type Piece, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";
import { lengthOf, spread } from "../edges-measured.ts";

const { piece, refusal, step, answer } = calls(TWO_PIECE_SLEEVE, "cm");

type Sleeve = readonly (number | null)[];
/** Armhole, ease, bicep, length, wrist, elbow, elbow length, bend, front shift, back shift. */
const SLEEVES: readonly Sleeve[] = [
  [46, 3.5, 36, 60, 27],
  [46, 3.5, 36, 60, 27, 32, 34, 20, 2.5, 1],
  [52, 4, 40, 64, 30, 35, 37, 0, 0, 0],
  [40, 2, 30, 40, 24, 28, 25, 8, 3, 2],
];

const edge = (one: Piece, name: string): Edge => one.edges[one.names.indexOf(name)]!;

test.each(SLEEVES)(
  "of a sleeve for an armhole of %d both caps together are the armhole with its ease, both wrists the wrist",
  (...args) => {
    const [top, under] = [piece("top", ...args), piece("under", ...args)];
    expect(
      Math.abs(lengthOf(edge(top, "cap")) + lengthOf(edge(under, "cap")) - args[0]! - args[1]!),
    ).toBeLessThan(1e-6);
    expect(lengthOf(edge(top, "wrist")) + lengthOf(edge(under, "wrist"))).toBeCloseTo(args[4]!, 9);
  },
);

test("both caps are the armhole with its ease, and the seams equal, of 60 random sleeves", () => {
  fc.assert(
    fc.property(
      fc.record({ armhole: spread(32, 60), ease: spread(0, 0.09), wide: spread(0.7, 0.9), wrist: spread(0.6, 0.9), bend: spread(0, 20), front: spread(0, 3), back: spread(0, 2) }), // biome-ignore format: one sleeve
      ({ armhole, ease, wide, wrist, bend, front, back }) => {
        const bicep = wide * armhole;
        const args = [
          armhole,
          ease * armhole,
          bicep,
          58,
          wrist * bicep,
          null,
          null,
          bend,
          front,
          back,
        ] as const;
        const [top, under] = [piece("top", ...args), piece("under", ...args)];
        const cap = lengthOf(edge(top, "cap")) + lengthOf(edge(under, "cap"));
        expect(Math.abs(cap - (1 + ease) * armhole)).toBeLessThan(1e-6 * armhole);
        for (const name of ["front seam", "back seam"])
          expect(lengthOf(edge(top, name))).toBeCloseTo(lengthOf(edge(under, name)), 8);
      },
    ),
    { seed: 20261127, numRuns: 60 },
  );
});

test("for a published two-piece sleeve, 5 in high in front and 3 in behind, the same width and line give a cap of nearly 4 in", () => {
  // Every Woman's Encyclopaedia (London 1910 to 1912), volume 4, "Drafting a Sleeve": the top piece is the armhole less 4 in wide,
  // its crown half-way; its front seam begins 5 in below the crown, its back seam 3 in; the under piece adds 4 in.
  for (const armhole of [14, 15, 16, 17]) {
    const half = (armhole - 4) / 2;
    const cap = Math.hypot(half, 5) + Math.hypot(half, 3) + 4;
    const height = calls(TWO_PIECE_SLEEVE, "in").step(
      "cap_height",
      "top",
      armhole,
      cap - armhole,
      armhole,
      24,
      9,
    );
    expect(Math.abs(height - (5 + 3) / 2)).toBeLessThan(0.25);
  }
});

test.each(SLEEVES)(
  "of a sleeve for an armhole of %d the seams that are sewn together are one line, mirrored",
  (...args) => {
    const [top, under] = [piece("top", ...args), piece("under", ...args)];
    for (const name of ["front seam", "back seam"]) {
      const [one, other] = [edge(top, name), edge(under, name)];
      expect(Math.abs(lengthOf(one) - lengthOf(other))).toBeLessThan(1e-9);
      const long = lengthOf(one);
      // From the cap down, on the top at one side and on the under sleeve at the other.
      const from = (run: Edge, at: number): Point =>
        placeAlong(run, (run === one) === (name === "front seam") ? at : long - at).point;
      const [a, b] = [from(one, 0), from(other, 0)];
      for (let i = 1; i <= 8; i += 1) {
        const [c, d] = [from(one, (long * i) / 8), from(other, (long * i) / 8)];
        expect(c[0] - a[0]).toBeCloseTo(b[0] - d[0], 8);
        expect(c[1] - a[1]).toBeCloseTo(d[1] - b[1], 8);
      }
    }
  },
);

/** How wide a piece is straight across at this height. */
function widthAt(one: Piece, y: number): number {
  const outline = flattenPiece(one, 1e-5);
  const cuts = outline.flatMap(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    return ay <= y === by <= y ? [] : [ax + ((y - ay) / (by - ay)) * (bx - ax)];
  });
  return Math.max(...cuts) - Math.min(...cuts);
}

test.each(SLEEVES)(
  "of a sleeve for an armhole of %d both pieces together are as wide as wanted at the underarm and at the elbow",
  (...args) => {
    const [top, under] = [piece("top", ...args), piece("under", ...args)];
    const both = (y: number) => widthAt(top, y) + widthAt(under, y);
    expect(both(step("cap_height", "top", ...args) + 1e-6)).toBeCloseTo(args[2]!, 3);
    expect(both(step("elbow_depth", "top", ...args))).toBeCloseTo(step("elbow_width", "top", ...args), 3);
  },
);

test("where the caps meet at a seam the armhole's line runs on without a corner, and so at the underarm", () => {
  const [top, under] = [
    edge(piece("top", ...SLEEVES[0]!), "cap"),
    edge(piece("under", ...SLEEVES[0]!), "cap"),
  ];
  const same = ([a, b]: Point, [c, d]: Point) => Math.abs(Math.atan2(a * d - b * c, a * c + b * d));
  // The top's cap ends at the front seam, where the under sleeve's begins.
  expect(same(direction(top.at(-1)!, 1), direction(under[0]!, 0))).toBeLessThan(1e-9);
  expect(same(direction(under.at(-1)!, 1), direction(top[0]!, 0))).toBeLessThan(1e-9);
  for (let i = 1; i < under.length; i += 1)
    expect(same(direction(under[i - 1]!, 1), direction(under[i]!, 0))).toBeLessThan(1e-9);
});

test("the forearm turns to the front by the bend, and the wrist edge lies square to it", () => {
  for (const bend of [0, 10, 20]) {
    const wrist = edge(piece("top", 46, 3.5, 36, 60, 27, 32, 34, bend, 0, 0), "wrist");
    const { from, to } = wrist[0]!;
    expect((Math.atan2(to[1] - from[1], from[0] - to[0]) * 180) / Math.PI).toBeCloseTo(bend, 9);
  }
  const straight = edge(piece("top", 46, 3.5, 36, 60, 27, 32, 34, 0, 0, 0), "wrist")[0]!.from;
  const bent = edge(piece("top", 46, 3.5, 36, 60, 27, 32, 34, 20, 0, 0), "wrist")[0]!.from;
  expect(bent[0]).toBeGreaterThan(straight[0]);
});

test("the notches of front, back, crown, underarm and elbows stand once each on the two pieces", () => {
  const notches = (part: string, ...args: Sleeve) =>
    piece(part, ...args).marks.filter(({ role }) => role === "notch").length;
  for (const args of SLEEVES) expect(notches("top", ...args) + notches("under", ...args)).toBe(4 + 1 + 4);
});

test("the seams can be checked, and both pieces take allowances", () => {
  const [top, under] = [answer("top", ...SLEEVES[0]!), answer("under", ...SLEEVES[0]!)];
  const length = (one: string | number, name: string) => calls(EDGE_LENGTH, "cm").figure(one, name);
  expect(calls(SEAM_CHECK, "cm").answer(length(top, "back seam"), length(under, "back seam"), 0, 1e-9)).toBe(
    "ok",
  );
  for (const one of [top, under])
    expect(pieceArea(readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(one, 1, 4))))).toBeGreaterThan(
      pieceArea(readPiece(String(one))),
    );
});

test("shifts past the underarm or past half the wrist, an elbow in the cap and a wrist above the elbow are refused", () => {
  const with_ = (...rest: Sleeve) => refusal("top", 46, 3.5, 36, 60, 27, ...rest);
  expect(with_(32, 34, 12, 9)).toBe(
    "front_shift must be less than a quarter of the bicep, 9 cm, where the seam reaches the underarm, not 9 cm",
  );
  expect(with_(32, 34, 12, 8, 7.9)).toMatch(
    /^front_shift and back_shift must be less than half the elbow together, 16 cm/,
  );
  expect(refusal("top", 46, 3.5, 36, 60, 14, 32, 34, 12, 5, 4)).toMatch(
    /less than half the wrist together, 7 cm, not 9 cm$/,
  );
  expect(with_(32, 14)).toMatch(/^elbow_length must be more than the cap, which is 14/);
  expect(with_(32, 60)).toBe("length must be more than the 60 cm down to the elbow, not 60 cm");
});

test("of a straight sleeve the middle of the wrist lies under the middle of the elbow", () => {
  // An elbow of 35 and a wrist of 30, seams at the folds: the back seam comes in by a quarter of the difference.
  const back = edge(piece("top", 52, 4, 40, 64, 30, 35, 37, 0, 0, 0), "back seam");
  expect(back[0]!.from[0] - back.at(-1)!.to[0]).toBeCloseTo((35 - 30) / 4, 9);
});
