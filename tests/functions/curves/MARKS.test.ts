import fc from "fast-check";
import { expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { MARKS } from "../../../functions/curves/MARKS.ts";
import { readMarks } from "../../../functions/marks-text.ts";
import { type Argument, isRefused, run } from "../../../functions/run.ts";
import { setting } from "../laws.ts";

const ask = (name: string, args: readonly Argument[], unit: "in" | "cm" = "in") =>
  run(catalogue.get(name)!, args, setting(unit));
const placesOf = (text: unknown, unit: "in" | "cm" = "in") => readMarks(String(text), "marks", { unit });

test("a list is read as the places it was made of, in whichever unit", () => {
  const places = fc.uniqueArray(fc.double({ min: 0, max: 900, noNaN: true }), {
    maxLength: 12,
    selector: (one) => one.toFixed(6),
  });
  fc.assert(
    fc.property(places, (list) => {
      const text = ask("MARKS", [list], "cm");
      const sorted = list.toSorted((a, b) => a - b);
      const read = placesOf(text, "cm");
      expect(read.length).toBe(list.length);
      read.forEach((one, i) => {
        expect(Math.abs(one - sorted[i]!)).toBeLessThan(1e-9);
      });
      placesOf(text, "in").forEach((one, i) => {
        expect(Math.abs(one * 2.54 - sorted[i]!)).toBeLessThan(1e-9);
      });
    }),
    { seed: 4, numRuns: 60 },
  );
});

// Independent: the functions that give one mark at a time, which have tests of their own.
test.each([
  ["BUTTON_MARK", [20, 5, 0.5, 3.5], 5],
  ["EYELET_MARK", [13, 9, 0.5, "lower"], 9],
  ["PLEAT_MARK", [30, 4, 1, "box", "all"], 16],
  ["PLEAT_MARK", [30, 4, 1, "knife", "placement"], 4],
  ["TUCK_MARK", [0.375, 0.5, 1, "crease"], 6],
] as const)("%sS gives all that %s gives one by one", (name, args, many) => {
  const one = Array.from({ length: many }, (_, i) => ask(name, [i + 1, ...args]) as number);
  const all = ask(`${name}S`, name === "TUCK_MARK" ? [many, ...args] : [...args]);
  if (isRefused(all)) throw new Error(all.refusal);
  const found = placesOf(all);
  expect(found.length).toBe(many);
  found.forEach((place, i) => {
    expect(place).toBeCloseTo(one.toSorted((a, b) => a - b)[i]!, 9);
  });
  // The same list, put together of the single marks.
  expect(ask("MARKS", [one])).toBe(all);
  expect(ask("MARK_AT", [all, 2])).toBeCloseTo(found[1]!, 9);
});

test("a typed list names its unit, or is refused; a decimal comma is read", () => {
  const comma = { ...setting("cm"), decimal: "comma" as const };
  expect(run(MARKS, [["1,5; 3 cm"]], comma)).toBe("1,5; 3 cm");
  expect(run(MARKS, [["1; 3"]], setting("in"))).toMatchObject({
    refusal:
      'places must be a length, or places with their unit behind the last, such as "1; 3; 6 in", not "1; 3"',
  });
  expect(run(MARKS, [["1; x; 3 in"]], setting("in"))).toMatchObject({
    refusal: 'places must be places such as "1; 3; 6 in", and "x" is no length',
  });
  expect(ask("SPACED_MARKS", [3, 1.5, 2])).toBe("1 1/2; 3 1/2; 5 1/2 in");
});
