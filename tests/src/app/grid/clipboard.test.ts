import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blockText, repeated } from "../../../../src/app/grid/clipboard.ts";
import { textBlock } from "../../../../src/app/grid/understood.ts";

describe("blocks of cells as text", () => {
  // Tab-separated text as spreadsheets put it on the clipboard: IANA text/tab-separated-values, with
  // the quotes of RFC 4180 round cells that hold a tab, a line break or a quote.
  it("reads tabs and lines, with or without a last line break, of either kind", () => {
    const block = [
      ["waist", "27"],
      ["hip", "42 1/2"],
    ];
    for (const text of ["waist\t27\nhip\t42 1/2", "waist\t27\r\nhip\t42 1/2\r\n"]) {
      expect(textBlock(text)).toEqual(block);
    }
  });

  it("reads a quoted cell with a line break and doubled quotes as one cell", () => {
    expect(textBlock('"two\nlines"\t"say ""when"""\nx\ty')).toEqual([
      ["two\nlines", 'say "when"'],
      ["x", "y"],
    ]);
  });

  it("takes inch marks as they are, also a quote that never closes", () => {
    expect(textBlock("5' 3\"\t27")).toEqual([["5' 3\"", "27"]]);
    expect(textBlock('"open\t27\nhip\t42')).toEqual([
      ['"open', "27"],
      ["hip", "42"],
    ]);
  });

  it("fills short rows up with blanks, and gives no block for no text", () => {
    expect(textBlock("a\nb\tc")).toEqual([
      ["a", ""],
      ["b", "c"],
    ]);
    expect(textBlock("")).toEqual([]);
  });

  it("what was copied is pasted as it was, whatever is in the cells", () => {
    const cell = fc.string({ unit: fc.constantFrom("a", "1", " ", "\t", "\n", '"', "=", ";", ",", "½") });
    const blocks = fc
      .integer({ min: 2, max: 4 })
      .chain((wide) =>
        fc.array(fc.array(cell, { minLength: wide, maxLength: wide }), { minLength: 1, maxLength: 4 }),
      );
    fc.assert(
      fc.property(blocks, (block) => {
        expect(textBlock(blockText(block))).toEqual(block);
      }),
      { seed: 1867 },
    );
  });
});

describe("a block repeated over the chosen cells", () => {
  it("fills them when it goes into them a whole number of times", () => {
    expect(repeated([["a", "b"]], 2, 4)).toEqual([
      ["a", "b", "a", "b"],
      ["a", "b", "a", "b"],
    ]);
  });
  it("is put down once when it does not", () => {
    expect(repeated([["a", "b"]], 2, 3)).toEqual([
      ["a", "b"],
      ["a", "b"],
    ]);
    expect(repeated([["a"], ["b"]], 3, 1)).toEqual([["a"], ["b"]]);
  });
  it("of nothing is nothing", () => expect(repeated([], 3, 3)).toEqual([]));
});
