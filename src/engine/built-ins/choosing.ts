/** Built-in functions that choose between values or answer TRUE or FALSE. */
import type { BuiltIn } from "./built-in.ts";

export const CHOOSING: readonly BuiltIn[] = [
  {
    name: "IF",
    summary: "One of two values: the first when a test is true, the second when it is false.",
    words: "when then else otherwise condition choose between two values depending on case",
    takes: {
      test: "what is asked, such as hip > waist",
      if_true: "the value when the answer is yes",
      "[if_false]": "the value when the answer is no; FALSE when it is left out",
    },
    examples: [
      {
        formula: '=IF(hip > waist; "gather it"; "let it out")',
        gives: "gather it",
        because: "a hip of 40 is larger than a waist of 28",
      },
      { formula: "=IF(C3 >= 4; waist; hip)", gives: "28", because: "C3 is 4, and 4 is at least 4" },
    ],
    cautions: "a blank cell counts as 0 in a test: ask ISBLANK first where a cell may be blank.",
  },
  {
    name: "IFS",
    summary: "The value that stands after the first of several tests that is true.",
    words: "several conditions else if cases ranges",
    takes: {
      test: "the first test",
      value: "the value when the first test is true",
      "[test_and_value…]": "more tests, each with its value; TRUE as the last test stands for any other case",
    },
    examples: [
      {
        formula: '=IFS(C3 > 4; "many"; C3 > 2; "some"; TRUE; "few")',
        gives: "some",
        because: "4 is not more than 4, but it is more than 2",
      },
    ],
  },
  {
    name: "SWITCH",
    summary: "The value that belongs to what a cell holds, from a list of cases.",
    words: "choose between several texts cases match one of depending on style box knife",
    takes: {
      expression: "what is compared, such as a cell that holds the kind of pleat",
      case: "what it may be",
      value: "the value in that case",
      "[case_and_value…]": "more cases, each with its value",
      "[otherwise]": "the value when no case fits; without it the cell says that none fits",
    },
    examples: [
      {
        formula: '=SWITCH(B1; "wool"; "steam it"; "linen"; "wash it"; "ask first")',
        gives: "steam it",
        because: "the cloth in B1 is wool",
      },
      {
        formula: '=SWITCH("silk"; "wool"; "steam it"; "ask first")',
        gives: "ask first",
        because: "no case is silk",
      },
    ],
  },
  {
    name: "CHOOSE",
    summary: "The first, second, third … of several values, by a number.",
    words: "pick nth by number list of values",
    takes: {
      number: "which of the values, counted from 1",
      value: "the first value",
      "[value…]": "more values",
    },
    examples: [
      { formula: '=CHOOSE(2; "front"; "side"; "back")', gives: "side", because: "side is the second value" },
    ],
  },
  {
    name: "AND",
    summary: "TRUE when all of several tests are true.",
    words: "both all conditions together every",
    takes: { test: "a test, such as hip > waist", "[test…]": "more tests" },
    examples: [
      {
        formula: "=AND(hip > waist; waist > 30)",
        gives: "FALSE",
        because: "the waist is 28, so the second test is false",
      },
    ],
  },
  {
    name: "OR",
    summary: "TRUE when at least one of several tests is true.",
    words: "either any condition one of",
    takes: { test: "a test, such as hip > waist", "[test…]": "more tests" },
    examples: [
      { formula: '=OR(B1 = "wool"; B1 = "felt")', gives: "TRUE", because: "the cloth in B1 is wool" },
    ],
  },
  {
    name: "NOT",
    summary: "FALSE when a test is true, and TRUE when it is false.",
    words: "opposite unless other than",
    takes: { test: "the test" },
    examples: [{ formula: "=NOT(hip > waist)", gives: "FALSE", because: "the hip is larger than the waist" }],
  },
  {
    name: "IFERROR",
    summary: "A value, or another one in its place when the first is an error.",
    words: "hide an error instead of avoid division by zero fallback when it fails error in a cell",
    takes: { value: "the value or formula that may fail", instead: "what to give in its place" },
    examples: [
      {
        formula: '=IFERROR(MATCH("Hood"; A1:A4; 0); "no hood")',
        gives: "no hood",
        because: "no row says Hood, and MATCH alone would be an error",
      },
    ],
    cautions:
      "it hides every error, also the one you would want to see: use it where you know which error comes.",
  },
  {
    name: "ISBLANK",
    summary: "TRUE when nothing is typed in a cell.",
    words: "empty missing not filled in nothing there",
    takes: { cell: "the cell" },
    examples: [{ formula: "=ISBLANK(E4)", gives: "TRUE", because: "the waistband has no date yet" }],
  },
  {
    name: "ISNUMBER",
    summary: "TRUE when a cell holds a figure, such as a length, a number or a date.",
    words: "is a number figure not text check",
    takes: { cell: "the cell" },
    examples: [{ formula: "=ISNUMBER(A1)", gives: "FALSE", because: "A1 holds a text" }],
  },
];
