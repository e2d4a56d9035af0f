/** What the answers of some cells leave out: cells below them that count as nothing, told in sentences. */
import { fullAddress, nameOf, type Place, placeKey } from "../book/address.ts";
import type { Engine } from "./engine.ts";
import { Upstream } from "./references.ts";

/** Cells in `turned` get a figure from the question itself, so they are left aside. */
export function leftOut(engine: Engine, places: readonly Place[], turned: readonly Place[] = []): string[] {
  const upstream = new Upstream(engine.book, places);
  const filled = new Set(turned.map(placeKey));
  return [...engine.uncounted.values()]
    .filter(
      ({ place, first, users }) =>
        first && !filled.has(placeKey(place)) && users.some((user) => upstream.has(user)),
    )
    .map(
      ({ place, sentence }) =>
        `${nameOf(engine.book, place) ?? fullAddress(engine.book, place)}: ${sentence}`,
    );
}
