/**
 * Where a lay question is answered: with the best lay the book keeps, else with a quick lay,
 * remembered. A lay that is known of a question which contains this one bounds the answer, so
 * that less to cut never takes more cloth.
 */

import { fnv1a, questionFrom, questionHash, questionText } from "../../functions/cutting/lay-question.ts";
import type { Lay, LayOrigin, LayQuestion } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import { answerFrom, isBetter } from "./answer.ts";
import { knownJoins } from "./joins.ts";
import { Known } from "./known.ts";
import { isLarge, leaveLarge, leaveSlow } from "./large-questions.ts";
import { type Answer, type Kept as KeptAnswer, Memory } from "./memory.ts";
import { checkLay, isProved } from "./plan.ts";
import { quickLayWith } from "./quick.ts";
import { refusalOf } from "./refuse.ts";

type Kept = Book["lays"][string];

/** Quick lays and checked found lays; shared by every book open on this machine. */
const quick = new Memory(600);
const known = new Known();
const sound = new WeakMap<Kept, Lay | null>();

/** The answer to a question; the same question costs nothing the second time. */
export function layDesk(question: LayQuestion, found: Book["lays"]): Answer {
  if (question.passing) return quickAnswer(question);
  takeBounds(found);
  const kept = foundLay(question, found);
  // The maker's own arrangement stays as it is; any other lay gives way to a shorter one that is known.
  if (kept?.origin?.by === "hand") return kept;
  const answer = kept ?? quickAnswer(question);
  return "refusal" in answer ? answer : known.best(question, answer);
}

/** Makes a lay known that was found elsewhere: the best lay of the question from now on. */
export const learnLay = (question: LayQuestion, lay: Lay): Lay => known.best(question, lay);

/** Whether the answer to a question is a lay that was found and kept, not the one made at once. */
export const isFound = (question: LayQuestion, found: Book["lays"]): boolean =>
  foundLay(question, found) !== null;

/** Whether a question is answered without laying anything anew. */
export const isKnown = (question: LayQuestion, found: Book["lays"]): boolean =>
  quick.has(question) || isFound(question, found);

/** Takes in the quick lay that was made of a question elsewhere: it is answered with it from now on. */
export function learnQuick(question: LayQuestion, answer: Answer): void {
  quick.answer(question, () => answer);
}

/** All quick lays that are remembered, for another thread to learn. */
export const quickLays = (): readonly KeptAnswer[] => quick.all;

/** The desk of the page: as `layDesk`, but what holds up a frame, a slow or large lay or a search for joins, is left to a worker. */
export const pageDesk = Object.assign(leaveSlow(leaveLarge(layDesk, isFound), isKnown), {
  joins: knownJoins,
});

/** A kept lay that answers; on a piece of cloth in hand also one for such cloth without an end, if it is long enough. */
function foundLay(question: LayQuestion, found: Book["lays"]): Lay | null {
  const kept = keptFor(question, found);
  const lay = kept ? keptLay(question, kept) : null;
  const [cloth, ...others] = question.cloths;
  if (lay || !cloth || cloth.length === null || others.length > 0) return lay;
  const endless = foundLay({ ...question, cloths: [{ ...cloth, length: null }] }, found);
  return endless && endless.lengths[0]! <= cloth.length * (1 + 1e-9) ? endless : null;
}

/** The lay that a book keeps for a question; a book that keeps none need not know the question's name. */
function keptFor(question: LayQuestion, found: Book["lays"]): Kept | undefined {
  for (const _ in found) return found[questionHash(question)];
  return undefined;
}

/** A lay as a book keeps it. One that does not say how it was found is taken for found by a search. */
export function toKeep(lay: Lay): Kept {
  const { placements, lengths, density, origin = SEARCHED } = lay;
  return { placements, length: lengths.reduce((sum, length) => sum + length, 0), density, origin };
}

/** The same for a lay that the checker has just passed: it is not checked again. */
export function keepChecked(question: LayQuestion, lay: Lay): Kept {
  const text = questionText(question);
  const isBound = lay.missing.length === 0 && text.length <= LONGEST_QUESTION;
  const kept = { ...toKeep(lay), ...(isBound && { question: text }) };
  sound.set(kept, { ...answerFrom(question, lay.placements), origin: kept.origin ?? SEARCHED });
  return kept;
}

/** A longer question, in characters, is not kept with its lay: books stay small. */
const LONGEST_QUESTION = 20_000;

const taken = new WeakSet<Book["lays"] | Kept>();

/** Takes the lays of a book, whose questions no cell may ask any more, as bounds of smaller jobs. */
function takeBounds(found: Book["lays"]): void {
  if (taken.has(found)) return;
  taken.add(found);
  for (const [hash, kept] of Object.entries(found)) {
    if (kept.question === undefined || taken.has(kept)) continue;
    taken.add(kept);
    const question = fnv1a(kept.question) === hash ? questionFrom(kept.question) : null;
    if (!question || refusalOf(question) !== null) continue;
    const { placements, origin = SEARCHED } = kept;
    if (placements.every(({ piece, cloth }) => question.pieces[piece] && question.cloths[cloth]))
      known.addBound(question, { ...answerFrom(question, placements), origin });
  }
}

/** What books of earlier days keep was always found by a search; they do not say how long it was. */
const SEARCHED: LayOrigin = { by: "search", seconds: 0 };

/**
 * The kept lay with its figures worked out anew. A file can be edited by hand: a lay that does
 * not fit, or leaves out more than the quick one does, is as good as none. (No quick lay is made of
 * a large question just to compare.)
 */
function keptLay(question: LayQuestion, kept: Kept): Lay | null {
  const known = sound.get(kept);
  if (known !== undefined) return known;
  const { pieces, cloths } = question;
  let lay: Lay | null = null;
  if (kept.placements.every(({ piece, cloth }) => pieces[piece] && cloths[cloth])) {
    lay = { ...answerFrom(question, kept.placements), origin: kept.origin ?? SEARCHED };
    if (checkLay(question, lay).length > 0) lay = null;
    else if (lay.missing.length > 0 && !isLarge(question)) {
      const first = quickAnswer(question);
      if (!("refusal" in first) && isBetter(question, first, lay)) lay = null;
    }
  }
  sound.set(kept, lay);
  return lay;
}

/** The quick lay of a question, made once. */
export const quickAnswer = (question: LayQuestion): Answer =>
  quick.answer(question, () => {
    const lay = quickLayWith(question, quickAnswer);
    return !("refusal" in lay) && !question.sharing && isProved(question, lay)
      ? { ...lay, origin: PROVED }
      : lay;
  });

/** A quick lay that is as short as any can be. */
const PROVED: LayOrigin = { by: "search", seconds: 0, proved: true };
