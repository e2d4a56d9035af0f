import fc from "fast-check";
import { expect, test } from "vitest";
import { FLARED_PANEL } from "../../../functions/flare/FLARED_PANEL.ts";
import { SLASHED_PANEL } from "../../../functions/flare/SLASHED_PANEL.ts";
import { SPREAD_TOTAL } from "../../../functions/flare/SPREAD_TOTAL.ts";
import { type Point, pointAt, signedArea, strokeLength } from "../../../functions/geometry/strokes.ts";
import { edgeLength, flattenPiece, type Piece, pieceArea } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(SLASHED_PANEL, "cm");

const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);

const strips = fc.record({
  top: fc.double({ min: 20, max: 80, noNaN: true }),
  depth: fc.double({ min: 8, max: 40, noNaN: true }),
  gaps: fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 1, maxLength: 8 }),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
});

const closeTo = (found: number, wanted: number) =>
  expect(Math.abs(found - wanted)).toBeLessThan(1e-8 * Math.max(1, Math.abs(wanted)));

test("the hem is the top and all the gaps, the edges' shares with them; the sides stay as deep as the strip", () => {
  fc.assert(
    fc.property(strips, ({ top, depth, gaps, share }) => {
      const all = sum(gaps) + share * (gaps[0]! + gaps.at(-1)!);
      const lengths = piece(top, depth, gaps, "hem", share).edges.map(edgeLength);
      for (const [i, wanted] of [top, depth, top + all, depth].entries()) closeTo(lengths[i]!, wanted);
    }),
    { seed: 65 },
  );
});

test("spread at the hem and then folded out at the top by the same gaps, top and hem come to the same lengths and area", () => {
  fc.assert(
    fc.property(strips, ({ top, depth, gaps, share }) => {
      const spread = piece(top, depth, gaps, "hem", share);
      const hem = edgeLength(spread.edges[2]!);
      fc.pre((hem / (gaps.length + 1)) * 0.5 > Math.max(...gaps));
      const folded = piece(hem, depth, gaps, "top", share);
      for (const [i, edge] of folded.edges.entries()) closeTo(edgeLength(edge), edgeLength(spread.edges[i]!));
      closeTo(pieceArea(folded), pieceArea(spread));
      // With even gaps, half at the edges, it is the very same piece.
      const even = piece(top, depth, gaps.map(() => 1), "hem", 0.5);
      const back = piece(top + gaps.length + 1, depth, gaps.map(() => 1), "top", 0.5);
      for (const [i, edge] of back.edges.entries()) {
        for (const c of [0, 1] as const) closeTo(edge[0]!.from[c], even.edges[i]![0]!.from[c]);
      }
    }),
    { seed: 66 },
  );
}); // biome-ignore format: short lists

/** Middles of the sections, each brought upright by turning it about its upper end back by its lean. */
function uprightAgain({ marks }: Piece, leans: readonly number[]): Point[] {
  return marks.map((mark, i) => {
    const [[ax, ay], [bx, by]] = [mark.line[0]!.from, mark.line[0]!.to];
    const turn = (leans[i]! * Math.PI) / 180;
    const [dx, dy] = [bx - ax, by - ay];
    return [dx * Math.cos(turn) - dy * Math.sin(turn), dx * Math.sin(turn) + dy * Math.cos(turn)];
  });
}

test("every section folded back by the lean it was given stands upright again, a section's width from the next", () => {
  const [top, depth, gaps] = [36, 14, [1, 3, 0.5, 2]] as const;
  const spread = piece(top, depth, gaps, "hem", 0.25);
  const leans = [1, 2, 3, 4, 5].map((i) => step(`lean_${i}`, top, depth, gaps, "hem", 0.25));
  for (const [dx, dy] of uprightAgain(spread, leans)) {
    expect(dx).toBeCloseTo(0, 9);
    expect(dy).toBeCloseTo(depth, 9);
  }
  // Half a section, then from middle to middle a whole one along the top; the gap more along the hem.
  const wide = top / 5;
  const onTop = spread.edges[0]!.map(strokeLength);
  const onHem = [...spread.edges[2]!].reverse().map(strokeLength);
  const gains = [0.25 * 1, ...gaps, 0.25 * 2];
  for (const [i, gain] of gains.entries()) {
    const flat = i === 0 || i === 5 ? wide / 2 : wide;
    expect(onTop[i]).toBeCloseTo(flat, 9);
    expect(onHem[i]).toBeCloseTo(flat + gain, 9);
  }
  // A gap opened over the depth leans the next section by just that angle.
  for (const [i, gap] of gaps.entries())
    expect(leans[i + 1]! - leans[i]!).toBeCloseTo(((gap / depth) * 180) / Math.PI, 9);
});

