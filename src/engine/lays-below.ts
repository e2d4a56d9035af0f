/** The laid lengths that a cell's value rests on without laying pieces itself. */

import type { LayOrigin } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { neededArguments } from "./branches.ts";
import type { Engine } from "./engine.ts";
import { cellText } from "./label.ts";
import { laidText, worth } from "./laid.ts";
import { type NeededIn, Upstream } from "./references.ts";

export interface LayBelow {
  readonly place: Place;
  readonly origin: LayOrigin;
}

const same = (a: Place, b: Place): boolean => a.page === b.page && a.row === b.row && a.column === b.column;

/** Which arguments of IF and the like the answer of a formula needs at present; parts of it are calculated once more. */
export function neededNow(engine: Engine, formula: string, page: number): NeededIn {
  return ({ name, args, spans }) =>
    neededArguments(name, args.length, {
      value: (at) => {
        if (!args[at]) return null;
        const answer = engine.evaluate(`=${formula.slice(...spans[at]!)}`, page);
        return "problem" in answer ? answer : answer.value;
      },
      // Which error it is stays unknown: IFNA and IFERROR may have come to their second argument.
      errorType: (value) => (typeof value === "object" && value !== null ? "NA" : null),
      isEqual: (a, b) =>
        typeof a === "string" && typeof b === "string" ? a.toLowerCase() === b.toLowerCase() : a === b,
    });
}

/** The cells that lay pieces among those that a cell's value rests on, the least searched first. */
export function laysBelow(engine: Engine, place: Place): LayBelow[] {
  const laid = engine.laid().filter((one) => !same(one.place, place));
  if (laid.length === 0) return [];
  const { book } = engine;
  const all = new Upstream(book, [place]);
  if (!laid.some((one) => all.has(one.place))) return [];
  const used = new Upstream(book, [place], (formula, page) => neededNow(engine, formula, page));
  return laid
    .filter((one) => used.has(one.place))
    .flatMap((one): LayBelow[] => {
      const { origin } = engine.view(one.place);
      return origin ? [{ place: one.place, origin }] : [];
    })
    .toSorted((a, b) => worth(a.origin) - worth(b.origin));
}

/** "rests on cloth_length_a: quick lay, a search may find a shorter one"; "" when the cell rests on no lay. */
export function laysBelowText(engine: Engine, place: Place): string {
  const texts = laysBelow(engine, place).map(
    (one) => `${cellText(engine.book, one.place)}: ${laidText(one.origin)}`,
  );
  return texts.length > 0 ? phrase`rests on ${texts.join("; ")}` : "";
}

/** How the least searched lay was found that a cell's value rests on; null when the value rests on no lay. */
export const originBelow = (engine: Engine, place: Place): LayOrigin | null =>
  engine.view(place).origin ?? laysBelow(engine, place)[0]?.origin ?? null;
