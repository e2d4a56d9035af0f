import { isAbove, isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { toCheck } from "../verdict.ts";

/**
 * Whether a sleeve cap is longer than the armhole by an amount that can be eased in: "ok", or a
 * sentence. The range is 2.5 to 4 cm (1 to 1 1/2 in) when `least` and `most` are left out: common
 * practice for a set-in sleeve of woven wool. Shirt sleeves, stiff and knitted cloths take less,
 * gathered heads much more.
 */
export const CAP_CHECK = define({
  name: "CAP_CHECK",
  summary: "Checks that a sleeve's cap is longer than the armhole by an amount that can be eased in.",
  source: "common practice",
  words: "sleeve head crown armscye set in ease cap fits verdict",
  takes: {
    cap: { kind: "length", about: "the cap seam of the sleeve, underarm to underarm", from: 1, to: 500 },
    armscye: { kind: "length", about: "the armhole it is sewn into, front and back", from: 1, to: 500 },
    least: {
      kind: "length",
      about: "smallest ease wanted",
      from: 0,
      to: 100,
      otherwise: { cm: 2.5, in: 1 },
    },
    most: {
      kind: "length",
      about: "largest ease that can be eased in",
      from: 0,
      to: 200,
      otherwise: { cm: 4, in: 1.5 },
    },
  },
  returns: "verdict",
  compute({ cap, armscye, least, most }, context) {
    const { step, say } = context;
    const low = context.step("least_ease", "least", least);
    const high = context.step("most_ease", "most", most);
    if (isAbove(low, high))
      throw new Refusal(
        (say) => phrase`most must be at least ${say(low, high)}, the smallest ease, not ${say(high, low)}`,
      );
    const ease = step("ease", "cap - armscye", cap - armscye);
    if (isBelow(ease, 0, cap))
      return toCheck(
        written`the cap is ${say(-ease, 0)} shorter than the armhole; it should be ${say(low)} to ${say(high)} longer`,
      );
    if (isBelow(ease, low, cap))
      return toCheck(
        written`the cap has ${say(ease, low)} of ease, less than ${say(low, ease)}: raise or widen it`,
      );
    if (isAbove(ease, high, cap))
      return toCheck(
        written`the cap has ${say(ease, high)} of ease, more than ${say(high, ease)}: lower it, or gather it`,
      );
    return "ok";
  },
  draw: ({ cap, armscye }) => twoSeams(cap, armscye, { names: [phrase`cap`, phrase`armscye`] }),
  examples: [
    { given: { cap: 18.25, armscye: 17 }, gives: "ok", because: "1 1/4 in is between 1 and 1 1/2" },
    {
      given: { cap: 17, armscye: 17.5 },
      gives: "check: the cap is 1/2 in shorter than the armhole",
      because: "a cap shorter than its armhole drags",
    },
    {
      given: { cap: 52, armscye: 45, least: 2, most: 5 },
      gives: "check: the cap has 7 cm of ease, more than 5 cm",
      because: "too much to ease in flat",
      unit: "cm",
    },
  ],
});
