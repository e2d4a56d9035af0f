import fc from "fast-check";
import { expect, test } from "vitest";
import { PIECE_AREA } from "../../../functions/curves/PIECE_AREA.ts";
import { TURN } from "../../../functions/curves/TURN.ts";
import { edgeLength, readPiece } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

const skirt = "M 0 12 A 12 12 0 0 0 12 0 L 70 0 A 70 70 0 0 1 0 70 Z M 10 10 L 45 45";
const turn = (piece: string, degrees: number) => String(run(TURN, [piece, degrees], { unit: "cm" }));

test("a turned piece keeps area and edges, and turned back lies as before", () => {
  const sewn = readPiece(skirt);
  const area = run(PIECE_AREA, [skirt], { unit: "cm" }) as number;
  fc.assert(
    fc.property(fc.integer({ min: -360, max: 360 }), (degrees) => {
      const turned = turn(skirt, degrees);
      expect(run(PIECE_AREA, [turned], { unit: "cm" })).toBeCloseTo(area, 6);
      readPiece(turn(turned, -degrees)).edges.forEach((edge, i) => {
        expect(edgeLength(edge)).toBeCloseTo(edgeLength(sewn.edges[i]!), 7);
        expect(edge.at(-1)!.to[0]).toBeCloseTo(sewn.edges[i]!.at(-1)!.to[0], 7);
        expect(edge.at(-1)!.to[1]).toBeCloseTo(sewn.edges[i]!.at(-1)!.to[1], 7);
      });
    }),
    { seed: 45, numRuns: 40 },
  );
});

test("by 90 the grain line, that ran down, runs to the left", () => {
  const [mark] = readPiece(turn("M 0 0 L 8 0 L 8 20 L 0 20 Z M 4 2 L 4 18", 90)).marks;
  const { from, to } = mark!.line[0]!;
  expect(to[1] - from[1]).toBeCloseTo(0, 9);
  expect(to[0] - from[0]).toBeCloseTo(-16, 9);
});
