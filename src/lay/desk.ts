/** Where a lay question is answered: with the best lay the book keeps, else with a quick lay, remembered. */
import { questionHash } from "../../functions/cut.ts";
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import { checkLay, quickLay } from "./plan.ts";

type Answer = Lay | { readonly refusal: string };

/** Quick lays and checked found lays, by question; shared by every book open on this machine. */
const quick = new Map<string, Answer>();
const sound = new WeakMap<object, Lay>();
const MOST = 500;

/** The answer to a question; the same question costs nothing the second time. */
export function layDesk(question: LayQuestion, found: Book["lays"]): Answer {
  const hash = questionHash(question);
  const kept = found[hash];
  if (kept) {
    const known = sound.get(kept);
    if (known) return known;
    const lay: Lay = {
      placements: kept.placements,
      lengths: [kept.length],
      density: kept.density,
      missing: [],
    };
    // A file can be edited by hand: a kept lay that does not fit is as good as none.
    if (checkLay(question, lay).length === 0) {
      sound.set(kept, lay);
      return lay;
    }
  }
  let answer = quick.get(hash);
  if (!answer) {
    answer = quickLay(question);
    if (quick.size >= MOST) quick.delete(quick.keys().next().value as string);
    quick.set(hash, answer);
  }
  return answer;
}
