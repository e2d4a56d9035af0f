import { expect, test } from "vitest";
import { EASE_CHECK } from "../../../functions/body/EASE_CHECK.ts";
import { run } from "../../../functions/run.ts";

test("the least ease is the lower end of what the costume text prints", () => {
  // Central Washington University, costume text, ch. 16, printed: bust 1 1/2 to 2 in, waist of
  // dresses 3/4 to 1, of skirts and trousers 1/2 to 3/4, hip 2 to 2 3/4, trouser seat 1 1/2 to 2,
  // thigh 1 at least, fitted shirt chest 1 1/2 to 2 1/2.
  for (const [place, least, metric] of [
    ["bust", 1.5, 4],
    ["dress waist", 0.75, 2],
    ["skirt waist", 0.5, 1.5],
    ["hip", 2, 5],
    ["seat", 1.5, 4],
    ["thigh", 1, 2.5],
    ["shirt chest", 1.5, 4],
  ] as const) {
    // biome-ignore format: a table
    expect(run(EASE_CHECK, [place, 36, 36 + least], { unit: "in" })).toBe("ok");
    expect(run(EASE_CHECK, [place, 36, 36 + least - 0.125], { unit: "in" })).toMatch(/^check: ease of /);
    expect(run(EASE_CHECK, [place, 90, 90 + metric], { unit: "cm" })).toBe("ok");
    expect(run(EASE_CHECK, [place, 90, 90 + metric - 0.1], { unit: "cm" })).toMatch(/^check: ease of /);
  }
});

test("a garment smaller than the body is asked about, and the body is not blamed", () => {
  expect(run(EASE_CHECK, ["dress waist", 30, 27.5], { unit: "in" })).toBe(
    "check: the garment is 2 1/2 in smaller than the body at the dress waist: is it meant to draw in, or to stretch?",
  );
});

test("a bodice fitted over stays may have no ease or half an inch less than none, and no more less", () => {
  const over = (garment: number) => run(EASE_CHECK, ["bodice over stays", 34, garment], { unit: "in" });
  // Common practice; measured over the stays.
  expect([over(35), over(34), over(33.5)]).toEqual(["ok", "ok", "ok"]);
  expect(over(33)).toBe(
    "check: the garment is 1 in smaller than the body over the stays, more than the usual 1/2 in",
  );
});
