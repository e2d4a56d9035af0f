import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How far a garment can be let out at its seams, in the book's unit: at each seam, the part of the
 * allowance beyond the `keep` that must stay, for each of its edges. Give one allowance a seam,
 * measured from the stitching to the raw edge; blanks are skipped, and a seam with less than
 * `keep` gives nothing. Old stitching and fading may show. Source: geometry.
 */
export const LET_OUT_ROOM = define({
  name: "LET_OUT_ROOM",
  summary: "How much a garment can be let out all round, from the allowances left in its seams.",
  source: "geometry",
  words: "let out alter larger seam allowance spare inlay recut new wearer",
  takes: {
    allowances: {
      kind: "length",
      about: "the allowance at each seam, stitching to raw edge",
      from: 0,
      to: 60,
      many: true,
      blanks: true,
    },
    keep: {
      kind: "length",
      usual: [0, 5],
      about: "width that must stay beyond the new stitching",
      from: 0,
      to: 20,
    },
    edges: { kind: "count", about: "edges let out at each seam", from: 1, to: 2, otherwise: 2 },
  },
  returns: "length",
  compute({ allowances, keep, edges }, { step, measure }) {
    const spare = allowances.map((one) => Math.max(0, (one ?? 0) - keep));
    measure("seams", "seams that can be let out", spare.filter((one) => one > 0).length);
    const sum = measure(
      "spare",
      "sum of the allowances beyond keep, one edge of each seam",
      spare.reduce((total, one) => total + one, 0),
    );
    return step("room", "spare * edges", sum * edges);
  },
  draw({ allowances, keep }) {
    // Each seam's allowance, from its stitching to the raw edge; the new stitching lies `keep` inside it.
    const widths = allowances.filter((one) => one !== null);
    const tall = Math.max(...widths, keep) / 2;
    return widths.flatMap((width, i): Shape[] => {
      const y = i * tall * 1.5;
      return [
        stroke([[0, y], [0, y + tall]], "stitch"),
        stroke([[width, y], [width, y + tall]], "cut"),
        ...(width > keep
          ? [
              stroke([[width - keep, y], [width - keep, y + tall]], "seam"),
              dimension([0, y + tall / 2], [width - keep, y + tall / 2], { label: phrase`can go` }),
            ]
          : []),
      ];
    }); // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { allowances: [1, 1, 0.5, null, 0.25], keep: 0.375 },
      gives: 2.75,
      because: "5/8, 5/8 and 1/8 to spare at both edges of three seams",
    },
    {
      given: { allowances: [3, 3], keep: 1, edges: 1 },
      gives: 4,
      unit: "cm",
      because: "2 cm at one edge of two seams",
    },
  ],
});
