/** Where the caret stands in what is being typed: the word before it, and the call it is inside. */
import { tokens } from "../../book/formula.ts";
import type { Token } from "../../book/lex.ts";

export interface Caret {
  /** The beginning of a name or function before the caret; "" when none can be there. */
  readonly word: string;
  /** The word's first and last sign in the text, the part behind the caret too. */
  readonly from: number;
  readonly to: number;
  /** The function whose argument the caret is in, in capitals. */
  readonly call: string | null;
  /** Which of its arguments, counted from 0. */
  readonly argument: number;
}

/** After these a name can't begin: what follows is a unit, or a slip. */
const ENDS_A_VALUE = new Set([
  "number",
  "tape",
  "text",
  "name",
  "function",
  "cell",
  "columns",
  "close",
  "error",
]);

const isOpenText = ({ kind, text }: Token): boolean => kind === "text" && !/^"(?:[^"]|"")*"$/.test(text);

/** Null when the text is no formula or the caret is before its "=". */
export function caretIn(text: string, caret: number): Caret | null {
  if (!text.startsWith("=") || caret < 1) return null;
  const before = tokens(text.slice(0, caret));
  const { call, argument } = callOf(before);
  const word = wordAtEnd(before);
  const behind = /^[A-Za-z0-9_.]*/.exec(text.slice(caret))![0];
  return { word, from: caret - word.length, to: word ? caret + behind.length : caret, call, argument };
}

function wordAtEnd(before: readonly Token[]): string {
  const last = before.at(-1);
  if (!last || isOpenText(last)) return "";
  if (last.kind !== "name" && last.kind !== "cell") return "";
  if (!/^[A-Za-z_][A-Za-z0-9_.]*$/.test(last.text)) return "";
  const previous = before.slice(0, -1).findLast(({ kind }) => kind !== "space");
  return previous && (ENDS_A_VALUE.has(previous.kind) || previous.text === "!") ? "" : last.text;
}

/** Whether a cell's address or name could stand at the caret: after "=", a sign, a bracket or a ";". */
export function wantsValue(text: string, caret: number): boolean {
  if (!text.startsWith("=") || caret < 1) return false;
  const last = tokens(text.slice(0, caret)).findLast(({ kind }) => kind !== "space");
  return last !== undefined && ["operator", "open", "separator"].includes(last.kind) && last.text !== "%";
}

/** The innermost function still open at the end of these tokens. */
function callOf(before: readonly Token[]): Pick<Caret, "call" | "argument"> {
  const open: { name: string | null; argument: number }[] = [];
  let name: string | null = null;
  for (const { kind, text } of before) {
    if (kind === "function") name = text.toUpperCase();
    else if (kind === "open" || text === "{") {
      open.push({ name: kind === "open" ? name : null, argument: 0 });
      name = null;
    } else if (kind === "close" || text === "}") open.pop();
    else if (kind === "separator") {
      const inner = open.at(-1);
      if (inner) inner.argument += 1;
    }
  }
  const inner = open.findLast((one) => one.name !== null);
  return { call: inner?.name ?? null, argument: inner?.argument ?? 0 };
}
