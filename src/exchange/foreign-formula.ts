/**
 * Formulas of other programs, read sign by sign and written in the signs of a book: the grammars of ISO/IEC
 * 29500-1, 18.17 ("SUM('Cloth list'!$B2:B9,2)") and of OpenFormula, ISO/IEC 26300-4 ("of:=SUM([$Cloth.B2:.B9];2)").
 */
import { phrase } from "../../functions/phrase.ts";
import { columnLetters, columnNumber } from "../book/address.ts";

/** An end of a reference; a whole row has no column, a whole column no row. Counted from 0. */
export interface End {
  readonly column: number | null;
  readonly row: number | null;
  readonly columnFixed: boolean;
  readonly rowFixed: boolean;
}

export type Part =
  | { readonly is: "reference"; readonly text: string; readonly sheet: string | null; readonly from: End; readonly to: End | null }
  | { readonly is: "name"; readonly text: string; readonly sheet: string | null; readonly name: string }
  | {
      readonly is: "call" | "text" | "number" | "sign" | "open" | "close" | "comma" | "row-end" | "error" | "space" | "unread";
      readonly text: string;
    }; // biome-ignore format: a union

export type Signs = "29500" | "26300";

const QUOTED = "'(?:[^']|'')+'";
const SHEET = String.raw`(?:${QUOTED}|[\p{L}_][\p{L}\p{N}_.]*)!`;
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?\d{1,7}`;
const COLUMN = String.raw`\$?[A-Za-z]{1,3}`;
const ROW = String.raw`\$?\d{1,7}`;
const STOP = String.raw`(?![\p{L}\p{N}_.(!])`;
const WORD = String.raw`[\p{L}_][\p{L}\p{N}_.]*`;

type Kind = Part["is"];

/** In order: the first that matches is the part. */
const PATTERNS: Readonly<Record<Signs, readonly (readonly [Kind, RegExp])[]>> = {
  "29500": [
    ["space", /\s+/y],
    ["text", /"(?:[^"]|"")*"/y],
    ["reference", new RegExp(`(?:${SHEET})?(?:${CELL}(?::${CELL})?|${COLUMN}:${COLUMN}|${ROW}:${ROW})${STOP}`, "uy")],
    ["error", /#(?:REF!|N\/A|VALUE!|NAME\?|NUM!|NULL!|DIV\/0!)/y],
    ["number", /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y],
    ["call", new RegExp(String.raw`${WORD}(?=\()`, "uy")],
    ["name", new RegExp(`(?:${SHEET})?${WORD}(?![\\p{L}\\p{N}_.[!])`, "uy")],
    ["sign", /<=|>=|<>|[-+*/^&=<>%]/y],
    ["open", /\(/y],
    ["close", /\)/y],
    ["comma", /,/y],
    ["row-end", /;/y],
    ["sign", /[{}]/y],
    ["unread", new RegExp(`${WORD}|.`, "suy")],
  ],
  "26300": [
    ["space", /\s+/y],
    ["text", /"(?:[^"]|"")*"/y],
    // Some programs put a sheet before the brackets.
    ["reference", new RegExp(String.raw`(?:${SHEET})?\[(?:[^\]'"]|'(?:[^']|'')*')*\]`, "uy")],
    ["error", /#(?:REF!|N\/A|VALUE!|NAME\?|NUM!|NULL!|DIV\/0!)/y],
    ["number", /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y],
    ["call", new RegExp(String.raw`${WORD}(?=\s*\()`, "uy")],
    ["name", new RegExp(String.raw`\$\$${WORD}|${WORD}`, "uy")],
    ["sign", /<=|>=|<>|[-+*/^&=<>%]/y],
    ["open", /\(/y],
    ["close", /\)/y],
    ["comma", /;/y],
    ["row-end", /\|/y],
    ["sign", /[{}]/y],
    ["unread", new RegExp(`${WORD}|.`, "suy")],
  ],
}; // biome-ignore format: a table

/** The parts of a formula; joined together they are the formula again. What can't be read is "unread". */
export function foreignParts(formula: string, signs: Signs): Part[] {
  const parts: Part[] = [];
  let at = 0;
  while (at < formula.length) {
    for (const [is, pattern] of PATTERNS[signs]) {
      pattern.lastIndex = at;
      const text = pattern.exec(formula)?.[0];
      if (!text) continue;
      parts.push(partOf(is, text, signs));
      at += text.length;
      break;
    }
  }
  return parts;
}

function partOf(is: Kind, text: string, signs: Signs): Part {
  if (is === "reference")
    return (signs === "29500" ? plainReference(text) : bracketReference(text)) ?? { is: "unread", text };
  if (is !== "name") return { is, text } as Part;
  const cut = text.lastIndexOf("!");
  const sheet = cut < 0 ? null : unquoted(text.slice(0, cut));
  return sheet !== null && isElsewhere(sheet)
    ? { is: "unread", text }
    : { is, text, sheet, name: text.slice(cut + 1).replace(/^\$\$/, "") };
}

const unquoted = (text: string): string =>
  text.startsWith("'") ? text.slice(1, -1).replaceAll("''", "'") : text;

/** Whether what stands for a sheet names another file, or a run of sheets. */
const isElsewhere = (sheet: string): boolean => /[[\]:#]/.test(sheet);

function endOf(text: string): End {
  const [, columnFixed, column, rowFixed, row] = /^(\$?)([A-Za-z]{0,3})(\$?)(\d*)$/.exec(text)!;
  const onlyRow = column === "";
  return {
    column: onlyRow ? null : columnNumber(column!),
    row: row === "" ? null : Number(row) - 1,
    columnFixed: !onlyRow && columnFixed === "$",
    rowFixed: onlyRow ? columnFixed === "$" || rowFixed === "$" : rowFixed === "$",
  };
}

function plainReference(text: string): Part | null {
  const cut = text.lastIndexOf("!");
  const sheet = cut < 0 ? null : unquoted(text.slice(0, cut));
  if (sheet !== null && isElsewhere(sheet)) return null;
  const [from, to] = text.slice(cut + 1).split(":");
  return { is: "reference", text, sheet, from: endOf(from!), to: to === undefined ? null : endOf(to) };
}

const IN_BRACKETS = new RegExp(
  String.raw`^(${SHEET})?\[(\$?(?:${QUOTED}|[^.:'\[\]]*))\.(${CELL}|${COLUMN}|${ROW})(?::(\$?(?:${QUOTED}|[^.:'\[\]]*))\.(${CELL}|${COLUMN}|${ROW}))?\]$`,
  "u",
);

function bracketReference(text: string): Part | null {
  const found = IN_BRACKETS.exec(text);
  if (!found) return null;
  const [, before = "", home, from, home2 = "", to] = found;
  const named = (one: string) => (one === "" ? null : unquoted(one.replace(/^\$/, "")));
  const sheet = named(home!) ?? named(before.slice(0, -1));
  const second = named(home2);
  if ((sheet !== null && isElsewhere(sheet)) || (second !== null && second !== sheet)) return null;
  return { is: "reference", text, sheet, from: endOf(from!), to: to === undefined ? null : endOf(to) };
}

const dollar = (fixed: boolean): string => (fixed ? "$" : "");

/** "$B4", "B", "4". */
export const endText = ({ column, row, columnFixed, rowFixed }: End): string =>
  `${column === null ? "" : `${dollar(columnFixed)}${columnLetters(column)}`}${row === null ? "" : `${dollar(rowFixed)}${row + 1}`}`;

/** A formula of ISO/IEC 29500 as it stands when it is copied down and to the right: what is not fixed moves along. */
export function copiedForeign(formula: string, down: number, right: number): string {
  const move = (end: End): End => ({
    ...end,
    row: end.row === null || end.rowFixed ? end.row : end.row + down,
    column: end.column === null || end.columnFixed ? end.column : end.column + right,
  });
  return foreignParts(formula, "29500")
    .map((part) => {
      if (part.is !== "reference") return part.text;
      const home = part.text.slice(0, part.text.lastIndexOf("!") + 1);
      const ends = [part.from, ...(part.to ? [part.to] : [])].map(move);
      return ends.some(({ row, column }) => (row ?? 0) < 0 || (column ?? 0) < 0)
        ? "#REF!"
        : `${home}${ends.map(endText).join(":")}`;
    })
    .join("");
}

/** A formula of ISO/IEC 29500 in the signs of OpenFormula, "=" and all. */
export function openFormula(formula: string): string {
  let braces = 0;
  const text = foreignParts(formula, "29500")
    .map((part) => {
      if (part.text === "{") braces += 1;
      if (part.text === "}") braces -= 1;
      switch (part.is) {
        case "reference": {
          const sheet = part.sheet === null ? "" : `$'${part.sheet.replaceAll("'", "''")}'`;
          return `[${sheet}.${endText(part.from)}${part.to ? `:.${endText(part.to)}` : ""}]`;
        }
        case "comma":
          return ";";
        case "row-end":
          return braces > 0 ? "|" : ";";
        case "call":
          return part.text.replace(/^_xlfn\./, "");
        default:
          return part.text;
      }
    })
    .join("");
  return `of:=${text}`;
}

