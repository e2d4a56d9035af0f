/** How standard functions and signs take the cells that they are given. */

/** Standard functions that pass over the blanks and texts of their ranges. */
export const OVER_LISTS = new Set([
  "SUM", "MAX", "MIN", "AVERAGE", "MEDIAN", "PRODUCT", "SUMPRODUCT", "LARGE", "SMALL", "SUMSQ", "STDEV", "STDEV.S",
  "STDEV.P", "VAR", "VAR.S", "VAR.P", "GEOMEAN", "HARMEAN",
]); // biome-ignore format: a list

/** Standard functions of plain figures, in which a blank cell is 0. */
export const OF_FIGURES = new Set(["SQRT", "POWER", "QUOTIENT", "SIN", "COS", "TAN", "EXP", "LN", "SIGN"]);

/** Standard functions that ask what a cell holds: a cell they are given may be blank or a text. */
export const ASKING = new Set([
  "ISBLANK", "ISNUMBER", "ISTEXT", "ISNONTEXT", "ISERROR", "COUNT", "COUNTA", "COUNTBLANK", "N", "T", "TYPE",
]); // biome-ignore format: a list

/** Functions that choose or look up one of their arguments, and pass on what they find whatever it is. */
export const CHOOSING: Record<string, true> = {
  IF: true, IFERROR: true, IFNA: true, INDEX: true, CHOOSE: true, SUMIF: true, HLOOKUP: true, VLOOKUP: true,
  XLOOKUP: true, OFFSET: true,
}; // biome-ignore format: a table

/** Signs that work with figures, and signs that compare. */
export const COUNTING = new Set(["+", "-", "*", "/", "^", "%"]);
export const ORDERING = new Set(["<", ">", "<=", ">="]);
