/**
 * A desk that searches each question for a while before it answers, every question with the same
 * effort: for the command line, which has the time and shows its answer once.
 */

import { shareOfCloth } from "../../functions/cutting/least-length.ts";
import type { Lay, LayOrigin, LayQuestion } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import { isBetter } from "./answer.ts";
import { layDesk, learnLay } from "./desk.ts";
import { type Answer, Memory } from "./memory.ts";
import { isProved } from "./plan.ts";
import { Search } from "./search.ts";

/** Before a list is said not to fit the cloth in hand, it is searched for at least so long, in seconds. */
export const SECONDS_BEFORE_NO = 2;
/** So many lists that do not fit are searched when no time was asked for; of more, quick lays speak. */
const MOST_NOES = 5;

export interface Desk {
  (question: LayQuestion, found: Book["lays"]): Answer;
  readonly searches?: true;
}

/** A desk that searches each lay for `seconds`; with 0, only lists that find no place on the cloth in hand. */
export function searchingDesk(seconds: number): Desk {
  const searched = new Memory(5000);
  /** Rounds of moves that the first question of so many copies had: others have as many, not as long. */
  const rounds = new Map<number, number>();
  let noes = 0;
  const desk = (question: LayQuestion, found: Book["lays"]): Answer => {
    const first = layDesk(question, found);
    if (question.passing || "refusal" in first || first.origin?.by === "hand") return first;
    const isNo = first.missing.length > 0;
    if (isNo ? shareOfCloth(question) > 1 : seconds === 0) return first;
    const answer = searched.answer(question, () => {
      if (isNo && seconds === 0 && ++noes > MOST_NOES) return first;
      return searchedLay(question, first, isNo ? Math.max(seconds, SECONDS_BEFORE_NO) : seconds, rounds);
    });
    if ("refusal" in answer) return answer;
    const now = layDesk(question, found);
    return "refusal" in now || isBetter(question, answer, now) ? answer : sameOr(now, answer);
  };
  return Object.assign(desk, { searches: true as const });
}

/** A lay as good as the searched one says that it was searched for. */
const sameOr = (now: Lay, answer: Lay): Lay =>
  now.origin === undefined || now.origin.by === "quick"
    ? { ...now, ...(answer.origin && { origin: answer.origin }) }
    : now;

function searchedLay(question: LayQuestion, start: Lay, seconds: number, rounds: Map<number, number>): Lay {
  const before = start.origin?.by === "search" ? start.origin.seconds : 0;
  if (isProved(question, start)) return learned(question, { ...start, origin: searchedFor(before, true) });
  const copies = question.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  const known = rounds.get(copies);
  const began = performance.now();
  const search = new Search(question, {
    seed: 1,
    start,
    ...(known === undefined ? { milliseconds: seconds * 1000 } : { rounds: known }),
  });
  let done = 0;
  // However slow a question of the same size is, it has no more than four times the time.
  const most = known === undefined ? seconds : 4 * seconds;
  const isOver = () => performance.now() - began > most * 1000 || (known !== undefined && done >= known);
  while (!isOver()) {
    done += ROUNDS;
    if (search.run({ rounds: ROUNDS })) break;
  }
  if (known === undefined) rounds.set(copies, done);
  const best = search.best ?? start;
  const spent = (performance.now() - began) / 1000;
  return learned(question, { ...best, origin: searchedFor(before + spent, isProved(question, best)) });
}

/** The lay, from now on known to the desk, or a better one that the desk knows. */
function learned(question: LayQuestion, lay: Lay): Lay {
  const known = learnLay(question, lay);
  return isBetter(question, known, lay) ? known : lay;
}

/** Rounds between two looks at the clock. */
const ROUNDS = 10;

const searchedFor = (seconds: number, proved: boolean): LayOrigin => ({
  by: "search",
  seconds: Math.round(seconds * 10) / 10,
  ...(proved && { proved }),
});