test("the trued edges are smooth: each grain line meets top and hem squarely from either side", () => {
  const spread = piece(36, 14, [1, 3, 0.5, 2], "hem", 0.25);
  const hem = [...spread.edges[2]!].reverse();
  for (const [i, mark] of spread.marks.entries()) {
    const [[ax, ay], [bx, by]] = [mark.line[0]!.from, mark.line[0]!.to];
    const square = (p: Point, q: Point) => {
      const across = Math.hypot(q[0] - p[0], q[1] - p[1]);
      return ((bx - ax) * (q[0] - p[0]) + (by - ay) * (q[1] - p[1])) / (14 * across);
    };
    for (const edge of [spread.edges[0]!, hem]) {
      for (const [stroke, from, to] of edge === hem
        ? ([[edge[i]!, 0, 1e-7], [edge[i + 1]!, 1, 1 - 1e-7]] as const)
        : ([[edge[i]!, 1, 1 - 1e-7], [edge[i + 1]!, 0, 1e-7]] as const)) {
        expect(Math.abs(square(pointAt(stroke, from), pointAt(stroke, to)))).toBeLessThan(1e-6);
      }
    }
  }
}); // biome-ignore format: pairs

test("its area is the middle length times the depth, and a polygon of many short chords has it too", () => {
  fc.assert(
    fc.property(strips, fc.constantFrom("hem", "top"), ({ top, depth, gaps, share }, at) => {
      fc.pre(at === "hem" || (top / (gaps.length + 1)) * 0.5 > Math.max(...gaps));
      const found = piece(top, depth, gaps, at, share);
      const middle = (edgeLength(found.edges[0]!) + edgeLength(found.edges[2]!)) / 2;
      closeTo(pieceArea(found), middle * depth);
      const chords = Math.abs(signedArea(flattenPiece(found, 1e-5)));
      expect(Math.abs(chords / (middle * depth) - 1)).toBeLessThan(1e-5);
      closeTo(step("area", top, depth, gaps, at, share), pieceArea(found));
    }),
    { seed: 67 },
  );
});

test("even gaps with half a gap at each edge make the flared panel, and what SPREAD_TOTAL adds up", () => {
  // Half waist 16.5 to half hip 23.5 over five sections, 1.4 a gap: common practice, no source to name.
  const inches = calls(SLASHED_PANEL, "in");
  const gained = calls(SPREAD_TOTAL, "in").figure(1.4, 5);
  const spread = inches.piece(16.5, 8, [1.4, 1.4, 1.4, 1.4]);
  const flared = calls(FLARED_PANEL, "in").piece(16.5, 16.5 + gained, 8);
  expect(gained).toBeCloseTo(7, 12);
  for (const [i, edge] of spread.edges.entries()) {
    // The two are laid down at places of their own: corners are told from the first.
    const corner = (of: Piece, c: 0 | 1) => of.edges[i]![0]!.from[c] - of.edges[0]![0]!.from[c];
    for (const c of [0, 1] as const) expect(corner(spread, c)).toBeCloseTo(corner(flared, c), 9);
    expect(edgeLength(edge)).toBeCloseTo(edgeLength(flared.edges[i]!), 9);
  }
});

test("the section told to lie straight has its grain upright, and the shape stays the same", () => {
  const sides = piece(36, 14, [1, 3, 0.5]);
  for (const straight of [1, 2, 3, 4]) {
    const found = piece(36, 14, [1, 3, 0.5], "hem", 0.5, straight);
    const grain = found.marks[straight - 1]!.line[0]!;
    expect(grain.from[0]).toBeCloseTo(grain.to[0], 9);
    expect(pieceArea(found)).toBeCloseTo(pieceArea(sides), 9);
  }
});

test("more than a circle, gaps wider than a section folded out, and a section that is not there are refused", () => {
  expect(refusal(20, 5, [12, 12, 12])).toBe(
    "gaps must come to at most 31.4 cm at a depth of 5 cm, not 48 cm: that needs more than one circle: cut it in panels",
  );
  expect(refusal(20, 30, [6, 1, 1], "top")).toBe(
    "gaps must be less than 5 cm, the length that a section has at the top, not 6 cm",
  );
  expect(refusal(20, 8, [1, 1], "hem", 0.5, 4)).toBe("straight must be a section from 1 to 3, not 4");
  // Less than a circle, but the right half comes round into the straight left one.
  expect(refusal(54, 9, [0, 43], "hem", 0.25)).toBe(
    "gaps open the strip so far that it would lie over itself: cut it in panels",
  );
});
