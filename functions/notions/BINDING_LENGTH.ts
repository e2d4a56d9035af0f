import { define } from "../define.ts";
import { dimension, outline, type Shape, stroke } from "../drawing/shapes.ts";
import { radians } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";

/**
 * Length of binding to cut for the given edges, in the book's unit: their sum, plus the way up to
 * the tip and back at every mitred outer corner (twice the width of the binding at a square corner, more at a sharper
 * one), plus `overlap` once for the join or the turned-in ends. Measure the edges where the binding is sewn
 * on; bias stretches a little round an outer curve, which is not considered. Joins in the strip
 * itself are not included: see BIAS_YIELD.
 */
export const BINDING_LENGTH = define({
  name: "BINDING_LENGTH",
  summary: "How much binding to cut for a set of edges, with its corners and its join.",
  source: "geometry; twice the width round a square corner: McGlauflin, Handicraft for Girls, 1910 (lace)",
  words: "bias tape bound edge braid piping facing hem neckline armhole trim mitre",
  takes: {
    edges: {
      kind: "length",
      about: "lengths of the edges to bind",
      from: 0,
      to: 5000,
      many: true,
      blanks: true,
    },
    overlap: {
      kind: "length",
      usual: [0, 20],
      about: "length for joining the ends or turning them in, in all",
      from: 0,
      to: 50,
      otherwise: { cm: 2.5, in: 1 },
    },
    corners: { kind: "count", about: "how many outer corners are mitred", from: 0, to: 500, otherwise: 0 },
    width: {
      kind: "length",
      usual: [0, 15],
      about: "finished width of the binding on one side, for the corners",
      from: 0,
      to: 30,
      otherwise: 0,
    },
    angle: {
      kind: "angle",
      about: "angle of the cloth at each corner: 90 for a square one, less for a sharp point",
      from: 10,
      to: 170,
      otherwise: 90,
    },
  },
  returns: "length",
  alike: { "overlap, width": "the ends may lap over by more or less than the binding is wide" },
  compute({ edges, overlap, corners, width, angle }, context) {
    const { step, doubt } = context;
    if (corners > 0 && width === 0)
      doubt(phrase`the width of the binding is not given, so its corners take no length`);
    const join = context.step("join", "overlap", overlap);
    const sum = edges.reduce<number>((all, edge) => all + (edge ?? 0), 0);
    const bound = step("bound", "SUM(edges)", sum);
    // From the foot of the mitre to its tip: the width over the tangent of half the angle, written to be exact at 90°.
    const turned = radians(angle);
    const tip = step(
      "to_tip",
      "width * (1 + COS(RADIANS(angle))) / SIN(RADIANS(angle))",
      (width * (1 + Math.cos(turned))) / Math.sin(turned),
    );
    const mitres = step("mitres", "corners * 2 * to_tip", corners * 2 * tip);
    return step("length", "bound + mitres + join", bound + mitres + join);
  },
  draw({ edges, width }, { length = 0, bound = 0 }) {
    if (length === 0) return [];
    const wide = width > 0 ? 4 * width : length / 30;
    const shapes: Shape[] = outline(
      polygon([
        [0, 0],
        [length, 0],
        [length, wide],
        [0, wide],
      ]),
      { label: phrase`binding` },
    );
    let x = 0;
    for (const edge of edges) {
      if (!edge) continue;
      x += edge;
      shapes.push(
        stroke(
          [
            [x, 0],
            [x, wide],
          ],
          "placement",
        ),
        dimension([x - edge, 1.5 * wide], [x, 1.5 * wide]),
      );
    }
    shapes.push(
      dimension([0, -wide / 2], [length, -wide / 2], { label: phrase`cut`, shows: "length" }),
      dimension([0, 2.5 * wide], [bound, 2.5 * wide], { label: phrase`edges`, shows: "bound" }),
    );
    return shapes;
  },
  examples: [
    { given: { edges: [18, 22, 9.5] }, gives: 50.5, because: "the sum of three edges and an inch to join" },
    {
      given: { edges: [40, null, 30], overlap: 2, corners: 4, width: 1 },
      gives: 80,
      unit: "cm",
      because: "70 cm of edge, four corners of twice 1 cm and 2 cm to join",
    },
    {
      given: { edges: [30, 30], overlap: 2, corners: 1, width: 1, angle: 60 },
      gives: 62 + 2 * Math.sqrt(3),
      unit: "cm",
      because: "a point of 60 degrees: its tip lies √3 cm beyond the seam on either side",
    },
  ],
});
