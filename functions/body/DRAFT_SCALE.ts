import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * A length from a printed draft, brought to another wearer in proportion, in the book's unit:
 * figure · (1 + share · (wearer / drafted_for − 1)). Old drafting books print their measurements
 * for one breast or one height; lengths scale by height, breadths by girth. A `share` below 1
 * applies only part of the change, as for shoulder and neck, which grow less than the breast.
 * Source: common practice.
 */
export const DRAFT_SCALE = define({
  name: "DRAFT_SCALE",
  summary: "Scales a length from a printed draft in proportion to the wearer.",
  source: "common practice",
  words: "scale up historical draft pattern book proportion proportional breast measure enlarge",
  takes: {
    figure: { kind: "length", about: "the length printed in the draft", from: -500, to: 2000 },
    drafted_for: {
      kind: "length",
      about: "the measurement the draft was printed for, such as breast 36",
      from: 1,
      to: 500,
    },
    wearer: { kind: "length", about: "the same measurement of the wearer", from: 1, to: 500 },
    share: {
      kind: "share",
      about: "how much of the change to apply: 1 all of it, 0.5 half",
      from: 0,
      to: 2,
      otherwise: 1,
    },
  },
  returns: "length",
  usual: ["wearer <= 2 * drafted_for", "wearer >= 0.5 * drafted_for"],
  alike: { "drafted_for, wearer": "the wearer may be larger or smaller than the draft" },
  compute({ figure, drafted_for, wearer, share }, { step }) {
    if (isAbove(wearer, 5 * drafted_for) || isAbove(drafted_for, 5 * wearer)) {
      throw new Refusal(
        (say) =>
          phrase`wearer must be the same measurement in the same unit as drafted_for, not ${say(wearer, drafted_for)} against ${say(drafted_for, wearer)}`,
      );
    }
    const ratio = step("ratio", "wearer / drafted_for", wearer / drafted_for);
    const followed = 1 + share * (ratio - 1);
    step("enlarged", "1 + share * (ratio - 1)", followed);
    return step("scaled", "figure * enlarged", figure * followed);
  },
  draw({ figure }, { scaled = figure }) {
    const high = Math.max(Math.abs(figure), Math.abs(scaled)) / 15;
    if (high === 0) return [];
    return [
      stroke([[0, 0], [figure, 0]], "guide", { label: phrase`printed` }),
      stroke([[0, high], [scaled, high]], "seam", { label: phrase`for the wearer` }),
      dimension([0, 2 * high], [scaled, 2 * high], scaled > 0 ? { shows: "scaled" } : {}),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { figure: 9, drafted_for: 36, wearer: 40 },
      gives: 10,
      because: "a quarter of the breast stays a quarter",
    },
    {
      given: { figure: 9, drafted_for: 36, wearer: 40, share: 0.5 },
      gives: 9.5,
      because: "half of the change is applied",
    },
  ],
});
