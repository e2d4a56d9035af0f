/** The steps in which a shop cuts cloth and trimmings: common practice, an eighth of a yard or 10 cm. */
import type { Take } from "../define.ts";
import { roundUpToWhole } from "../whole-number.ts";

/** The argument of every function that rounds up to them. */
export const SHOP_STEP = {
  kind: "length",
  usual: [1, 150],
  about: "the steps in which the shop cuts",
  from: 0.1,
  to: 1000,
  otherwise: { cm: 10, in: 4.5 },
} as const satisfies Take;

/** A length rounded up to the next whole step; one within a billionth of a whole number of steps is not rounded up. */
export const inShopSteps = (length: number, step: number): number => roundUpToWhole(length / step) * step;

/** The same as the rule of a step of the Working; `length` is the name of an earlier step, beside `shop_cut`. */
export const shopStepsRule = (length: string): string =>
  `ROUNDUP(ROUND(${length} / shop_cut; 8); 0) * shop_cut`;
