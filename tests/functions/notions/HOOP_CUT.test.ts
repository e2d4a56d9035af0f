import { expect, test } from "vitest";
import { HOOP_CUT } from "../../../functions/notions/HOOP_CUT.ts";
import { explain } from "../../../functions/run.ts";

test("closed with its overlap the steel is a circle of the wanted girth", () => {
  const { answer, steps } = explain(HOOP_CUT, [300, 6], { unit: "cm" });
  const across = steps.find(({ name }) => name === "across")!.value as number;
  expect((answer as number) - 6).toBeCloseTo(Math.PI * across, 9);
});

test("it warns of flame", () => {
  expect(HOOP_CUT.cautions).toMatch(/fire code/);
});
