import { expect, test } from "vitest";
import { MEASURE_GUESS } from "../../../functions/body/MEASURE_GUESS.ts";
import { type Argument, explain, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";

const guess = (
  term: string,
  terms: (string | null)[],
  values: (number | null)[],
  data: string | null = null,
) => run(MEASURE_GUESS, [term, terms, values, data], { unit: "cm" }) as number;

test("it lies on the survey's own line of least squares", () => {
  // ANSUR II, men: back waist length = 0.216461 stature + 97.4599 mm, worked from the public file.
  expect(guess("back waist length", ["stature"], [180], "male")).toBeCloseTo(
    (0.216461 * 1800 + 97.4599) / 10,
    2,
  );
});

test("its own row and rows of other things are not looked at", () => {
  const known = guess("thigh girth", ["hip girth"], [104], "female");
  expect(
    guess("thigh girth", ["thigh girth", "hip girth", "shoe", null], [90, 104, 25, null], "female"),
  ).toBe(known);
});

test("without knowing whose, it is the mean of what women's and men's figures give", () => {
  const [f, m] = ["female", "male"].map((data) => guess("neck girth", ["bust girth"], [100], data));
  expect(guess("neck girth", ["bust girth"], [100])).toBeCloseTo((f! + m!) / 2, 12);
});

test("the more is known, the narrower the range", () => {
  const width = (terms: string[], values: number[]) => {
    const { steps } = explain(MEASURE_GUESS, ["waist height", terms, values, "female"], { unit: "cm" });
    const at = (name: string) => steps.find((one) => one.name === name)!.value as number;
    return at("most") - at("least");
  };
  const widths = [
    width(["stature"], [163]),
    width(["stature", "hip height"], [163, 83]),
    width(["stature", "hip height", "back waist length"], [163, 83, 42]),
  ];
  expect(widths).toEqual([...widths].sort((a, b) => b - a));
  expect(widths[2]).toBeLessThan(0.8 * widths[0]!);
});

test("a misspelt measurement is refused with the one that was meant, and one the survey has not is passed over", () => {
  expect(guess("thigh girth", ["hip girth", "waist girht"], [104, 80])).toMatchObject({
    refusal: 'terms, number 2, "waist girht", is not a measurement the survey has; is waist girth meant?',
  });
  expect(guess("thihg girth", ["hip girth"], [104])).toMatchObject({
    refusal:
      'term must be a measurement the survey has, such as waist girth, back waist length or stature, not "thihg girth"; is thigh girth meant?',
  });
  const alone = guess("thigh girth", ["hip girth"], [104]);
  for (const other of [
    "front waist length",
    "knee girth",
    "shoe",
    "waist to hip, along the side",
    "arm girth",
  ])
    expect(guess("thigh girth", ["hip girth", other], [104, 40]), other).toBe(alone);
  expect(run(MEASURE_GUESS, ["thigh girth", ["hip girth"], [104], "femal"], { unit: "cm" })).toMatchObject({
    refusal: 'data must be "female", "male" or "either", not "femal"; is "female" meant?',
  });
});

test("a guess that rests on no other measurement says so beside the answer", () => {
  const look = (...args: Argument[]) => toLookAt(MEASURE_GUESS, args, { unit: "cm" });
  expect(look("thigh girth", ["hip girth"], [100], "female")).toEqual([]);
  expect(look("thigh girth", ["thigh girth"], [60], "female")).toEqual([
    "MEASURE_GUESS: no other measurement of the wearer is given, so this is the middle one of all people measured, whatever the wearer's size",
  ]);
});
