import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawCreases, drawFolded } from "../drafting/pleat-creases.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Depth of knife pleats, in the book's unit, that show the same part of every repeat of a striped
 * or checked cloth: a pleat and what shows between take a whole number of repeats. Source: geometry.
 */
export const PLEAT_TO_STRIPE = define({
  name: "PLEAT_TO_STRIPE",
  summary:
    "How deep to pleat striped or checked cloth, as for a kilt, so that every pleat shows the same stripe.",
  source: "geometry",
  words: "kilt sett tartan plaid check stripe repeat pleat to the line matching",
  takes: {
    repeat: { kind: "length", about: "the pattern's repeat across the pleats", from: 0.5, to: 200 },
    shown: { kind: "length", about: "how much of each repeat shows between the folds", from: 0.1, to: 200 },
    repeats: { kind: "count", about: "how many repeats each pleat takes", from: 1, to: 10, otherwise: 1 },
  },
  returns: "length",
  compute({ repeat, shown, repeats }, { step }) {
    const whole = step("each", "repeat * repeats", repeat * repeats);
    if (!isBelow(shown, whole))
      throw new Refusal(
        (say) =>
          phrase`shown must be less than the ${say(whole, shown)} of cloth to each pleat, not ${say(shown, whole)}`,
      );
    step("fullness", "each / shown", whole / shown);
    return step("depth", "(each - shown) / 2", (whole - shown) / 2);
  },
  draw({ shown }, { each = 0, depth = 0 }) {
    const lines = [0, 1, 2].flatMap((i) => {
      const fold = i * each + shown;
      return [
        { at: fold, kind: "fold" as const },
        { at: fold + depth, kind: "inner" as const },
        { at: fold + 2 * depth, kind: "placement" as const },
      ];
    });
    return [...drawCreases(3 * each, lines), ...drawFolded("knife", 3 * shown, 3, depth, each)];
  },
  examples: [
    {
      given: { repeat: 6, shown: 1 },
      gives: 2.5,
      because: "an inch shows of six; five are hidden in two layers",
    },
    {
      given: { repeat: 8, shown: 4, repeats: 2 },
      gives: 6,
      unit: "cm",
      because: "4 of 16 cm show, and 12 are hidden in two layers",
    },
  ],
});
