import { define } from "../define.ts";
import { phrase, written } from "../phrase.ts";
import { fromTape } from "../units.ts";
import { toCheck } from "../verdict.ts";

/** Deepest hem for each shape of skirt, as the table prints it in inches, and in round centimetres. */
const DEEPEST = {
  circle: { in: 1 / 4, cm: 0.6 },
  flared: { in: 1.5, cm: 4 },
  "slightly flared": { in: 3, cm: 7.5 },
  straight: { in: 4, cm: 10 },
} as const;

/**
 * Whether a hem is too deep for the shape of the skirt to lie flat: "ok", or a sentence. A circle
 * skirt takes 1/4 in or a rolled hem, a flared skirt 1 1/2 in, a slightly flared one 2 to 3 in, a
 * straight skirt of sheer cloth up to 4 in. Source: Oregon State extension 1961, table of hems.
 */
export const HEM_CHECK = define({
  name: "HEM_CHECK",
  summary: "Checks that a hem is not too deep for the shape of the skirt to lie flat.",
  source: "It's Fun to Sew a Cotton School Dress, Oregon State extension L-87, 1961, Hems, table",
  words: "hem depth how deep circle flared straight skirt verdict",
  takes: {
    depth: { kind: "length", usual: [0, 40], about: "finished depth of the hem", from: 0, to: 200 },
    shape: {
      kind: "text",
      about: "shape of the skirt",
      choices: ["circle", "flared", "slightly flared", "straight"],
    },
  },
  returns: "verdict",
  compute({ depth, shape }, { measure, unit, say }) {
    const most = measure(
      "deepest",
      () => phrase`deepest hem for a ${shape} skirt, from the table`,
      fromTape(DEEPEST[shape], unit),
    );
    if (depth <= most * (1 + 1e-9)) return "ok";
    return toCheck(
      written`a hem of ${say(depth, most)} is too deep for a ${shape} skirt; up to ${say(most, depth)} lies flat`,
    );
  },
  examples: [
    { given: { depth: 0.25, shape: "circle" }, gives: "ok", because: "Oregon State 1961: 1/4 in or rolled" },
    {
      given: { depth: 2, shape: "flared" },
      gives: "check: a hem of 2 in is too deep for a flared skirt; up to 1 1/2 in lies flat",
      because: "Oregon State 1961: 1 1/2 in",
    },
    { given: { depth: 7, shape: "slightly flared" }, gives: "ok", because: "2 to 3 in", unit: "cm" },
  ],
});
