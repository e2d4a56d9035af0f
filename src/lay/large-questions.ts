/**
 * Lay questions that take too long to answer while the maker types. On the page such a question is
 * answered with "being worked out", and a worker makes the lay. The book keeps the lay of a large
 * question; that of one that is only slow is kept for this visit.
 */

import type { Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import { signedArea } from "./outline.ts";
import { refusalOf } from "./refuse.ts";

/** A quick lay of this many copies takes about 60 ms, of 300 some 700 ms (measured on one slow core). */
export const MOST_COPIES = 60;
/** Corners of all kinds of pieces together: each kind is cut into slices before the first copy is laid. */
const MOST_CORNERS = 6000;

/** The most copies and corners of a question that is answered on the page: a book may ask several in one change. */
const AT_ONCE = { copies: 6, corners: 200 };
/** The same while a figure slides, where every frame counts. */
const SLIDING = { copies: 3, corners: 60 };

function isMore(
  { pieces }: LayQuestion,
  most: { readonly copies: number; readonly corners: number },
): boolean {
  let [copies, corners] = [0, 0];
  for (const { quantity, outline } of pieces) {
    copies += quantity;
    corners += outline.length;
  }
  return copies > most.copies || corners > most.corners;
}

/** Whether a quick lay of the question takes so long that the book should keep it. */
export const isLarge = (question: LayQuestion): boolean =>
  isMore(question, { copies: MOST_COPIES, corners: MOST_CORNERS });

let isSliding = false;

/** Says whether a figure slides just now: then only the smallest lays are made on the page. */
export function setSliding(is: boolean): void {
  isSliding = is;
}

type Desk = (question: LayQuestion, found: Book["lays"]) => Lay | NoLay;

/** Answers as `desk` does, but leaves large questions that the book keeps no lay for to a worker. */
export const leaveLarge =
  (desk: Desk, isFound: (...asked: Parameters<Desk>) => boolean): Desk =>
  (question, found) => {
    if (question.sharing || !isLarge(question) || isFound(question, found)) return desk(question, found);
    const refusal = refusalOf(question);
    return refusal ? { refusal } : later(question);
  };

/** Whether the page answers a question without holding up a frame. */
function isAtOnce(question: LayQuestion): boolean {
  // Sharing out pieces takes a few dozen lays.
  if (question.sharing) return !isMore(question, SLIDING);
  // A trial in passing is part of another answer, which can't wait for it.
  if (question.passing || isLarge(question)) return true;
  return !isMore(question, isSliding ? SLIDING : AT_ONCE);
}

/** Answers as `desk` does, but leaves to a worker what would hold up a frame and has no lay that is known. */
export const leaveSlow =
  (desk: Desk, isKnown: (...asked: Parameters<Desk>) => boolean): Desk =>
  (question, found) => {
    if (isAtOnce(question) || isKnown(question, found)) return desk(question, found);
    const refusal = refusalOf(question);
    return refusal ? { refusal } : later(question);
  };

/** That the lay is being worked out, with the least length that it can have; 0 on cloth in stock, of which none need be left. */
export function later({ pieces, cloths, sharing }: LayQuestion): NoLay {
  const copies = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  const area = pieces.reduce(
    (sum, { quantity, outline }) => sum + quantity * Math.abs(signedArea(outline)),
    0,
  );
  const [cloth, ...others] = cloths;
  const isOpen = cloth !== undefined && cloth.length === null && others.length === 0;
  return {
    refusal: sharing
      ? phrase`how to share out ${copies} pieces between the stock and cloth to buy is being worked out`
      : phrase`the lay of ${copies} pieces is being worked out`,
    pending: { least: isOpen ? area / cloth.width : 0 },
  };
}
