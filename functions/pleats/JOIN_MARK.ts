import { define } from "../define.ts";
import { BREADTHS, joinedBreadth } from "../drafting/breadths.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * Where join `number` of the panels falls along the flat width, measured from its beginning, in
 * the book's unit; an empty text past the last join. Panels are all equal, or whole breadths with
 * the remainder last. `seam` is what a breadth loses to its joins. JOIN_CHECK says whether a pleat
 * hides it. Source: geometry.
 */
export const JOIN_MARK = define({
  name: "JOIN_MARK",
  summary: "Where the seams between joined panels fall along a flat width before it is pleated or gathered.",
  source: "geometry",
  words: "panel join seam breadths widths position pleat hide skirt",
  takes: {
    number: { kind: "count", about: "which join, counted from the beginning", from: 1, to: 1000 },
    flat: { kind: "length", about: "flat width, all panels joined", from: 1, to: 100_000 },
    ...BREADTHS,
    arrange: {
      kind: "text",
      about: "even: all panels equal; full: whole breadths with the remainder last",
      choices: ["even", "full"],
      otherwise: "even",
    },
  },
  returns: "length",
  usual: ["seam < 0.5 * cloth_width"],
  compute({ number, flat, cloth_width, seam, arrange }, { step }) {
    const breadth = step("breadth", "cloth_width - seam", joinedBreadth(cloth_width, seam));
    const panels = step("panels", "ROUNDUP(ROUND(flat / breadth; 8); 0)", roundUpToWhole(flat / breadth));
    const panel = step(
      "panel",
      'IF(arrange = "even"; flat / panels; breadth)',
      arrange === "even" ? flat / panels : breadth,
    );
    return step("mark", 'IF(number < panels; number * panel; "")', number < panels ? number * panel : "");
  },
  draw({ flat }, { panels = 0, panel = 0, mark }) {
    const deep = flat / 6;
    return [
      stroke([[0, 0], [flat, 0], [flat, deep], [0, deep], [0, 0]], "cut"),
      ...Array.from({ length: Math.min(panels, 300) - 1 }, (_, i) =>
        stroke([[(i + 1) * panel, 0], [(i + 1) * panel, deep]], "seam"),
      ),
      dimension([0, deep * 1.2], [flat, deep * 1.2], { label: phrase`flat` }),
      ...(mark === undefined ? [] : [dimension([0, -deep / 6], [mark, -deep / 6], { shows: "mark" })]),
    ]; // biome-ignore format: points in pairs
  },
  strip: ({ flat }, { panels = 0, panel = 0 }) => ({
    length: flat,
    marks: Array.from({ length: panels - 1 }, (_, i) => ({
      at: (i + 1) * panel,
      role: "seam",
      says: phrase`join ${i + 1}`,
    })),
  }),
  examples: [
    { given: { number: 1, flat: 100, cloth_width: 54 }, gives: 50, because: "two panels of 50 in" },
    {
      given: { number: 1, flat: 100, cloth_width: 54, seam: 1, arrange: "full" },
      gives: 53,
      because: "a whole breadth first",
    },
    {
      given: { number: 2, flat: 236, cloth_width: 90, seam: 2 },
      gives: 472 / 3,
      unit: "cm",
      because: "three equal panels",
    },
    { given: { number: 2, flat: 100, cloth_width: 54 }, gives: "", because: "two panels have one join" },
  ],
});
