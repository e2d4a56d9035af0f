/** Built-in functions over lists of figures: sums, counts, averages, the largest and the smallest. */
import type { BuiltIn } from "./built-in.ts";

const FIGURES = "figures, cells or blocks of cells, such as D1:D4";
const MORE = { "[figures…]": "more of them" };
const LIST = "the cells that are tested, such as B1:B4";
const TEST = 'what a cell must be: a text such as "wool", or a test such as ">10"';

export const SUMS: readonly BuiltIn[] = [
  {
    name: "SUM",
    summary: "Adds up figures, cells or blocks of cells; texts and blanks are passed over.",
    words: "add up a column total sum altogether plus",
    takes: { figures: FIGURES, ...MORE },
    examples: [
      { formula: "=SUM(D1:D4)", gives: "116 3/4", because: "38 1/2 + 40 1/4 + 9 + 29" },
      { formula: "=SUM(waist; 1 1/2)", gives: "29 1/2", because: "28 + 1 1/2" },
    ],
  },
  {
    name: "SUMIF",
    summary: "Adds up only the rows of a list that pass a test, such as those of one cloth.",
    words: "add only the rows that match total for one cloth conditional sum when",
    takes: {
      tested: LIST,
      test: TEST,
      "[figures]": "the cells that are added, row by row; the tested cells when left out",
    },
    examples: [
      {
        formula: '=SUMIF(B1:B4; "wool"; D1:D4)',
        gives: "78 3/4",
        because: "the two pieces of wool are 38 1/2 and 40 1/4 long",
      },
    ],
  },
  {
    name: "SUMIFS",
    summary: "Adds up only the rows of a list that pass several tests at once.",
    words: "add rows several conditions total match both",
    takes: {
      figures: "the cells that are added",
      tested: LIST,
      test: TEST,
      "[tested_and_test…]": "more cells, each with its test",
    },
    examples: [
      {
        formula: '=SUMIFS(D1:D4; B1:B4; "linen"; C1:C4; ">1")',
        gives: "9",
        because: "only the cuff is of linen and cut more than once",
      },
    ],
  },
  {
    name: "SUMPRODUCT",
    summary: "Multiplies two lists row by row and adds up the products, such as how many times how long.",
    words: "multiply columns then add total quantity times length weighted",
    takes: { list: "the first list", "[list…]": "more lists of as many rows" },
    examples: [
      {
        formula: "=SUMPRODUCT(C1:C4; D1:D4)",
        gives: "222 1/2",
        because: "2 × 38 1/2 + 2 × 40 1/4 + 4 × 9 + 1 × 29",
      },
    ],
  },
  {
    name: "AVERAGE",
    summary: "The average (mean) of figures; texts and blanks are passed over.",
    words: "mean of several measurements middle typical",
    takes: { figures: FIGURES, ...MORE },
    examples: [{ formula: "=AVERAGE(D1:D2)", gives: "39 3/8", because: "half of 38 1/2 + 40 1/4" }],
  },
  {
    name: "AVERAGEIF",
    summary: "The average of the rows of a list that pass a test.",
    words: "mean only rows match condition",
    takes: {
      tested: LIST,
      test: TEST,
      "[figures]": "the cells that are averaged; the tested cells when left out",
    },
    examples: [{ formula: '=AVERAGEIF(B1:B4; "linen"; D1:D4)', gives: "19", because: "half of 9 + 29" }],
  },
  {
    name: "MEDIAN",
    summary:
      "The figure in the middle when figures stand in order of size: one wrong figure hardly moves it.",
    words: "middle figure robust typical of several measurements",
    takes: { figures: FIGURES, ...MORE },
    examples: [{ formula: "=MEDIAN(27 3/4; 28; 31)", gives: "28", because: "28 stands in the middle" }],
  },
  {
    name: "MAX",
    summary: "The largest of figures, cells or blocks of cells.",
    words: "largest figure greatest biggest longest most highest maximum at least",
    takes: { figures: FIGURES, ...MORE },
    examples: [
      { formula: "=MAX(D1:D4)", gives: "40 1/4", because: "the skirt back is the longest piece" },
      { formula: "=MAX(hip - 44; 0)", gives: "0", because: "never less than nothing: 40 − 44 is below 0" },
    ],
  },
  {
    name: "MIN",
    summary: "The smallest of figures, cells or blocks of cells.",
    words: "smallest figure least shortest lowest minimum at most",
    takes: { figures: FIGURES, ...MORE },
    examples: [{ formula: "=MIN(D1:D4)", gives: "9", because: "the cuff is the shortest piece" }],
  },
  {
    name: "COUNT",
    summary: "How many cells hold figures; texts and blanks are not counted.",
    words: "count cells how many figures number of measurements filled in",
    takes: { figures: FIGURES, ...MORE },
    examples: [{ formula: "=COUNT(E1:E4)", gives: "3", because: "three pieces have a date" }],
  },
  {
    name: "COUNTA",
    summary: "How many cells hold anything, whether text or number.",
    words: "count filled cells not empty texts how many rows",
    takes: { cells: "cells or blocks of cells", "[cells…]": "more of them" },
    examples: [{ formula: "=COUNTA(A1:A4)", gives: "4", because: "four pieces have a name" }],
  },
  {
    name: "COUNTBLANK",
    summary: "How many cells of a block are blank.",
    words: "count empty missing not filled in how many left",
    takes: { cells: "the block of cells" },
    examples: [{ formula: "=COUNTBLANK(E1:E4)", gives: "1", because: "the waistband has no date yet" }],
  },
  {
    name: "COUNTIF",
    summary: "How many cells of a block pass a test.",
    words: "count how many match condition rows that are",
    takes: { tested: LIST, test: TEST },
    examples: [
      { formula: '=COUNTIF(B1:B4; "wool")', gives: "2", because: "two pieces are cut of wool" },
      { formula: '=COUNTIF(D1:D4; ">30")', gives: "2", because: "38 1/2 and 40 1/4 are over 30" },
    ],
  },
];
