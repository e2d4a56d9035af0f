import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";

/**
 * Verdict: does seam `a` go on seam `b`, when `a` shall be longer by `ease` (eased or stretched in
 * sewing; below zero when it shall be shorter)? Off by `tolerance` at most is ok: 1.6 mm or 1/16 in
 * when none is told, about what a pencil line and a presser foot leave open (common practice).
 */
export const SEAM_CHECK = define({
  name: "SEAM_CHECK",
  summary: "Checks that two edges which are sewn together are equally long, or differ by the ease wanted.",
  source: "common practice",
  words: "walk the seams match true up compare edges verdict",
  takes: {
    a: { kind: "length", about: "the edge meant to be the longer", from: 0, to: 10000 },
    b: { kind: "length", about: "the edge it is sewn to", from: 0, to: 10000 },
    ease: {
      kind: "length",
      about: "how much longer a shall be",
      from: -1000,
      to: 1000,
      otherwise: 0,
    },
    tolerance: {
      kind: "length",
      about: "how far off is still ok",
      from: 0,
      to: 100,
      otherwise: { cm: 0.15, in: 1 / 16 },
    },
  },
  returns: "verdict",
  compute({ a, b, ease, tolerance }, context) {
    const { step, say } = context;
    const allowed = context.step("allowed", "tolerance", tolerance);
    const difference = step("difference", "a - b", a - b);
    const off = step("off", "difference - ease", difference - ease);
    if (Math.abs(off) <= allowed * (1 + 1e-9)) return "ok";
    const found =
      difference === 0
        ? "as long as"
        : `${say(Math.abs(difference), Math.abs(ease), 0)} ${difference > 0 ? "longer" : "shorter"} than`;
    const wanted =
      ease === 0
        ? "they should be equal"
        : `it should be ${say(Math.abs(ease), Math.abs(difference), 0)} ${ease > 0 ? "longer" : "shorter"}`;
    return `look: a is ${found} b, ${wanted}`;
  },
  draw: ({ a, b }) => twoSeams(a, b),
  examples: [
    { given: { a: 17.05, b: 17 }, gives: "ok", because: "within 1/16 in" },
    {
      given: { a: 17.5, b: 17 },
      gives: "look: a is 1/2 in longer than b, they should be equal",
      because: "common practice: seams are walked before cutting",
    },
    {
      given: { a: 13.4, b: 12.6, ease: 0.8 },
      gives: "ok",
      because: "a back shoulder 8 mm longer, eased in",
      unit: "cm",
    },
  ],
});
