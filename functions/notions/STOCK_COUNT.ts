import { BONING } from "../cautions.ts";
import { define } from "../define.ts";
import { cutStock } from "../drafting/stock-cutting.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { roundUpToWhole } from "../whole-number.ts";

type Cells = readonly (number | null)[];

/** Every length to cut, longest first; refuses half-blank lines by their number. */
function toCut(lengths: Cells, quantities: Cells): number[] {
  if (lengths.length !== quantities.length)
    throw new Refusal(
      phrase`quantities must have the same number of cells as lengths, not ${quantities.length} against ${lengths.length}`,
    );
  const all = lengths.flatMap((length, i) => {
    const quantity = quantities[i] ?? null;
    if (length === null && quantity === null) return [];
    if (length === null) throw new Refusal(phrase`lengths, number ${i + 1}, is empty beside ${quantity!}`);
    if (quantity === null) throw new Refusal(phrase`quantities, number ${i + 1}, is empty beside ${length}`);
    return Array.from({ length: quantity }, () => length);
  });
  if (all.length === 0)
    throw new Refusal(phrase`lengths is empty: give at least one length and how many to cut`);
  if (all.length > 1000)
    throw new Refusal(phrase`quantities must come to at most 1000 in all, not ${all.length}`);
  return all.sort((a, b) => b - a);
}

/**
 * How many stock lengths of steel, reed, cane, ribbon or tape to buy for a list of lengths to cut
 * that can not be joined: a whole number, the fewest there can be (functions/drafting/stock-cutting.ts). For a list
 * too long to try every cutting the answer is the best one found, and `least` says what number is
 * proved. `loss` is lost at each cut. Lines blank in both are skipped. Source: geometry.
 */
export const STOCK_COUNT = define({
  name: "STOCK_COUNT",
  summary:
    "How many stock lengths of boning, hoop steel, ribbon or tape to buy for a list of lengths to cut.",
  source: "geometry: the fewest stock lengths, found by trying the cuttings",
  words: "bones steels buy cutting list lengths reed cane ribbon hoop wire how many waste offcut",
  takes: {
    lengths: { kind: "length", about: "lengths to cut", from: 0.5, to: 2000, many: true, blanks: true },
    quantities: { kind: "count", about: "how many of each", from: 1, to: 500, many: true, blanks: true },
    stock: { kind: "length", about: "length that the material is sold in", from: 2, to: 50_000 },
    loss: {
      kind: "length",
      usual: [0, 5],
      about: "length lost at each cut, to tips and ends",
      from: 0,
      to: 10,
      otherwise: 0,
    },
  },
  returns: "count",
  compute({ lengths, quantities, stock, loss }, { step, measure, doubt }) {
    const all = toCut(lengths, quantities);
    if (all[0]! > stock * (1 + 1e-9))
      throw new Refusal(
        (say) =>
          phrase`stock must be at least ${say(all[0]!, stock)}, the longest length to cut, not ${say(stock, all[0]!)}`,
      );
    const sum = measure(
      "all_told",
      "sum of all the lengths",
      all.reduce((a, b) => a + b, 0),
    );
    step("at_least", "ROUNDUP(ROUND(all_told / stock; 8); 0)", roundUpToWhole(sum / stock));
    const { cuts, least } = cutStock(all, stock, loss);
    measure("least", "the fewest stock lengths that any way of cutting needs", least);
    if (least < cuts.length)
      doubt(
        phrase`${cuts.length} is the best found, not proved least: this list is too long to try every way, and ${least} might be enough`,
      );
    const how = () =>
      least === cuts.length
        ? phrase`stock lengths, proved to be the fewest possible`
        : phrase`stock lengths of the best cutting found: this list is too long to try every way, and ${least} might be enough`;
    return measure("count", how, cuts.length);
  },
  draw({ lengths, quantities, stock, loss }) {
    const { cuts } = cutStock(toCut(lengths, quantities), stock, loss);
    const apart = stock / 20;
    const shapes: Shape[] = [dimension([0, -apart], [stock, -apart], { label: phrase`stock` })];
    cuts.slice(0, 60).forEach((row, i) => {
      const y = i * apart;
      shapes.push(
        stroke(
          [
            [0, y],
            [stock, y],
          ],
          "guide",
        ),
      );
      let x = 0;
      for (const length of row) {
        shapes.push(
          stroke(
            [
              [x, y],
              [x + length, y],
            ],
            "cut",
          ),
          stroke(
            [
              [x + length, y - apart / 4],
              [x + length, y + apart / 4],
            ],
            "cut",
          ),
        );
        x += length + loss;
      }
    });
    return shapes;
  },
  examples: [
    {
      given: { lengths: [10, 12, 8], quantities: [4, 2, 4], stock: 36 },
      gives: 3,
      because: "12 + 12 + 10, 10 + 10 + 10 and 8 + 8 + 8 + 8 in",
    },
    {
      given: { lengths: [60, null, 40], quantities: [3, null, 3], stock: 100 },
      gives: 3,
      unit: "cm",
      because: "a long and a short from each metre",
    },
    {
      given: { lengths: [32, 20, 10, 36], quantities: [2, 3, 2, 4], stock: 100 },
      gives: 3,
      unit: "cm",
      because:
        "36 + 32 + 32, then 36 + 36 + 20, then 36 + 20 + 20 + 10 + 10 cm: the longest first would take four",
    },
  ],
  cautions: BONING,
});
