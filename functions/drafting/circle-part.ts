/** Parts of a circle sewn to an edge: skirts, capes, flounces. */

import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The inner edge to cut: what it is sewn to and the ease in it. Refuses ease that leaves nothing. */
export function innerEdge(waist: number, ease: number): number {
  const edge = waist + ease;
  if (edge <= 1e-9 * waist)
    throw new Refusal(
      (say) =>
        phrase`ease must leave an edge above 0: more than ${say(-waist, ease)}, not ${say(ease, -waist)}`,
    );
  return edge;
}
