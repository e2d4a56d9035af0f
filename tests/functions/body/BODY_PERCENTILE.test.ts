import { expect, test } from "vitest";
import { BODY_PERCENTILE } from "../../../functions/body/BODY_PERCENTILE.ts";
import { run } from "../../../functions/run.ts";
import { SURVEYS } from "../../../functions/survey/body-data.ts";

const cm = (...args: (string | number)[]) => run(BODY_PERCENTILE, args, { unit: "cm" }) as number;

test("the waists of the women measured are as the survey's files say", () => {
  // ANSUR II public release, worked from its file of 1986 women: P5 710, P50 852, P95 1040 mm.
  expect(cm("waist girth", 0.05, "female")).toBeCloseTo(71, 10);
  expect(cm("Waist Girth", 0.5, "female")).toBeCloseTo(85.2, 10);
  expect(cm("waist", 0.95, "female")).toBeCloseTo(104, 10);
});

test("a bell curve through mean and deviation would miss the large waists by more than a centimetre", () => {
  const [mean, sd] = SURVEYS.female.summaries["waist girth"] as [number, number];
  expect(cm("waist girth", 0.95, "female") - (mean + 1.644854 * sd) / 10).toBeGreaterThan(1);
});

test("more people are below a greater figure", () => {
  for (const term of ["stature", "neck girth", "ankle girth", "inside leg length"]) {
    const figures = [0.01, 0.03, 0.2, 0.26, 0.5, 0.77, 0.96, 0.99].map((share) => cm(term, share, "male"));
    expect(figures).toEqual([...figures].sort((a, b) => a - b));
    expect(new Set(figures).size).toBe(figures.length);
  }
});

test("a measurement the survey has not is refused with some that it has", () => {
  expect(run(BODY_PERCENTILE, ["elbow girth", 0.5, "male"], { unit: "cm" })).toMatchObject({
    refusal:
      'term must be a measurement the survey has, such as waist girth, back waist length or stature, not "elbow girth"',
  });
});
