import { expect, test } from "vitest";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const column = (heading: string) => ({ heading, kind: "any", width: 100 }) as const;
const PANEL = "=RECTANGLE(20; 40)";

const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    {
      title: "Cut",
      stage: "Cut",
      columns: ["Piece", "Outline", "How many", "Cloth"].map(column),
      rows: [
        ["front", PANEL, "5", "linen"],
        [],
        ["enough?", '=CLOTH_CHECK(cut_list; stock; "linen")'],
        ["to buy", '=CLOTH_TO_BUY(cut_list; stock; "linen"; 54)'],
        ["from the chest", "=CUT_FROM(cut_list; stock; Stock!A1; Stock!B1; 54)"],
        ["left", "=STOCK_LEFT(stock; Stock!A2)"],
      ],
      notes: {},
    },
    {
      title: "Stock",
      stage: "Cut",
      columns: ["Name", "Cloth", "Usable width", "Length", "Shrinkage", "Reserved", "Price", "Colour"].map(
        column,
      ),
      rows: [
        ["chest linen", "linen", "42", "1 1/4 yd", "5%", "", "12", "grey"],
        ["roll end", "linen", "22", "95", "", "50", "", ""],
      ],
      notes: {},
    },
  ],
  names: { cut_list: "Cut!A1:D1", stock: "Stock!A1:H2" },
};
const answers = (engine: Engine) =>
  [2, 3, 4, 5].map((row) => {
    const { value, problem } = engine.view({ page: 0, row, column: 1 });
    return problem?.is === "error" ? problem.sentence : value;
  });

test("a book's list of cloth in stock is read under its headings, in either unit, and its faulty cell is marked", () => {
  const engine = new Engine(BOOK, layDesk);
  // 45 in less 5 % are 42 3/4: two panels on the chest linen, one on the 45 in left of the roll.
  expect(answers(engine)).toEqual([
    expect.stringMatching(/^check: .*no place for 2 of front/),
    40,
    "2 of front",
    45,
  ]);
  const metric = answers(new Engine(convertBook(BOOK, "cm"), layDesk));
  expect(metric.slice(1)).toEqual([expect.closeTo(40 * 2.54, 6), "2 of front", expect.closeTo(45 * 2.54, 6)]);
  expect(checks(engine).map(({ place }) => place)).toContainEqual({ page: 0, row: 2, column: 1 });
  const [cut, stock] = BOOK.pages;
  const rows = stock!.rows.map((row, i) => (i === 1 ? row.with(3, "") : row));
  engine.become({ ...BOOK, pages: [cut!, { ...stock!, rows }] });
  expect(answers(engine)[0]).toBe("roll end has no length: measure it, or take its row out of the stock");
  expect(engine.saidOf({ page: 1, row: 1, column: 3 }).length).toBeGreaterThan(0);
  // A length of 0 has a sentence too: it must not pass for a cloth that was used up.
  const zero = (...at: number[]) =>
    engine.become({
      ...BOOK,
      pages: [
        cut!,
        {
          ...stock!,
          rows: stock!.rows.map((row, i) => (at.includes(i) ? row.with(3, "0").with(5, "") : row)),
        },
      ],
    });
  const left = { page: 0, row: 5, column: 1 };
  zero(1);
  expect(engine.value(left)).toBe(0);
  expect(engine.view(left).problem?.sentence).toBe(
    "STOCK_LEFT: the length of roll end is 0, and nothing is cut from it: measure it, or take its row out of the stock",
  );
  expect(engine.view({ page: 0, row: 3, column: 1 }).problem?.sentence).toContain(
    "the length of roll end is 0",
  );
  const said = checks(engine).filter(({ sentence }) => sentence.includes("the length of roll end is 0"));
  expect(said.map(({ at, waiting }) => [at, waiting])).toEqual([[[{ page: 1, row: 1, column: 3 }], 2]]);
  zero(0, 1);
  expect(answers(engine)[0]).toBe("the length of all linen in stock is 0: measure a piece of it, or buy it");
});
