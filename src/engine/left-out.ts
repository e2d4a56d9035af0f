/** What the answers of some cells leave out: cells below them that count as nothing, and words that are searched for and not found, in sentences. */
import { type Place, placeKey } from "../book/address.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "./engine.ts";
import { cellText } from "./label.ts";
import { Upstream } from "./references.ts";

/** Cells in `varied` get a number from the question itself, so they are passed over. */
export function leftOut(engine: Engine, places: readonly Place[], varied: readonly Place[] = []): string[] {
  const upstream = new Upstream(engine.book, places);
  const filled = new Set(varied.map(placeKey));
  const label = (place: Place) => cellText(engine.book, place);
  const unmatched = upstream.places.flatMap((place) =>
    engine
      .unmatched(typedAt(engine.worked, place.page, place.row, place.column), place.page)
      .map((sentence) => `${label(place)}: ${sentence}`),
  );
  const uncounted = [...engine.uncounted.values()]
    .filter(
      ({ place, first, users }) =>
        first && !filled.has(placeKey(place)) && users.some((user) => upstream.has(user)),
    )
    .map(({ place, sentence }) => `${label(place)}: ${sentence}`);
  return [...uncounted, ...unmatched];
}
