import { define } from "../define.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { outline } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { facingAlong } from "../pieces/facing.ts";
import { edgeLength, pieceArea } from "../pieces/piece.ts";

/**
 * A facing: the strip `depth` deep inside a piece along some of its edges, in place on the piece.
 * Edges of the facing: first those of the piece, then a part of the next edge, the "inner line", a part
 * of the edge before; parts keep their edge's name. Arcs and straight lines are exact, the inner line of a curve keeps `depth` to
 * 0.01 mm. Its outline is the sewing line, without allowances; taking off turn of cloth is up to the
 * maker's. Refuses a depth that the bends or the neighbouring edges do not allow. Source: geometry.
 */
export const FACING = define({
  name: "FACING",
  summary: "A facing for a neckline, armhole, front or hem, taken from the piece itself.",
  source: "geometry",
  words: "neck facing armhole waist hem strip shaped inside lining edge interfacing",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    first: {
      kind: "edge",
      of: "piece",
      about: "the edge where the facing begins, by its name or its number in drawing order",
    },
    depth: { kind: "length", usual: [1, 40], about: "finished depth of the facing", from: 0.2, to: 100 },
    last: {
      kind: "edge",
      of: "piece",
      about: "the edge where the facing ends, by its name or number; the same as first when left out",
      otherwise: null,
    },
  },
  returns: "piece",
  compute({ piece, first, depth, last }, { measure, cm }) {
    const facing = facingAlong(piece, first, last ?? first, depth, cm(0.001));
    measure("inner_line", "length along the inner line of the facing", edgeLength(facing.edges.at(-2)!));
    measure("area", "area of the facing", pieceArea(facing));
    return facing;
  },
  draw({ piece }, _, facing) {
    if (typeof facing !== "object") return [];
    return [
      { kind: "outline", piece: { ...piece, marks: [] }, label: phrase`piece`, context: true },
      ...outline(facing, { shows: "area" }),
      grainDrawn(facing),
      ...edgeLabelsDrawn(facing),
      {
        kind: "edge",
        edge: facing.edges.at(-2)!,
        role: "cut",
        label: phrase`inner line`,
        shows: "inner_line",
      },
    ];
  },
  examples: [
    {
      given: { piece: "M 0 0 L 20 0 L 20 40 L 0 40 Z", first: 3, depth: 2 },
      gives: { width: 20, length: 2, area: 40, edges: [20, 2, 20, 2] },
      because: "a hem facing of a straight skirt is a strip",
    },
    {
      given: { piece: "M 0 10 A 10 10 0 0 0 10 0 L 60 0 A 60 60 0 0 1 0 60 Z", first: 1, depth: 5 },
      gives: { area: (Math.PI / 4) * (15 ** 2 - 10 ** 2), edges: [5 * Math.PI, 5, 7.5 * Math.PI, 5] },
      because: "the waist facing of a quarter circle skirt is a ring from 10 to 15 cm",
      unit: "cm",
    },
  ],
});
