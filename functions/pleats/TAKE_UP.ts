import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { dimension } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * What is to be pleated, gathered or tucked away at one level, in the book's unit: the flat width
 * minus the finished one. Source: Conover, Complete Course in Dressmaking, vol. 5, 1921, pp. 63-64.
 */
export const TAKE_UP = define({
  name: "TAKE_UP",
  summary: "How much fullness must be taken up at waist, hip or hem: the flat width minus the finished one.",
  source: "Conover, Complete Course in Dressmaking, vol. 5, 1921, pp. 63-64",
  words: "fullness difference excess pleat away gather in dart ease at waist hip hem",
  takes: {
    flat: { kind: "length", about: "flat width at one level", from: 0, to: 100_000 },
    finished: { kind: "length", about: "finished width wanted at that level", from: 0, to: 100_000 },
  },
  returns: "length",
  compute({ flat, finished }, { step }) {
    if (isBelow(flat, finished))
      throw new Refusal(
        (say) =>
          phrase`flat must be at least as wide as finished, not ${say(flat, finished)} against ${say(finished, flat)}`,
      );
    return step("taken", "flat - finished", flat - finished);
  },
  draw({ flat, finished }) {
    const width = flat / 10;
    const strips = drawStrips(
      { length: flat, width, label: phrase`flat` },
      { length: finished, width, label: phrase`finished` },
    );
    const y = width * 1.3;
    return flat > finished ? [...strips, dimension([finished, y], [flat, y], { shows: "taken" })] : strips;
  },
  examples: [
    {
      given: { flat: 44, finished: 14 },
      gives: 30,
      because: "Conover 1921, p. 63: half width 44, half waist 14",
    },
    { given: { flat: 44, finished: 27.5 }, gives: 16.5, because: "Conover 1921, p. 64: at the hem" },
    { given: { flat: 120, finished: 70 }, gives: 50, unit: "cm", because: "the difference" },
  ],
});
