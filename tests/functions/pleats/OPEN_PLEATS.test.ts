import { expect, test } from "vitest";
import { signedArea } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { OPEN_PLEATS } from "../../../functions/pleats/OPEN_PLEATS.ts";
import { calls } from "../calls.ts";
import { foldedPoints, foldUp, offEdge } from "../folded.ts";

const { piece, refusal, step } = calls(OPEN_PLEATS, "cm");

// Slanting all round, so that every pleat's hidden layers are cut on a slant at top and hem.
const SLANTED = "M 0 0 L 30 3 L 37 42 L -5 38 Z";
const KNIFE = [SLANTED, [8, 15, 24], [1.5, 2, 1.2], [3, 2.5, 4], "knife"] as const;

const CASES = [
  { name: "knife pleats", args: KNIFE, sides: [-1, -1, -1] },
  { name: "knife pleats turned to the beginning", args: [...KNIFE, "start"], sides: [1, 1, 1] },
  { name: "box pleats", args: [SLANTED, [9, 21], [2], null, "box"], sides: [1, -1, 1, -1] },
  { name: "inverted pleats", args: [SLANTED, [9, 21], [2], [3], "inverted"], sides: [-1, 1, -1, 1] },
  { name: "a wedge", args: [SLANTED, [12], [0], [4], "knife"], sides: [-1] },
  { name: "half an inverted pleat on the fold", args: [SLANTED, [0], [2], null, "inverted"], sides: [1] },
] as const;

for (const { name, args, sides } of CASES) {
  test(`${name} opened and folded up again give the piece back, every hidden layer along its seam`, () => {
    const whole = readPiece(SLANTED);
    const folded = foldUp(piece(...args), sides);
    const [top, right, hem] = whole.edges;
    for (const [layers, edge] of [[folded.top, top!], [folded.hem, hem!]] as const) {
      for (const layer of layers) {
        for (const point of foldedPoints(layer)) expect(offEdge(edge, point)).toBeLessThan(1e-9);
      }
      const shown = layers.filter(({ hidden }) => !hidden);
      expect(shown.reduce((sum, { strokes }) => sum + edgeLength(strokes), 0)).toBeCloseTo(edgeLength(edge), 9);
    } // biome-ignore format: points in pairs
    const ends = [right![0]!.from, right![0]!.to];
    for (const [i, end] of ends.entries()) {
      for (const c of [0, 1] as const) expect(folded.right[i]![c]).toBeCloseTo(end[c], 9);
    }
  });
}

test("the top and hem grow by two layers of each knife pleat and four of each box", () => {
  const [top, , hem] = readPiece(SLANTED).edges.map(edgeLength);
  const knife = piece(...KNIFE).edges.map(edgeLength);
  expect(knife[0]).toBeCloseTo(top! + 2 * (1.5 + 2 + 1.2), 9);
  expect(knife[2]).toBeCloseTo(hem! + 2 * (3 + 2.5 + 4), 9);
  const box = piece(SLANTED, [9, 21], [2], null, "box").edges.map(edgeLength);
  expect(box[0]).toBeCloseTo(top! + 2 * 4 * 2, 9);
  expect(step("flat_hem", ...KNIFE)).toBeCloseTo(knife[2]!, 9);
});

test("the opened piece is as large as the finished one and what lies beneath it, twice", () => {
  const [[ax, ay], [bx, by], [cx, cy], [dx, dy]] = [[0, 0], [30, 3], [37, 42], [-5, 38]] as const; // biome-ignore format: points in pairs
  const [top, hem] = [Math.hypot(bx - ax, by - ay), Math.hypot(cx - dx, cy - dy)];
  const beneath = ([[8, 1.5, 3], [15, 2, 2.5], [24, 1.2, 4]] as const).map(([place, depth, hemDepth]) => {
    const onTop = (t: number) => [ax + ((bx - ax) * t) / top, ay + ((by - ay) * t) / top] as const;
    const onHem = (t: number) => [dx + ((cx - dx) * t) / hem, dy + ((cy - dy) * t) / hem] as const;
    const low = (place / top) * hem;
    return Math.abs(signedArea([onTop(place), onTop(place - depth), onHem(low - hemDepth), onHem(low)]));
  }); // biome-ignore format: points in pairs
  const finished = pieceArea(readPiece(SLANTED));
  expect(pieceArea(piece(...KNIFE))).toBeCloseTo(finished + 2 * beneath.reduce((sum, one) => sum + one), 8);
});

test("pleats too near one another, past the end, or of no depth are refused in a sentence", () => {
  const square = "M 0 0 L 20 0 L 20 12 L 0 12 Z";
  expect(refusal(square, [1], [2])).toMatch(
    /^pleat 1 reaches past the top: at place 1 cm there is only room for a fold less than 2 cm deep/,
  );
  expect(refusal(square, [10, 11], [2, 1], [2, 4], "box")).toMatch(
    /^pleats 1 and 2 are too close together at the hem/,
  );
  expect(refusal(square, [25], [2])).toBe("places must lie on the top, from 0 to 20 cm, not 25 cm");
  expect(refusal(square, [5], [0])).toBe(
    "fold_depth must be above 0 at the top or at the hem, not 0 at both (place 5 cm)",
  );
  expect(refusal(square, [5, 10, 15], [1, 2])).toBe(
    "fold_depth must be one value, or one for each of the 3 places, not 2",
  );
  expect(refusal("M 0 0 L 20 0 L 10 12 Z", [10], [1])).toBe(
    "piece must have four edges, its top first and its hem third, to be pleated, not 3",
  );
});
