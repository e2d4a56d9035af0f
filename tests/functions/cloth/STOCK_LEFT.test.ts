import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { STOCK_LEFT } from "../../../functions/cloth/STOCK_LEFT.ts";
import { run } from "../../../functions/run.ts";

const stock = asBlock(
  [
    ...["Piece of cloth", "Usable width", "Length", "Shape", "Reserved", "Reserved for"],
    ...["blue wool", 54, 120, null, 36, "cook", "corner", null, null, "M 0 0 H 20 L 30 44 H 0 Z", null, null],
    ...["red wool", 54, null, null, null, null, "lace", 4, 20, null, 21, "cook"],
  ],
  6,
  [],
);
const left = (name: string, job: string | null = null) => run(STOCK_LEFT, [stock, name, job], { unit: "in" });

test("what is left is the length less what is reserved for others, and a remnant is as long as its shape", () => {
  expect(left("Blue  wool")).toBe(120 - 36);
  expect(left("blue wool", "smith")).toBe(120 - 36);
  expect(left("blue wool", "Cook")).toBe(120);
  expect(left("corner")).toBe(44);
  expect(left("")).toBe("");
});

test("cloth without a length and a reservation of more than there is are refused at their cells", () => {
  expect(left("red wool")).toMatchObject({
    refusal: "red wool has no length: measure it, or take its row out of the stock",
    at: { position: 0, cell: 3 * 6 + 2 },
  });
  expect(left("lace")).toMatchObject({
    refusal: "21 in of lace is reserved, but it is only 20 in long: reserve less of it",
    at: { cell: 4 * 6 + 4 },
  });
  expect(left("blue wol")).toMatchObject({
    refusal: 'no cloth in stock is called "blue wol"; is "blue wool" meant?',
  });
});
