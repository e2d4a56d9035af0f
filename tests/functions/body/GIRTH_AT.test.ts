import { expect, test } from "vitest";
import { GIRTH_AT } from "../../../functions/body/GIRTH_AT.ts";
import { run } from "../../../functions/run.ts";

const at = (...args: number[]) => run(GIRTH_AT, args, { unit: "cm" });

test("at the two levels it is the two girths, and halfway between them their mean", () => {
  expect(at(70, 96, 20, 0)).toBe(70);
  expect(at(70, 96, 20, 20)).toBeCloseTo(96, 12);
  expect(at(70, 96, 20, 10)).toBeCloseTo((70 + 96) / 2, 12);
});

test("it narrows above the waist and is refused where the cone ends", () => {
  // 1.3 cm a centimetre: similar triangles end it 70/1.3 = 53.846 above the waist.
  expect(at(70, 96, 20, -10)).toBeCloseTo(57, 12);
  expect(at(70, 96, 20, -60)).toMatchObject({
    refusal:
      "level must be more than -53.8 cm, where a line from waist 70 cm to hip 96 cm reaches 0, not -60 cm",
  });
});
