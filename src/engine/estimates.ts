/**
 * Estimates, and the figures that rest on them. A function such as GIRTH_OVER says that its answer is an
 * estimate; whatever is worked out from it stays one, and says so wherever it is shown.
 */

import { rememberWithObject } from "../../functions/memo.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { isChoosing } from "./branches.ts";
import { type Referring, referring } from "./dependents.ts";
import type { Engine } from "./engine.ts";
import { cellText } from "./label.ts";
import { neededNow } from "./lays-below.ts";
import { takenFrom } from "./list-cells.ts";
import { type Area, areasOf, isIn, isSingle } from "./references.ts";

/** The mark beside a figure that is an estimate or rests on one, and what it says. */
export const ESTIMATE_SIGN = phrase`est.`;
export const ESTIMATE_SAYS = phrase`an estimate, or worked out from one: measure before you cut`;

export interface Estimate {
  /** The cell that estimates. */
  readonly place: Place;
  readonly sentence: string;
}

interface Formula extends Referring {
  readonly key: string;
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
  if (estimates.length === 0) return new Map();
  const formulas = [...referring(engine.worked)].map(
    (one): Formula => ({ ...one, key: placeKey(one.place) }),
  );
  // First every formula that refers to an estimate. Then only what the answers need: IF leaves a branch out.
  const may = spread(engine, estimates, formulas, ({ areas }) => areas);
  const reached = formulas.filter(({ key }) => may.has(key));
  if (!reached.some(({ typed }) => chooses(typed))) return may;
  return spread(engine, estimates, reached, ({ place: { page }, typed, areas }) =>
    chooses(typed) ? areasOf(engine.worked, formulaTree(typed), page, neededNow(engine, typed, page)) : areas,
  );
}

const chooses = (typed: string): boolean =>
  [...typed.matchAll(/[A-Za-z][A-Za-z0-9_.]*(?=\s*\()/g)].some(([name]) => isChoosing(name.toUpperCase()));

function spread(
  engine: Engine,
  estimates: readonly Estimate[],
  formulas: readonly Formula[],
  needed: (formula: Formula) => readonly Area[],
): Found {
  const users = new Map<string, Formula[]>();
  const lists: { readonly area: Area; readonly formula: Formula }[] = [];
  const use = (key: string, formula: Formula) => {
    const list = users.get(key);
    if (list) list.push(formula);
    else users.set(key, [formula]);
  };
  for (const formula of formulas) {
    const taken = engine.takenBy(formula.place);
    for (const area of needed(formula)) {
      const cells = takenFrom(area, taken);
      if (cells) for (const cell of cells) use(placeKey(cell), formula);
      else if (isSingle(area)) use(placeKey({ page: area.page, row: area.top, column: area.left }), formula);
      else lists.push({ area, formula });
    }
  }
  const found = new Map<string, Estimate[]>();
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
      for (const formula of users.get(key) ?? []) waiting.push(formula.place);
      for (const { area, formula } of lists) if (isIn(area, place)) waiting.push(formula.place);
    }
  }
  return found;
}
