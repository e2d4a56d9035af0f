/** HyperFormula's own messages in words for people who sew. Its refusals of a whole kind come last. */

import { phrase } from "../../functions/phrase.ts";

const TOO_GREAT = phrase`a number in this formula is greater than its function takes`;
const TOO_SMALL = phrase`a number in this formula is smaller than its function takes`;
const ONE_CELL = phrase`a range of cells stands where one cell is needed`;
const ALIKE = phrase`the ranges in this formula must be of the same size`;
const NO_DATE = phrase`a date in this formula is not valid; write it as 2026-05-04`;
export const NOT_FOUND = phrase`nothing was found to match`;

export const ENGINE_WORDS: Readonly<Record<string, string>> = {
  "Wrong number of arguments.": phrase`a function in this formula is given too many or too few arguments`,
  "Value cannot be coerced to number.": phrase`a text stands where this formula needs a number`,
  "Number argument expected.": phrase`a text stands where this formula needs a number`,
  "Number-only range expected.": phrase`a text stands where this formula needs a number`,
  "Wrong type of argument.": phrase`an argument of this formula is of the wrong kind`,
  "Value too large.": TOO_GREAT,
  "Index too large.": TOO_GREAT,
  "Index out of bounds.": TOO_GREAT,
  "Length out of bounds.": TOO_GREAT,
  "Selector cannot exceed the number of arguments.": TOO_GREAT,
  "Value too small.": TOO_SMALL,
  "Argument cannot be less than 1.": TOO_SMALL,
  "Argument cannot be 0.": TOO_SMALL,
  "Value cannot be negative.": TOO_SMALL,
  "Length cannot be negative.": TOO_SMALL,
  "Count cannot be negative.": TOO_SMALL,
  "Value needs to be an integer.": phrase`a number in this formula must be a whole number`,
  "NaN or infinite value encountered.": phrase`this has no number for an answer; check for a root of a negative number or a number far too large`,
  "Value not found.": NOT_FOUND,
  "Pattern not found.": NOT_FOUND,
  "None of the conditions were met.": NOT_FOUND,
  "Cell range not allowed.": ONE_CELL,
  "Cell range expected.": phrase`one cell stands where a range of cells is needed`,
  "Cell reference expected.": phrase`a number stands where a cell is needed`,
  "Range spans more than one sheet.": phrase`a range must stay on one page`,
  "Array dimensions are not compatible.": ALIKE,
  "Array dimensions mismatched.": ALIKE,
  "Ranges need to be of equal length.": ALIKE,
  "Wrong range dimension.": ALIKE,
  "No space for array result.": phrase`this formula gives a range of answers and a cell holds one`,
  "Empty range not allowed.": phrase`a range in this formula is blank`,
  "Needs at least one value.": phrase`a range in this formula holds no number`,
  "Range needs to contain at least two elements.": phrase`a range in this formula must hold two numbers or more`,
  "Invalid date.": NO_DATE,
  "Date outside of bounds.": NO_DATE,
  "String does not represent correct DateTime.": NO_DATE,
  "Result exceeds the maximum allowed length.": phrase`this gives a text too long for a cell`,
};

/** By the kind of error, when the message says no more. */
export const GENERAL: Readonly<Record<string, string>> = {
  NA: NOT_FOUND,
  NUM: phrase`this has no number for an answer; check the numbers it is given`,
  VALUE: phrase`a value in this formula is not of the kind it needs`,
  SPILL: phrase`this formula gives a range of answers and a cell holds one`,
  LIC: phrase`this function is not available`,
};
