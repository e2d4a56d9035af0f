/**
 * The signs of a formula, so that one can be read for its meaning, its references moved and its
 * lengths converted without an engine. The grammar is OpenFormula's, with liberties for typing by
 * hand: "," between arguments, tape fractions such as 36 1/2 or 42 cm, and the signs that
 * phones and word processors put in the place of plain ones (−, ×, “ ”).
 */

import { remember } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { commasIn, forgetCommas } from "./commas.ts";
import { lex, type Token } from "./lex.ts";

/** The plain sign for one that a phone or a word processor puts in its place. */
const PLAIN_SIGN: Record<string, string> = { "−": "-", "×": "*", "÷": "/", "≤": "<=", "≥": ">=", "≠": "<>" };

export const plainSign = (sign: string): string => PLAIN_SIGN[sign] ?? sign;

/** A formula is read again and again: by its kinds, its references, the engine and the screen. */
let remembered = remember<string, readonly Token[]>(5000);
/** Trees are gone through at every revision: those of the largest book should all be kept. */
let rememberedTree = remember<string, Tree>(200_000);

/** Forgets how formulas were read: what their commas are depends on which functions the catalogue has. */
export function forgetReadings(): void {
  remembered = remember(5000);
  rememberedTree = remember(200_000);
  forgetCommas();
}

/** The tokens of a formula, "=" and all; joined together they are the formula again. */
export const tokens = (formula: string): readonly Token[] =>
  remembered(formula, () => {
    const raw = lex(formula);
    const { decimal } = commasIn(raw);
    return decimal.length === 0 ? raw : withDecimals(formula, decimal);
  });

/** The tokens of a formula in which the commas at these places are decimal marks. */
function withDecimals(formula: string, places: readonly number[]): Token[] {
  const signs = formula.split("");
  for (const at of places) signs[at] = ".";
  return lex(signs.join("")).map((token) => ({
    ...token,
    text: formula.slice(token.at, token.at + token.text.length),
  }));
}

/** A formula with ; between all its arguments; its decimal commas stay. */
export const withSemicolons = (formula: string): string =>
  tokens(formula)
    .map(({ kind, text }) => (kind === "separator" ? ";" : text))
    .join("");

/** A number or a tape figure with a point for its decimal mark. */
export const figureText = (text: string): string => text.replaceAll(",", ".");

/** Whether what was typed is to be worked out. */
export const isFormula = (typed: string): boolean => /^\s*=\s*\S/.test(typed);

/** Brackets within brackets, and signs in one formula; with more of them an engine may fail. */
export const MOST_NESTED = 50;
export const MOST_SIGNS = 500;

/** Why a formula is too much for one cell, or null. */
export function tooMuch(formula: string): string | null {
  let depth = 0;
  let signs = 0;
  for (const { kind, text } of tokens(formula)) {
    if (kind === "open" || text === "{") depth += 1;
    if (kind === "close" || text === "}") depth -= 1;
    if (kind === "operator") signs += 1;
    if (depth > MOST_NESTED)
      return phrase`this formula has more than ${MOST_NESTED} brackets within one another; work a part of it in a cell of its own`;
  }
  return signs > MOST_SIGNS
    ? phrase`this formula has ${signs} signs and the most is ${MOST_SIGNS}; work a part of it in a cell of its own`
    : null;
}

/** A formula as a tree of what it means. */
export type Tree =
  | { readonly is: "number"; readonly text: string; readonly token: Token }
  | { readonly is: "tape"; readonly text: string; readonly token: Token }
  | { readonly is: "text"; readonly text: string; readonly token: Token }
  | { readonly is: "name" | "cell" | "columns" | "rows"; readonly text: string }
  | { readonly is: "range"; readonly from: Tree; readonly to: Tree }
  | Call
  | { readonly is: "sign"; readonly sign: string; readonly args: readonly Tree[] }
  | { readonly is: "list"; readonly items: readonly Tree[] }
  | { readonly is: "broken" };

export interface Call {
  readonly is: "call";
  /** In capitals. */
  readonly name: string;
  readonly args: readonly (Tree | null)[];
  /** Where the call stands in the formula, and where each argument does: from, to. */
  readonly span: readonly [number, number];
  readonly spans: readonly (readonly [number, number])[];
}

