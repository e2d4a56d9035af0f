/**
 * Which functions a book has to wait for. On the page some are loaded after the start; until then no
 * engine takes a formula that names one of them, so that no formula is read or calculated without
 * its functions.
 */
import { phrase } from "../../functions/phrase.ts";
import { forgetReadings, isFormula, tokens } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { workedBook } from "./fitted-cells.ts";
import { LATE_NAMES } from "./late-names.ts";

const late: ReadonlySet<string> = new Set(LATE_NAMES);

/** `ask` begins to load the functions where that is not going on already. */
const loading = {
  whole: late.size === 0,
  fault: null as string | null,
  ask: (): void => {},
  waiting: [] as (() => void)[],
};

/** Whether every function is there. */
export const isWhole = (): boolean => loading.whole;

/** Whether a function of this name, in capitals, is one that the page loads after its start. */
export const isLate = (name: string): boolean => late.has(name);

/** The first function of a formula that the page loads after its start, whether or not it is there by now; null for none. */
export function lateIn(formula: string): string | null {
  if (late.size === 0 || !isFormula(formula)) return null;
  const found = tokens(formula).find(({ kind, text }) => kind === "function" && late.has(text.toUpperCase()));
  return found?.text.toUpperCase() ?? null;
}

/** The first function that a book names and that is not there yet; null when all are there. */
export function missingIn(book: Book): string | null {
  if (loading.whole) return null;
  for (const { rows } of workedBook(book).pages)
    for (const cells of rows)
      for (const typed of cells) {
        const name = lateIn(typed);
        if (name !== null) return name;
      }
  return null;
}

/** Why a book that names this function can't be taken yet, in a sentence; the functions are asked for. */
export function notThereYet(name: string): string {
  const { fault } = loading;
  loading.ask();
  return fault === null
    ? phrase`${name} is still being loaded: it is there in a moment`
    : phrase`${name} could not be loaded (${fault}): see that the server is running, then try again`;
}

/** Says how the functions are loaded. */
export function askWith(ask: () => void): void {
  loading.ask = ask;
}

/** Notes that the functions could not be loaded, and why. */
export function didNotCome(fault: string): void {
  loading.fault = fault;
}

/** Notes that every function is there, and calls those who wait for that. */
export function cameLate(): void {
  forgetReadings();
  loading.whole = true;
  loading.fault = null;
  for (const tell of loading.waiting.splice(0)) tell();
}

/** Calls `tell` once when every function is there. */
export function whenWhole(tell: () => void): void {
  if (loading.whole) tell();
  else loading.waiting.push(tell);
}
