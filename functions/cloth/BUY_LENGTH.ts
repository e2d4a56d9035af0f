import { inShopSteps, SHOP_STEP, shopStepsRule } from "../cutting/shop-steps.ts";
import { define } from "../define.ts";
import { dimension, outline, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";

/**
 * The length to ask for in the shop, in the book's unit: `length` plus the share `spare` of it,
 * rounded up to the next whole `step` that the shop cuts. A length within a billionth of a whole
 * number of steps is not rounded up. Shrinkage is only included as far as `spare` covers it.
 */
export const BUY_LENGTH = define({
  name: "BUY_LENGTH",
  summary:
    "How much cloth to buy for the length that is needed: rounded up to the next length the shop cuts.",
  source: "common practice: shops cut cloth by the eighth of a yard or by 10 cm",
  words: "round up yard eighth shop purchase fabric order spare extra",
  takes: {
    length: { kind: "length", about: "the length that is needed", from: 0, to: 100_000 },
    step: SHOP_STEP,
    spare: {
      kind: "share",
      usual: [0, 1],
      about: "how much more to buy for mistakes and flaws: 0.1 is a tenth",
      from: 0,
      to: 5,
      otherwise: 0,
    },
  },
  returns: "length",
  compute({ length, step: cutStep, spare }, context) {
    const { step } = context;
    const cut = context.step("shop_cut", "step", cutStep);
    const wanted = step("wanted", "length * (1 + spare)", length * (1 + spare));
    const buy = inShopSteps(wanted, cut);
    step("left_over", `${shopStepsRule("wanted")} - wanted`, buy - wanted);
    return step("buy", shopStepsRule("wanted"), buy);
  },
  draw({ length }, { buy = 0, wanted = 0 }) {
    if (buy === 0) return [];
    const deep = buy / 5;
    const shapes = outline(
      polygon([
        [0, 0],
        [buy, 0],
        [buy, deep],
        [0, deep],
      ]),
      { label: phrase`cloth` },
    );
    shapes.push(
      stroke(
        [
          [length, 0],
          [length, deep],
        ],
        "cut",
        { label: phrase`needed` },
      ),
      dimension([0, 1.2 * deep], [buy, 1.2 * deep], { label: phrase`buy`, shows: "buy" }),
      dimension([wanted, -deep / 5], [buy, -deep / 5], { label: phrase`left over`, shows: "left_over" }),
    );
    return shapes;
  },
  examples: [
    { given: { length: 88 }, gives: 90, because: "common practice: 2 1/2 yd is the next eighth of a yard" },
    { given: { length: 90, step: 9 }, gives: 90, because: "already ten quarters of a yard" },
    {
      given: { length: 204, step: 10, spare: 0.05 },
      gives: 220,
      unit: "cm",
      because: "204 cm and a twentieth are 214.2 cm, cut by the 10 cm",
    },
  ],
});
