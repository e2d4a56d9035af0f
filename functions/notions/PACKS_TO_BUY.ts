import { define } from "../define.ts";
import { phrase } from "../phrase.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * How many packs to buy of what is sold by number, such as buttons on a card, hooks or eyelets in a box, when some
 * are in stock: what is missing, and `spare` of it more, in whole packs. 0 when the stock is enough. Without `pack` each is
 * a pack of its own, with a caution. Source: common practice.
 */
export const PACKS_TO_BUY = define({
  name: "PACKS_TO_BUY",
  summary: "How many packs or cards of buttons, hooks or other small wares to buy when some are in stock.",
  source: "common practice",
  words: "buttons hooks eyelets card box count number purchase shopping list needed spare",
  takes: {
    needed: { kind: "count", about: "how many are needed in all", from: 0, to: 1_000_000 },
    in_stock: { kind: "count", about: "how many are there already", from: 0, to: 1_000_000, otherwise: 0 },
    pack: {
      kind: "count",
      about: "how many a pack holds; where it is not said, each is counted as a pack, with a caution",
      from: 1,
      to: 10_000,
      otherwise: null,
    },
    spare: {
      kind: "share",
      usual: [0, 1],
      about: "how many more to buy for losses: 0.1 is a tenth of what is missing",
      from: 0,
      to: 5,
      otherwise: 0,
    },
  },
  returns: "count",
  alike: {
    "needed, in_stock": "either may be the greater: there may be more in stock than are needed",
    "needed, pack": "a pack may hold more than are needed",
    "in_stock, pack": "a part of a pack may be in stock",
  },
  compute({ needed, in_stock, pack, spare }, { step, measure, doubt }) {
    const held = pack === null ? measure("held", "each is a pack of its own", 1) : step("held", "pack", pack);
    const missing = step("missing", "MAX(0; needed - in_stock)", Math.max(0, needed - in_stock));
    const wanted = step("wanted", "missing * (1 + spare)", missing * (1 + spare));
    if (pack === null && missing > 0)
      doubt(phrase`how many a pack holds is not given, so each is counted as a pack of its own`);
    return step("packs", "ROUNDUP(ROUND(wanted / held; 8); 0)", roundUpToWhole(wanted / held));
  },
  examples: [
    {
      given: { needed: 34, in_stock: 5, pack: 6 },
      gives: 5,
      because: "29 are missing: five cards of six hold 30",
    },
    { given: { needed: 4, in_stock: 5, pack: 6 }, gives: 0, because: "there are enough" },
    { given: { needed: 100, in_stock: 0, pack: 50, spare: 0.1 }, gives: 3, because: "110 are 2.2 packs" },
  ],
});
