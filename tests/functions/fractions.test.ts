import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Mark, markSize, readTape, roundTo, tapeText } from "../../functions/fractions.ts";
import { convert, type Unit } from "../../functions/units.ts";

const SEED = 1866;
const unit = fc.constantFrom<Unit>("in", "cm");
const inchMark = fc.constantFrom<Mark>("1/2", "1/4", "1/8", "1/16", "1/32");

describe("a tape text is read as people mean it", () => {
  test.each([
    ["16 1/2", "in", 16.5, true],
    ["16½", "in", 16.5, true],
    ["16-1/2", "in", 16.5, true],
    ["16 ½ in", "in", 16.5, true],
    ["½", "in", 0.5, true],
    ["3/8", "in", 0.375, true],
    ["16.5", "in", 16.5, false],
    [".5", "in", 0.5, false],
    ["42 cm", "cm", 42, true],
    ["25.4 mm", "in", 1, true],
    ["1 yd 9 in", "in", 45, true],
    ["5' 3\"", "in", 63, true],
    ["5 ft 3 1/4 in", "in", 63.25, true],
    ["1 1/4 yd", "in", 45, true],
    ["1 m 20 cm", "cm", 120, true],
    ["2 yards", "cm", 182.88, true],
    ["-3/4", "in", -0.75, true],
    ["−2 in", "in", -2, true],
    ["  7  ", "cm", 7, false],
    ["12 INCHES", "in", 12, true],
  ] as [string, Unit, number, boolean][])("%s in %s is %d", (text, told, length, certain) => {
    expect(readTape(text, told)).toEqual({ length: expect.closeTo(length, 12), certain });
  });

  test.each([
    "", " ", "-", "in", "waist", "1/0", "5 1/0", "3 hands", "4 4", "5 3 in", "5' 3", "1,5", "1e3", "16 1/2 1/2",
    "5 constructor", "=2", "NaN", "Infinity", "1/2/3", "--4", "4-", "½½", "9".repeat(400),
  ])("%s is no length", (text) => {
    for (const told of ["in", "cm"] as const) expect(readTape(text, told)).toBeNull();
  }); // biome-ignore format: a list
});

test("every mark of an inch tape, written and read again, is the same length", () => {
  fc.assert(
    fc.property(fc.integer({ min: -4000, max: 4000 }), inchMark, (parts, mark) => {
      const length = parts * markSize(mark, "in");
      expect(readTape(tapeText(length, "in", mark), "in")?.length).toBeCloseTo(length, 12);
    }),
    { seed: SEED },
  );
});

test("every millimetre of a metric tape, written and read again, is the same length", () => {
  fc.assert(
    fc.property(fc.integer({ min: -30_000, max: 30_000 }), (millimetres) => {
      const text = tapeText(millimetres / 10, "cm", "1 mm");
      expect(readTape(text, "cm")?.length).toBeCloseTo(millimetres / 10, 9);
      expect(readTape(`${text} cm`, "in")?.length).toBeCloseTo(convert(millimetres, "mm", "in"), 9);
    }),
    { seed: SEED },
  );
});

test("any length is written within half a mark of itself, its fraction in lowest terms", () => {
  fc.assert(
    fc.property(fc.double({ min: -500, max: 500, noNaN: true }), inchMark, (length, mark) => {
      const text = tapeText(length, "in", mark);
      expect(Math.abs(readTape(text, "in")!.length - length)).toBeLessThanOrEqual(
        markSize(mark, "in") * 0.500001,
      );
      const [top, under] = /(\d+)\/(\d+)$/.exec(text)?.slice(1).map(Number) ?? [1, 2];
      expect(top! % 2).toBe(1);
      expect(under! <= Number(mark.split("/")[1])).toBe(true);
    }),
    { seed: SEED },
  );
});

test("a length in several parts is their sum", () => {
  fc.assert(
    fc.property(fc.nat(20), fc.nat(2), fc.nat(11), fc.nat(7), unit, (yd, ft, inches, eighths, told) => {
      const text = `${yd} yd ${ft} ft ${inches} ${eighths}/8 in`;
      const wanted = convert(yd * 36 + ft * 12 + inches + eighths / 8, "in", told);
      expect(readTape(text, told)?.length).toBeCloseTo(wanted, 9);
    }),
    { seed: SEED },
  );
});

test("no text, whatever it holds, makes the reader stumble", () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(..."0123456789 ./-'\"½incmyd") })),
      (text) => {
        const found = readTape(text, "in");
        if (found) expect(Number.isFinite(found.length)).toBe(true);
      },
    ),
    { seed: SEED, numRuns: 2000 },
  );
  expect(readTape(`${"1".repeat(300)}${" ".repeat(100_000)}x`, "in")).toBeNull();
  expect(readTape("1 in ".repeat(20_000), "in")?.length).toBe(20_000);
});

test("rounding goes to whole marks: to the nearest, up and down, and a figure on a mark stays on it", () => {
  // 0.1 + 0.2 and such are a hair off their mark.
  expect(roundTo(0.1 + 0.2, 0.1, "up")).toBeCloseTo(0.3, 12);
  expect(roundTo(0.7 + 0.1, 0.1, "down")).toBeCloseTo(0.8, 12);
  expect(roundTo(16.51, 0.125)).toBe(16.5);
  expect(roundTo(16.51, 0.125, "up")).toBe(16.625);
  expect(roundTo(16.49, 0.125, "down")).toBe(16.375);
  fc.assert(
    fc.property(
      fc.double({ min: -1000, max: 1000, noNaN: true }),
      fc.constantFrom(0.125, 0.1, 0.0625, 1),
      (value, step) => {
        const [down, near, up] = (["down", "nearest", "up"] as const).map((way) => roundTo(value, step, way));
        const slack = 1e-8 * Math.max(1, Math.abs(value));
        expect(down).toBeLessThanOrEqual(value + slack);
        expect(up).toBeGreaterThanOrEqual(value - slack);
        expect(up! - down!).toBeLessThanOrEqual(step * (1 + 1e-9));
        expect(Math.abs(near! - value)).toBeLessThanOrEqual(step / 2 + slack);
      },
    ),
    { seed: SEED },
  );
});
