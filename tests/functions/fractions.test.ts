import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Decimal, unclearFigure } from "../../functions/decimal.ts";
import { markSize, readTape, roundTo, type TapeMark, tapeText } from "../../functions/fractions.ts";
import { convert, type Unit } from "../../functions/units.ts";

const SEED = 1866;
const unit = fc.constantFrom<Unit>("in", "cm");
const inchMark = fc.constantFrom<TapeMark>("1/2", "1/4", "1/8", "1/16", "1/32");

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
    ["28,5", "cm", 28.5, false],
    [",5", "cm", 0.5, false],
    ["1,5 m", "cm", 150, true],
    ["2,54 cm", "in", 1, true],
    ["1.234,5 mm", "cm", 123.45, true],
    ["1,234.5 mm", "cm", 123.45, true],
    ["1,234,567 mm", "cm", 123_456.7, true],
    ["0,125", "in", 0.125, false],
    ["2.125", "in", 2.125, false],
    ["27 in.", "in", 27, true],
    ["27 in. ", "cm", 68.58, true],
    ["27 ins.", "in", 27, true],
    ["27 1/2''", "in", 27.5, true],
    ["5'3''", "in", 63, true],
    ["5′ 3″", "in", 63, true],
    ["5′3′′", "in", 63, true],
    ["5 ft. 3 in.", "in", 63, true],
    ["42 centimetres", "cm", 42, true],
    ["42 centimeters", "cm", 42, true],
    ["1 centimetre", "cm", 1, true],
    ["420 millimetres", "cm", 42, true],
    ["420 millimeters", "cm", 42, true],
    ["2 metres", "cm", 200, true],
    ["2 meters", "cm", 200, true],
    ["2 yds.", "in", 72, true],
    ["2 yd.", "in", 72, true],
    ["2 feet", "in", 24, true],
    ["2 inch", "in", 2, true],
  ] as [string, Unit, number, boolean][])("%s in %s is %d", (text, told, length, certain) => {
    expect(readTape(text, told)).toEqual({ length: expect.closeTo(length, 12), certain });
  });

  test.each([
    "", " ", "-", "in", "waist", "1/0", "5 1/0", "3 hands", "4 4", "5 3 in", "5' 3", "1,5,3", "28,5,", "1,234", "12,345 mm", "1,23.4", "04.05.2026", "27..", "27 in..", "1e3", "16 1/2 1/2",
    "5 constructor", "=2", "NaN", "Infinity", "1/2/3", "--4", "4-", "½½", "9".repeat(400),
  ])("%s is no length", (text) => {
    for (const told of ["in", "cm"] as const) expect(readTape(text, told)).toBeNull();
  }); // biome-ignore format: a list
});

test("a book that shows decimal commas reads both marks too, and asks about 1.234 instead of 1,234", () => {
  expect(readTape("28,5", "cm", "comma")?.length).toBe(28.5);
  expect(readTape("28.5", "cm", "comma")?.length).toBe(28.5);
  expect(readTape("1,234 m", "cm", "comma")?.length).toBeCloseTo(123.4, 12);
  expect(readTape("1.234 m", "cm", "comma")).toBeNull();
  expect(unclearFigure("1.234 m", "comma")).toBe(
    "1.234 has two readings: 1,234 with the point as its decimal mark, or 1234; type the one that is meant",
  );
  expect(unclearFigure("1,234 m", "point")).toBe(
    "1,234 has two readings: 1.234 with the comma as its decimal mark, or 1234; type the one that is meant",
  );
});

test("a length written with either mark is read as that length with either setting", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -300_000, max: 300_000 }),
      unit,
      fc.constantFrom<Decimal>("point", "comma"),
      fc.constantFrom<TapeMark>("1/2", "1/4", "1/8", "1/16", "1/32", "1 cm", "5 mm", "1 mm"),
      fc.constantFrom("", "mm", "cm", "m", "in.", "yards", "ft"),
      (parts, told, decimal, mark, word) => {
        const length = parts * markSize(mark, told);
        const text = tapeText(length, told, mark, decimal);
        if (decimal === "comma") expect(text).not.toContain(".");
        const size = word === "" ? 1 : readTape(`1 ${word}`, told)!.length;
        const read = readTape(`${text} ${word}`, told, decimal)?.length;
        const plain = readTape(`${tapeText(length, told, mark)} ${word}`, told, "point")?.length;
        expect(read).toBe(plain);
        expect(tapeText(read! / size, told, mark, decimal)).toBe(text);
      },
    ),
    { seed: SEED, numRuns: 300 },
  );
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
  // However long it is: a sentence about a length typed by mistake quotes that length.
  for (const way of ["down", "nearest", "up"] as const) expect(roundTo(1e9, 0.125, way)).toBe(1e9);
  expect(tapeText(123_456_789, "in", "1/8")).toBe("123456789");
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
