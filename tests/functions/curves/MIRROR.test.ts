import { expect, test } from "vitest";
import { MIRROR } from "../../../functions/curves/MIRROR.ts";
import { flattenPiece, readPiece, writePiece } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

const front = "M 0 8 C 4 8 8 5 8 0 L 20 4 C 17 12 19 20 26 22 L 24 45 L 0 47 Z M 12 30 L 14 20 L 16 30";
const mirror = (piece: string) => String(run(MIRROR, [piece], { unit: "in" }));

test("every point of the outline and of the marks changes sides", () => {
  const [one, other] = [readPiece(front), readPiece(mirror(front))];
  const points = (piece: typeof one) => [
    ...flattenPiece(piece, 0.01),
    ...piece.marks.flatMap(({ line }) => line.map(({ to }) => to)),
  ];
  expect(points(other)).toEqual(points(one).map(([x, y]) => [expect.closeTo(-x, 9), expect.closeTo(y, 9)]));
});

test("the other one of the other one is the first", () => {
  expect(readPiece(mirror(mirror(front)))).toEqual(readPiece(writePiece(readPiece(front))));
});