const STRENGTH: Record<string, number> = {
  "=": 1, "<>": 1, "<": 1, ">": 1, "<=": 1, ">=": 1, "&": 2, "+": 3, "-": 3, "*": 4, "/": 4, "^": 5, ":": 7,
}; // biome-ignore format: a table

/** The tree of a formula; what can't be read, or is too much for one cell, is "broken" in its place. */
export function treeOf(formula: string): Tree {
  if (tooMuch(formula)) return { is: "broken" };
  const list = tokens(formula).filter(({ kind }) => kind !== "space");
  let next = list[0]?.text === "=" ? 1 : 0;
  const peek = () => list[next];
  /** Where the token before the next one ends. */
  const end = () => (list[next - 1] ? list[next - 1]!.at + list[next - 1]!.text.length : 0);

  const climb = (least: number): Tree => {
    let left = atom();
    for (;;) {
      const token = peek();
      if (token?.text === "%") {
        next += 1;
        left = { is: "sign", sign: "%", args: [left] };
        continue;
      }
      const sign = token?.kind === "operator" ? plainSign(token.text) : "";
      const strength = STRENGTH[sign];
      if (strength === undefined || strength < least) return left;
      next += 1;
      const right = climb(strength + 1);
      left =
        sign === ":" ? { is: "range", from: left, to: right } : { is: "sign", sign, args: [left, right] };
    }
  };

  const atom = (): Tree => {
    const token = peek();
    if (!token) return { is: "broken" };
    next += 1;
    switch (token.kind) {
      case "number":
      case "tape":
        return { is: token.kind, text: figureText(token.text), token };
      case "text":
        return { is: "text", text: textIn(token), token };
      case "name":
      case "cell":
      case "columns":
      case "rows":
        return { is: token.kind, text: token.text };
      case "function": {
        const { items, spans } = list_(")");
        return { is: "call", name: token.text.toUpperCase(), args: items, span: [token.at, end()], spans };
      }
      case "open": {
        const inner = climb(0);
        if (peek()?.kind === "close") next += 1;
        return inner;
      }
      case "operator": {
        const sign = plainSign(token.text);
        return sign === "-" || sign === "+" ? { is: "sign", sign, args: [climb(6)] } : { is: "broken" };
      }
      case "brace":
        next -= 1;
        return { is: "list", items: list_("}").items.filter((one) => one !== null) };
      default:
        return { is: "broken" };
    }
  };

  /** Arguments between brackets, or items between braces. */
  const list_ = (close: ")" | "}") => {
    next += 1;
    const items: (Tree | null)[] = [];
    const spans: (readonly [number, number])[] = [];
    let wanted = true;
    const blank = () => {
      items.push(null);
      spans.push([end(), end()]);
    };
    for (let token = peek(); token && token.text !== close; token = peek()) {
      if (token.kind === "separator" || token.text === "|") {
        if (wanted) blank();
        next += 1;
        wanted = true;
        continue;
      }
      const before = next;
      items.push(climb(0));
      if (next === before) next += 1;
      spans.push([token.at, end()]);
      wanted = false;
    }
    if (wanted && items.length > 0) blank();
    if (peek()?.text === close) next += 1;
    return { items, spans };
  };

  return climb(0);
}

/** The tree of a formula. */
export const formulaTree = (formula: string): Tree => rememberedTree(formula, () => treeOf(formula));

/** The calls of functions in a formula, inner ones before those that use them. */
export function callsIn(tree: Tree): Call[] {
  const parts = tree.is === "call" || tree.is === "sign" ? tree.args : tree.is === "list" ? tree.items : [];
  const inner = parts.flatMap((part) => (part ? callsIn(part) : []));
  return tree.is === "call" ? [...inner, tree] : inner;
}

/** Whether a text token ends with the quote that it needs. */
export const isClosed = ({ text }: Token): boolean =>
  text.startsWith('"') ? /^"(?:[^"]|"")*"$/.test(text) : text.endsWith("”");

/** What a text token says, without its quotes. */
export function textIn(token: Token): string {
  const inner = token.text.slice(1, isClosed(token) ? -1 : undefined);
  return token.text.startsWith('"') ? inner.replaceAll('""', '"') : inner;
}
