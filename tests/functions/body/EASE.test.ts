import { expect, test } from "vitest";
import { EASE } from "../../../functions/body/EASE.ts";
import { GIRTH_OVER } from "../../../functions/body/GIRTH_OVER.ts";
import { explain, run } from "../../../functions/run.ts";

test("a garment that stands off by half an inch all round has the ease of a layer so thick", () => {
  const outside = run(GIRTH_OVER, [36, 0.5], { unit: "in" }) as number;
  const { answer, steps } = explain(EASE, [36, outside], { unit: "in" });
  expect(answer).toBeCloseTo(Math.PI, 12);
  expect(steps.find((one) => one.name === "stands_off")?.value).toBeCloseTo(0.5, 12);
});

test("an empty girth is not taken for 0", () => {
  expect(run(EASE, [null, 38], { unit: "in" })).toMatchObject({
    refusal: "body is empty: a length is needed there",
  });
});
