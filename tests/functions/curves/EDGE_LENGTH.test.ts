import { Bezier } from "bezier-js";
import { expect, test } from "vitest";
import { EDGE_LENGTH } from "../../../functions/curves/EDGE_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const edge = (piece: string, number: number) => run(EDGE_LENGTH, [piece, number], { unit: "cm" });
const armhole = "M 0 0 L 12 0 C 9 4 10 10 14 12 L 14 30 L 0 30 Z";

test("an armhole is as long as an independent library measures its curve", () => {
  expect(edge(armhole, 2)).toBeCloseTo(new Bezier(12, 0, 9, 4, 10, 10, 14, 12).length(), 6);
});

test("the edges together are the outline, the one that Z draws included", () => {
  const lengths = [1, 2, 3, 4, 5].map((number) => edge(armhole, number) as number);
  expect(lengths[0]! + lengths[2]! + lengths[3]! + lengths[4]!).toBeCloseTo(12 + 18 + 14 + 30, 9);
});

test("an edge the piece does not have is refused with the number it has", () => {
  expect(edge(armhole, 6)).toMatchObject({
    refusal: "edge must be at most 5, because the piece has 5 edges, not 6",
  });
  expect(edge(armhole, 1.5)).toMatchObject({ refusal: "edge must be a whole number, not 1.5" });
});
