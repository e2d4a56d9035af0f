/**
 * Joins that were found in a worker. A page that must go on while its maker types answers with
 * these, and says of all others that they are being looked for.
 */

import { questionHash } from "../../functions/cutting/lay-question.ts";
import type { JoinAnswer, JoinPlanner, JoinQuestion } from "../../functions/lay.ts";

/** Answers kept, the oldest given up first. */
const MOST_KEPT = 200;

const kept = new Map<string, JoinAnswer>();

/** Equal for two questions about joins that have the same answer, names included. */
export const joinsKey = ({ question, start, seam, mark }: JoinQuestion): string =>
  JSON.stringify([
    questionHash(question),
    question.pieces.map(({ name, innerFolds = [] }) => [name, innerFolds]),
    start.missing,
    seam,
    mark,
  ]);

/** The joins found for a question; of one that was not searched for yet, that the answer comes later. */
export const knownJoins: JoinPlanner = (joins) => kept.get(joinsKey(joins)) ?? { pending: true };

/** Keeps what a search for joins came to. */
export function learnJoins(joins: JoinQuestion, answer: JoinAnswer): void {
  const [oldest] = kept.keys();
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  kept.set(joinsKey(joins), answer);
}
