import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { allowed } from "../../functions/help.ts";
import { CASING_DEPTH } from "../../functions/notions/CASING_DEPTH.ts";
import { calls } from "./calls.ts";

const pairs = [...catalogue.values()].flatMap(({ name, takes }) =>
  Object.entries(takes).flatMap(([argument, { kind, otherwise }]) =>
    kind === "length" && otherwise !== undefined && otherwise !== null && otherwise !== 0
      ? [{ where: `${name}, ${argument}`, otherwise }]
      : [],
  ),
);

test("a length that may be left out is a round figure on either tape, and nearly as long by the one as by the other", () => {
  expect(pairs.length).toBeGreaterThan(15);
  for (const { where, otherwise } of pairs) {
    if (typeof otherwise !== "object") throw new Error(`${where} is ${otherwise} in every unit`);
    // Sixteenths of an inch, half millimetres.
    expect((otherwise.in * 16) % 1, where).toBe(0);
    expect(Math.abs(otherwise.cm * 20 - Math.round(otherwise.cm * 20)), where).toBeLessThan(1e-9);
    expect(Math.abs((otherwise.in * 2.54) / otherwise.cm - 1), where).toBeLessThan(0.15);
  }
});

test("a casing for 2 cm elastic is 2.9 cm deep in a metric book, for 3/4 in elastic 1 1/8 in the other", () => {
  expect(calls(CASING_DEPTH, "cm").figure(2)).toBeCloseTo(2.9, 12);
  expect(calls(CASING_DEPTH, "in").figure(0.75)).toBe(1.125);
  expect(allowed(CASING_DEPTH.takes.ease!, "cm")).toMatch(/, 0\.3 cm when left out$/);
  expect(allowed(CASING_DEPTH.takes.ease!, "in")).toMatch(/, 1\/8 in when left out$/);
});
