import { expect, test } from "vitest";
import { DART_LEG } from "../../../functions/curves/DART_LEG.ts";
import { WITH_DART } from "../../../functions/curves/WITH_DART.ts";
import { edgeLength, readPiece } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

test("both legs of a dart drawn on a straight edge are as long as it says", () => {
  const drawn = String(run(WITH_DART, ["M 0 0 L 30 0 L 30 40 L 0 40 Z", 1, 12, 3, 10], { unit: "cm" }));
  const leg = run(DART_LEG, [3, 10], { unit: "cm" }) as number;
  const [left, right, fold] = readPiece(drawn).marks.map(({ line }) => edgeLength(line));
  expect(left).toBeCloseTo(leg, 12);
  expect(right).toBeCloseTo(leg, 12);
  expect(fold).toBeCloseTo(10, 12);
});
