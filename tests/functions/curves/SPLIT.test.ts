import fc from "fast-check";
import { expect, test } from "vitest";
import { SPLIT } from "../../../functions/curves/SPLIT.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { type Argument, isRefused, run } from "../../../functions/run.ts";

const split = (...args: Argument[]) => run(SPLIT, args, { unit: "cm" });
const skirt = "M 0 12 A 12 12 0 0 0 12 0 L 70 0 A 70 70 0 0 1 0 70 Z M 20 20 L 40 40 M 14 4 L 20 4";

test("the two parts have the whole area, the whole outline and the cut twice", () => {
  const whole = readPiece(skirt);
  const around = whole.edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
  fc.assert(
    fc.property(
      fc.nat(3),
      fc.nat(3),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      (i, j, p, q) => {
        fc.pre(i !== j);
        const at = (edge: number, share: number) => share * edgeLength(whole.edges[edge]!);
        const [one, two] = [1, 2].map((part) => split(skirt, i + 1, at(i, p), j + 1, at(j, q), part));
        // A cut that leaves the ring at its hollow is refused for both parts.
        expect(isRefused(one)).toBe(isRefused(two));
        if (isRefused(one) || isRefused(two)) return;
        const [a, b] = [readPiece(String(one)), readPiece(String(two))];
        expect(pieceArea(a) + pieceArea(b)).toBeCloseTo(pieceArea(whole), 6);
        const sum = [...a.edges, ...b.edges].reduce((all, edge) => all + edgeLength(edge), 0);
        expect(sum).toBeCloseTo(around + 2 * edgeLength(a.edges.at(-1)!), 6);
        expect(edgeLength(a.edges.at(-1)!)).toBeCloseTo(edgeLength(b.edges.at(-1)!), 9);
        expect(a.marks.length + b.marks.length).toBe(2);
      },
    ),
    { seed: 77 },
  );
});

test("a cut at a corner makes no edge of no length", () => {
  const part = readPiece(String(split("M 0 0 L 9 0 L 9 9 L 0 9 Z", 1, 0, 3, 0)));
  expect(part.edges.map(edgeLength)).toEqual([9, 9, expect.closeTo(9 * Math.SQRT2, 9)]);
});

test.each([
  [[skirt, 1, 5, 1, 9], "to_edge must be a different edge from edge, not edge 1 too"],
  [[skirt, 2, 60, 3, 9], "at must be at most 58 cm, the length of edge 2, not 60 cm"],
  [[skirt, 2, 0, 4, 58], "the cut must run inside the piece from edge to edge, but it leaves the piece"],
  [[skirt, 2, 58, 3, 0], "the cut must run between two places of the outline, not from a place to itself"],
  [[skirt, 2, 5, 9, 1], "to_edge must be at most 4, because the piece has 4 edges, not 9"],
] as [Argument[], string][])("%j is refused: %s", (args, refusal) => {
  expect(split(...args)).toMatchObject({ refusal });
});
