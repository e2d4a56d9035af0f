import { expect, test } from "vitest";
import { EYELET_COUNT } from "../../functions/notions/EYELET_COUNT.ts";
import { explain } from "../../functions/work.ts";

test("a usual length is told in words when it was taken, and as the argument when one was given", () => {
  const end = (...args: number[]) =>
    explain(EYELET_COUNT, args, { unit: "in" }).steps.find(({ name }) => name === "end");
  expect(end(10, 1)).toMatchObject({ value: 0.5, formula: false });
  expect(end(10, 1, 0.75)).toMatchObject({ value: 0.75, formula: true, rule: "inset" });
});
