import { expect, test } from "vitest";
import { CHANNEL_WIDTH } from "../../../functions/notions/CHANNEL_WIDTH.ts";
import { run } from "../../../functions/work.ts";

const channel = (...args: number[]) => run(CHANNEL_WIDTH, args, { unit: "cm" }) as number;

test("the two layers between the stitching go just round the bone", () => {
  expect(2 * channel(0.7, 0.12)).toBeCloseTo(2 * 0.7 + 2 * 0.12, 12);
});

test("round cane given as its diameter twice has room: its half girth is π/2 of the diameter", () => {
  expect(channel(0.5, 0.5)).toBeGreaterThan((Math.PI / 2) * 0.5);
});
