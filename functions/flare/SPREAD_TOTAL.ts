import { define } from "../define.ts";
import { SECTIONS } from "../drafting/slashed-strip.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How much a hem gains, in the book's unit, when each slash is opened by `gap` and each outer edge
 * takes `edge_share` of a gap: the inverse of SPREAD_PER_GAP. A strip of `sections` sections has
 * one slash fewer. Source: geometry.
 */
export const SPREAD_TOTAL = define({
  name: "SPREAD_TOTAL",
  summary: "How much longer a hem grows when every slash is opened by the same gap.",
  source: "geometry",
  words: "slash and spread add up gaps sections fullness gained hem",
  takes: {
    gap: { kind: "length", about: "how far each slash is opened at the hem", from: 0, to: 500 },
    ...SECTIONS,
  },
  returns: "length",
  compute({ gap, sections, edge_share }, { step }) {
    const gaps = step("gaps", "sections - 1 + 2 * edge_share", sections - 1 + 2 * edge_share);
    if (gaps === 0) throw new Refusal(phrase`sections must be at least 2 when edge_share is 0, not 1`);
    step("with_full_edges", "gap * (sections + 1)", gap * (sections + 1));
    return step("total", "gap * gaps", gap * gaps);
  },
  draw({ gap, sections, edge_share }, { total = 0 }) {
    // The gaps pushed together, one after another: the edges' shares first and last.
    if (gap === 0) return [];
    const shares = [edge_share, ...Array<number>(sections - 1).fill(1), edge_share].filter(
      (share) => share > 0,
    );
    let x = 0;
    const boxes = shares.map((share) => {
      const [from, to] = [x, x + share * gap];
      x = to;
      return stroke([[from, 0], [to, 0], [to, gap], [from, gap], [from, 0]], "slash"); // biome-ignore format: points in pairs
    });
    return [...boxes, dimension([0, gap * 1.3], [total, gap * 1.3], { shows: "total" })];
  },
  examples: [
    { given: { gap: 1.4, sections: 5 }, gives: 7, because: "four slashes and two half gaps: five of 1.4" },
    {
      given: { gap: 1.4, sections: 5, edge_share: 1 },
      gives: 8.4,
      because: "with full gaps at both edges six of 1.4",
    },
    { given: { gap: 5, sections: 6 }, gives: 30, unit: "cm", because: "six gaps of 5 cm" },
  ],
});
