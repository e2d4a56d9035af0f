/** Values in the words of the tape: what a cell shows for what it holds. */

import { type Decimal, withDecimalMark } from "../../functions/decimal.ts";
import type { Kind } from "../../functions/define.ts";
import { readTape, type TapeMark, tapeText } from "../../functions/fractions.ts";
import { marksOnTape } from "../../functions/marks-text.ts";
import { numberText } from "../../functions/number-text.ts";
import { asRead, phrase } from "../../functions/phrase.ts";
import { pieceBounds, readPiece } from "../../functions/pieces/piece.ts";
import { convert, type TapeUnit, type Unit } from "../../functions/units.ts";
import type { CellSettings } from "../book/shape.ts";

export interface Rule {
  readonly unit: Unit;
  readonly mark: TapeMark;
  readonly decimal?: Decimal;
}

/** A plain number without needless places: at most `places` after the decimal mark. */
export const plainNumber = (value: number, places = 4, decimal?: Decimal): string =>
  withDecimalMark(
    Math.abs(value) >= 1e15 ? value.toExponential(4) : String(Number(value.toFixed(places)) + 0),
    decimal,
  );

/** A length with its unit: "16 1/2 in". */
export const lengthText = (length: number, { unit, mark, decimal }: Rule): string =>
  `${tapeText(length, unit, mark, decimal)} ${unit}`;

/** A day as the engine counts it (days since 1899-12-30) as ISO writes it. */
export const dayText = (day: number): string =>
  new Date(Math.round(day - 25569) * 86_400_000).toISOString().slice(0, 10);

/** A value as a cell shows it that has decimal places or a unit of its own; its value stays as it is. */
export function showSet(
  value: number | string | boolean | null,
  kind: Kind,
  rule: Rule,
  { decimals, unit }: CellSettings,
): string {
  const figure = typeof value === "number" && kind !== "days";
  if (!figure || (decimals === undefined && (unit === undefined || kind !== "length")))
    return show(value, kind, rule);
  const fixed = (one: number, places: number) =>
    withDecimalMark(one.toFixed(places).replace(/^-(0(?:\.0*)?)$/, "$1"), rule.decimal);
  if (kind === "length" && unit !== undefined) {
    const length = convert(value, rule.unit, unit);
    if (decimals !== undefined) return `${fixed(length, decimals)} ${unit}`;
    // The marks of one tape are not those of the other.
    const tape = unit === rule.unit ? tapeText(length, unit, rule.mark, rule.decimal) : null;
    return `${tape ?? plainNumber(length, SHOWN_PLACES[unit], rule.decimal)} ${unit}`;
  }
  const text = fixed(value, decimals!);
  return kind === "area" ? phrase`${text} sq ${rule.unit}` : kind === "angle" ? `${text}°` : text;
}

/** Decimal places of a length in a unit that is not the book's: about a millimetre. */
const SHOWN_PLACES: Readonly<Record<TapeUnit, number>> = { in: 2, cm: 1, mm: 0, yd: 3, ft: 2, m: 3 };

/** A value of this kind as a cell shows it. */
export function show(value: number | string | boolean | null, kind: Kind, rule: Rule): string {
  const { unit, mark, decimal } = rule;
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") {
    if (kind === "piece") return pieceText(value, rule);
    // For translators: the verdict of a check that finds nothing wrong.
    if (kind === "verdict" && value === "ok") return phrase`ok`;
    return kind === "text" ? marksOnTape(asRead(value), rule) : asRead(value);
  }
  switch (kind) {
    case "length":
      return tapeText(value, unit, mark, decimal);
    case "area":
      return phrase`${plainNumber(value, 2, decimal)} sq ${unit}`;
    case "angle":
      return `${plainNumber(value, 2, decimal)}°`;
    case "money":
      return withDecimalMark((Math.abs(value) < 0.005 ? 0 : value).toFixed(2), decimal);
    case "days":
      return value > 20_000 && value < 120_000 ? dayText(value) : plainNumber(value, 2, decimal);
    default:
      return plainNumber(value, 4, decimal);
  }
}

function pieceText(path: string, { unit, mark, decimal }: Rule): string {
  try {
    const box = pieceBounds(readPiece(path));
    const size = (length: number) => tapeText(length, unit, mark, decimal);
    return phrase`piece ${size(box.right - box.left)} × ${size(box.high - box.low)}`;
  } catch {
    return path;
  }
}

/**
 * What a cell shows, and beside a length that is not on a mark of the tape its decimals: "2 7/8 (2.8325)".
 * To a ten-thousandth of the unit; finer differences are rounding errors.
 */
export function shownWithDecimals(shown: string, value: unknown, kind: Kind, rule: Rule): string {
  const { unit, decimal } = rule;
  if (kind !== "length" || typeof value !== "number") return shown;
  const read = readTape(shown, unit, decimal)?.length;
  return read !== undefined && Math.abs(read - value) < 5e-5
    ? shown
    : `${shown} (${plainNumber(value, 4, decimal)})`;
}

function exactPiece(path: string, rule: Rule): string {
  try {
    const { left, right, low, high } = pieceBounds(readPiece(path));
    const size = (length: number) => exact(length, "length", rule);
    return phrase`a piece ${size(right - left)} across the grain, ${size(high - low)} along it`;
  } catch {
    return path;
  }
}

/** The value behind what is shown, to twelve figures; of a piece its size, since its path would fill the page. */
export function exact(value: number | string | boolean | null, kind: Kind, rule: Rule): string {
  const { unit, decimal } = rule;
  if (typeof value === "string" && kind === "piece") return exactPiece(value, rule);
  if (typeof value !== "number") return value === null ? "" : String(value);
  const figure = withDecimalMark(numberText(value, 12), decimal);
  if (kind === "length") return `${figure} ${unit}`;
  return kind === "area" ? phrase`${figure} sq ${unit}` : kind === "angle" ? `${figure}°` : figure;
}
