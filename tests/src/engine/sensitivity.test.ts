import { expect, test } from "vitest";
import { sensitivity } from "../../../src/engine/sensitivity.ts";
import { finish } from "../../../src/engine/sweep.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { watch } from "./ask.ts";
import { bookOf } from "./whatif-books.ts";

const effects = (book: ReturnType<typeof bookOf>, name: string) =>
  finish(sensitivity(book, layDesk, watch(book, name)));

test("the measurement that weighs most comes first, with what a quarter inch of it does", () => {
  const book = bookOf({
    waist: "28 in",
    hip: "40 in",
    neck: "15 in",
    pleats: "6",
    collar: "=neck+1",
    cloth: "=hip*2.5+waist/2+PLEAT_ALLOWANCE(pleats;IN(1))",
  });
  const list = effects(book, "cloth");
  // d(cloth)/d(hip) = 2.5 and d(cloth)/d(waist) = 0.5; the neck and the pleats are no lengths under it.
  expect(list.map(({ measurement, longer, shorter }) => [measurement.label, longer, shorter])).toEqual([
    ["hip", 0.625, -0.625],
    ["waist", 0.125, -0.125],
  ]);
});

test("a measuring error that tips over a jump weighs what the jump weighs", () => {
  const book = bookOf({ hip: "44 7/8", waist: "28 in", cloth: "=ROUNDUP(hip/45;0)*30+waist" });
  const [first, second] = effects(book, "cloth");
  expect(first).toMatchObject({ longer: 30, shorter: 0, weight: 30 });
  expect(first!.measurement.label).toBe("hip");
  expect(second).toMatchObject({ longer: 0.25, shorter: -0.25 });
});

test("a measuring error that leaves no answer at all comes before everything, with its sentence", () => {
  const book = bookOf({
    waist: "28 in",
    hem: "28 1/8",
    far: "400 in",
    spread: "=SPREAD_PER_GAP(waist;hem;5)+far",
  });
  const [first] = effects(book, "spread");
  expect(first!.sentence).toMatch(/hem must be at least as long as top/);
  expect(first!.weight).toBe(Number.POSITIVE_INFINITY);
});

test("in a book of centimetres the measuring error is 5 mm", () => {
  const book = bookOf({ hip: "100 cm", cloth: "=hip*2" }, "cm");
  expect(effects(book, "cloth")[0]).toMatchObject({ longer: 1, shorter: -1 });
});
