import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * The gap that stays at each laced opening when a garment is laced on, in the book's unit: (body −
 * drawn_in − garment) / openings. `garment` is the sewn garment from edge to edge, all round;
 * `drawn_in` is the amount by which the wearer is to be drawn in. 0 means laced shut; negative
 * means that the edges would overlap: the garment is too large to be laced so tight. Refuses to
 * draw in by more than a third of the girth. Source: geometry.
 */
export const LACING_GAP = define({
  name: "LACING_GAP",
  summary: "How wide the gap at each lacing stays when stays, a corset or a bodice is laced on.",
  source: "geometry",
  words: "corset stays lacing opening gap back lacing spring tight reduction modesty placket width",
  takes: {
    body: {
      kind: "length",
      about: "girth of the body there, over the layers worn underneath",
      from: 10,
      to: 500,
    },
    garment: { kind: "length", about: "the sewn garment from edge to edge, all round", from: 10, to: 500 },
    drawn_in: { kind: "length", about: "how much the body is drawn in", from: 0, to: 60, otherwise: 0 },
    openings: { kind: "count", about: "how many laced openings share the gap", from: 1, to: 8, otherwise: 1 },
  },
  returns: "length",
  usual: ["garment <= body", "drawn_in <= 0.3 * body"],
  compute({ body, garment, drawn_in, openings }, { step }) {
    if (isAbove(drawn_in, body / 3)) {
      throw new Refusal(
        (say) =>
          phrase`drawn_in must be less than a third of body, not ${say(drawn_in, body)} against ${say(body, drawn_in)}: nobody can be laced so tight safely`,
      );
    }
    const laced = step("laced_girth", "body - drawn_in", body - drawn_in);
    step("garment_share", "garment / laced_girth", garment / laced);
    return step("gap", "(laced_girth - garment) / openings", (laced - garment) / openings);
  },
  draw({ garment, openings }, { gap = 0 }) {
    // The garment laid flat in its parts, the gaps between their edges, two rows of eyelets each.
    const part = garment / openings;
    const deep = garment / 8;
    const room = Math.max(0, gap);
    return Array.from({ length: openings }, (_, i): Shape[] => {
      const x = i * (part + room) + room / 2;
      const end = x + part;
      const rows = [0.15, 0.5, 0.85].map((share) => share * deep);
      return [
        stroke([[x, 0], [end, 0], [end, deep], [x, deep], [x, 0]], "cut"),
        { kind: "marks", mark: "dot", at: rows.flatMap((y) => [[x + part / 40, y], [end - part / 40, y]] as const) },
        ...(gap > 0 ? [dimension([end, deep / 2], [end + gap, deep / 2], { shows: "gap" })] : []),
      ];
    }).flat(); // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { body: 30, garment: 26, drawn_in: 2 },
      gives: 2,
      because: "drawn in to 28, the stays 26 round",
    },
    {
      given: { body: 84, garment: 76, drawn_in: 4, openings: 2 },
      gives: 2,
      unit: "cm",
      because: "4 cm of gap, shared by front and back lacing",
    },
  ],
  cautions:
    "Lacing must never hinder breathing. Draw in little and slowly, loosen at once at pain, numbness or faintness, and make sure that the wearer can get out quickly. Not for children. Where there is any doubt of health, ask a doctor first.",
});
