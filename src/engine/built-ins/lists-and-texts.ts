/** Built-in functions that look something up in a list, calculate with dates, or write texts. */
import type { BuiltIn } from "./built-in.ts";

export const LISTS_AND_TEXTS: readonly BuiltIn[] = [
  {
    name: "VLOOKUP",
    summary:
      "Looks for a text or figure in the first column of a block and gives another column of that row.",
    words: "look up find in a table row column price of",
    takes: {
      wanted: "what is looked for",
      block: "the block; its first column is searched",
      column: "which column of the block is given, counted from 1",
      "[sorted]":
        "FALSE for an exact match, which is nearly always wanted; TRUE when left out, for a sorted column",
    },
    examples: [
      {
        formula: '=VLOOKUP("Cuff"; A1:D4; 4; FALSE)',
        gives: "9",
        because: "column 4 of the block is the length",
      },
    ],
  },
  {
    name: "XLOOKUP",
    summary: "Looks for a text or figure in one list and gives the same row of another.",
    words: "look up find in a list match row other column",
    takes: {
      wanted: "what is looked for",
      list: "the list that is searched",
      answers: "the list whose row is given",
      "[otherwise]": "what to give when nothing matches",
    },
    examples: [
      { formula: '=XLOOKUP("Cuff"; A1:A4; B1:B4)', gives: "linen", because: "the cuff is cut of linen" },
      { formula: '=XLOOKUP("Hood"; A1:A4; B1:B4; "no hood")', gives: "no hood", because: "no row says Hood" },
    ],
  },
  {
    name: "INDEX",
    summary: "The cell in a certain row and column of a block.",
    words: "nth row of a list cell at position",
    takes: {
      block: "the block",
      row: "which row of it, counted from 1",
      "[column]": "which column of it; 1 when left out",
    },
    examples: [{ formula: "=INDEX(A1:D4; 3; 1)", gives: "Cuff", because: "the third row's first cell" }],
  },
  {
    name: "MATCH",
    summary: "In which row of a list a text or figure stands.",
    words: "position of in a list which row find",
    takes: {
      wanted: "what is looked for",
      list: "the list",
      "[manner]": "0 for an exact match, which is nearly always wanted; 1 when left out, for a sorted list",
    },
    examples: [{ formula: '=MATCH("Cuff"; A1:A4; 0)', gives: "3", because: "the cuff is in the third row" }],
  },
  {
    name: "TODAY",
    summary: "Today's date; it is another one tomorrow.",
    words: "date now current day days since age of a measurement",
    takes: {},
    examples: [{ formula: "=TODAY() - TODAY()", gives: "0", because: "no day lies between today and today" }],
    cautions: "type a date such as 2026-05-04 where the day must stay, as for a fitting.",
  },
  {
    name: "DATE",
    summary: "The date of a year, a month and a day.",
    words: "make a date year month day",
    takes: { year: "the year", month: "the month, 1 to 12", day: "the day of the month" },
    examples: [{ formula: "=DATE(2026; 5; 4)", gives: "2026-05-04", because: "the fourth of May" }],
  },
  {
    name: "DAYS",
    summary: "How many days lie between two dates.",
    words: "days between since until difference of dates how long weeks",
    takes: { end: "the later date", start: "the earlier date" },
    examples: [{ formula: "=DAYS(E3; E1)", gives: "7", because: "from the 4th to the 11th of May" }],
  },
  {
    name: "CONCATENATE",
    summary: "Joins texts into one; the sign & between two texts does the same.",
    words: "join two texts together combine glue words label ampersand",
    takes: { text: "the first text", "[text…]": "more texts" },
    examples: [
      {
        formula: '=CONCATENATE(A1; ", "; B1)',
        gives: "Skirt front, wool",
        because: "a comma is put between them",
      },
      { formula: '=B3 & " " & A3', gives: "linen Cuff", because: "& joins as well" },
    ],
    cautions: "a length joined to a text loses its fractions: write it with TAPE_TEXT.",
  },
  {
    name: "LEFT",
    summary: "The first letters of a text.",
    words: "beginning part of a text first characters",
    takes: { text: "the text", "[count]": "how many letters; 1 when left out" },
    examples: [{ formula: "=LEFT(A1; 5)", gives: "Skirt", because: "the first five letters" }],
  },
  {
    name: "UPPER",
    summary: "A text in capitals.",
    words: "capital letters uppercase",
    takes: { text: "the text" },
    examples: [{ formula: "=UPPER(B1)", gives: "WOOL", because: "wool in capitals" }],
  },
];
