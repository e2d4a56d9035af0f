/** The value of a cell as HyperFormula gives it. */
import { CellError, DetailedCellError, ErrorType } from "hyperformula";
import { CANT_BE_WORKED } from "./guards.ts";

export type RawValue = number | string | boolean | null | DetailedCellError;

/** How HyperFormula marks a formula that it threw at while it entered it: it keeps what it threw to itself. */
const THREW = "Parsing error. Invalid range size.";

export const threwAt = (value: unknown): boolean =>
  value instanceof DetailedCellError && value.message === THREW;

/** The value of a cell that HyperFormula throws at. */
export const cantBeWorked = (): DetailedCellError =>
  new DetailedCellError(new CellError(ErrorType.VALUE, CANT_BE_WORKED), "#VALUE!");
