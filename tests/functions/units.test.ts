import fc from "fast-check";
import { expect, test } from "vitest";
import { convert, isTapeUnit, type TapeUnit } from "../../functions/units.ts";

test.each([
  // NIST SP 811 (2008), appendix B.8: factors in bold there are exact.
  ["in", "mm", 25.4],
  ["in", "cm", 2.54],
  ["ft", "cm", 30.48],
  ["yd", "m", 0.9144],
  ["ft", "in", 12],
  ["yd", "ft", 3],
  ["yd", "in", 36],
  ["m", "cm", 100],
  ["cm", "mm", 10],
] as [TapeUnit, TapeUnit, number][])("one %s is %s %d to the last bit (NIST SP 811)", (from, to, size) => {
  expect(convert(1, from, to)).toBe(size);
});

test("a length told in any other unit and back is the same to fifteen figures", () => {
  const unit = fc.constantFrom<TapeUnit>("mm", "cm", "m", "in", "ft", "yd");
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e6, noNaN: true }), unit, unit, (length, from, to) => {
      const back = convert(convert(length, from, to), to, from);
      expect(Math.abs(back - length)).toBeLessThanOrEqual(4e-16 * Math.abs(length));
    }),
    { seed: 811 },
  );
});

test("words that every object knows are no units", () => {
  for (const word of ["constructor", "toString", "__proto__", "ell", ""])
    expect(isTapeUnit(word)).toBe(false);
});
