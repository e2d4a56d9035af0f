/** Formulas and figures that once stopped the page: each is set aside, and the rest of the book works. */
import { describe, expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { explain } from "../../../src/engine/explain.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const at = (row: number, column = 1) => ({ page: 0, row, column });

/** B1 is 5, B2 is twice that, B3 is the bomb, B4 rests on the bomb. */
function withBomb(bomb: string): Book {
  const typings = ["5", "=B1*2", bomb, "=B3+1"].map((typed, row) => ({ ...at(row), typed }));
  return type(blankBook("The hem of the moon", "in", "1/8"), typings);
}

const ZEROS = "0".repeat(101);

/** The bomb, and how its sentence begins; null where it is worked after all. */
const BOMBS: readonly (readonly [string, RegExp | null])[] = [
  ["=0:5", /^0:5 names row 0/],
  ["=3:0", /^3:0 names row 0/],
  ["=SUM(5:0)", /^5:0 names row 0/],
  ["=SUM(Measure!$0:5)", /names row 0/],
  ["=SUM(B0:B3)", /^B0 names row 0/],
  ["=OFFSET()", /^this formula can.t be calculated/],
  ['=REPT("x";1e9)', /^argument 2 of REPT must be at most 100000, not 1000000000/],
  ['=SUBSTITUTE("abc";"";"x";36 1/2)', /^argument 4 of SUBSTITUTE must be a whole number, not 36.5/],
  ['=SUBSTITUTE("abcb";"b";"x";1.5)', /^argument 4 of SUBSTITUTE must be a whole number, not 1.5/],
  ['=LEN(SUBSTITUTE("abcb";"b";"xx";2))', null],
  [`=TEXT(1;"0.${ZEROS}")`, /^this formula can't be worked|^this formula makes|^this formula is too/],
  ["=SUM({B2})", /^B2 stands in braces/],
  ["={B2:C3}", /^B2 stands in braces/],
  ["=SUM({B1;B2})", /^B1 stands in braces/],
  ["=1e308*1 in", null],
  ["=1e-308", null],
  ["1e308", null],
  ["1e-308", null],
  ["=1e308*10", /no number/],
  ["=SEQUENCE(3)", /^this formula gives a range of answers/],
  ["=TRANSPOSE(B1:B2)", /^this formula gives a range of answers/],
  ["=__proto__", /no cell is named/],
  ["=constructor", /no cell is named/],
  ["=prototype+1", /no cell is named/],
  ["=toString()", /no function/],
  ["=hasOwnProperty(1)", /no function/],
];

describe("with this in a cell the rest of the book works:", () => {
  test.each(BOMBS)("%s", (bomb, sentence) => {
    const typed = new Engine(withBomb("7"), layDesk);
    typed.become(withBomb(bomb));
    for (const engine of [new Engine(withBomb(bomb), layDesk), typed]) {
      const view = engine.view(at(2));
      if (sentence === null) {
        expect(view.problem).toBeNull();
        expect(view.shown).not.toMatch(/NaN|Infinity/);
        expect(Number.isFinite(view.value)).toBe(true);
      } else {
        expect(view.problem?.sentence).toMatch(sentence);
        expect(view.problem?.from).toEqual(at(2));
        expect(engine.view(at(3)).problem?.from).toEqual(at(2));
        expect(engine.evaluate(bomb)).toHaveProperty("problem");
      }
      expect(engine.view(at(1)).value).toBe(10);
      checks(engine);
      explain(engine, at(2));
      explain(engine, at(3));
      engine.become(type(engine.book, [{ ...at(0), typed: "6" }]));
      expect(engine.view(at(1)).value).toBe(12);
      engine.become(type(engine.book, [{ ...at(2), typed: "3" }]));
      expect(engine.view(at(3)).value).toBe(4);
    }
  });
});

test("a list of figures in braces is worked as ever", () => {
  const engine = new Engine(withBomb("=SUM({1;2|3;4})"), layDesk);
  expect(engine.view(at(2)).value).toBe(10);
});

test("a call that is refused within another, with arguments that no rule can compare, throws nothing", () => {
  const engine = new Engine(
    withBomb('=COUNT(PLEATED_PANEL("1e9";0.1;"a");FLAT_WIDTH(9;"x";D1:E9))'),
    layDesk,
  );
  expect(engine.view(at(2)).value).toBe(0);
  expect(engine.evaluate('=COUNT(PLEATED_PANEL("1e9";0.1;"a");5)')).toMatchObject({ value: 1 });
  expect(engine.evaluate('=COUNT(FLAT_WIDTH(9;"x";D1:E9);5)')).toMatchObject({ value: 1 });
});

test("a formula of 40,000 quotes is refused before the engine looks for page titles in it", () => {
  // Read by the engine it took 18 s.
  const engine = new Engine(withBomb(`=B1*${"'".repeat(40_000)}1`), layDesk);
  expect(engine.view(at(2)).problem).toMatchObject({
    sentence: "this formula has 40000 quotes ' that enclose no title of a page before a !; delete them",
    from: at(2),
  });
  expect(engine.view(at(1)).value).toBe(10);
  const few = new Engine(withBomb("=B1*'''1"), layDesk);
  expect(few.view(at(2)).problem?.sentence).toBe("the sign ' has no meaning in a formula; delete it");
});

test("a sentence about a text of several lines is one line", () => {
  // Found by npm run attack -- --seed 20261128 --only "typed texts", cases 32, 40 and 143.
  const texts = [",5\n{~waistL 1 2 Z", "0:52:3@\n.;", "1e9\u{feff}SUM\r\n÷"];
  for (const kind of ["date", "length"] as const)
    for (const typed of texts) {
      const blank = blankBook("The hem of the moon", "in", "1/8");
      const columns = [{ heading: "", kind, width: 100 }];
      const pages = blank.pages.map((page) => ({ ...page, columns }));
      const engine = new Engine(type({ ...blank, pages }, [{ ...at(0, 0), typed }]), layDesk);
      const [check] = checks(engine);
      expect(check?.sentence).toMatch(/can't be read as a/);
      expect([check?.sentence, engine.view(at(0, 0)).problem?.sentence].join("")).not.toMatch(/[\n\r]/);
      engine.destroy();
    }
  const asked = new Engine(withBomb('=SPREAD_PER_GAP("a\nhem"; 1; 5)'), layDesk);
  expect(asked.view(at(2)).problem?.sentence).toMatch(/"a hem"/);
  expect(asked.view(at(2)).problem?.sentence).not.toMatch(/[\n\r]/);
});
