import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { ROUNDING, roundCount, roundCountRule } from "../rounding.ts";
import { DRESS_MAKING } from "../sources.ts";

/**
 * How many pleats of about a visible width go across a finished width, edge to edge. The Working
 * gives the width that makes this number come out even. Source: Dress Making, Trade Practical, p.
 * 203.
 */
export const PLEATS_ACROSS = define({
  name: "PLEATS_ACROSS",
  summary:
    "How many pleats of a given visible width go across a section, and the width that makes them come out even.",
  source: `${DRESS_MAKING}, pp. 203-204`,
  words: "number of pleats section width visible corrected even spacing normal pleats",
  takes: {
    finished: { kind: "length", about: "width once pleated", from: 1, to: 20_000 },
    width: {
      kind: "length",
      usual: [0.3, 60],
      about: "visible width of each pleat, approximately",
      from: 0.1,
      to: 200,
    },
    rounding: ROUNDING,
  },
  returns: "count",
  compute({ finished, width, rounding }, { step }) {
    if (isAbove(width, finished))
      throw new Refusal(
        (say) =>
          phrase`width must be at most the finished ${say(finished, width)}, not ${say(width, finished)}`,
      );
    const exact = step("exact", "finished / width", finished / width);
    const count = Math.max(1, roundCount(exact, rounding));
    step("corrected_width", `finished / MAX(1; ${roundCountRule("exact")})`, finished / count);
    return step("count", `MAX(1; ${roundCountRule("exact")})`, count);
  },
  draw({ finished }, { count = 0, corrected_width = 0 }) {
    const deep = finished / 8;
    const lines = Array.from({ length: Math.min(count, 200) + 1 }, (_, i) =>
      stroke([[i * corrected_width, 0], [i * corrected_width, deep]], i === 0 || i === count ? "cut" : "fold"),
    ); // biome-ignore format: points in pairs
    return [
      ...lines,
      dimension([0, -deep / 3], [corrected_width, -deep / 3], { shows: "corrected_width" }),
      dimension([0, deep * 1.4], [finished, deep * 1.4], { label: phrase`finished` }),
    ];
  },
  examples: [
    {
      given: { finished: 92, width: 5 },
      gives: 18,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 203 ex. 1a: 18 pleats, then 5.11 cm each",
    },
    {
      given: { finished: 50, width: 2.5 },
      gives: 20,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 204 a",
    },
    {
      given: { finished: 24, width: 5, rounding: "up" },
      gives: 5,
      because: "4.8 pleats, so five that are a little narrower",
    },
  ],
});
