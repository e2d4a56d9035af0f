import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawDart } from "../drawing/dart.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How much each of several equal darts takes in, measured on the edge from leg to leg, in the
 * book's unit: the edge minus its finished length, minus the amount that the seams take, divided
 * by the number of darts. Source: geometry.
 */
export const DART_INTAKE = define({
  name: "DART_INTAKE",
  summary: "How wide each dart must be so that an edge finishes at the wanted length.",
  source: "geometry",
  words: "waist dart width shape suppress take in bust hip difference",
  takes: {
    edge: { kind: "length", about: "length of the edge on the flat piece", from: 1, to: 1000 },
    finished: { kind: "length", about: "length it should have when the darts are sewn", from: 1, to: 1000 },
    darts: { kind: "count", about: "how many darts", from: 1, to: 40, otherwise: 1 },
    at_seams: {
      kind: "length",
      about: "how much of the difference the side seams take in",
      from: 0,
      to: 500,
      otherwise: 0,
    },
  },
  returns: "length",
  compute({ edge, finished, darts, at_seams }, { step }) {
    if (isAbove(finished + at_seams, edge))
      throw new Refusal(
        (say) =>
          phrase`finished must be at most ${say(edge - at_seams, finished)}, which the seams leave of the edge, not ${say(finished, edge - at_seams)}`,
      );
    const spare = step("to_take_in", "edge - finished - at_seams", edge - finished - at_seams);
    return step("intake", "to_take_in / darts", spare / darts);
  },
  draw: ({ edge }, { intake = 0 }) =>
    intake > 0 ? drawDart(intake, Math.max(edge / 3, intake), { intake: "intake" }) : [],
  examples: [
    {
      given: { edge: 11, finished: 8, darts: 2, at_seams: 0.5 },
      gives: 1.25,
      because: "3 in too much, half an inch at the seam, the rest in two darts",
    },
    { given: { edge: 52, finished: 38, darts: 4 }, gives: 3.5, because: "14 cm in four darts", unit: "cm" },
  ],
});
