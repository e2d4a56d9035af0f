import { expect, test } from "vitest";
import { CHANNEL_WIDTH } from "../../../functions/notions/CHANNEL_WIDTH.ts";
import { run } from "../../../functions/run.ts";

const channel = (...args: number[]) => run(CHANNEL_WIDTH, args, { unit: "cm" }) as number;

test("the two layers between the stitching go just round the bone", () => {
  expect(2 * channel(0.7, 0.12)).toBeCloseTo(2 * 0.7 + 2 * 0.12, 12);
});

test("a round hoop's channel is never less than half its girth, and its thickness is refused", () => {
  const round = (...args: (number | null)[]) => run(CHANNEL_WIDTH, [...args, "round"], { unit: "cm" });
  expect(round(0.5, null, null)).toBeCloseTo((Math.PI / 2) * 0.5, 12);
  expect(round(2.5, null, 0.8)).toBeCloseTo(4.727, 3);
  expect(round(0.5, 0.5, 0)).toMatchObject({
    refusal: "thickness must be left out for a round bone, which needs only its width",
  });
});
