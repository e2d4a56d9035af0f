import { expect, test } from "vitest";
import { PIECE_AREA } from "../../../functions/curves/PIECE_AREA.ts";
import { run } from "../../../functions/run.ts";

const area = (piece: string) => run(PIECE_AREA, [piece], { unit: "cm" }) as number;

test("a ring sector has half the sum of its arcs times its depth", () => {
  // CI-10: 72 and 112 round, 12 deep is 1104 (computed). Laid flat: radius 72·12/40 = 21.6, angle 40/12.
  const angle = 40 / 12;
  const at = (r: number, turn: number) => `${r * Math.cos(turn)} ${r * Math.sin(turn)}`;
  const half = (r: number, from: number, to: number, way: 0 | 1) =>
    `A ${r} ${r} 0 0 ${way} ${at(r, (from + to) / 2)} ${r} ${r} 0 0 ${way} ${at(r, to)}`;
  const sector = `M ${at(21.6, 0)} ${half(21.6, 0, angle, 1)} L ${at(33.6, angle)} ${half(33.6, angle, 0, 0)} Z`;
  expect(area(sector)).toBeCloseTo(1104, 8);
});

test("the area under a parabola is a third of its box", () => {
  // Archimedes: y = x² from 0 to 6 cuts 6·36/3 off below; the piece is what lies above.
  expect(area("M 0 0 Q 3 0 6 36 L 0 36 Z")).toBeCloseTo((2 / 3) * 6 * 36, 9);
});
