/** The signs of a formula one after the other, each comma still a separator. */
import { UNIT_WORDS } from "../../functions/units.ts";
import { LONGEST } from "./shape.ts";

export type TokenKind =
  | "space" | "number" | "tape" | "text" | "function" | "name" | "cell" | "columns" | "rows" | "error"
  | "operator" | "open" | "close" | "separator" | "brace" | "stray"; // biome-ignore format: a list

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  /** Where it begins in the formula. */
  readonly at: number;
}

/** Letters of names and of page titles that need no quotes: the engine's, without × and ÷. */
const LETTER = "A-Za-zÀ-ÖØ-öø-ʯ";
// Every pattern reads a text in one pass: neighbouring parts share no sign, and a quoted title has an end.
const PAGE = `(?:'(?:[^']|''){1,${LONGEST.pageTitle}}'!|[${LETTER}_][${LETTER}0-9_]*!)?`;
const NUMBER = String.raw`(?:\d+(?:\.\d*)?|\.\d+)`;
const VULGAR = "[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]";
/** A tape figure that is sure to be one: a whole number with a fraction, or a fraction sign. */
const FRACTION = String.raw`(?:\d+\s+\d+\/\d+|\d*\s*${VULGAR})`;
const UNIT = String.raw`\s*(?:(?:${UNIT_WORDS.join("|")})(?![${LETTER}0-9_(])\.?(?!\d)|″|′′|′)`;
const WITH_UNIT = String.raw`(?:${FRACTION}|\d+\/\d+|${NUMBER})${UNIT}`;

/** In order: the first that matches is the token. */
const PATTERNS: readonly (readonly [TokenKind, RegExp])[] = [
  ["space", /\s+/y],
  ["text", /"(?:[^"]|"")*"?|“[^”]*”?/y],
  ["rows", new RegExp(String.raw`${PAGE}\$?\d+:\$?\d+(?![${LETTER}0-9_.(])`, "y")],
  ["tape", new RegExp(String.raw`${WITH_UNIT}(?:\s+${WITH_UNIT})*|${FRACTION}(?![\d.(])`, "iy")],
  ["number", new RegExp(String.raw`${NUMBER}(?:[eE][+-]?\d+)?`, "y")],
  ["cell", new RegExp(String.raw`${PAGE}\$?[A-Za-z]{1,3}\$?\d{1,7}(?![${LETTER}0-9_(.])`, "y")],
  ["columns", new RegExp(String.raw`${PAGE}\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}(?![${LETTER}0-9_(.!])`, "y")],
  ["function", new RegExp(String.raw`[${LETTER}_][${LETTER}0-9_.]*(?=\s*\()`, "y")],
  ["name", new RegExp(`${PAGE}[${LETTER}_][${LETTER}0-9_.]*`, "y")],
  ["error", /#[A-Za-z0-9/]+[!?]?/y],
  ["operator", /<=|>=|<>|[-+*/^&=<>%:−×÷≤≥≠]/y],
  ["open", /\(/y],
  ["close", /\)/y],
  ["separator", /[;,]/y],
  ["brace", /[{}|]/y],
  ["stray", /./sy],
]; // biome-ignore format: a table

/** The tokens of a text; joined together they are the text again. */
export function lex(formula: string): Token[] {
  const list: Token[] = [];
  let at = 0;
  while (at < formula.length) {
    for (const [kind, pattern] of PATTERNS) {
      pattern.lastIndex = at;
      const text = pattern.exec(formula)?.[0];
      if (!text) continue;
      list.push({ kind, text, at });
      at += text.length;
      break;
    }
  }
  return list;
}
