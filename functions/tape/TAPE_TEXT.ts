import { define } from "../define.ts";
import { tape } from "../drawing/tape-drawing.ts";
import { inMarks, sizeOfMark } from "../tape-mark.ts";

/**
 * A length in words as the tape shows it, with its unit: "16 1/2 in", "42.5 cm". Rounded to the
 * nearest mark: to the book's finest mark when `mark` is left out. A mark that is a whole part of
 * an inch (1/2 to 1/64) gives a fraction in an inch book; any other mark gives a decimal. TAPE
 * reads the text back. Source: common practice.
 */
export const TAPE_TEXT = define({
  name: "TAPE_TEXT",
  summary: "Writes a length as the tape shows it, such as 16 1/2 in, for labels and notes.",
  source: "common practice",
  words: "fraction write show label",
  takes: {
    length: { kind: "length", about: "the length to write", from: -100000, to: 100000 },
    mark: { kind: "text", about: "the finest mark to show, such as 1/16 or 5 mm", otherwise: null },
  },
  returns: "text",
  compute({ length, mark }, { measure, ...context }) {
    const size = measure(
      "mark_size",
      "the mark, in the book's unit",
      sizeOfMark(mark, context.unit, context.mark, context.decimal),
    );
    measure("length", "the length itself", length);
    return measure(
      "text",
      "the length at its nearest mark",
      `${inMarks(length, context.unit, size)} ${context.unit}`,
    );
  },
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { length: 16.5 }, gives: "16 1/2 in", because: "a half inch" },
    { given: { length: 3.0625, mark: "1/16" }, gives: "3 1/16 in", because: "one sixteenth is 0.0625" },
    { given: { length: 42.34 }, gives: "42.3 cm", unit: "cm", because: "to the millimetre" },
  ],
});
