import { define } from "../define.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import { arc, line, polarPoint } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * The girth over a body with pads that cover part of the way round, in the book's unit, the tape
 * drawn taut: it lies on each pad, leaves its edge straight, and meets the body again farther on,
 * or goes straight across to the next pad. The body's section is taken as a circle, the pads as
 * of even thickness and evenly spaced; a pad that thins to its edges gives less. With `share` 1
 * it is GIRTH_OVER. Source: geometry (the convex hull of circle and pads).
 */
export const PAD_GIRTH = define({
  name: "PAD_GIRTH",
  summary: "The girth over a bum roll or hip pads that cover only part of the way round.",
  source: "geometry: a taut tape is the convex hull of the body's circle and the pads",
  words: "bum roll hip pad bustle padding rump part way round over pad petticoat",
  takes: {
    girth: { kind: "length", about: "the girth without the pad", from: 10, to: 500 },
    thickness: {
      kind: "length",
      about: "how far the pad stands out, pressed by the skirts",
      from: 0,
      to: 60,
    },
    share: { kind: "share", about: "share of the girth that all pads together cover", from: 0.01, to: 1 },
    pads: { kind: "count", about: "how many pads there are, evenly spaced", from: 1, to: 12, otherwise: 1 },
  },
  returns: "length",
  usual: ["4 * thickness < girth"],
  compute({ girth, thickness, share, pads }, { step }) {
    const radius = step("radius", "girth / (2 * PI())", girth / (2 * Math.PI));
    const outer = step("outer", "radius + thickness", radius + thickness);
    const turn = step("turn", "2 * PI() / pads", (2 * Math.PI) / pads);
    const covered = step("covered", "turn * share", turn * share);
    const lift = step("lift", "ACOS(radius / outer)", Math.acos(radius / outer));
    const between = turn - covered;
    const free = step(
      "free",
      "IF(turn - covered > 2 * lift; 2 * SQRT(outer ^ 2 - radius ^ 2) + radius * (turn - covered - 2 * lift); 2 * outer * SIN((turn - covered) / 2))",
      between > 2 * lift
        ? 2 * Math.sqrt(outer ** 2 - radius ** 2) + radius * (between - 2 * lift)
        : 2 * outer * Math.sin(between / 2),
    );
    const over = pads * (outer * covered + free);
    step("added", "pads * (outer * covered + free) - girth", over - girth);
    return step("pad_girth", "pads * (outer * covered + free)", over);
  },
  draw({ pads, thickness }, { radius = 1, outer = 1, turn = 0, covered = 0, lift = 0 }) {
    const shapes: Shape[] = [
      { kind: "edge", edge: [arc([0, 0], radius, 0, 2 * Math.PI)], role: "guide", label: phrase`body` },
    ];
    const tape = Array.from({ length: pads }, (_, i) => {
      // The middle of pad 1 is at the foot of the drawing: the back, seen from above.
      const start = Math.PI / 2 - covered / 2 + i * turn;
      const end = start + covered;
      const at = (r: number, angle: number) => polarPoint([0, 0], r, angle);
      for (const edge of turn - covered > 1e-9 ? [start, end] : []) {
        shapes.push({ kind: "edge", edge: [line(at(radius, edge), at(outer, edge))], role: "placement" });
      }
      const pad = arc([0, 0], outer, start, end);
      const next = start + turn;
      if (turn - covered <= 2 * lift) return [pad, line(at(outer, end), at(outer, next))];
      return [
        pad,
        line(at(outer, end), at(radius, end + lift)),
        arc([0, 0], radius, end + lift, next - lift),
        line(at(radius, next - lift), at(outer, next)),
      ];
    });
    shapes.push({ kind: "edge", edge: tape.flat(), role: "seam", label: phrase`tape`, shows: "pad_girth" });
    if (thickness > 0) shapes.push(dimension([0, radius], [0, outer], { label: phrase`pad` }));
    return shapes;
  },
  examples: [
    {
      given: { girth: 100, thickness: 5, share: 1 },
      gives: 100 + 10 * Math.PI,
      unit: "cm",
      because: "a pad all round adds 2π times its thickness (Steiner)",
    },
    {
      given: { girth: 20 * Math.PI, thickness: 10, share: 1 / 3 },
      gives: 20 * Math.sqrt(3) + 20 * Math.PI,
      because: "radii 10 and 20: 120° of the outer circle, two tangents of √300, 120° of the inner",
    },
    {
      given: { girth: 20 * Math.PI, thickness: 10, share: 0.5, pads: 2 },
      gives: 20 * Math.PI + 40 * Math.SQRT2,
      because: "the pads are so thick that the tape spans from one to the other, two chords of 90°",
    },
  ],
});
