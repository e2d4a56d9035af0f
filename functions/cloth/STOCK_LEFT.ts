import { asBlock } from "../block.ts";
import { JOB_TAKE, STOCK_TAKE } from "../cutting/stock-form.ts";
import { stockNamed } from "../cutting/stock-list.ts";
import { doubtNoLength } from "../cutting/stock-question.ts";
import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * What is left of one piece of cloth in stock, in the book's unit: its length less the length that is reserved, as
 * it is before washing. What is reserved for `job` counts as left for it. An odd piece is as long as its shape. A
 * blank name gives an empty text. Refuses a name that the stock does not have or has twice, a piece without a length,
 * and one of which more is reserved than there is. Source: common practice.
 */
export const STOCK_LEFT = define({
  name: "STOCK_LEFT",
  summary: "How much is left of a piece of cloth in stock when what jobs have reserved is taken off.",
  source: "common practice",
  words: "stash remaining remnant available reserved free unreserved inventory",
  takes: {
    stock: STOCK_TAKE,
    name: { kind: "text", about: "the name of the piece of cloth; a blank gives an empty text" },
    job: JOB_TAKE,
  },
  returns: "length",
  compute({ stock, name, job }, { measure, step, cm, doubt }) {
    if (name.trim() === "") return measure("left", "no cloth is named", "");
    const piece = stockNamed(stock, name, job, cm);
    doubtNoLength([piece], doubt);
    const length = measure("length", () => phrase`the length of ${piece.name}`, piece.length);
    const reserved = measure("reserved", "the length of it that is reserved", piece.reserved);
    return step("left", "length - reserved", length - reserved);
  },
  draw: (_given, { length = 0, left = 0 }) =>
    left > 0 ? drawStrip({ length: left, width: length / 8, label: phrase`left` }) : [],
  examples: [
    {
      given: {
        stock: asBlock(
          [
            ...["Cloth", "Name", "Usable width", "Length", "Reserved"],
            ...["linen", "chest linen", 42, 90, 22.5, "wool", "remnant", 54, 30, null],
          ],
          5,
          [],
        ),
        name: "Chest linen",
      },
      gives: 67.5,
      because: "90 less 22 1/2",
    },
  ],
});
