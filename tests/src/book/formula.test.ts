import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isFormula,
  MOST_NESTED,
  MOST_SIGNS,
  type Tree,
  tokens,
  tooMuch,
  treeOf,
} from "../../../src/book/formula.ts";

const seed = 20_260_505;
const kinds = (formula: string) =>
  tokens(formula)
    .filter(({ kind }) => kind !== "space")
    .map(({ kind, text }) => `${kind} ${text}`);

describe("the tokens of a formula", () => {
  const bits = fc.constantFrom(
    "=", "36 1/2", "42 cm", "½", "1/2 in", "1 yd 9 in", '"a""b"', '"open', "“quote”", "B4", "$B$4", "Draft!B4", "'It''s'!B4", "A:C", "2:3",
    "SUM(", "hem", "größe", "#REF!", "#N/A", "<=", "−", "×", "{1;2|3}", ";", ",", ")", " ", "\n", "\u00a0", "\u2028", "😀", "'", "!", "\\",
  ); // biome-ignore format: a list

  test("joined together are the formula again, whatever is typed", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: "binary" }),
          fc.array(bits).map((list) => list.join("")),
        ),
        (formula) => {
          const list = tokens(formula);
          expect(list.map(({ text }) => text).join("")).toBe(formula);
          for (const { text, at } of list) expect(formula.slice(at, at + text.length)).toBe(text);
        },
      ),
      { seed, numRuns: 1000 },
    );
  });

  test.each([
    [
      "=EASE(36 1/2, 39)",
      ["operator =", "function EASE", "open (", "tape 36 1/2", "separator ,", "number 39", "close )"],
    ],
    ["=B2/2 in", ["operator =", "cell B2", "operator /", "tape 2 in"]],
    ["=1/2 in", ["operator =", "tape 1/2 in"]],
    ["=16-1/2", ["operator =", "number 16", "operator -", "number 1", "operator /", "number 2"]],
    ["=36½+½", ["operator =", "tape 36½", "operator +", "tape ½"]],
    ["=1 yd 9 1/2 in*2", ["operator =", "tape 1 yd 9 1/2 in", "operator *", "number 2"]],
    ["=42 CM", ["operator =", "tape 42 CM"]],
    ["=2 in_hand", ["operator =", "number 2", "name in_hand"]],
    ["=IN(3)", ["operator =", "function IN", "open (", "number 3", "close )"]],
    ["=1E3+2.5e-2", ["operator =", "number 1E3", "operator +", "number 2.5e-2"]],
    [
      "=SUM(Draft!A:C;$2:$3)",
      ["operator =", "function SUM", "open (", "columns Draft!A:C", "separator ;", "rows $2:$3", "close )"],
    ],
    ["='Over skirt'!B2:B9", ["operator =", "cell 'Over skirt'!B2", "operator :", "cell B9"]],
    ["=Größe!B2+größe", ["operator =", "cell Größe!B2", "operator +", "name größe"]],
    ["=B2_+ABCD2+hem", ["operator =", "name B2_", "operator +", "name ABCD2", "operator +", "name hem"]],
    ["=#REF!+#N/A", ["operator =", "error #REF!", "operator +", "error #N/A"]],
    ['="B2"&"a""b"', ["operator =", 'text "B2"', "operator &", 'text "a""b"']],
    ["=SUM ( B2 )", ["operator =", "function SUM", "open (", "cell B2", "close )"]],
  ])("of %s are what a maker means", (formula, expected) => {
    expect(kinds(formula)).toEqual(expected);
  });
});

