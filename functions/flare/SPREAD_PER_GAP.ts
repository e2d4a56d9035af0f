import { define, Refusal } from "../define.ts";
import { dimension, stroke } from "../drawing.ts";

/**
 * What to open at the hem of each slash so that a strip `top` long gets a hem `hem` long; in the
 * book's unit. `sections` strips have one slash fewer between them, and each outer edge takes
 * `edge_share` of a gap: a half because an edge serves one section where a slash serves two.
 * Seam allowances are not in it. The Working says what full gaps at both edges would add instead.
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
    sections: {
      kind: "count",
      about: "strips between the slashes, the outer two included",
      from: 1,
      to: 200,
    },
    edge_share: {
      kind: "share",
      about: "how much of a gap each outer edge takes",
      from: 0,
      to: 1,
      otherwise: 0.5,
    },
  },
  returns: "length",
  work({ top, hem, sections, edge_share }, { step }) {
    const plain = (length: number) => Number(length.toPrecision(6));
    if (hem < top) {
      throw new Refusal(
        `hem must be at least as long as top, not ${plain(hem)} against ${plain(top)}: to take length out, fold the slashes over at the hem`,
      );
    }
    const spread = step("spread", "hem - top", hem - top);
    const gaps = step("gaps", "sections - 1 + 2 * edge_share", sections - 1 + 2 * edge_share);
    if (gaps === 0) throw new Refusal("sections must be at least 2 when the edges take nothing, not 1");
    // What is easily got wrong: the same gap in full at both edges too makes the hem longer than wanted.
    const full = (spread / gaps) * (sections + 1);
    step("gained_with_full_edges", "spread / gaps * (sections + 1)", full);
    step("too_much_with_full_edges", "gained_with_full_edges - spread", full - spread);
    return step("spread_per_gap", "spread / gaps", spread / gaps);
  },
  draw({ top, hem, sections, edge_share }, { spread_per_gap = 0 }) {
    // The hem laid out straight: strips and the gaps between them, with the edges' shares outside.
    const strip = top / sections;
    const low = top / 3;
    const shapes = [dimension([0, low + top / 12], [hem, low + top / 12], { label: "hem" })];
    let x = spread_per_gap * edge_share;
    for (let i = 0; i < sections; i += 1) {
      shapes.push(
        stroke(
          [
            [x, 0],
            [x + strip, 0],
            [x + strip, low],
            [x, low],
            [x, 0],
          ],
          "cut",
        ),
      );
      if (i === 0 && sections > 1) {
        shapes.push(
          dimension([x + strip, low], [x + strip + spread_per_gap, low], { shows: "spread_per_gap" }),
        );
      }
      x += strip + spread_per_gap;
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
