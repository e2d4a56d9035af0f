/**
 * What the commas of a formula are. "," separates arguments where nothing else does, and is a
 * decimal mark where arguments are separated by ";" or where no argument can begin. Where both readings
 * make sense the formula is not calculated, and the sentence names both.
 */

import { catalogue } from "../../functions/catalogue.ts";
import type { Decimal } from "../../functions/decimal.ts";
import { remember } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { lex, type Token } from "./lex.ts";

/** Standard functions of one argument: a comma in them separates nothing. */
const OF_ONE = new Set([
  "ABS", "SQRT", "INT", "EVEN", "ODD", "SIGN", "EXP", "LN", "SIN", "COS", "TAN", "ASIN", "ACOS", "ATAN", "DEGREES",
  "RADIANS", "NOT",
]); // biome-ignore format: a list

const takesOne = (name: string): boolean => {
  const takes = catalogue.get(name)?.takes;
  return takes ? Object.keys(takes).length === 1 : OF_ONE.has(name);
};

/** A pair of brackets, or the whole formula. */
interface Frame {
  /** The function whose arguments stand in it, in capitals; "{" for a list; null for brackets that only group. */
  readonly of: string | null;
  semicolons: number;
  /** Commas that a space follows. */
  loose: number;
  /** Commas with a number on both sides, or only after them, by their position among the tokens. */
  readonly tight: number[];
  readonly leading: number[];
}

/** What was found out about the commas of one formula. */
export interface Commas {
  /** Where the decimal commas stand in the formula. */
  readonly decimal: readonly number[];
  /** The first comma with two readings, with the numbers beside it: "2,5". */
  readonly unclear: string | null;
  /** The first comma between numbers that separates arguments. */
  readonly parting: string | null;
}

const BEGINS_WHOLE = /^\d+(?:[eE][+-]?\d+)?$|^\d+\s*[a-z″′]/i;

/** Sorts the commas of a formula's tokens, as `lex` gives them. */
export function commasIn(list: readonly Token[]): Commas {
  if (!list.some(({ kind, text }) => kind === "separator" && text === ","))
    return { decimal: [], unclear: null, parting: null };
  const frames = framesOf(list);
  const parted = frames.some(({ semicolons }) => semicolons > 0);
  const decimal: number[] = [];
  const unclear: number[] = [];
  const parting: number[] = [];
  for (const { of, semicolons, loose, tight, leading } of frames) {
    const groups = of === null || (of !== "{" && takesOne(of));
    if (groups) decimal.push(...tight, ...leading);
    else if (semicolons > 0) {
      decimal.push(...tight);
      unclear.push(...leading);
    } else if (parted || loose > 0) unclear.push(...tight);
    else parting.push(...tight);
  }
  // 1,2,3 is not a number.
  const marks = new Set(decimal);
  unclear.push(...decimal.filter((i) => marks.has(i - 2)));
  const first = (of: number[]): string | null => {
    const i = of.length === 0 ? null : Math.min(...of);
    if (i === null) return null;
    const before = list[i - 1]?.kind === "number" ? list[i - 1]!.text : "";
    return `${before},${/^\d+/.exec(list[i + 1]!.text)![0]}`;
  };
  return { decimal: decimal.map((i) => list[i]!.at), unclear: first(unclear), parting: first(parting) };
}

function framesOf(list: readonly Token[]): Frame[] {
  const frame = (of: string | null): Frame => ({ of, semicolons: 0, loose: 0, tight: [], leading: [] });
  const all = [frame(null)];
  const open = [all[0]!];
  list.forEach(({ kind, text }, i) => {
    const inner = open.at(-1)!;
    if (kind === "open" || text === "{") {
      const before = list.slice(Math.max(0, i - 2), i).findLast((one) => one.kind !== "space");
      const next = frame(
        text === "{" ? text : before?.kind === "function" ? before.text.toUpperCase() : null,
      );
      all.push(next);
      open.push(next);
    } else if ((kind === "close" || text === "}") && open.length > 1) open.pop();
    else if (kind !== "separator") return;
    else if (text === ";") inner.semicolons += 1;
    else if (BEGINS_WHOLE.test(list[i + 1]?.text ?? "")) {
      const before = list[i - 1];
      if (before?.kind === "number" && /^\d+$/.test(before.text)) inner.tight.push(i);
      else if (before && ["open", "operator", "separator", "space"].includes(before.kind))
        inner.leading.push(i);
    } else if (list[i + 1]?.kind === "space") inner.loose += 1;
  });
  return all;
}

/** Every view of a cell asks whether the commas of its formula are clear. */
let remembered = remember<string, Commas>(1000);

export function forgetCommas(): void {
  remembered = remember(1000);
}

/**
 * Why the commas of a formula can't be understood, or null. In a book that shows decimal commas a
 * comma between numbers never ends an argument.
 */
export function unclearComma(formula: string, decimal: Decimal = "point"): string | null {
  if (!formula.includes(",")) return null;
  const commas = remembered(formula, () => commasIn(lex(formula)));
  const figure = commas.unclear ?? (decimal === "comma" ? commas.parting : null);
  if (figure === null) return null;
  const [before, after] = figure.split(",") as [string, string];
  return phrase`${figure} has two readings in this formula: the number ${before || "0"}.${after}, or two arguments ${before || phrase`(blank)`} and ${after}; type ${before || "0"}.${after}, or separate the arguments with ;`;
}