/** A tree in brackets, so that what binds to what can be read. */
function told(tree: Tree | null): string {
  if (!tree) return "";
  switch (tree.is) {
    case "call":
      return `${tree.name}[${tree.args.map(told).join(";")}]`;
    case "sign":
      return tree.args.length === 1
        ? `(${tree.sign}${told(tree.args[0]!)})`
        : `(${tree.args.map(told).join(tree.sign)})`;
    case "range":
      return `<${told(tree.from)}:${told(tree.to)}>`;
    case "list":
      return `{${tree.items.map(told).join(" ")}}`;
    case "text":
      return `"${tree.text}"`;
    case "broken":
      return "broken";
    default:
      return tree.text;
  }
}

describe("the tree of a formula", () => {
  // Which sign binds tighter: OpenFormula 1.2 (OASIS), part 4, table 2 of operators; "-" before a figure binds tighter than "^", and "^" groups from the left.
  test.each([
    ["=1+2*3", "(1+(2*3))"],
    ["=(1+2)*3", "((1+2)*3)"],
    ["=-A2^2", "((-A2)^2)"],
    ["=2^3^2", "((2^3)^2)"],
    ["=2^-1", "(2^(-1))"],
    ["=5%*2", "((%5)*2)"],
    ["=1-2-3", "((1-2)-3)"],
    ["=a&b=c&d", "((a&b)=(c&d))"],
    ["=1+2<3*4", "((1+2)<(3*4))"],
    ["=SUM(A1:B2)", "SUM[<A1:B2>]"],
    ["=F(a;;b;)", "F[a;;b;]"],
    ["=F()", "F[]"],
    ["=F(G(1;2),3)", "F[G[1;2];3]"],
    ["={1;2|3}", "{1 2 3}"],
    ['="a""b"', '"a"b"'],
    ["=“a”", '"a"'],
    ["=2×3÷4−1", "(((2*3)/4)-1)"],
    ["=a≤b", "(a<=b)"],
    ["=36 1/2*2", "(36 1/2*2)"],
    ["=", "broken"],
    ["=1+", "(1+broken)"],
    ["=)(", "broken"],
    ["=SUM(", "SUM[]"],
    ['="open', '"open"'],
  ])("%s is read as %s", (formula, expected) => {
    expect(told(treeOf(formula))).toBe(expected);
  });

  test("tells where a call and its arguments stand", () => {
    const formula = "=1+ROUND( hem/2 ; 1 )*2";
    const tree = treeOf(formula) as Extract<Tree, { is: "sign" }>;
    const call = (tree.args[1] as Extract<Tree, { is: "sign" }>).args[0] as Extract<Tree, { is: "call" }>;
    expect(formula.slice(...call.span)).toBe("ROUND( hem/2 ; 1 )");
    expect(call.spans.map((span) => formula.slice(...span))).toEqual(["hem/2", "1"]);
  });

  test("is never an accident, whatever is typed", () => {
    const anything = fc.array(
      fc.constantFrom(..."=(){};,:+-*/^%\"'!#$&<> AB12½.|", "SUM(", "hem", "36 1/2"),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(anything, (list) => {
        told(treeOf(`=${list.join("")}`));
      }),
      { seed, numRuns: 2000 },
    );
  });

  test("a hundred thousand brackets are too much, and said so", () => {
    const formula = `=${"(".repeat(100_000)}`;
    expect(told(treeOf(formula))).toBe("broken");
    expect(tooMuch(formula)).toBe(
      `this formula has more than ${MOST_NESTED} brackets within one another; work a part of it in a cell of its own`,
    );
    expect(tooMuch(`=1${"+1".repeat(MOST_SIGNS)}`)).toMatch(
      /^this formula has 501 signs and the most is 500/,
    );
    expect(tooMuch(`=${"(".repeat(MOST_NESTED)}1${")".repeat(MOST_NESTED)}`)).toBeNull();
  });
});

test("a cell is worked out when it begins with = and says something", () => {
  for (const typed of ["=1", " = 1", "=a", "\n=1"]) expect(isFormula(typed), typed).toBe(true);
  for (const typed of ["", "=", " = ", "1=1", "'=1"]) expect(isFormula(typed), typed).toBe(false);
});
