/** The problems of a book. */
import { comparePlaces, type Place, placeKey } from "../book/address.ts";
import type { Engine } from "./engine.ts";
import { labelOf } from "./label.ts";
import { mayHaveProblems } from "./may-have-problems.ts";
import { rarelyAsked } from "./rarely-asked.ts";

export interface Check {
  readonly place: Place;
  readonly address: string;
  readonly name: string | undefined;
  /** The words of its row or column; null for a cell without them. */
  readonly label: string | null;
  /** "text": a text where a formula needs a number; "unusual": the cell has an answer that should be checked; "unchosen": not among the cell's choices. */
  readonly is: "error" | "verdict" | "unusual" | "unchosen" | "blank" | "text";
  readonly sentence: string;
  /** Whether it took too long and was stopped: `Store.workAgain` gives it more time. */
  readonly stopped: boolean;
  /** The cells that it is about: of lists, or given as single arguments. */
  readonly at: readonly Place[];
  /** How many other cells have the same problem, because they rest on this cell or on the same slip in a list. */
  readonly waiting: number;
  /** The column that holds text and would count if it held anything. */
  readonly column: { readonly page: number; readonly column: number } | null;
}

/**
 * The problems of the book, in its order. Each is listed once: at the cell where it begins, or at the one of
 * the cells with the same cause that says most of it.
 */
export function checks(engine: Engine): Check[] {
  const found = new Map<string, Check>();
  /** By the key of a cell with a problem, the keys of those that wait for it. */
  const waiting = new Map<string, Set<string>>();
  const waits = (from: Place, key: string) =>
    waiting.set(placeKey(from), (waiting.get(placeKey(from)) ?? new Set()).add(key));
  const add = (place: Place, more: Pick<Check, "is" | "sentence" | "column" | "stopped" | "at">) =>
    found.set(placeKey(place), {
      place,
      address: engine.address(place),
      name: engine.view(place).name,
      label: labelOf(engine.book, place),
      waiting: 0,
      ...more,
    });
  for (const place of mayHaveProblems(engine)) {
    const { problem } = engine.view(place);
    if (!problem) continue;
    if (placeKey(problem.from) !== placeKey(place)) waits(problem.from, placeKey(place));
    else if (problem.is !== "uncounted" && problem.is !== "pending")
      add(place, {
        is: problem.is,
        sentence: problem.sentence,
        column: null,
        stopped: problem.stopped === true,
        at: problem.at ?? [],
      });
  }
  for (const { place, is, sentence, first, column, users } of engine.uncounted.values()) {
    if (first) add(place, { is, sentence, column, stopped: false, at: [] });
    // The sentence itself names the first formula that needs a blank cell.
    for (const user of is === "blank" ? users.slice(1) : users) waits(place, placeKey(user));
  }
  const inOrder = [...found.values()].toSorted((a, b) => comparePlaces(a.place, b.place));
  const by = rarelyAsked.causes?.(engine.worked, inOrder, (place) => engine.pointedAt(place));
  const listed = inOrder.filter((check) => {
    const first = by?.firstOf(check) ?? check;
    const own = placeKey(check.place);
    if (first !== check) for (const key of [own, ...(waiting.get(own) ?? [])]) waits(first.place, key);
    return first === check;
  });
  return listed.map((check) => ({
    ...check,
    at: by?.atOf(check) ?? check.at,
    waiting: waiting.get(placeKey(check.place))?.size ?? 0,
  }));
}
