import { expect, test } from "vitest";
import { MEASURES, type Measure, SURVEYS } from "../../../functions/survey/body-data.ts";
import { expectation, measureNamed, ORDERS, percentile } from "../../../functions/survey/survey.ts";

// Figures worked from the public files of ANSUR II (NATICK/TR-15/007) by a numerical library,
// apart from the correlations that functions/ keeps: least squares on the people themselves.

test("the survey's figures are the published ones", () => {
  // AN-02 and AN-04: mean, deviation and correlation worked from the public file itself.
  expect(SURVEYS.female.people + SURVEYS.male.people).toBe(6068);
  expect(SURVEYS.female.summaries.stature.slice(0, 2)).toEqual([1628.4733, 64.1995]);
  const hips = MEASURES.indexOf("hip girth");
  expect(SURVEYS.female.correlations[MEASURES.indexOf("thigh girth") - 1]![hips]).toBe(0.93956);
});

test("with one other measurement it is the line of least squares through the people", () => {
  for (const [data, measure, other, slope, intercept, spread] of [
    ["female", "thigh girth", "hip girth", 0.690918, -89.4496, 19.1137],
    ["female", "back waist length", "stature", 0.207049, 88.2285, 22.8024],
    ["female", "wrist girth", "neck girth", 0.246586, 73.4697, 6.2312],
    ["male", "arm length", "stature", 0.361147, -41.1268, 18.3583],
    ["male", "bust girth", "waist girth", 0.693474, 406.4396, 40.5523],
  ] as const) {
    for (const figure of [0.8, 1, 1.2].map((times) => times * SURVEYS[data].summaries[other][0]!)) {
      const { likely, least, most } = expectation(
        SURVEYS[data],
        measure,
        new Map([[other as Measure, figure]]),
      );
      expect(Math.abs(likely - (slope * figure + intercept)), measure).toBeLessThan(0.02);
      expect(Math.abs((most - least) / 6 - spread), measure).toBeLessThan(0.002);
    }
  }
});

test("with all thirteen others it is the least squares plane through the people", () => {
  const planes = [
    ["female", "waist girth", -216.8887, 36.4835, {
      "hip girth": 0.554359, "bust girth": 0.452691, "neck girth": 0.315817, "upper arm girth": 0.081811,
      "wrist girth": -0.061271, "back waist length": 0.786806, "shoulder length": -0.042873, "arm length": 0.03951,
      "waist height": -0.76721, "hip height": 0.755667, "cervical height": -0.068512, stature: -0.079825,
      "thigh girth": -0.064054 }],
    ["male", "cervical height", -52.2412, 6.9222, {
      "waist girth": 0.035055, "hip girth": -0.017527, "bust girth": -0.015197, "neck girth": 0.055613,
      "upper arm girth": 0.001168, "wrist girth": -0.024859, "back waist length": 0.378525, "shoulder length": 0.045462,
      "arm length": 0.028052, "waist height": 0.45818, "hip height": 0.024672, stature: 0.478098,
      "thigh girth": 0.004037 }],
  ] as const; // biome-ignore format: a table
  for (const [data, measure, intercept, spread, weights] of planes) {
    const known = new Map<Measure, number>();
    let wanted: number = intercept;
    Object.entries(weights).forEach(([other, weight], i) => {
      const [mean, sd] = SURVEYS[data].summaries[other as Measure] as [number, number];
      const figure = mean + sd * Math.sin(2.3 * i); // some body or other within two deviations
      known.set(other as Measure, figure);
      wanted += weight * figure;
    });
    const { likely, least, most } = expectation(SURVEYS[data], measure, known);
    // Correlations are kept to five decimals, which can shift the plane by a few tenths of a millimetre.
    expect(Math.abs(likely - wanted), measure).toBeLessThan(1);
    expect(Math.abs((most - least) / 6 - spread), measure).toBeLessThan(0.005 * spread);
  }
});

test("with nothing to go by the median is the likeliest, and everybody measured is inside", () => {
  const { likely, least, most, others } = expectation(
    SURVEYS.female,
    "calf girth",
    new Map([["stature", 1600]]),
  );
  expect([likely, others]).toEqual([372, 0]);
  expect(least).toBeLessThan(282);
  expect(most).toBeGreaterThan(482);
});

test("every measure is found by its name, whatever the capitals", () => {
  for (const measure of MEASURES) expect(measureNamed(` ${measure.toUpperCase()}  `)).toBe(measure);
  expect(measureNamed("cervical height (back)")).toBe("cervical height");
  expect(measureNamed("hip  girth")).toBe("hip girth");
  expect(measureNamed("elbow girth")).toBeNull();
});

test("the orders hold at every percentile of women and of men", () => {
  for (const survey of [SURVEYS.female, SURVEYS.male]) {
    for (const [lesser, greater] of ORDERS) {
      for (const share of [0.01, 0.3, 0.99]) {
        expect(percentile(survey, lesser, share)).toBeLessThan(percentile(survey, greater, share));
      }
    }
  }
});
