import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { SECTIONS } from "../drafting/slashed-strip.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How far to open each slash at the hem so that a strip `top` long gets a hem `hem` long; in the
 * book's unit. A strip of `sections` sections has one slash fewer, and each outer edge takes
 * `edge_share` of a gap: a half because an edge serves one section where a slash serves two. Seam
 * allowances are not included. The Working says what full gaps at both edges would add instead.
 * Source: geometry.
 */
export const SPREAD_PER_GAP = define({
  name: "SPREAD_PER_GAP",
  summary: "How far to open each slash of a paper strip so that its hem comes out at the wanted length.",
  source: "geometry",
  words: "slash and spread flare fullness gap peplum difference divide",
  takes: {
    top: { kind: "length", about: "the edge that keeps its length", from: 1, to: 1000 },
    hem: { kind: "length", about: "the length wanted at the hem", from: 1, to: 5000 },
    ...SECTIONS,
  },
  returns: "length",
  compute({ top, hem, sections, edge_share }, { step }) {
    if (isBelow(hem, top)) {
      throw new Refusal(
        (say) =>
          phrase`hem must be at least as long as top, not ${say(hem, top)} against ${say(top, hem)}: to take length out, fold the slashes over at the hem`,
      );
    }
    const spread = step("spread", "hem - top", hem - top);
    const gaps = step("gaps", "sections - 1 + 2 * edge_share", sections - 1 + 2 * edge_share);
    if (gaps === 0) throw new Refusal(phrase`sections must be at least 2 when edge_share is 0, not 1`);
    // What is easily got wrong: the same gap in full at both edges too makes the hem longer than wanted.
    const full = (spread / gaps) * (sections + 1);
    step("gained_with_full_edges", "spread / gaps * (sections + 1)", full);
    step("too_much_with_full_edges", "gained_with_full_edges - spread", full - spread);
    return step("spread_per_gap", "spread / gaps", spread / gaps);
  },
  draw({ top, sections, edge_share }, { spread_per_gap: gap = 0 }) {
    // The paper strip as it lies on the table: slashed to the top edge, each section swung out on
    // its hinge until the hem stands open by the gap. How deep it is drawn is for the eye only.
    const wide = top / sections;
    const deep = Math.max(top / 3, gap * 1.2);
    const swing = 2 * Math.asin(Math.min(1, gap / (2 * deep)));
    const foot = ([x, y]: Point, lean: number): Point => [
      x - deep * Math.sin(lean),
      y + deep * Math.cos(lean),
    ];
    const shapes: Shape[] = [];
    let lean = (swing * (sections - 1)) / 2;
    let left: Point = [0, 0];
    const first = stroke([left, foot(left, lean + swing * edge_share)], "guide");
    for (let i = 0; i < sections; i += 1) {
      const right: Point = [left[0] + wide * Math.cos(lean), left[1] + wide * Math.sin(lean)];
      const low = foot(right, lean);
      shapes.push(stroke([left, right, low, foot(left, lean), left], "cut"));
      if (i < sections - 1)
        shapes.push(dimension(low, foot(right, lean - swing), i === 0 ? { shows: "spread_per_gap" } : {}));
      else if (edge_share > 0)
        shapes.push(first, stroke([right, foot(right, lean - swing * edge_share)], "guide"));
      left = right;
      lean -= swing;
    }
    return shapes;
  },
  examples: [
    {
      given: { top: 16.5, hem: 23.5, sections: 5 },
      gives: 1.4,
      because: "common practice: half waist to half hip over five sections, 7 in among 4 + 1 gaps",
    },
    {
      given: { top: 70, hem: 100, sections: 6, edge_share: 0.5 },
      gives: 5,
      because: "30 cm over 6 slits is 5 each",
      unit: "cm",
    },
    {
      given: { top: 20, hem: 26, sections: 4, edge_share: 0 },
      gives: 2,
      because: "edges kept, three slashes share 6 in",
    },
  ],
});
