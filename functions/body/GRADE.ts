import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * A measurement of the pattern graded up (or, with negative `sizes`, down) by an even step for
 * each size, in the book's unit: base + step · sizes. Half sizes are allowed. Refuses a result of
 * 0 or less. Source: common practice.
 */
export const GRADE = define({
  name: "GRADE",
  summary: "Grades a measurement of the pattern up or down by a number of sizes, with an even step for each.",
  source: "common practice",
  words: "grading size larger smaller sizes up down step chorus",
  takes: {
    base: { kind: "length", about: "the measurement in the size drafted", from: 0.1, to: 2000 },
    step: { kind: "length", about: "how much it grows from one size to the next", from: -100, to: 100 },
    sizes: { kind: "figure", about: "how many sizes up, negative for down", from: -30, to: 30 },
  },
  returns: "length",
  usual: ["ABS(step) <= base"],
  compute({ base, step: each, sizes }, { step }) {
    const graded = base + each * sizes;
    if (!isAbove(graded, 0, base)) {
      throw new Refusal(
        (say) =>
          phrase`sizes must leave a length above 0: a base of ${say(base, graded)} comes to ${say(graded, base)}`,
      );
    }
    step("gained", "step * sizes", each * sizes);
    return step("graded", "base + step * sizes", graded);
  },
  draw({ base, step: each, sizes }, { graded = base }) {
    // One line a size, from the base to the one asked for, nested as on a graded pattern.
    const whole = Math.floor(Math.abs(sizes));
    const lengths = Array.from({ length: whole + 1 }, (_, i) => base + Math.sign(sizes) * i * each);
    if (!Number.isInteger(sizes)) lengths.push(graded);
    const gap = Math.max(base, graded) / 30;
    return [
      ...lengths.map((length, i) => stroke([[0, i * gap], [length, i * gap]], i === 0 ? "seam" : "guide")),
      dimension([0, lengths.length * gap], [graded, lengths.length * gap], { shows: "graded" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    { given: { base: 36, step: 1.5, sizes: 3 }, gives: 40.5, because: "three sizes of 1 1/2 in" },
    { given: { base: 96, step: 4, sizes: -1.5 }, gives: 90, unit: "cm", because: "a size and a half down" },
  ],
});
