import { expect, test } from "vitest";
import { FULLNESS_GUIDE } from "../../../functions/cloth/FULLNESS_GUIDE.ts";
import { run } from "../../../functions/run.ts";

const flat = (use: string, finished: number) =>
  finished * (run(FULLNESS_GUIDE, [use], { unit: "in" }) as number);

test("the handbooks' own figures come out", () => {
  // NIMI p. 212 a (printed): 1.80 m of frill at a density of one third take 5.4 m.
  expect(flat("frill", 1.8)).toBeCloseTo(5.4, 9);
  // Stephenson, Cutting and Draping, 1905 (rules printed): french ruffle 2 1/3, curtains and light goods 2, medium 1.5.
  expect(flat("french ruffle", 36)).toBeCloseTo(84, 9);
  expect(flat("curtain", 40)).toBe(80);
  expect([flat("light valance", 1), flat("medium valance", 1)]).toEqual([2, 1.5]);
  // Kinne & Cooley, Clothing and Health, 1916: a ruffle for a skirt of 2 1/2 yd (rule printed).
  expect(flat("ruffle", 2.5)).toBe(3.75);
  // Fryer, Mary Frances Sewing Book, 1913, no. 25: lace put on full (rule printed).
  expect(flat("lace", 24)).toBe(36);
  // Ladies' Work-Table Book, 1844: crimped frill (rule printed).
  expect(flat("neck frill", 30)).toBe(60);
  // University of Wisconsin textbook page: smocking draws up to about a fourth (rule printed).
  expect(flat("smocking", 12)).toBe(48);
  // Archer, Needlecraft, 1911: three times the brim (printed).
  expect(flat("hat facing", 1)).toBe(3);
});

test("a gathered skirt goes 3 to 3 1/2 yd round, whatever the waist, and a ratio alone is refused", () => {
  // Common practice; twice a waist of 27 in would be a yard and a half.
  for (const waist of [22, 27, 40]) {
    const round = waist * (run(FULLNESS_GUIDE, ["gathered skirt", waist], { unit: "in" }) as number);
    expect(round).toBeGreaterThanOrEqual(3 * 36);
    expect(round).toBeLessThanOrEqual(3.5 * 36);
  }
  expect(70 * (run(FULLNESS_GUIDE, ["gathered skirt", 70], { unit: "cm" }) as number)).toBeCloseTo(300, 9);
  expect(run(FULLNESS_GUIDE, ["gathered skirt"], { unit: "in" })).toMatchObject({
    refusal:
      "finished must be given for a gathered skirt: it goes 3 to 3 1/2 yd round the hem, whatever the waist",
  });
});
