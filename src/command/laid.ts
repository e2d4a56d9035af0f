/** What the verbs share about lays: how long each is searched for, how it was found, and how sure it is. */

import { leastLength } from "../../functions/cutting/least-length.ts";
import type { LayOrigin } from "../../functions/lay.ts";
import { originText } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import type { Engine } from "../engine/engine.ts";
import { uncertaintyOf } from "../engine/laid.ts";
import { originBelow } from "../engine/lays-below.ts";
import { type Desk, searchingDesk } from "../lay/searching-desk.ts";
import { label } from "./open.ts";
import { type VerbOptions, Wrong } from "./verb.ts";

export const SECONDS_OPTION = {
  seconds: {
    type: "string",
    value: "N",
    about: phrase`searches for each lay of pieces for N seconds, 0 to 3600; a longer search may find a shorter lay`,
  },
} as const satisfies VerbOptions;

/** The seconds of --seconds, 0 to 3600. */
export function secondsOf(text: string): number {
  const seconds = text.trim() === "" ? Number.NaN : Number(text);
  if (!(seconds >= 0 && seconds <= 3600))
    throw new Wrong(phrase`--seconds must be a number from 0 to 3600, the time for each lay, not "${text}"`);
  return seconds;
}

/** The desk for a verb that takes --seconds: each lay is searched for that long; without the option, `otherwise` answers. */
export const deskFor = (text: string | undefined, otherwise: Desk): Desk =>
  text === undefined ? otherwise : searchingDesk(secondsOf(text));

/** How the lays of each cell were found, as data: by its name or address. */
export function laidData(engine: Engine) {
  const entries = engine.laid().flatMap(({ place, lays }) => {
    const found = lays.flatMap(({ question, answer }) => {
      if ("refusal" in answer) return [];
      const least = leastLength(question);
      const origin = answer.origin ?? { by: "quick" };
      return [{ ...origin, length: answer.lengths.reduce((a, b) => a + b, 0), ...(least > 0 && { least }) }];
    });
    return found.length > 0 ? [[label(engine, place), found] as const] : [];
  });
  return Object.fromEntries(entries);
}

/** Whether a cell lays pieces, or rests on one that does. */
export const isLaid = (engine: Engine, place: Place): boolean => originBelow(engine, place) !== null;

/**
 * A note when some of these figures differ by less than a search is sure of; "" when no two do. `each`
 * says what is compared: "steps", "trials".
 */
export function unsureNote(
  name: string,
  figures: readonly (number | null)[],
  origin: LayOrigin | null,
  each: "steps" | "trials",
): string {
  const share = uncertaintyOf(origin);
  const unsure = figures.some((one, i) => {
    const next = figures[i + 1];
    if (one === null || next === null || next === undefined || one === next) return false;
    return Math.abs(one - next) < share * Math.max(Math.abs(one), Math.abs(next));
  });
  if (!unsure) return "";
  const how = originText(origin ?? undefined);
  return each === "steps"
    ? phrase`${name}: some steps differ by less than a lay is sure of (${how}: a longer search may shorten each by some ${share * 100} %)`
    : phrase`${name}: some trials differ by less than a lay is sure of (${how}: a longer search may shorten each by some ${share * 100} %)`;
}

/** How sure an answer is that rests on lays; "" when it rests on no lay or when all of them are proved. */
export const laidNote = (origin: LayOrigin | null): string =>
  origin && uncertaintyOf(origin) > 0
    ? phrase`the lengths of cloth rest on lays (${originText(origin)}): a longer search may shorten each by some ${Math.round(uncertaintyOf(origin) * 1000) / 10} %`
    : "";
