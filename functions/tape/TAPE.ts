import { unclearFigure } from "../decimal.ts";
import { define } from "../define.ts";
import { tape } from "../drawing/tape-drawing.ts";
import { readTape } from "../fractions.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * The length written in a text as people write it on a pattern: "16 1/2", "42 cm", "1 yd 9 in", 5'
 * 3". In the book's unit; a number without a unit is in the book's unit too. A leading minus makes
 * it negative. Refuses a text that is not a length. Source: NIST SP 811 for the sizes of the
 * units.
 */
export const TAPE = define({
  name: "TAPE",
  summary: "Reads a length written in words and fractions, such as 16 1/2 in or 1 yd 9 in.",
  source: "NIST Special Publication 811, appendix B",
  words: "read text fraction feet inches convert",
  takes: { text: { kind: "text", about: 'the length as written, such as "16 1/2 in"' } },
  returns: "length",
  compute({ text }, { measure, unit, decimal }) {
    if (text.trim() === "")
      throw new Refusal(phrase`text is empty: a length such as 16 1/2 in is needed there`);
    const read = text.length > 60 ? null : readTape(text, unit, decimal);
    if (!read) {
      const unclear = text.length > 60 ? null : unclearFigure(text, decimal);
      if (unclear) throw new Refusal(phrase`text is unclear: ${unclear}`);
      const shortened = text.length > 24 ? `${text.slice(0, 21)}...` : text;
      throw new Refusal(
        phrase`text must be a length such as 16 1/2 in, 42 cm or 1 yd 9 in, not "${shortened}"`,
      );
    }
    if (Math.abs(read.length) > 1e6)
      throw new Refusal(phrase`text must be a length a tape can show, not ${text}`);
    return measure("length", "the length as written, brought into the book's unit", read.length);
  },
  draw: (_, { length = 0 }, __, { cm }) => tape(length, cm),
  examples: [
    { given: { text: "16 1/2 in" }, gives: 16.5, because: "a half is 0.5" },
    { given: { text: "1 yd 9 in" }, gives: 45, because: "36 in and 9 in, the English ell" },
    { given: { text: "5' 3\"" }, gives: 160.02, unit: "cm", because: "63 in of 2.54 cm (NIST SP 811)" },
  ],
});
