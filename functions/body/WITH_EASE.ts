import { LACING } from "../cautions.ts";
import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { girthRings } from "../drawing/girth-rings.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * A measurement with its ease, in the book's unit: body · (1 + share) + amount. Either may be
 * negative, as for stays or knitted cloth that stretches to fit. Refuses a result of 0 or less.
 * Source: common practice.
 */
export const WITH_EASE = define({
  name: "WITH_EASE",
  summary: "A measurement with ease added: a fixed amount, a share of the measurement, or both.",
  source: "common practice",
  words: "add ease room wearing allowance larger negative stretch",
  takes: {
    body: { kind: "length", about: "the measurement", from: 1, to: 500 },
    amount: { kind: "length", about: "the fixed ease, negative to take off", from: -200, to: 1000 },
    share: {
      kind: "share",
      about: "ease as a share of the measurement: 0.05 for 5 %",
      from: -0.6,
      to: 5,
      otherwise: 0,
    },
  },
  returns: "length",
  usual: ["amount <= body"],
  compute({ body, amount, share }, { step }) {
    const ease = step("ease", "body * share + amount", body * share + amount);
    const eased = body + ease;
    if (!isAbove(eased, 0, body)) {
      throw new Refusal(
        (say) =>
          phrase`amount must leave a length above 0: ${say(ease, body, eased)} of ease on ${say(body, ease, eased)} comes to ${say(eased, ease, body)}`,
      );
    }
    step("stands_off", "ease / (2 * PI())", ease / (2 * Math.PI));
    return step("with_ease", "body + ease", eased);
  },
  draw: ({ body }, { with_ease = body, stands_off = 0 }) =>
    girthRings(
      { girth: body, label: phrase`body` },
      { girth: with_ease, label: phrase`with ease`, shows: "with_ease" },
      stands_off > 0 ? "stands_off" : null,
    ),
  examples: [
    { given: { body: 39, amount: 2.5 }, gives: 41.5, because: "39 plus 2 1/2" },
    { given: { body: 36, amount: 0.5, share: 0.05 }, gives: 38.3, because: "a twentieth of 36 is 1.8" },
  ],
  cautions: `Where the garment is to be smaller than the body: ${LACING}`,
});
