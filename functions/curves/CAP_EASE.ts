import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";
import { phrase } from "../phrase.ts";

/**
 * How much longer a sleeve's cap seam is than the armhole it goes into, in the book's unit; below zero
 * when it is too short. Both measured on the sewing line. Source: common practice.
 */
export const CAP_EASE = define({
  name: "CAP_EASE",
  summary: "How much longer the cap of a sleeve is than the armhole.",
  source: "common practice",
  words: "sleeve head crown armscye fullness set in ease cap",
  takes: {
    cap: { kind: "length", about: "the cap seam of the sleeve, underarm to underarm", from: 1, to: 500 },
    armscye: { kind: "length", about: "the armhole it is sewn into, front and back", from: 1, to: 500 },
  },
  returns: "length",
  usual: ["cap >= armscye"],
  compute({ cap, armscye }, { step }) {
    step("share", "(cap - armscye) / armscye", (cap - armscye) / armscye);
    return step("ease", "cap - armscye", cap - armscye);
  },
  draw: ({ cap, armscye }, { ease = 0 }) =>
    twoSeams(cap, armscye, {
      names: [phrase`cap`, phrase`armscye`],
      ...(ease > 0 ? { differenceShows: "ease" } : {}),
    }),
  examples: [
    { given: { cap: 18.5, armscye: 17 }, gives: 1.5, because: "an inch and a half to ease in" },
    { given: { cap: 47, armscye: 44 }, gives: 3, because: "3 cm to ease in", unit: "cm" },
  ],
});