/** How the references and names of a formula are written in the book that takes it. */
export interface Places {
  /** The reference as a book writes it, or a sentence part that says why the book can't have it. */
  readonly reference: (sheet: string | null, from: End, to: End | null) => { readonly text: string } | { readonly why: string };
  readonly name: (name: string, sheet: string | null) => { readonly text: string } | { readonly why: string };
  /** Whether the book's engine has a function of this name, in capitals. */
  readonly isFunction: (name: string) => boolean;
} // biome-ignore format: signatures

/** Marks before the names of functions that came after a standard's first list. */
const MARKS = /^(?:_xlfn\.|_xlws\.|_xlpm\.)+/i;

const UNREAD: readonly (readonly [RegExp, string])[] = [
  [/#REF!/, phrase`it has lost a cell that it used`],
  [/^[[\]\p{L}]/u, phrase`it names a column of a table, or another file`],
  [/^'/, phrase`it names several sheets at once, or another file`],
  [/^@|^#/, phrase`it takes a single answer out of many`],
];

/** The longest formula that ISO/IEC 29500 allows, in characters. */
const LONGEST_FORMULA = 8192;

/** The formula as a book writes it, with "=", or a sentence part that says why a book can't have it. */
export function bookFormula(
  formula: string,
  signs: Signs,
  places: Places,
): { readonly text: string } | { readonly why: string } {
  if (formula.length > LONGEST_FORMULA) return { why: phrase`it is too long` };
  const parts = foreignParts(formula, signs);
  const said: string[] = [];
  const open: ("call" | "group" | "list")[] = [];
  let before: Part | null = null;
  let spaced = false;
  for (const part of parts) {
    if (part.is === "space") {
      spaced = true;
      continue;
    }
    if (spaced && before && endsOperand(before) && beginsOperand(part))
      return { why: phrase`it asks for the cells that two ranges share` };
    spaced = false;
    switch (part.is) {
      case "unread":
        return {
          why:
            UNREAD.find(([sign]) => sign.test(part.text))?.[1] ??
            phrase`Ellwand can't read the sign ${part.text}`,
        };
      case "error":
        if (part.text !== "#N/A")
          return {
            why: UNREAD[0]![0].test(part.text) ? UNREAD[0]![1] : phrase`it holds the error ${part.text}`,
          };
        said.push("NA()");
        break;
      case "reference": {
        const written = places.reference(part.sheet, part.from, part.to);
        if ("why" in written) return written;
        said.push(written.text);
        break;
      }
      case "name": {
        if (/^(?:true|false)$/i.test(part.name)) {
          said.push(`${part.name.toUpperCase()}()`);
          break;
        }
        const written = places.name(part.name, part.sheet);
        if ("why" in written) return written;
        said.push(written.text);
        break;
      }
      case "call": {
        const name = part.text.replace(MARKS, "").toUpperCase();
        if (!places.isFunction(name)) return { why: phrase`${name.slice(0, 60)} is not a function here` };
        said.push(name);
        break;
      }
      case "open":
        open.push(before?.is === "call" ? "call" : "group");
        said.push("(");
        break;
      case "comma":
        if (open.at(-1) !== "call" && open.at(-1) !== "list")
          return { why: phrase`it joins several ranges into one` };
        said.push(";");
        break;
      case "row-end":
        if (open.at(-1) !== "list") return { why: phrase`its arguments are separated in an unknown way` };
        said.push("|");
        break;
      case "close":
        open.pop();
        said.push(")");
        break;
      case "number":
        said.push(part.text.toLowerCase());
        break;
      default:
        if (part.text === "{") open.push("list");
        if (part.text === "}") open.pop();
        said.push(part.text);
    }
    before = part;
  }
  return { text: `=${said.join("")}` };
}

const endsOperand = ({ is }: Part): boolean => is === "reference" || is === "name" || is === "close";
const beginsOperand = ({ is }: Part): boolean =>
  is === "reference" || is === "name" || is === "open" || is === "call";
