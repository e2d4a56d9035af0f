import { expect, test } from "vitest";
import { marksOnTape, marksText } from "../../functions/marks-text.ts";

const inches = { unit: "in", mark: "1/8" } as const;
const centimetres = { unit: "cm", mark: "1 mm" } as const;

test("six hooks on 14 1/2 in stand on the marks of the tape, the first and the last at the ends", () => {
  const places = Array.from({ length: 6 }, (_, i) => (14.5 / 5) * i);
  expect(marksText(places, "in")).toBe("0; 2.9; 5.8; 8.7; 11.6; 14 1/2 in");
  expect(marksOnTape(marksText(places, "in"), inches)).toBe("0; 2 7/8; 5 3/4; 8 3/4; 11 5/8; 14 1/2 in");
  expect(marksOnTape(marksText(places, "in"), { ...inches, mark: "1/16" })).toBe(
    "0; 2 7/8; 5 13/16; 8 11/16; 11 5/8; 14 1/2 in",
  );
});

test("eight eyelets on 37 cm stand on millimetres, with the book's decimal mark", () => {
  const places = Array.from({ length: 8 }, (_, i) => 1.2 + (34.6 / 7) * i);
  expect(marksOnTape(marksText(places, "cm"), centimetres)).toBe(
    "1.2; 6.1; 11.1; 16; 21; 25.9; 30.9; 35.8 cm",
  );
  expect(marksOnTape(marksText(places, "cm", "comma"), { ...centimetres, decimal: "comma" })).toBe(
    "1,2; 6,1; 11,1; 16; 21; 25,9; 30,9; 35,8 cm",
  );
});

test.each(["1 1/16; 3 5/32 in", "2.9 in", "1.23456; 2 cm", "3 hooks; 2.345678 in", "2.345678; 3.456789", ""])(
  "the text %j is shown as it is in a book of inches",
  (text) => {
    expect(marksOnTape(text, inches)).toBe(text);
  },
);

test("a length with a finer mark of its own keeps it", () => {
  expect(marksOnTape("2.85 cm", centimetres)).toBe("2.85 cm");
});
