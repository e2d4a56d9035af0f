import { inShopSteps, SHOP_STEP, shopStepsRule } from "../cutting/shop-steps.ts";
import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * The length to ask for in the shop, in the book's unit, when some is in stock: what is missing, rounded up
 * to the next whole `step` that the shop cuts, and at least `least`, the shortest length that it cuts. 0 when the
 * stock is enough. A missing length within a billionth of a whole number of steps is not rounded up. The stock
 * is taken off as if it joined on to what is bought, which stands beside the answer: how the pieces lie on separate lengths of cloth
 * is CLOTH_TO_BUY's to say.
 * Shrinkage is not included: SHRINK_ALLOW. Source: common practice.
 */
export const TO_BUY = define({
  name: "TO_BUY",
  summary:
    "How much to buy of a cloth or a trimming when some is in stock: in the shop's steps, at least its shortest cut.",
  source:
    "common practice: shops cut by the eighth of a yard or by 10 cm, and seldom less than a quarter of a yard",
  words: "shopping list stock missing short minimum cut purchase needed left round up order",
  takes: {
    needed: { kind: "length", about: "the length that is needed in all", from: 0, to: 1_000_000 },
    in_stock: {
      kind: "length",
      about: "the length that is there already",
      from: 0,
      to: 1_000_000,
      otherwise: 0,
    },
    step: SHOP_STEP,
    least: {
      kind: "length",
      usual: [0, 300],
      about: "the shortest length that the shop cuts",
      from: 0,
      to: 10_000,
      otherwise: 0,
    },
  },
  returns: "length",
  alike: {
    "needed, in_stock": "either may be the longer: there may be more in stock than is needed",
    "needed, least": "a need may be shorter than the shop's shortest cut",
    "in_stock, least": "a remnant in stock may be as short as the shop's shortest cut",
  },
  compute({ needed, in_stock, step: cut, least }, { step }) {
    const missing = step("missing", "MAX(0; needed - in_stock)", Math.max(0, needed - in_stock));
    const shop = step("shop_cut", "step", cut);
    const steps = step("whole_steps", shopStepsRule("missing"), inShopSteps(missing, shop));
    return step(
      "buy",
      "IF(whole_steps > 0; MAX(whole_steps; least); 0)",
      steps > 0 ? Math.max(steps, least) : 0,
    );
  },
  beside: ({ in_stock }, answer, { say }) =>
    in_stock > 0 && Number(answer) > 0
      ? phrase`what is in stock, ${say(in_stock)}, is taken off as if it and this were one length; of cloth, where each piece must lie on one or the other, CLOTH_TO_BUY says how much to buy`
      : "",
  draw: ({ needed }, { buy = 0 }) =>
    drawStrip({ length: buy, width: Math.max(buy, needed) / 8, label: phrase`to buy` }),
  examples: [
    {
      given: { needed: 130, in_stock: 50 },
      gives: 81,
      because: "80 in are missing: eighteen eighths of a yard are 81 in",
    },
    { given: { needed: 50, in_stock: 60 }, gives: 0, because: "there is enough" },
    {
      given: { needed: 204, in_stock: 200, step: 10, least: 25 },
      gives: 25,
      unit: "cm",
      because: "4 cm are missing, and the shop cuts no less than 25 cm",
    },
  ],
});
