import { expect, test } from "vitest";
import { GORE } from "../../../functions/flare/GORE.ts";
import { GORE_EDGE } from "../../../functions/flare/GORE_EDGE.ts";
import { edgeLength } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { figure, step } = calls(GORE_EDGE, "in");

test("nine inches out in forty is a side of forty-one, an inch longer than the middle", () => {
  // Pythagoras: 9-40-41.
  expect(figure(4, 22, 40)).toBe(41);
  expect(step("longer", 4, 22, 40)).toBe(1);
  expect(figure(22, 4, 40)).toBe(41);
});

test("it is the side of the piece that GORE draws", () => {
  const side = calls(GORE, "in").piece(6, 19, 33, null, null, "straight").edges[1]!;
  expect(figure(6, 19, 33)).toBeCloseTo(edgeLength(side), 12);
});
