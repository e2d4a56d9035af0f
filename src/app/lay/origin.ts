/** What a search does to a lay's origin: more seconds of search, or the proof that no lay can be shorter. */
import type { Lay, LayOrigin } from "../../../functions/lay.ts";

/** Seconds that a lay was searched for so far; none where there is no lay. */
export const secondsOf = (lay: Pick<Lay, "origin"> | undefined): number =>
  lay?.origin?.by === "search" ? lay.origin.seconds : 0;

export const isProved = ({ origin }: Lay): boolean => origin?.by === "search" && origin.proved === true;

/** A search of `seconds` in all came to this lay, or found no better one. */
export function searchedFor(lay: Lay, seconds: number, proved: boolean): Lay {
  const tenths = Math.round(seconds * 10) / 10;
  const origin: LayOrigin = { by: "search", seconds: tenths, ...(proved && { proved }) };
  return { ...lay, origin };
}
