import { define } from "../define.ts";
import { drawPanel, PANEL_EDGES } from "../drafting/flared-panel.ts";
import { slashedStrip, totalGap } from "../drafting/slashed-strip.ts";
import type { Shape } from "../drawing/shapes.ts";
import { degrees, line } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { mark, movePiece, pieceOf } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";
import { between, panelsRound, skirt } from "../worn/skirt.ts";

/**
 * A straight strip slashed into equal sections and opened at the hem, or folded out at the top, by
 * a gap of its own at each slash, in the book's unit, without allowances. Edges, trued to smooth
 * curves: 1 top, 2 right side, 3 hem, 4 left side; one mark to a section, its straight grain.
 * A gap is what the hem gains, or the top loses, along the curve; straight across the slash a ruler shows a
 * hair less. Each outer edge takes `edge_share` of the gap next to it. The edge that is not
 * opened keeps the strip's length. `straight` is the section that lies along the grain of the
 * cloth; without it both sides lean alike. Source: geometry (functions/drafting/slashed-strip.ts).
 */
export const SLASHED_PANEL = define({
  name: "SLASHED_PANEL",
  summary:
    "A strip slashed and spread with a gap of its own at every slash, its edges trued (drawn as smooth curves).",
  source: "geometry",
  words:
    "slash and spread uneven gaps flare fold out collar peplum dart closed top lean grain truing sleeve puff puffed",
  takes: {
    top: { kind: "length", about: "length of the strip before it is slashed", from: 1, to: 2000 },
    depth: { kind: "length", about: "depth of the strip, from top to hem", from: 0.5, to: 500 },
    gaps: {
      kind: "length",
      about: "how far each slash opens, in order; there is one more section than slashes",
      from: 0,
      to: 500,
      many: true,
    },
    at: {
      kind: "text",
      about: "hem: spread there, the top keeps its length; top: folded out there, the hem keeps its length",
      choices: ["hem", "top"],
      otherwise: "hem",
    },
    edge_share: {
      kind: "share",
      about: "how much of the gap next to it each outer edge takes",
      from: 0,
      to: 1,
      otherwise: 0.5,
    },
    straight: {
      kind: "count",
      about:
        "the section that lies along the grain, counted from the left; both sides lean alike when left out",
      from: 1,
      to: 200,
      otherwise: null,
    },
  },
  returns: "piece",
  alike: { "top, depth": "it may be wider or longer" },
  compute({ top, depth, gaps, at, edge_share, straight }, { step, measure }) {
    if (gaps.length > 199) throw new Refusal(phrase`gaps must be at most 199 values, not ${gaps.length}`);
    const sections = measure("sections", "strips between the slashes, one more than gaps", gaps.length + 1);
    if (straight !== null && straight > sections) {
      throw new Refusal(phrase`straight must be a section from 1 to ${sections}, not ${straight}`);
    }
    step("section", "top / sections", top / sections);
    const all = measure(
      "all_gaps",
      "all gaps, with the edges' shares of the first and last",
      totalGap(gaps, edge_share),
    );
    const long = step("top_edge", 'IF(at = "top"; top - all_gaps; top)', at === "top" ? top - all : top);
    const hem = step("hem_edge", 'IF(at = "hem"; top + all_gaps; top)', at === "hem" ? top + all : top);
    step("side", "depth", depth);
    step("area", "(top_edge + hem_edge) / 2 * depth", ((long + hem) / 2) * depth);
    step("angle", "DEGREES(all_gaps / depth)", degrees(all / depth));
    const widest = Math.max(...gaps);
    measure(
      "widest_opening",
      "the widest gap as a ruler shows it, straight across the opened slash",
      2 * depth * Math.sin(Math.min(widest / depth, Math.PI) / 2),
    );
    const first = slashedStrip(top, depth, gaps, at === "top", edge_share, 0);
    const start = straight === null ? -first.end / 2 : -first.leans[straight - 1]!;
    const opened = slashedStrip(top, depth, gaps, at === "top", edge_share, start);
    opened.leans.forEach((lean, i) => {
      measure(`lean_${i + 1}`, () => phrase`degrees that the grain of section ${i + 1} leans`, degrees(lean));
    });
    const [left, right] = [opened.hem[0]!.from, opened.hem.at(-1)!.to];
    const piece = pieceOf(
      [opened.top, [line(opened.top.at(-1)!.to, right)], reverseEdge(opened.hem), [line(left, [0, 0])]],
      PANEL_EDGES,
      opened.middles.map((middle) => mark([middle], "grain")),
    );
    // A fan of less than half a circle can not come round on itself.
    const laid =
      all < Math.PI * depth
        ? piece
        : refuseUnlessSimple(
            "gaps open the strip so far that it would lie over itself: cut it in panels",
            piece,
          );
    if (straight !== null) return laid;
    const corner = opened.top.at(-1)!.to;
    return movePiece(laid, -corner[0] / 2, -corner[1] / 2);
  },
  draw({ top, depth, gaps, at, edge_share }, found, piece) {
    if (typeof piece !== "object") return [];
    const lean = (found.lean_1 ?? 0) * (Math.PI / 180);
    const before = edge_share * (gaps[0]! / depth);
    const [x, y] = piece.edges[0]![0]!.from;
    const { slashes } = slashedStrip(top, depth, gaps, at === "top", edge_share, lean - before);
    const cuts = slashes.flatMap(([end, from, to]): Shape[] =>
      [from, to].map(([hx, hy]) => ({
        kind: "edge",
        edge: [line([end[0] + x, end[1] + y], [hx + x, hy + y])],
        role: "slash",
      })),
    );
    const leans = piece.marks.map(({ line: middle }, i): Shape => {
      const [a, b] = [middle[0]!.from, middle[0]!.to];
      const text = `${Number((found[`lean_${i + 1}`] ?? 0).toFixed(1))}°`;
      return { kind: "note", at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], text };
    });
    const middle = piece.marks[Math.floor(piece.marks.length / 2)]!.line[0]!.from;
    return [
      ...drawPanel(piece, middle, {
        area: "area",
        top: "top_edge",
        hem: "hem_edge",
        side: "side",
      }),
      ...cuts,
      ...leans,
    ];
  },
  panel: { top: "top_edge", depth: "depth" },
  worn({ depth, gaps }, { top_edge = 0, hem_edge = 0 }, lengths) {
    const { count, says } = panelsRound(top_edge, "panel", lengths);
    return skirt(
      {
        waist: count * top_edge,
        depth,
        round: between(count * top_edge, count * hem_edge),
        // The cloth folds where it was opened.
        folds: Math.max(4, Math.min(40, count * gaps.length)),
        assumed: [phrase`it is worn at the waist`, says],
      },
      lengths,
    );
  },
  examples: [
    {
      given: { top: 16.5, depth: 8, gaps: [1.4, 1.4, 1.4, 1.4] },
      gives: { area: 160, edges: [16.5, 8, 23.5, 8] },
      because: "even gaps of 1.4 with half gaps at the edges are FLARED_PANEL(16.5; 23.5; 8)",
    },
    {
      given: { top: 40, depth: 20, gaps: [2, 5, 8], edge_share: 0 },
      gives: { area: 950, edges: [40, 20, 55, 20] },
      unit: "cm",
      because: "2 + 5 + 8 cm more at the hem; the sides stay straight",
    },
    {
      given: { top: 20, depth: 6, gaps: [0.5, 1, 0.5], at: "top" },
      gives: { area: 112.5, edges: [17.5, 6, 20, 6] },
      because: "folded out at the top: 2 in and a half of 1/2 in at each edge less there, the hem kept",
    },
  ],
});
