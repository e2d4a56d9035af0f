/**
 * Estimates, and the figures that rest on them. A function such as GIRTH_OVER says that its answer is an
 * estimate; whatever is worked out from it stays one, and says so wherever it is shown.
 */

import { remember, rememberWithObject } from "../../functions/memo.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { isChoosing } from "./branches.ts";
import { type Referring, Users } from "./dependents.ts";
import type { Engine } from "./engine.ts";
import { cellText } from "./label.ts";
import { neededNow } from "./lays-below.ts";
import { takenFrom } from "./list-cells.ts";
import { type Area, areasOf, isIn } from "./references.ts";

/** The mark beside a figure that is an estimate or rests on one, and what it says. */
export const ESTIMATE_SIGN = phrase`est.`;
export const ESTIMATE_SAYS = phrase`an estimate, or worked out from one: measure before you cut`;

export interface Estimate {
  /** The cell that estimates. */
  readonly place: Place;
  readonly sentence: string;
}

type Found = ReadonlyMap<string, readonly Estimate[]>;

const revisions = rememberWithObject<Engine, { book: Book | null; found: Found }>();

/** The estimates that a cell's value is or rests on, its own first. */
export function estimatesAt(engine: Engine, place: Place): readonly Estimate[] {
  const revision = revisions(engine, () => ({ book: null, found: new Map() }));
  if (revision.book !== engine.book) {
    revision.found = allEstimates(engine);
    revision.book = engine.book;
  }
  return revision.found.get(placeKey(place)) ?? [];
}

/** "estimated: …" for an estimate, "rests on an estimate: …" for what is worked out from one; "" for every other cell. */
export function estimateText(engine: Engine, place: Place): string {
  const estimates = estimatesAt(engine, place);
  const own = estimates.find((one) => placeKey(one.place) === placeKey(place));
  if (own) return phrase`estimated: ${own.sentence}`;
  if (estimates.length === 0) return "";
  const named = estimates.slice(0, 3).map((one) => cellText(engine.book, one.place));
  const more = estimates.length - named.length;
  return phrase`rests on ${plural(estimates.length, "an estimate", "estimates")}: ${named.join("; ")}${more > 0 ? phrase` and ${more} more` : ""}`;
}

/** By the key of each cell, the estimates it rests on. */
function allEstimates(engine: Engine): Found {
  const estimates = engine.estimates();
  const found = new Map<string, Estimate[]>();
  if (estimates.length === 0) return found;
  const users = usersOf(engine);
  /** The areas that the answer of a formula needs at present: IF leaves a branch out. */
  const needed = remember<Referring, readonly Area[]>(Number.POSITIVE_INFINITY);
  const neededAreas = (formula: Referring): readonly Area[] => {
    const { place, typed, areas } = formula;
    if (!chooses(typed)) return areas;
    const now = neededNow(engine, typed, place.page);
    return needed(formula, () => areasOf(engine.worked, formulaTree(typed), place.page, now));
  };
  for (const estimate of estimates) {
    const waiting = [estimate.place];
    const seen = new Set<string>();
    for (let place = waiting.pop(); place; place = waiting.pop()) {
      const key = placeKey(place);
      if (seen.has(key)) continue;
      seen.add(key);
      const rests = found.get(key);
      if (rests) rests.push(estimate);
      else found.set(key, [estimate]);
      for (const formula of users.of(place)) {
        const taken = engine.takenBy(formula.place);
        const uses = (area: Area) => isIn(area, place!) && isTaken(place!, takenFrom(area, taken));
        if (formula.areas.some(uses) && neededAreas(formula).some(uses)) waiting.push(formula.place);
      }
    }
  }
  return found;
}

/** Whether an answer rests on a cell of a list: on all of them, where it is not known which it took. */
const isTaken = (place: Place, cells: readonly Place[] | null): boolean =>
  cells === null || cells.some((cell) => placeKey(cell) === placeKey(place));

const choosing = remember<string, boolean>(2000);

const chooses = (typed: string): boolean =>
  choosing(typed, () =>
    [...typed.matchAll(/[A-Za-z][A-Za-z0-9_.]*(?=\s*\()/g)].some(([name]) => isChoosing(name.toUpperCase())),
  );

const known = rememberWithObject<Engine, { users: Users | null }>();

/** The formulas that refer to each cell, kept while an edit changes no formula. */
function usersOf(engine: Engine): Users {
  const kept = known(engine, () => ({ users: null }));
  const users = new Users(engine.worked);
  if (!kept.users?.isLike(users)) kept.users = users;
  return kept.users;
}
