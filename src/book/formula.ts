/**
 * The signs of a formula, so that one can be read for its meaning, its references moved and its
 * lengths converted without an engine. The grammar is OpenFormula's, with two liberties for the
 * hand that types: "," between arguments and tape fractions such as 36 1/2 or 42 cm.
 */

export type TokenKind =
  | "space" | "number" | "tape" | "text" | "function" | "name" | "cell" | "columns" | "error"
  | "operator" | "open" | "close" | "separator" | "brace" | "stray"; // biome-ignore format: a list

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  /** Where it begins in the formula. */
  readonly at: number;
}

const PAGE = `(?:'(?:[^']|'')+'!|[A-Za-z_][A-Za-z0-9_]*!)?`;
const UNIT = String.raw`(?:\s*(?:in|cm|mm|yd|ft|m)(?![A-Za-z0-9_(]))`;
const NUMBER = String.raw`(?:\d+\.?\d*|\.\d+)`;

/** In order: the first that matches is the token. */
const PATTERNS: readonly (readonly [TokenKind, RegExp])[] = [
  ["space", /\s+/y],
  ["text", /"(?:[^"]|"")*"?/y],
  ["tape", new RegExp(String.raw`\d+(?:\s+\d+\/\d+|\s*[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])(?![\d.(])${UNIT}?|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]${UNIT}?|${NUMBER}${UNIT}`, "y")],
  ["number", new RegExp(String.raw`${NUMBER}(?:[eE][+-]?\d+)?`, "y")],
  ["cell", new RegExp(String.raw`${PAGE}\$?[A-Za-z]{1,3}\$?\d{1,7}(?![A-Za-z0-9_(.])`, "y")],
  ["columns", new RegExp(String.raw`${PAGE}\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}(?![A-Za-z0-9_(])`, "y")],
  ["function", /[A-Za-z_][A-Za-z0-9_.]*(?=\s*\()/y],
  ["name", /[A-Za-z_][A-Za-z0-9_.]*/y],
  ["error", /#[A-Z/0]+[!?]?/y],
  ["operator", /<=|>=|<>|[-+*/^&=<>%:]/y],
  ["open", /\(/y],
  ["close", /\)/y],
  ["separator", /[;,]/y],
  ["brace", /[{}|]/y],
  ["stray", /./sy],
]; // biome-ignore format: a table

const known = new Map<string, readonly Token[]>();

/** The tokens of a formula, "=" and all; joined together they are the formula again. */
export function tokens(formula: string): readonly Token[] {
  const cached = known.get(formula);
  if (cached) return cached;
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
  if (known.size > 5000) known.clear();
  known.set(formula, list);
  return list;
}

export const isFormula = (typed: string): boolean => typed.startsWith("=") && typed.length > 1;

/** A formula as a tree of what it means. */
export type Tree =
  | { readonly is: "number"; readonly text: string; readonly token: Token }
  | { readonly is: "tape"; readonly text: string; readonly token: Token }
  | { readonly is: "text"; readonly text: string }
  | { readonly is: "name" | "cell" | "columns"; readonly text: string }
  | { readonly is: "range"; readonly from: Tree; readonly to: Tree }
  | { readonly is: "call"; readonly name: string; readonly args: readonly (Tree | null)[] }
  | { readonly is: "sign"; readonly sign: string; readonly args: readonly Tree[] }
  | { readonly is: "list"; readonly items: readonly Tree[] }
  | { readonly is: "broken" };

const STRENGTH: Record<string, number> = {
  "=": 1, "<>": 1, "<": 1, ">": 1, "<=": 1, ">=": 1, "&": 2, "+": 3, "-": 3, "*": 4, "/": 4, "^": 5, ":": 7,
}; // biome-ignore format: a table

/** The tree of a formula; what can't be read is "broken" in its place. */
export function treeOf(formula: string): Tree {
  const list = tokens(formula).filter(({ kind }) => kind !== "space");
  let next = list[0]?.text === "=" ? 1 : 0;
  const peek = () => list[next];

  const climb = (least: number): Tree => {
    let left = atom();
    for (;;) {
      const token = peek();
      if (token?.text === "%") {
        next += 1;
        left = { is: "sign", sign: "%", args: [left] };
        continue;
      }
      const strength = token?.kind === "operator" ? STRENGTH[token.text] : undefined;
      if (!token || strength === undefined || strength < least) return left;
      next += 1;
      const right = climb(strength + 1);
      left =
        token.text === ":"
          ? { is: "range", from: left, to: right }
          : { is: "sign", sign: token.text, args: [left, right] };
    }
  };

  const atom = (): Tree => {
    const token = peek();
    if (!token) return { is: "broken" };
    next += 1;
    switch (token.kind) {
      case "number":
      case "tape":
        return { is: token.kind, text: token.text, token };
      case "text":
        return { is: "text", text: token.text.slice(1, -1).replaceAll('""', '"') };
      case "name":
      case "cell":
      case "columns":
        return { is: token.kind, text: token.text };
      case "function":
        return { is: "call", name: token.text.toUpperCase(), args: list_(")") };
      case "open": {
        const inner = climb(0);
        if (peek()?.kind === "close") next += 1;
        return inner;
      }
      case "operator":
        if (token.text === "-" || token.text === "+")
          return { is: "sign", sign: token.text, args: [climb(6)] };
        return { is: "broken" };
      case "brace":
        next -= 1;
        return { is: "list", items: list_("}").filter((one) => one !== null) };
      default:
        return { is: "broken" };
    }
  };

  /** Arguments between brackets, or items between braces. */
  const list_ = (end: ")" | "}"): (Tree | null)[] => {
    next += 1;
    const items: (Tree | null)[] = [];
    let wanted = true;
    for (let token = peek(); token && token.text !== end; token = peek()) {
      if (token.kind === "separator" || token.text === "|") {
        if (wanted) items.push(null);
        next += 1;
        wanted = true;
        continue;
      }
      const before = next;
      items.push(climb(0));
      wanted = false;
      if (next === before) next += 1;
    }
    if (wanted && items.length > 0) items.push(null);
    if (peek()?.text === end) next += 1;
    return items;
  };

  return climb(0);
}
