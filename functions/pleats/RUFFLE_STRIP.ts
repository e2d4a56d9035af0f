import { define } from "../define.ts";
import { CLOTH_WIDTH, joinedBreadth } from "../drafting/breadths.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * One strip of a ruffle cut across the cloth, as a piece, in the book's unit. All strips are
 * equal, and joined they are `ratio` times the edge. The strip is as wide across the cloth as it
 * must be including its join, and `depth` long; include hem and heading in the depth. The step
 * `strips` says how many to cut. Edges: 1 gathered edge, 2 right join, 3 hem, 4 left join. Source: geometry;
 * ratio: common practice.
 */
export const RUFFLE_STRIP = define({
  name: "RUFFLE_STRIP",
  summary: "One of the equal strips to cut for a ruffle or frill, as a piece, and how many of them to cut.",
  source: "geometry; Baldt, Clothing for Women, 1916: ruffles of 1 1/3 to 1 1/2 times",
  words: "ruffle frill strips how many cut across width length join gathered edging",
  takes: {
    edge: { kind: "length", about: "the edge it is put on", from: 1, to: 50_000 },
    ratio: {
      kind: "share",
      about: "fullness: length before gathering over length afterwards",
      from: 1,
      to: 10,
    },
    depth: { kind: "length", about: "depth as cut, hem and heading included", from: 0.5, to: 300 },
    cloth_width: CLOTH_WIDTH,
    seam: {
      kind: "length",
      about: "length that each strip loses to its joins, both ends together",
      from: 0,
      to: 20,
      otherwise: 0,
    },
  },
  returns: "piece",
  usual: ["depth <= edge", "depth <= 2 * cloth_width", "seam < depth"],
  alike: { "edge, cloth_width": "an edge may be shorter than the cloth is wide" },
  compute({ edge, ratio, depth, cloth_width, seam }, { step }) {
    const flat = step("flat", "edge * ratio", edge * ratio);
    const strips = roundUpToWhole(flat / joinedBreadth(cloth_width, seam));
    step("strips", "ROUNDUP(ROUND(flat / (cloth_width - seam); 8); 0)", strips);
    const cut = step("strip_length", "flat / strips + seam", flat / strips + seam);
    step("cloth", "strips * depth", strips * depth);
    step("strip_depth", "depth", depth);
    return polygon([[0, 0], [cut, 0], [cut, depth], [0, depth]], ["gathered edge", "right join", "hem", "left join"]); // biome-ignore format: points in a row
  },
  draw({ depth }, { strip_length = 0, strips = 0 }, piece) {
    if (typeof piece !== "object") return [];
    const off = Math.max(depth, strip_length) / 14;
    return [
      ...outline(piece, { label: phrase`cut ${strips}` }),
      grainDrawn(piece),
      dimension([0, depth + off], [strip_length, depth + off], { shows: "strip_length" }),
      dimension([strip_length + off, 0], [strip_length + off, depth], { shows: "strip_depth" }),
    ];
  },
  examples: [
    {
      given: { edge: 90, ratio: 1.5, depth: 6, cloth_width: 36, seam: 1 },
      gives: { width: 34.75, length: 6 },
      because: "135 inches in four strips of 33 3/4 in, with an inch more for the joins",
    },
    {
      given: { edge: 470, ratio: 2, depth: 9.5, cloth_width: 119 },
      gives: { width: 117.5, length: 9.5 },
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 212 ex. 2: 9.40 m from cloth of 1.19 m, eight strips",
    },
  ],
});
