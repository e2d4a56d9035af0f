import { expect, test } from "vitest";
import { worn } from "../../../functions/as-worn.ts";
import { SEAM_GIRTH } from "../../../functions/body/SEAM_GIRTH.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { DIPPED_PANEL } from "../../../functions/flare/DIPPED_PANEL.ts";
import { HIP_YOKE } from "../../../functions/flare/HIP_YOKE.ts";
import { direction, distance, type Point } from "../../../functions/geometry/strokes.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, answer } = calls(HIP_YOKE, "cm");

/**
 * Half the lower edge measured on the body itself, in space: a place at a share of the girth and a level
 * below the waist lies at the radius of the girth there, and as far down as the level along the body and the radius allow.
 */
function onTheBody(waist: number, hip: number, drop: number, level: (share: number) => number): number {
  const more = (hip - waist) / drop;
  const radius = (down: number) => (waist + more * down) / (2 * Math.PI);
  const steep = Math.sqrt(1 - (more / (2 * Math.PI)) ** 2);
  let [sum, before] = [0, [0, 0, 0]];
  for (let i = 0; i <= 40000; i += 1) {
    const share = i / 80000;
    const down = level(share);
    const place = [
      radius(down) * Math.cos(2 * Math.PI * share),
      radius(down) * Math.sin(2 * Math.PI * share),
      steep * down,
    ];
    if (i > 0) sum += Math.hypot(...place.map((one, k) => one - before[k]!));
    before = place;
  }
  return sum;
}

test("a curved lower edge is as long on paper as on the body", () => {
  for (const [waist, hip, drop, back, front] of [[72, 96, 12, 8, 14], [72, 96, 12, 14, 6], [80, 78, 15, 8, 12], [66, 110, 20, 10, 18]] as const) {
    const level = (share: number) => back + ((front - back) * (1 - Math.cos(2 * Math.PI * share))) / 2;
    const paper = edgeLength(piece(waist, hip, drop, back, front, "curved").edges[2]!);
    expect(Math.abs(paper - onTheBody(waist, hip, drop, level))).toBeLessThan(1e-4);
  } // biome-ignore format: rows
});

test("the waist is half the waist, and a level yoke is as long below as the body there", () => {
  for (const edge of ["pointed", "curved"]) {
    const { edges } = piece(72, 96, 12, 10, 10, edge);
    expect(edgeLength(edges[0]!)).toBeCloseTo(36, 9);
    expect(edgeLength(edges[2]!)).toBeCloseTo(46, edge === "pointed" ? 9 : 6);
    expect(edgeLength(edges[1]!)).toBeCloseTo(10, 9);
  }
});

test("a section below the yoke is sewn to it: one line on both", () => {
  for (const [back, front, start] of [[8, 14, 0.5], [10, 10, 0.5], [6, 9, 0.2], [12, 7, 0.3]] as const) {
    const yoke = piece(72, 100, 20, back, front, "pointed", start).edges[2]!;
    const section = calls(DIPPED_PANEL, "cm").piece(72, 100, 20, front, 30, back, start).edges[0]!;
    const long = edgeLength(yoke);
    expect(edgeLength(section)).toBeCloseTo(long, 9);
    expect(2 * long).toBeCloseTo(calls(SEAM_GIRTH, "cm").figure(72, 100, 20, front, back, start), 9);
    for (const share of [0.2, 0.5, 0.8]) {
      const [x, y] = placeAlong(yoke, long * (1 - share)).point;
      const [u, v] = placeAlong(section, long * share).point;
      // The section begins at its seam, the yoke at the waist.
      expect([x, y - back]).toEqual([expect.closeTo(u, 6), expect.closeTo(v, 6)]);
    }
  } // biome-ignore format: rows
});

test("a curved edge meets both centres squarely, so that the two halves run into each other", () => {
  const { edges } = piece(72, 96, 12, 8, 14, "curved");
  const [, front, lower, back] = edges;
  const square = ([a, b]: Point, [c, d]: Point) => (a * c + b * d) / Math.hypot(a, b) / Math.hypot(c, d);
  expect(square(direction(front![0]!, 1), direction(lower![0]!, 0))).toBeCloseTo(0, 9);
  expect(square(direction(lower!.at(-1)!, 1), direction(back![0]!, 0))).toBeCloseTo(0, 9);
});

test("with the grain at centre front that edge stands upright, and the yoke is the same", () => {
  const [one, other] = [piece(72, 96, 12, 8, 14, "curved"), piece(72, 96, 12, 8, 14, "curved", 0.5, "front")];
  const [from, to] = [other.edges[1]![0]!.from, other.edges[1]![0]!.to];
  expect(to[0]).toBeCloseTo(from[0], 9);
  expect(distance(from, to)).toBeCloseTo(14, 9);
  expect(pieceArea(one)).toBeCloseTo(pieceArea(other), 9);
});

test("a yoke takes allowances and is drawn as worn", () => {
  expect(worn(HIP_YOKE, [72, 96, 12, 8, 14], { unit: "cm" })).not.toBeNull();
  const one = answer(72, 96, 12, 8, 14);
  expect(pieceArea(readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(one, 1))))).toBeGreaterThan(
    pieceArea(readPiece(String(one))) + 80,
  );
});

test("a hip too near for its girth is refused", () => {
  expect(refusal(60, 160, 12, 8)).toMatch(/^hip_drop must be more than 15\.9 cm/);
});
