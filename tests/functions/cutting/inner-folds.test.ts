import { expect, test } from "vitest";
import { innerFolds } from "../../../functions/cutting/inner-folds.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { PLEATED_PANEL } from "../../../functions/pleats/PLEATED_PANEL.ts";
import { type Argument, run } from "../../../functions/run.ts";

const panel = (...args: Argument[]) => readPiece(run(PLEATED_PANEL, args, { unit: "in" }) as string);
const acrossTop = (piece: ReturnType<typeof readPiece>) =>
  innerFolds(piece).map(([a, b]) => [a[0], b[0]].map((x) => Math.round(x * 1e6) / 1e6));

test("three knife pleats an inch deep hide a join at 7, 15 and 23 inches of the flat width", () => {
  // Before each place lie the two hidden layers of every pleat before it: 6 + 1, 12 + 2 + 1, 18 + 4 + 1.
  expect(acrossTop(panel(24, 24, 10, [6, 12, 18], [1], null, "knife", "end", "left"))).toEqual([
    [7, 7],
    [15, 15],
    [23, 23],
  ]);
});

test("a box pleat has two inner folds, a wedge pleat's comes from a point", () => {
  expect(acrossTop(panel(24, 24, 12, [12], [2], null, "box"))).toHaveLength(2);
  const [wedge, ...none] = innerFolds(panel(20, 20, 30, [10], [0], [4], "knife", "end", "left"));
  expect(none).toEqual([]);
  expect(wedge!.map(([x]) => Math.round(x))).toEqual([10, 14]);
});

test("lines that are no pleat hide nothing: tucks apart unevenly, the sewing line, a curve", () => {
  const marks = "M 3 0 V 9 M 5 0 V 9 M 8 0 V 9 M 9 0 C 9 3 10 6 9 9";
  expect(innerFolds(readPiece(`M 0 0 H 12 V 9 H 0 Z ${marks}`))).toEqual([]);
  expect(innerFolds(readPiece("M 0 0 H 12 V 9 H 0 Z"))).toEqual([]);
});
