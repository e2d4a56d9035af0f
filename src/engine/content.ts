/** What a typed cell means. This is the only place that decides it, before the engine sees the cell. */

import {
  type Decimal,
  twoReadings,
  unclearFigure,
  withoutGroups,
  withPoints,
} from "../../functions/decimal.ts";
import { readTape } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import { BOOK_UNITS, type Unit } from "../../functions/units.ts";
import { figureText, isClosed, isFormula, plainSign, textIn, tokens } from "../book/formula.ts";
import type { Token } from "../book/lex.ts";
import { refused } from "../book/refused.ts";
import type { ColumnKind } from "../book/shape.ts";
import { numberNotRead } from "./meant-as-number.ts";
import { readDate, readDateInColumn } from "./typed-date.ts";

export type Content =
  | { readonly is: "blank" }
  /** In the book's unit. `sure`: the column or a named unit says so, not a fraction alone, which may be a share. */
  | { readonly is: "length"; readonly value: number; readonly sure: boolean }
  | { readonly is: "number"; readonly value: number }
  | { readonly is: "share"; readonly value: number }
  | { readonly is: "flag"; readonly value: boolean }
  /** As ISO writes it: 2026-05-04. */
  | { readonly is: "date"; readonly value: string }
  /** `unclear`: it looks like a figure and has two readings, or none; a sentence says so. */
  | { readonly is: "text"; readonly value: string; readonly unclear?: string }
  /** As the engine reads it. */
  | { readonly is: "formula"; readonly value: string };

const PLAIN = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?$/;
const PERCENT = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)\s*%$/;

/** The signs that phones and word processors put in the place of plain ones. */
const plainFigure = (text: string): string =>
  text
    .replaceAll("−", "-")
    .replaceAll("⁄", "/")
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/^\+\s*/, "");

/** Whether what was typed ends with the name or the sign of a unit. */
export const namesUnit = (typed: string): boolean => /[a-z'"′″’”]\.?\s*$/i.test(typed);

/** Reads what was typed in a column of this kind, in a book of this unit and decimal mark. */
export function understand(typed: string, kind: ColumnKind, unit: Unit, decimal: Decimal = "point"): Content {
  const text = typed.trim();
  if (text === "") return { is: "blank" };
  if (isFormula(text)) return { is: "formula", value: toEngine(text, unit, decimal) };
  if (kind === "text") return { is: "text", value: typed };
  const day = readDate(text, decimal) ?? (kind === "date" ? readDateInColumn(text) : null);
  if (day !== null) return day.is === "date" ? day : { is: "text", value: typed, unclear: day.sentence };
  const inThrees = plainFigure(text);
  const written = withoutGroups(inThrees, true);
  if (BOOK_UNITS[unit].tape === "in" && withoutGroups(inThrees, false) !== written)
    return groupedContent(typed, written, kind, unit, decimal);
  const figure = withPoints(written, decimal);
  if (figure === null) return unclearContent(typed, written, kind, unit, decimal);
  if (PLAIN.test(figure) && Number.isFinite(Number(figure))) {
    const value = Number(figure);
    return kind === "length" ? { is: "length", value, sure: true } : { is: "number", value };
  }
  if (PERCENT.test(figure)) return { is: "share", value: Number.parseFloat(figure) / 100 };
  if (/^(true|false)$/i.test(text)) return { is: "flag", value: /^t/i.test(text) };
  const value = readTape(figure, unit)?.length;
  if (value === undefined) {
    const unread = numberNotRead(plainFigure(text), kind);
    return { is: "text", value: typed, ...(unread !== null && { unclear: unread }) };
  }
  const sure = namesUnit(figure) || kind === "length";
  return sure || kind === "any" ? { is: "length", value, sure } : { is: "number", value };
}

/** A text in which a number has two readings; `unclear` is set when the text would be a number with either of them. */
function unclearContent(
  typed: string,
  written: string,
  kind: ColumnKind,
  unit: Unit,
  decimal: Decimal,
): Content {
  const { run, readings } = twoReadings(written, decimal)!;
  const figure = understand(written.replace(run, readings[1]), kind, unit, decimal).is !== "text";
  return figure
    ? { is: "text", value: typed, unclear: unclearFigure(written, decimal)! }
    : { is: "text", value: typed };
}

/** Digits in groups of three on an inch tape, which may be a fraction without its stroke; `unclear` is set when they would be a number. */
function groupedContent(
  typed: string,
  joined: string,
  kind: ColumnKind,
  unit: Unit,
  decimal: Decimal,
): Content {
  const { is } = understand(joined, kind, unit, decimal);
  const unclear = phrase`${typed.trim()} has two readings: ${joined}, or a fraction without its stroke, such as 36 1/16; type the one that is meant`;
  return { is: "text", value: typed, ...(is !== "text" && { unclear }) };
}

/** A content as the engine takes it: texts are marked so that the engine keeps them as texts. */
export function forEngine(content: Content): string | number | boolean | null {
  if (content.is === "blank") return null;
  return content.is === "text" ? `'${content.value}` : content.value;
}

/** A formula that has no answer, in the place of one that is refused. */
const NO_ANSWER = "=#N/A";

/**
 * A typed formula as the engine reads it: "," between arguments becomes ";", a decimal comma a
 * point, a tape figure a number in the book's unit, TRUE a call, and a text one without quotes or strokes inside it.
 */
export function toEngine(formula: string, unit: Unit, decimal: Decimal = "point"): string {
  if (refused(formula, decimal)) return NO_ANSWER;
  let inside = 0;
  return tokens(formula)
    .map((token, i, list) => {
      const { kind, text } = token;
      if (text === "{" || kind === "open") inside += 1;
      if (text === "}" || kind === "close") inside -= 1;
      if (kind === "tape") return tapeAsNumber(text, unit);
      if (kind === "text") return textForEngine(token);
      if (kind === "number") return figureText(text).toLowerCase();
      if (kind === "operator") return plainSign(text);
      if (kind === "space") return list[i - 1]?.kind === "function" ? "" : " ";
      if (kind === "name" && /^(true|false)$/i.test(text)) return `${text}()`;
      return text === "," && inside > 0 ? ";" : text;
    })
    .join("")
    .trim();
}

/** "36 1/2" → "36.5"; "1,5 m" in centimetres → "150"; "42 cm" in inches → "16.535433…". */
function tapeAsNumber(text: string, unit: Unit): string {
  const read = readTape(figureText(text).replace(/(\d)\.(?!\d)/g, "$1"), unit);
  return read ? String(read.length) : text;
}

/** The engine can't read a quote or a backslash within a text: both are written as CHAR with their number. */
function textForEngine(token: Token): string {
  if (!isClosed(token)) return token.text;
  const inner = textIn(token);
  if (!/["\\]/.test(inner)) return `"${inner}"`;
  const parts = inner.split(/(["\\])/).filter((part) => part !== "");
  const quoted = parts.map((part) => (part === '"' ? "CHAR(34)" : part === "\\" ? "CHAR(92)" : `"${part}"`));
  return `(${quoted.join("&")})`;
}
