/** The laid lengths that a cell rests on without laying pieces itself. */
import type { LayOrigin } from "../../functions/lay.ts";
import type { Place } from "../book/address.ts";
import { nameOf } from "../book/address.ts";
import type { Engine } from "./engine.ts";
import { laidText, worth } from "./laid.ts";
import { Upstream } from "./references.ts";

export interface LayBelow {
  readonly place: Place;
  readonly origin: LayOrigin;
}

const same = (a: Place, b: Place): boolean => a.page === b.page && a.row === b.row && a.column === b.column;

/** The cells that lay pieces among those that a cell rests on, the least searched first. */
export function laysBelow(engine: Engine, place: Place): LayBelow[] {
  const laid = engine.laid().filter((one) => !same(one.place, place));
  if (laid.length === 0) return [];
  const upstream = new Upstream(engine.book, [place]);
  return laid
    .filter((one) => upstream.has(one.place))
    .flatMap((one): LayBelow[] => {
      const { origin } = engine.view(one.place);
      return origin ? [{ place: one.place, origin }] : [];
    })
    .toSorted((a, b) => worth(a.origin) - worth(b.origin));
}

/** "rests on cloth_length_a: quick lay, a search may find a shorter one"; "" when the cell rests on none. */
export function laysBelowText(engine: Engine, place: Place): string {
  const told = laysBelow(engine, place).map(
    (one) => `${nameOf(engine.book, one.place) ?? engine.address(one.place)}: ${laidText(one.origin)}`,
  );
  return told.length > 0 ? `rests on ${told.join("; ")}` : "";
}

/** How the least searched lay was found that a cell's value rests on; null when the value rests on none. */
export const originBelow = (engine: Engine, place: Place): LayOrigin | null =>
  engine.view(place).origin ?? laysBelow(engine, place)[0]?.origin ?? null;
