import fc from "fast-check";
import { expect, test } from "vitest";
import { ARC_LENGTH } from "../../../functions/curves/ARC_LENGTH.ts";
import { EDGE_LENGTH } from "../../../functions/curves/EDGE_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const arc = (chord: number, rise: number) => run(ARC_LENGTH, [chord, rise], { unit: "cm" }) as number;

test("it is as long as the arc drawn through its ends and its highest point", () => {
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 500 }), fc.integer({ min: 5, max: 300 }), (chord, rise) => {
      const radius = (chord * chord) / (8 * rise) + rise / 2;
      const piece = `M 0 0 A ${radius} ${radius} 0 0 1 ${chord / 2} ${-rise} ${radius} ${radius} 0 0 1 ${chord} 0 Z`;
      expect(arc(chord, rise)).toBeCloseTo(run(EDGE_LENGTH, [piece, 1], { unit: "cm" }) as number, 5);
    }),
    { seed: 314 },
  );
});

test("a flat arc is longer than its chord by 8·rise²/(3·chord)", () => {
  // The first term of the series, as handbooks give it (from memory).
  expect(arc(100, 1) - 100).toBeCloseTo(8 / 300, 5);
});
