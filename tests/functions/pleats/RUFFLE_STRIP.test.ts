import { expect, test } from "vitest";
import { edgeLength, pieceArea, pieceBounds } from "../../../functions/pieces/piece.ts";
import { PANELS } from "../../../functions/pleats/PANELS.ts";
import { RUFFLE_STRIP } from "../../../functions/pleats/RUFFLE_STRIP.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(RUFFLE_STRIP, "cm");

test("a frill of 9.40 m from cloth of 1.19 m takes 76 cm of it in eight strips", () => {
  // GA-03, rule printed, answer worked: NIMI, Dress Making Trade Practical, p. 212 ex. 2, 7.5 + 2 cm deep.
  expect(step("strips", 470, 2, 9.5, 119)).toBe(8);
  expect(step("cloth", 470, 2, 9.5, 119)).toBeCloseTo(76, 9);
});

test("ruffles of two legs: half as full again, by the width of the cloth, times the depth", () => {
  // YA-12, rule read: Baldt, Clothing for Women, 1916, Quantity of material; figures ours.
  const inches = calls(RUFFLE_STRIP, "in");
  expect(inches.step("cloth", 2 * 20, 1.5, 5, 36)).toBe(Math.ceil((1.5 * 20 * 2) / 36) * 5);
});

test("strips joined end to end are the flat ruffle, and each fits across the cloth with its joins", () => {
  for (const [edge, ratio, cloth, seam] of [[90, 1.5, 36, 1], [470, 2, 119, 0], [233, 7 / 3, 140, 2.4]] as const) {
    const strip = piece(edge, ratio, 12, cloth, seam);
    const count = step("strips", edge, ratio, 12, cloth, seam);
    expect(count).toBe(calls(PANELS, "cm").figure(edge * ratio, cloth, seam));
    expect(count * (edgeLength(strip.edges[0]!) - seam)).toBeCloseTo(edge * ratio, 9);
    expect(edgeLength(strip.edges[0]!)).toBeLessThan(cloth * (1 + 1e-9));
  }
}); // biome-ignore format: a table

test("the strip is a rectangle, its gathered edge on top", () => {
  const strip = piece(90, 1.5, 6, 36, 1);
  expect(pieceBounds(strip)).toEqual({ left: 0, low: 0, right: 34.75, high: 6 });
  expect(pieceArea(strip)).toBeCloseTo(34.75 * 6, 12);
  expect(strip.edges[0]![0]!.from[1]).toBe(strip.edges[0]![0]!.to[1]);
});

test("joins that eat the whole strip and a ruffle shorter than its edge are refused", () => {
  expect(refusal(90, 1.5, 6, 15, 15)).toBe("seam must be less than the cloth width of 15 cm, not 15 cm");
  expect(refusal(90, 0.5, 6, 36)).toBe("ratio must be at least 1, not 0.5");
});
