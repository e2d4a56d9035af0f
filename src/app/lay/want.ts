/** Which lay of a book is to be searched for next, and for how long. */

import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import { hashOf } from "../../engine/laid.ts";
import type { Laid } from "../../engine/records.ts";
import { isLarge } from "../../lay/large-questions.ts";
import { isProved, secondsOf } from "./origin.ts";

export interface Want {
  readonly question: LayQuestion;
  readonly hash: string;
  /** The lay that answers now; null while it is being worked out. */
  readonly lay: Lay | null;
  /** How long to search now, in seconds; 0 for the quick lay only. */
  readonly seconds: number;
}

/** Every question is searched for this long, in seconds, before any is searched for longer. */
export const ROUNDS: readonly number[] = [2, 20, 60];

/**
 * The next search: first a question without a lay, then the question that was searched for least. Within a
 * round the cell that is looked at comes first, then the others in the order of the book. Null when nothing is
 * left to gain. How long a question was searched for is kept with the lay that is `found` for it, because the
 * lay that answers may be bounded by that of another question. `over` holds the questions that a search has
 * given up. With `quickOnly` only questions without a lay are searched for.
 */
export function nextWant(
  laid: readonly Laid[],
  found: Book["lays"],
  looked: Place | null,
  over: ReadonlySet<string>,
  quickOnly: boolean,
): Want | null {
  let best: Want | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { lays } of inOrder(laid, looked)) {
    for (const { question, answer } of lays) {
      const pending = "refusal" in answer && answer.pending !== undefined;
      if ("refusal" in answer && !pending) continue;
      // The quick lay of a question that is not large is made elsewhere (quick-lays.ts), and pieces are shared out there.
      if (pending && (question.sharing || !isLarge(question))) continue;
      const lay = "refusal" in answer ? null : answer;
      if (lay && (quickOnly || isSettled(question, lay))) continue;
      const hash = hashOf(question);
      if (over.has(hash)) continue;
      const spent = secondsOf(found[hash]);
      const round = lay ? ROUNDS.findIndex((seconds) => spent < seconds - 0.05) : -1;
      if ((lay && round < 0) || round >= least) continue;
      least = round;
      best = { question, hash, lay, seconds: lay ? ROUNDS[round]! - spent : 0 };
      if (round < 0) return best;
    }
  }
  return best;
}

const samePlace = (a: Place, b: Place): boolean =>
  a.page === b.page && a.row === b.row && a.column === b.column;

function inOrder(laid: readonly Laid[], looked: Place | null): Laid[] {
  const rank = ({ place }: Laid) => (looked && samePlace(place, looked) ? 0 : 1);
  return laid.toSorted(
    (a, b) =>
      rank(a) - rank(b) ||
      a.place.page - b.place.page ||
      a.place.row - b.place.row ||
      a.place.column - b.place.column,
  );
}

/**
 * Whether a search has nothing to gain: no lay can be shorter, all pieces lie on the cloth in hand,
 * or the maker has laid them by hand and would not have them moved.
 */
function isSettled({ cloths }: LayQuestion, lay: Lay): boolean {
  if (isProved(lay) || lay.origin?.by === "hand") return true;
  return lay.missing.length === 0 && cloths.every(({ length }) => length !== null);
}
