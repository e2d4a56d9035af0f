import { expect, test } from "vitest";
import { STRIP_YARDAGE } from "../../../functions/cloth/STRIP_YARDAGE.ts";
import { explain, isRefused, run } from "../../../functions/run.ts";

const cm = { unit: "cm" } as const;
const strips = (args: number[]) => {
  const { answer, steps } = explain(STRIP_YARDAGE, args, cm);
  return [steps.find(({ name }) => name === "breadths")!.value, answer];
};

test("a pleated strip of 236 cm from cloth of 90 cm is three strips, 45 cm of cloth", () => {
  // NIMI, Dress Making Trade Practical, p. 203 ex. 1c (printed).
  expect(strips([236, 15, 90, 2])).toEqual([3, 45]);
});

test("a frill of 9.40 m from cloth of 1.19 m takes 76 cm", () => {
  // NIMI, p. 212 ex. 2 (rule printed, answer worked): depth 7.5 and 2 cm.
  expect(strips([940, 9.5, 119])).toEqual([8, 76]);
});

test("a hem of four yards takes four breadths of 36 in cloth, five yards in lengths of 45 in", () => {
  // Ingalls, Text-Book on Domestic Art, 1911, kilted skirt (inputs printed, answer worked).
  expect(run(STRIP_YARDAGE, [144, 45, 36], { unit: "in" })).toBe(180);
});

test("ruffles one and a half times round two legs are as many strips as fill that length", () => {
  // Baldt, Clothing for Women, 1916, quantity of material (rule): 1.5 × leg × 2 over the width, times depth.
  expect(strips([1.5 * 50 * 2, 12, 70])).toEqual([3, 36]);
});

test("joins that eat the whole breadth are refused", () => {
  const answer = run(STRIP_YARDAGE, [100, 10, 15, 15], cm);
  expect(isRefused(answer) && answer.refusal).toBe(
    "seam must be less than the cloth width of 15 cm, not 15 cm",
  );
});
