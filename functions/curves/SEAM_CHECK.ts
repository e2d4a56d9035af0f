import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";
import { written } from "../phrase.ts";
import { toCheck, wantedText } from "../verdict.ts";

/**
 * Whether two edges can be sewn together when the first should be longer by `ease` (which is eased
 * in; negative when the first should be shorter): "ok", or a sentence. A difference of up to
 * `tolerance` is ok: 1.5 mm or 1/16 in when it is left out, about the error of a pencil line and a
 * presser foot (common practice).
 */
export const SEAM_CHECK = define({
  name: "SEAM_CHECK",
  summary: "Checks that two edges which are sewn together are equally long, or differ by the ease wanted.",
  source: "common practice",
  words: "walk the seams true up compare edges, seams do not match",
  takes: {
    first_edge: {
      kind: "length",
      about: "length of the first edge, the one that may be longer",
      from: 0,
      to: 10000,
    },
    second_edge: {
      kind: "length",
      about: "length of the second edge, which it is sewn to",
      from: 0,
      to: 10000,
    },
    ease: {
      kind: "length",
      about: "how much longer the first edge should be; negative for shorter",
      from: -1000,
      to: 1000,
      otherwise: 0,
    },
    tolerance: {
      kind: "length",
      about: "the largest difference from this that is still ok",
      from: 0,
      to: 100,
      otherwise: { cm: 0.15, in: 1 / 16 },
    },
  },
  returns: "verdict",
  compute({ first_edge, second_edge, ease, tolerance }, context) {
    const { step, say } = context;
    const allowed = context.step("allowed", "tolerance", tolerance);
    const difference = step("difference", "first_edge - second_edge", first_edge - second_edge);
    const off = step("off", "difference - ease", difference - ease);
    if (Math.abs(off) <= allowed * (1 + 1e-9)) return "ok";
    const by = say(Math.abs(difference), Math.abs(ease), 0);
    const found =
      difference === 0
        ? written`the first edge is as long as the second`
        : difference > 0
          ? written`the first edge is ${by} longer than the second`
          : written`the first edge is ${by} shorter than the second`;
    return toCheck(written`${found}; ${wantedText(ease, say(Math.abs(ease), Math.abs(difference), 0))}`);
  },
  draw: ({ first_edge, second_edge }) => twoSeams(first_edge, second_edge),
  examples: [
    { given: { first_edge: 17.05, second_edge: 17 }, gives: "ok", because: "within 1/16 in" },
    {
      given: { first_edge: 17.5, second_edge: 17 },
      gives: "check: the first edge is 1/2 in longer than the second; they should be equally long",
      because: "common practice: seams are walked before cutting",
    },
    {
      given: { first_edge: 13.4, second_edge: 12.6, ease: 0.8 },
      gives: "ok",
      because: "a back shoulder 8 mm longer, eased in",
      unit: "cm",
    },
  ],
});
