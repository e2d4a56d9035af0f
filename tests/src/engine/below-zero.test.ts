import { expect, test } from "vitest";
import { type Book, blankBook, type ColumnKind } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

function page(rows: readonly (readonly string[])[], kinds: readonly ColumnKind[] = []): Book {
  const blank = blankBook("Withy Green", "in", "1/8");
  const wide = Math.max(...rows.map((row) => row.length));
  const columns = Array.from({ length: wide }, (_, i) => ({
    heading: "",
    kind: kinds[i] ?? (i === 0 ? "text" : "any"),
    width: 100,
  }));
  return { ...blank, pages: [{ ...blank.pages[0]!, columns, rows }], names: {} };
}

function problems(book: Book): string[] {
  const engine = new Engine(book, layDesk);
  const list = checks(engine).map(
    ({ address, is, sentence }) =>
      `${address.replace("Measure!", "")} ${is}: ${sentence.replaceAll("Measure!", "")}`,
  );
  engine.destroy();
  return list;
}

const shopping = (price: string, needed = "8", stock = "3", second = "9.50") =>
  page([
    ["buttons", needed, stock, "=PACKS_TO_BUY(MAX(0;B1-C1);0;6;0)", price, "=D1*E1"],
    ["linen", "120", "0", "=TO_BUY(B2;C2)", second, "=CLOTH_COST(D2;E2;YD(1))"],
    ["the whole cost", "", "", "", "", "=F1+F2"],
  ]);

test("a price below zero is said at its cell when a cost multiplies it", () => {
  expect(problems(shopping("1.80"))).toEqual([]);
  expect(problems(shopping("0"))).toEqual([]);
  expect(problems(shopping("-1.80"))).toEqual([
    "E1 unusual: -1.80 is below zero, and buttons (F1) takes it for an amount: type 0 or more",
  ]);
  // The function that takes it refuses it by itself.
  expect(problems(shopping("1.80", "8", "3", "-9.50"))).toEqual([
    "F2 error: price must be at least 0, not -9.5",
  ]);
});

test("a need or a stock below zero is said where a formula goes down to zero with it", () => {
  expect(problems(shopping("1.80", "-8"))).toEqual([
    "B1 unusual: -8 is below zero, and buttons (D1) takes it for an amount: type 0 or more",
  ]);
  expect(problems(shopping("1.80", "8", "-3"))).toEqual([
    "C1 unusual: -3 is below zero, and buttons (D1) takes it for an amount: type 0 or more",
  ]);
});

test("hours below zero among others that are not are said, and so is each of two", () => {
  const hours = (...figures: string[]) =>
    problems(
      page([...figures.map((typed) => ["a garment", typed]), ["in all", `=SUM(B1:B${figures.length})`]]),
    );
  expect(hours("4", "5", "3")).toEqual([]);
  expect(hours("4", "-5", "3", "2")).toEqual([
    "B2 unusual: -5 is below zero, and hardly another number of the list B1:B4 that in all (B5) adds up is: type 0 or more",
  ]);
  expect(hours("4", "-5", "3", "-2")).toEqual([]);
});

test("a girth below zero is said where a formula takes the greater of two, in whatever way it is given", () => {
  const said = "B1 unusual: -40 is below zero, and wider (B3) takes it for an amount: type 0 or more";
  const wider = (formula: string, waist = "-40") =>
    problems(page([["waist", waist], ["hip", "42"], ["wider", formula]])); // biome-ignore format: rows of a page
  for (const formula of [
    "=MAX(B1;B2)",
    "=MAX(B2;B1)",
    "=MAX(0;B1)",
    "=MAX(B1;2*B2)",
    "=MIN(B1;B2)",
    "=2*MAX(B2;B1)+1",
  ])
    expect(wider(formula), formula).toEqual([said]);
  expect(wider("=MAX(B1;B2)", "40")).toEqual([]);
  expect(wider("=MAX(B1;B2)", "=B2-100")).toEqual([]);
  // Its source is said, however often the cell is repeated.
  expect(
    problems(page([["waist", "-40"], ["hip", "42"], ["waist again", "=B1"], ["wider", "=MAX(B3;B2)"]])),
  ).toEqual(["B1 unusual: -40 is below zero, and wider (B4) takes it for an amount: type 0 or more"]); // biome-ignore format: rows of a page
  // Of the changes of a fitting each may be below zero.
  expect(
    problems(page([["left", "-1"], ["right", "-1/2"], ["more", "=MAX(B1;B2)"]])),
  ).toEqual([]); // biome-ignore format: rows of a page
  expect(
    problems(page([["a", "4"], ["b", "-5"], ["c", "3"], ["d", "2"], ["most", "=MAX(B1:B4)"]])),
  ).toEqual([
    "B2 unusual: -5 is below zero, and hardly another number of the list B1:B4 that most (B5) takes the greatest of is: type 0 or more",
  ]); // biome-ignore format: rows of a page
});

test("a need or a stock below zero is said where IF stops at 0", () => {
  const toBuy = (needed: string, stock: string) =>
    problems(page([["linen", needed, stock, "=IF(B1<=C1;0;BUY_LENGTH(B1-C1;4))"]]));
  expect(toBuy("130", "0")).toEqual([]);
  expect(toBuy("-130", "0")).toEqual([
    "B1 unusual: -130 is below zero, and linen (D1) takes it for an amount: type 0 or more",
  ]);
  expect(toBuy("130", "-3")).toEqual([
    "C1 unusual: -3 is below zero, and linen (D1) takes it for an amount: type 0 or more",
  ]);
});

test("a difference may be below zero: less at the hip, a change at a fitting, a deduction", () => {
  for (const book of [
    page([
      ["hip", "40"],
      ["less at the hip", "-1 1/2"],
      ["hip of the skirt", "=B1+B2"],
      ["half", "=B2/2"],
      ["eased", "=WITH_EASE(B1;B2)"],
    ]),
    page(
      [
        ["let out", "-1/2"],
        ["seams", "4"],
        ["all round", "=B1*B2"],
        ["waist", "30"],
        ["after", "=B4+B3"],
      ],
      ["text", "any"],
    ),
    page(
      [
        ["first", "1/2"],
        ["second", "3/4"],
        ["third", "1/4"],
        ["fourth", "-1/4"],
        ["net", "=SUM(B1:B4)"],
      ],
      ["text", "length"],
    ),
    page([
      ["cloth", "=CLOTH_COST(72;9.50;36)"],
      ["thread", "4.00"],
      ["braid", "3.00"],
      ["rebate", "-2.00"],
      ["cost", "=SUM(B1:B4)"],
    ]),
    page([
      ["cloth", "=CLOTH_COST(72;9.50;36)"],
      ["rebate", "-10%"],
      ["cost", "=B1*(1+B2)"],
    ]),
  ])
    expect(problems(book)).toEqual([]);
});
