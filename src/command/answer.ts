/** The whole answer to a what-if question of a verb. */
import { type Answer, answerAtOnce, type Question } from "../engine/question.ts";
import { Effort } from "../lay/effort.ts";
import { secondsOf } from "./laid.ts";
import { Wrong } from "./verb.ts";

/**
 * The answer to a question; a question without an answer is a wrong request that says why. With
 * `seconds`, as typed, each lay is searched for that long; without `seconds`, quick lays answer.
 */
export function answerTo(question: Question, seconds: string | undefined): Answer {
  const rounds = [seconds === undefined ? 0 : secondsOf(seconds)];
  const answer = answerAtOnce({ ...question, rounds }, () => new Effort());
  if (answer.problem !== null) throw new Wrong(answer.problem);
  return answer;
}
