import { expect, test } from "vitest";
import { SHOULDER_YOKE } from "../../../functions/bodice/SHOULDER_YOKE.ts";
import { MIRROR } from "../../../functions/curves/MIRROR.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { direction, distance, type Edge, type Point } from "../../../functions/geometry/strokes.ts";
import {
  edgeLength,
  type Piece,
  pieceArea,
  pieceBounds,
  readPiece,
} from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, answer } = calls(SHOULDER_YOKE, "cm");

const NAMES = "armhole, side, waist";
const FRONT = `M 7.5 11 L 19.5 15 C 17 22 17 28 24 30 L 24 50 L 0 50 L 0 20 C 4.5 20 7.5 16 7.5 11 Z | edges shoulder, ${NAMES}, centre front, neckline`;
const BACK = `M 7.5 11 L 19.5 15 C 19 22 19 28 24 30 L 24 50 L 0 50 L 0 13 C 3.5 13 6 12.5 7.5 11 Z | edges shoulder, ${NAMES}, centre back, neckline`;
const BODICE = [FRONT, "neckline", "shoulder", BACK, "neckline", "shoulder"] as const;

const edge = (one: Piece, name: string): Edge => one.edges[one.names.indexOf(name)]!;
const along = (one: Piece, name: string): number => edgeLength(edge(one, name));
const wholeArea = pieceArea(readPiece(FRONT)) + pieceArea(readPiece(BACK));

test("the yoke and what is left of front and back are together as large as the bodice", () => {
  for (const [front, back] of [[4, 9], [2, 6], [7, 14]] as const) {
    const parts = ["yoke", "front", "back"].map((part) => pieceArea(piece(...BODICE, front, back, part)));
    expect(parts.reduce((sum, one) => sum + one, 0)).toBeCloseTo(wholeArea, 6);
  } // biome-ignore format: pairs
});

test("the lines of the yoke are as long on the yoke as on the front and on the back", () => {
  const yoke = piece(...BODICE, 4, 9);
  expect(along(yoke, "front yoke line")).toBeCloseTo(along(piece(...BODICE, 4, 9, "front"), "yoke line"), 9);
  expect(along(yoke, "back yoke line")).toBeCloseTo(along(piece(...BODICE, 4, 9, "back"), "yoke line"), 9);
});

test("neckline and armhole of the bodice keep their lengths, shared out between the pieces", () => {
  const [yoke, front, back] = ["yoke", "front", "back"].map((part) => piece(...BODICE, 4, 9, part)) as [
    Piece,
    Piece,
    Piece,
  ];
  const [wholeFront, wholeBack] = [readPiece(FRONT), readPiece(BACK)];
  expect(along(yoke, "front neckline") + along(front, "neckline")).toBeCloseTo(
    along(wholeFront, "neckline"),
    6,
  );
  expect(along(yoke, "front armhole") + along(front, "armhole")).toBeCloseTo(along(wholeFront, "armhole"), 6);
  expect(along(yoke, "back armhole") + along(back, "armhole")).toBeCloseTo(along(wholeBack, "armhole"), 6);
  expect(along(yoke, "back neckline")).toBeCloseTo(along(wholeBack, "neckline"), 9);
  expect(along(yoke, "centre back")).toBeCloseTo(9, 9);
});

test("neckline meets neckline and armhole meets armhole at the shoulder, however the front is drawn", () => {
  for (const front of [FRONT, calls(MIRROR, "cm").answer(FRONT)]) {
    const yoke = piece(front, "neckline", "shoulder", BACK, "neckline", "shoulder", 4, 9);
    const { names } = yoke;
    for (const name of ["neckline", "armhole"]) {
      const [one, two] = [names.indexOf(`front ${name}`), names.indexOf(`back ${name}`)];
      expect([1, names.length - 1]).toContain(Math.abs(one - two));
    }
    // Front and back stand at 71.57° and 116.57° to the shoulder at the neck: together 8.13° past a straight line.
    const away = (run: Edge) => {
      const ends = [run[0]!.from, run.at(-1)!.to];
      return distance(ends[0]!, [7.5, 11]) < 1e-6
        ? direction(run[0]!, 0)
        : direction(run.at(-1)!, 1).map((one) => -one);
    };
    const [[a, b], [c, d]] = [away(edge(yoke, "front neckline")), away(edge(yoke, "back neckline"))] as [
      Point,
      Point,
    ];
    expect(Math.abs((Math.atan2(a * d - b * c, a * c + b * d) * 180) / Math.PI)).toBeCloseTo(180 - 8.13, 2);
  }
});

test("the back keeps its place with centre back along the grain, the front's line lies parallel to the shoulder", () => {
  const yoke = piece(...BODICE, 4, 9);
  const [{ from, to }] = edge(yoke, "back yoke line") as [Edge[number]];
  expect([from[1], to[1]]).toEqual([expect.closeTo(22, 9), expect.closeTo(22, 9)]);
  expect(pieceBounds(yoke).left).toBeCloseTo(0, 9);
  // The shoulder is the guide line of the join; the front's line runs 4 cm from it at both ends.
  const seam = yoke.marks.find(({ role }) => role === "guide")!.line[0]!;
  const long = distance(seam.from, seam.to);
  for (const [x, y] of [edge(yoke, "front yoke line")[0]!.from, edge(yoke, "front yoke line")[0]!.to]) {
    const off =
      ((seam.to[0] - seam.from[0]) * (y - seam.from[1]) - (seam.to[1] - seam.from[1]) * (x - seam.from[0])) /
      long;
    expect(Math.abs(off)).toBeCloseTo(4, 9);
  }
});

test("a front drawn the other way round gives the same yoke, and a yoke takes allowances", () => {
  const mirrored = calls(MIRROR, "cm").answer(FRONT);
  const other = piece(mirrored, "neckline", "shoulder", BACK, "neckline", "shoulder", 4, 9);
  expect(pieceArea(other)).toBeCloseTo(pieceArea(piece(...BODICE, 4, 9)), 6);
  const cut = readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(answer(...BODICE, 4, 9), 1)));
  expect(pieceArea(cut)).toBeGreaterThan(pieceArea(other) + 60);
});

test("shoulders of two lengths, a yoke deeper than the piece, and a neckline apart from its shoulder are refused", () => {
  const longer = BACK.replace("L 19.5 15", "L 20.5 15.3");
  expect(refusal(FRONT, "neckline", "shoulder", longer, "neckline", "shoulder", 4, 9)).toMatch(
    /^back_shoulder must be as long as front_shoulder, 12.6 cm, for the yoke to have no seam there, not 13.7 cm/,
  );
  expect(refusal(...BODICE, 60, 9)).toMatch(/^front_depth must be less for the line of the yoke to cross/);
  expect(refusal(...BODICE, 4, 60)).toMatch(/^back_depth must be less for the line of the yoke to cross/);
  expect(refusal(FRONT, "neckline", "shoulder", BACK, "waist", "shoulder", 4, 9)).toMatch(
    /^back_shoulder must be the edge that meets/,
  );
});
