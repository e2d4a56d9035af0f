import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/** Price of a length of cloth, in the money of `price`, which is for the length `per` (a yard, a metre). */
export const CLOTH_COST = define({
  name: "CLOTH_COST",
  summary: "What a length of cloth costs at a price for the yard or the metre.",
  source: "common practice",
  words: "price money budget per yard per metre fabric expense",
  takes: {
    length: { kind: "length", about: "length to buy", from: 0, to: 100_000 },
    price: { kind: "money", about: "price of the length per", from: 0, to: 1_000_000 },
    per: {
      kind: "length",
      usual: [60, 140],
      about: "the length that the price is for, such as a yard or a metre",
      from: 1,
      to: 10_000,
    },
  },
  returns: "money",
  compute({ length, price, per }, { step }) {
    const lengths = step("lengths", "length / per", length / per);
    return step("cost", "lengths * price", lengths * price);
  },
  draw({ length, per }) {
    return drawStrip({ length: Math.max(length, 0), width: per / 2, label: phrase`cloth` });
  },
  examples: [
    { given: { length: 90, price: 14, per: 36 }, gives: 35, because: "2 1/2 yd at 14 a yard" },
    { given: { length: 250, price: 18, per: 100 }, gives: 45, unit: "cm", because: "2.5 m at 18 a metre" },
  ],
});
