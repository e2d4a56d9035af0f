import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { roundTo } from "../fractions.ts";
import { phrase } from "../phrase.ts";
import { sizeOfMark } from "../tape-mark.ts";

/**
 * A length rounded to a mark of the tape, in the book's unit. "nearest" is the nearest mark;
 * midway between two marks it is the larger. A length within a billionth of a mark counts as on
 * the mark. The book's finest mark is used when `mark` is left out. Source: geometry.
 */
export const ROUND_TAPE = define({
  name: "ROUND_TAPE",
  summary: "Rounds a length to the nearest mark of the tape, or to the next mark up or down.",
  source: "geometry",
  words: "round fraction eighth sixteenth nearest up down",
  takes: {
    length: { kind: "length", about: "the length to round", from: -100000, to: 100000 },
    mark: { kind: "text", about: "the mark to round to, such as 1/8 or 5 mm", otherwise: null },
    direction: {
      kind: "text",
      about: "to the nearest mark, or to the next mark up or down",
      choices: ["nearest", "up", "down"],
      otherwise: "nearest",
    },
  },
  returns: "length",
  compute({ length, mark, direction }, { step, measure, ...context }) {
    const size = measure(
      "mark_size",
      "the mark, in the book's unit",
      sizeOfMark(mark, context.unit, context.mark, context.decimal),
    );
    const marks = step("marks", "length / mark_size", length / size);
    step("slack", "MAX(1; ABS(marks)) / 1000000000", Math.max(1, Math.abs(marks)) / 1e9);
    const whole = step(
      "whole_marks",
      'IF(direction = "up"; CEILING(marks - slack; 1); FLOOR(marks + slack + IF(direction = "down"; 0; 0.5); 1))',
      roundTo(marks, 1, direction),
    );
    return step("rounded", "whole_marks * mark_size", whole * size);
  },
  draw({ length }, { mark_size = 1, rounded = 0 }) {
    // The stretch of tape about the length: three marks either way, the length itself above them.
    const middle = Math.round(length / mark_size);
    const height = mark_size / 2;
    const at = (i: number) => (middle + i - 3) * mark_size;
    return [
      stroke([[at(0), 0], [at(6), 0]], "guide"),
      ...Array.from({ length: 7 }, (_, i) => stroke([[at(i), 0], [at(i), height]], "guide")),
      stroke([[length, -height], [length, 0]], "placement", { label: phrase`as it is` }),
      stroke([[rounded, 0], [rounded, 2 * height]], "cut", { label: phrase`rounded` }),
      dimension([at(2), -1.5 * height], [at(3), -1.5 * height], { label: phrase`mark`, shows: "mark_size" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    { given: { length: 16.55 }, gives: 16.5, because: "the nearest eighth of an inch" },
    {
      given: { length: 5.11, mark: "1/8", direction: "up" },
      gives: 5.125,
      because: "5.11 lies between 5 and 5 1/8",
    },
    {
      given: { length: 2.0625, mark: "1/8" },
      gives: 2.125,
      because:
        "Conover, Complete Course in Dressmaking vol. 5, 1921-22, p. 69: 16 1/2 in over 8 pleats is given as 2 1/8",
    },
    {
      given: { length: 12.37, mark: "5 mm", direction: "down" },
      gives: 12,
      unit: "cm",
      because: "whole half centimetres",
    },
  ],
});
