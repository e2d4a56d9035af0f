import { expect, test } from "vitest";
import { PIECE_LENGTH } from "../../../functions/curves/PIECE_LENGTH.ts";
import { PIECE_WIDTH } from "../../../functions/curves/PIECE_WIDTH.ts";
import { TURN } from "../../../functions/curves/TURN.ts";
import { run } from "../../../functions/run.ts";

const bodice = "M 0 8 C 4 8 8 5 8 0 L 20 4 C 17 12 19 20 26 22 L 24 45 L 0 47 Z";

test("what is long along the grain is wide across it after a quarter turn", () => {
  const turned = String(run(TURN, [bodice, 90], { unit: "cm" }));
  expect(run(PIECE_LENGTH, [bodice], { unit: "cm" })).toBeCloseTo(47, 9);
  expect(run(PIECE_WIDTH, [turned], { unit: "cm" })).toBeCloseTo(47, 9);
});
