/** What a typed cell means. This is the only place that decides it, before the engine sees the cell. */
import { readTape } from "../../functions/fractions.ts";
import type { Unit } from "../../functions/units.ts";
import { isFormula, tokens } from "../book/formula.ts";
import type { ColumnKind } from "../book/shape.ts";

export type Content =
  | { readonly is: "blank" }
  /** In the book's unit. */
  | { readonly is: "length"; readonly value: number }
  | { readonly is: "number"; readonly value: number }
  | { readonly is: "share"; readonly value: number }
  | { readonly is: "flag"; readonly value: boolean }
  /** As ISO writes it: 2026-05-04. */
  | { readonly is: "date"; readonly value: string }
  | { readonly is: "text"; readonly value: string }
  /** As the engine reads it. */
  | { readonly is: "formula"; readonly value: string };

const PLAIN = /^[-−+]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

function isDate(text: string): boolean {
  const found = DATE.exec(text);
  if (!found) return false;
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  const date = new Date(Date.UTC(year, month - 1, day));
  return year >= 1900 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/** Reads what was typed in a column of this kind, in a book of this unit. */
export function understand(typed: string, kind: ColumnKind, unit: Unit): Content {
  const text = typed.trim();
  if (text === "") return { is: "blank" };
  if (isFormula(text)) return { is: "formula", value: toEngine(text, unit) };
  if (kind === "text") return { is: "text", value: typed };
  if (isDate(text)) return { is: "date", value: text };
  if (PLAIN.test(text)) {
    const value = Number(text.replace("−", "-"));
    return { is: kind === "length" ? "length" : "number", value };
  }
  if (/^[-+]?\d+(?:\.\d+)?\s*%$/.test(text)) return { is: "share", value: Number.parseFloat(text) / 100 };
  if (/^(true|false)$/i.test(text)) return { is: "flag", value: /^t/i.test(text) };
  const tape = readTape(text, unit);
  return tape ? { is: "length", value: tape.length } : { is: "text", value: typed };
}

/** A content as the engine takes it: texts are marked so that it reads nothing into them. */
export function forEngine(content: Content): string | number | boolean | null {
  if (content.is === "blank") return null;
  return content.is === "text" ? `'${content.value}` : content.value;
}

/** A tape fraction inside a formula as arithmetic: 36 1/2 → (36+1/2), 42 cm → CM(42). */
function tapeAsFormula(text: string, unit: Unit): string {
  const found = /^(.*?)\s*(in|cm|mm|yd|ft|m)?$/.exec(text)!;
  const figure = found[1]!.trim();
  const named = found[2];
  const parts = /^(\d+)\s+(\d+)\/(\d+)$/.exec(figure);
  const told = parts
    ? `(${parts[1]}+${parts[2]}/${parts[3]})`
    : String(readTape(figure, unit)?.length ?? figure);
  return named === undefined || named === unit ? told : `${named.toUpperCase()}(${told})`;
}

/** A typed formula as the engine reads it: "," between arguments becomes ";", tape fractions arithmetic. */
export function toEngine(formula: string, unit: Unit): string {
  let braces = 0;
  let brackets = 0;
  return tokens(formula)
    .map(({ kind, text }) => {
      if (text === "{") braces += 1;
      if (text === "}") braces -= 1;
      if (kind === "open") brackets += 1;
      if (kind === "close") brackets -= 1;
      if (kind === "tape") return tapeAsFormula(text, unit);
      if (text === "," && brackets > 0 && braces === 0) return ";";
      return text;
    })
    .join("");
}
