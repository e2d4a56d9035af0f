import fc from "fast-check";
import { expect, test } from "vitest";
import { FLARED_PANEL } from "../../../functions/flare/FLARED_PANEL.ts";
import { edgeLength, pieceArea, pieceBounds } from "../../../functions/pieces/piece.ts";
import { FLAT_WIDTH } from "../../../functions/pleats/FLAT_WIDTH.ts";
import { PLEAT_MARK } from "../../../functions/pleats/PLEAT_MARK.ts";
import { PLEATED_PANEL } from "../../../functions/pleats/PLEATED_PANEL.ts";
import { calls } from "../calls.ts";
import { foldedPoints, foldUp, offEdge } from "../folded.ts";

const { piece, refusal, step } = calls(PLEATED_PANEL, "cm");
const flared = calls(FLARED_PANEL, "cm");

test("eighteen knife pleats 4 cm deep in a straight section of 92 cm make it 236 cm wide", () => {
  // PL-03, printed: NIMI, Dress Making Trade Practical, p. 203 ex. 1b. Each pleat is a spacing from the last.
  const places = Array.from({ length: 18 }, (_, i) => 4 + (i * (92 - 4)) / 18);
  expect(edgeLength(piece(92, 92, 15, places, [4]).edges[0]!)).toBeCloseTo(236, 9);
});

test("on a straight panel the marked lines lie where PLEAT_MARK chalks them", () => {
  for (const style of ["knife", "box", "inverted"]) {
    const [count, depth, finished] = [4, 1.5, 48];
    const places = Array.from({ length: count }, (_, i) => ((i + 0.5) * finished) / count);
    const panel = piece(finished, finished, 10, places, [depth], null, style, "end", "left");
    expect(edgeLength(panel.edges[0]!)).toBeCloseTo(
      calls(FLAT_WIDTH, "cm").figure(finished, count, depth, style),
      9,
    );
    // Inner folds are not chalked.
    for (const which of ["fold", "placement"] as const) {
      const drawn = panel.marks.filter(({ role }) => role === which).map(({ line }) => line[0]!.from[0]);
      const wanted = Array.from({ length: count * (style === "knife" ? 1 : 2) }, (_, i) =>
        // Two folds of an inverted pleat share one placement line.
        style === "inverted" && which === "placement" ? Math.floor(i / 2) + 1 : i + 1,
      ).map((number) => calls(PLEAT_MARK, "cm").figure(number, finished, count, depth, style, which));
      drawn.sort((a, b) => a - b);
      for (const [i, at] of drawn.entries()) expect(at).toBeCloseTo(wanted[i]!, 9);
    }
  }
}); // biome-ignore format: a table

test("a flared panel opened and folded up again is the flared panel, its hidden layers along top and hem", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 30, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 40, max: 80, noNaN: true }),
      fc.double({ min: 0.3, max: 2, noNaN: true }),
      fc.constantFrom("knife", "box", "inverted"),
      fc.constantFrom("end", "start"),
      (top, more, depth, fold, style, towards) => {
        const places = [top / 4, top / 2, (3 * top) / 4];
        const opened = piece(top, top + more, depth, places, [fold], [fold * 1.5], style, towards, "left");
        const one = { knife: [towards === "end" ? -1 : 1], box: [1, -1], inverted: [-1, 1] }[style]!;
        const folded = foldUp(opened, [...one, ...one, ...one] as (-1 | 1)[]);
        const whole = flared.piece(top, top + more, depth, "left");
        for (const [layers, edge] of [[folded.top, whole.edges[0]!], [folded.hem, whole.edges[2]!]] as const) {
          let shown = 0;
          for (const layer of layers) {
            for (const point of foldedPoints(layer)) expect(offEdge(edge, point)).toBeLessThan(1e-6);
            if (!layer.hidden) shown += edgeLength(layer.strokes);
          }
          expect(shown).toBeCloseTo(edgeLength(edge), 7);
        }
        const side = whole.edges[1]![0]!;
        for (const c of [0, 1] as const) {
          expect(folded.right[0]![c]).toBeCloseTo(side.from[c], 6);
          expect(folded.right[1]![c]).toBeCloseTo(side.to[c], 6);
        }
      },
    ),
    { seed: 64 },
  );
}); // biome-ignore format: a table

test("a fold is as long as the placement line it is brought to, and the inner fold is square between them on a straight panel", () => {
  const { marks } = piece(60, 60, 25, [20, 40], [3], [3], "box");
  for (let i = 0; i < marks.length; i += 3) {
    expect(edgeLength(marks[i]!.line)).toBeCloseTo(edgeLength(marks[i + 2]!.line), 9);
    const [fold, inner, placement] = [0, 1, 2].map((k) => marks[i + k]!.line[0]!.from[0]);
    expect(inner).toBeCloseTo((fold! + placement!) / 2, 9);
  }
  expect(step("lines", 60, 60, 25, [20, 40], [3], [3], "box")).toBe(12);
});

test("turned to lie straight at the left, in the middle or at the right it is the same panel", () => {
  const args = [40, 55, 30, [12, 28], [1.5], [2.5], "knife", "end"] as const;
  const left = piece(...args, "left");
  for (const straight of ["middle", "right"]) {
    const other = piece(...args, straight);
    expect(pieceArea(other)).toBeCloseTo(pieceArea(left), 8);
    for (const [i, edge] of other.edges.entries())
      expect(edgeLength(edge)).toBeCloseTo(edgeLength(left.edges[i]!), 8);
  }
  const right = piece(...args, "right").edges[1]![0]!;
  expect(right.from[0]).toBeCloseTo(right.to[0], 9);
  expect(pieceBounds(left).left).toBeCloseTo(0, 9);
});

test("a blank place is no pleat, and no pleat at all is the plain panel", () => {
  expect(edgeLength(piece(24, 24, 10, [6, null, 18], [1]).edges[0]!)).toBeCloseTo(28, 9);
  expect(pieceArea(piece(24, 30, 10, [null], [1]))).toBeCloseTo(pieceArea(flared.piece(24, 30, 10)), 9);
});

test("pleats that reach past the panel or lie over one another are refused", () => {
  expect(refusal(24, 24, 10, [1], [2])).toMatch(/^pleat 1 reaches past the top: at place 1/);
  expect(refusal(24, 24, 10, [10, 11], [2, 1], [2, 4], "box")).toMatch(
    /^pleats 1 and 2 are too close together at the hem/,
  );
  expect(refusal(24, 24, 10, [30], [1])).toBe("places must lie on the top, from 0 to 24 cm, not 30 cm");
});

test("pleats that close the hem of a shallow flare until it lies over itself are refused", () => {
  expect(refusal(22.5, 28.6, 1.22, [0.3], [6.5], [0], "knife", "start")).toMatch(
    /^places and depths open the piece so far that it would lie over itself/,
  );
});
