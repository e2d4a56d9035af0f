import { FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";

/**
 * Proportions of a hanging tail (jabot) `length` long at its outer edge, in the book's unit: its
 * front edge is half of it, its top as it hangs a sixth, its widest place in the folds 1 1/3 of
 * the top. Source: Stephenson 1905.
 */
export const FESTOON_TAIL = define({
  name: "FESTOON_TAIL",
  summary: "How wide and how short at the front to make a pleated tail that hangs a given length.",
  source: "Stephenson, Cutting and Draping, 1905, irregular festoon",
  words: "jabot cascade swag tail drapery proportion",
  takes: {
    length: { kind: "length", about: "longest edge of the tail", from: 1, to: 2000 },
    part: { kind: "text", about: "which measurement of the tail", choices: ["front", "top", "widest"] },
  },
  returns: "length",
  compute({ length, part }, { step }) {
    const figure = { front: length / 2, top: length / 6, widest: (length * 2) / 9 }[part];
    return step("figure", 'length * IF(part="front";1 / 2;IF(part="top";1 / 6;2 / 9))', figure);
  },
  draw({ length, part }, { figure = 0 }) {
    const [top, front, wide] = [length / 6, length / 2, (length * 2) / 9];
    const shows = { shows: "figure" };
    return [
      stroke(
        [
          [0, 0],
          [top, 0],
          [wide, front],
          [0, length],
          [0, 0],
        ],
        "cut",
      ),
      part === "front"
        ? dimension([wide * 1.2, 0], [wide * 1.2, figure], shows)
        : dimension([0, -length / 20], [figure, -length / 20], shows),
    ];
  },
  examples: [
    {
      given: { length: 72, part: "front" },
      gives: 36,
      because: "Stephenson 1905: a tail 6 ft long is 3 ft at the front",
    },
    { given: { length: 72, part: "top" }, gives: 12, because: "1 ft at the top" },
    { given: { length: 72, part: "widest" }, gives: 16, because: "and 16 in at its widest" },
  ],
  cautions: FLAME,
});
