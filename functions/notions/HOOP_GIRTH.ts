import { HOOPS } from "../cautions.ts";
import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Girth of hoop `number`, counted from the top, of a hooped petticoat whose hoops hang at equal
 * distances one below another, in the book's unit; an empty text past the last hoop. "cone":
 * girths grow evenly; "bell": fast above and slowly below, along a quarter of a sine curve.
 * Source: geometry.
 */
export const HOOP_GIRTH = define({
  name: "HOOP_GIRTH",
  summary: "How large each hoop of a hooped petticoat must be, from the top hoop's girth to the hem's.",
  source: "geometry",
  words: "crinoline farthingale cage hoops steel petticoat cone bell graded girth",
  takes: {
    number: { kind: "count", about: "which hoop, counted from the top", from: 1, to: 100 },
    top: { kind: "length", about: "girth of the top hoop", from: 10, to: 2000 },
    bottom: { kind: "length", about: "girth of the lowest hoop", from: 10, to: 2000 },
    count: { kind: "count", about: "how many hoops", from: 2, to: 100 },
    shape: { kind: "text", about: "how the skirt widens", choices: ["cone", "bell"], otherwise: "cone" },
  },
  returns: "length",
  compute({ number, top, bottom, count, shape }, { step }) {
    if (isBelow(bottom, top))
      throw new Refusal(
        (say) =>
          phrase`bottom must be at least as large as top, not ${say(bottom, top)} against ${say(top, bottom)}`,
      );
    const way = step(
      "way_down",
      "MIN(1; (number - 1) / (count - 1))",
      Math.min(1, (number - 1) / (count - 1)),
    );
    const share = step(
      "share",
      'IF(shape="bell";SIN(way_down * PI() / 2);way_down)',
      shape === "bell" ? Math.sin((way * Math.PI) / 2) : way,
    );
    const girth = top + (bottom - top) * share;
    step("across", "(top + (bottom - top) * share) / PI()", girth / Math.PI);
    return step("girth", 'IF(number>count;"";top + (bottom - top) * share)', number > count ? "" : girth);
  },
  draw({ number, top, bottom, count, shape }) {
    // From the front: each hoop as wide as it is across.
    const apart = bottom / 8;
    const shapes: Shape[] = [];
    for (let i = 0; i < count; i += 1) {
      const way = i / (count - 1);
      const share = shape === "bell" ? Math.sin((way * Math.PI) / 2) : way;
      const half = (top + (bottom - top) * share) / Math.PI / 2;
      shapes.push(
        stroke(
          [
            [-half, i * apart],
            [half, i * apart],
          ],
          "stitch",
        ),
      );
      if (i === number - 1)
        shapes.push(
          dimension([-half, (i + 0.3) * apart], [half, (i + 0.3) * apart], {
            label: phrase`across`,
            shows: "across",
          }),
        );
    }
    return shapes;
  },
  examples: [
    { given: { number: 3, top: 60, bottom: 120, count: 5 }, gives: 90, because: "half-way down a cone" },
    {
      given: { number: 3, top: 60, bottom: 120, count: 5, shape: "bell" },
      gives: 60 + 60 * Math.SQRT1_2,
      because: "half-way along a quarter of a sine curve: the sine of 45 degrees",
    },
    {
      given: { number: 6, top: 60, bottom: 120, count: 5 },
      gives: "",
      because: "there is no hoop past the last one",
    },
  ],
  cautions: HOOPS,
});
