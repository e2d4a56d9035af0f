import { define } from "../define.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";

/** The size to cut of something `finished` large with a turning on each of `edges` edges across it; in the book's unit. */
export const CUT_SIZE = define({
  name: "CUT_SIZE",
  summary: "How large to cut something of a finished size, turnings included.",
  source: "Hands, Church Needlework, 1907: turnings all round",
  words: "seam allowance turning hem add cut square panel finished size",
  takes: {
    finished: { kind: "length", about: "finished size", from: 0, to: 10_000 },
    turning: { kind: "length", about: "turning (allowance) at one edge", from: 0, to: 100 },
    edges: {
      kind: "count",
      about: "how many of the two opposite edges have a turning: 2, or 1 when the other is a fold",
      from: 0,
      to: 2,
      otherwise: 2,
    },
  },
  returns: "length",
  usual: ["turning <= finished"],
  compute({ finished, turning, edges }, { step }) {
    const turnings = step("turnings", "edges * turning", edges * turning);
    return step("cut", "finished + turnings", finished + turnings);
  },
  draw({ finished, turning, edges }, { cut = 0 }) {
    if (cut === 0) return [];
    const box = (from: number, to: number) =>
      polygon([
        [from, from],
        [to, from],
        [to, to],
        [from, to],
      ]);
    const start = edges === 2 ? turning : 0;
    return [
      ...outline(box(0, cut), { label: phrase`cut` }),
      ...(finished > 0 ? outline(box(start, start + finished), { label: phrase`finished` }) : []),
      dimension([0, cut * 1.08], [cut, cut * 1.08], { shows: "cut" }),
    ];
  },
  examples: [
    {
      given: { finished: 9, turning: 1 },
      gives: 11,
      because: "Hands, Church Needlework, 1907: 9 in and 1 in all round",
    },
    {
      given: { finished: 9, turning: 1.5, edges: 1 },
      gives: 10.5,
      because: "slippers of a 9 in foot: 1 1/2 in more (Oregon / Utah State extension L-86, 1964)",
    },
  ],
});
