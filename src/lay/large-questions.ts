/**
 * Lay questions that take too long to answer while the maker types. On the page such a question is
 * answered with "being worked out"; a worker makes the lay, and the book keeps it.
 */
import type { Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import { signedArea } from "./outline.ts";
import { refusalOf } from "./refuse.ts";

/** A quick lay of this many copies takes about 60 ms, of 300 some 700 ms (measured on one slow core). */
export const MOST_COPIES = 60;
/** Corners of all kinds of pieces together: each kind is cut into slices before the first copy is laid. */
const MOST_CORNERS = 6000;

/** Whether a quick lay of the question would hold up a hand that types. */
export function isLarge({ pieces }: LayQuestion): boolean {
  let [copies, corners] = [0, 0];
  for (const { quantity, outline } of pieces) {
    copies += quantity;
    corners += outline.length;
  }
  return copies > MOST_COPIES || corners > MOST_CORNERS;
}

type Desk = (question: LayQuestion, found: Book["lays"]) => Lay | NoLay;

/** Answers as `desk` does, but leaves large questions that the book keeps no lay for to a worker. */
export const leaveLarge =
  (desk: Desk, isFound: (...asked: Parameters<Desk>) => boolean): Desk =>
  (question, found) => {
    if (!isLarge(question) || isFound(question, found)) return desk(question, found);
    const refusal = refusalOf(question);
    return refusal ? { refusal } : later(question);
  };

function later({ pieces, cloths }: LayQuestion): NoLay {
  const copies = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  const area = pieces.reduce(
    (sum, { quantity, outline }) => sum + quantity * Math.abs(signedArea(outline)),
    0,
  );
  const widest = Math.max(...cloths.map(({ width }) => width));
  return {
    refusal: `the lay of ${copies} pieces is being worked out`,
    pending: { least: area / widest },
  };
}
