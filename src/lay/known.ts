/**
 * Lays known of questions asked before. A question that is contained in one of these never takes
 * more cloth than it: less to cut, or smaller, or on wider cloth, is laid at least as short.
 */
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { areaOf, isBetter } from "./answer.ts";
import { containedLay } from "./contain.ts";
import { isEqual, sumOf } from "./memory.ts";

interface One {
  readonly question: LayQuestion;
  readonly lay: Lay;
  readonly copies: number;
  /** Area of all its copies. */
  readonly worth: number;
}

/** Lays of earlier visits kept as bounds. */
const MOST_BOUNDS = 100;

/** Questions kept, the oldest given up first, and how many of them are tried on a new one. */
const MOST_KEPT = 600;
const MOST_TRIES = 20;

export class Known {
  private readonly kept = new Map<number, One>();
  /** Lays of earlier visits: they bound other questions, and answer none themselves. */
  private readonly bounds: One[] = [];

  /** Makes a lay known that nobody has checked: what is made of it for another question is checked. */
  addBound(question: LayQuestion, lay: Lay): void {
    if (this.bounds.length >= MOST_BOUNDS) this.bounds.shift();
    this.bounds.push(sized(question, lay));
  }

  /** The best lay known of the question, at least as good as `answer`. It is known from now on. */
  best(question: LayQuestion, answer: Lay): Lay {
    const key = sumOf(question);
    const own = this.kept.get(key);
    const isOwn = own !== undefined && isEqual(own.question, question);
    // Of two equal lays the one given says how it was found last.
    const before = isOwn && isBetter(question, own.lay, answer) ? own.lay : answer;
    const best = this.bounded(sized(question, before));
    if (isOwn && own.lay === best) return best;
    this.kept.delete(key);
    if (this.kept.size >= MOST_KEPT) this.kept.delete(this.kept.keys().next().value as number);
    this.kept.set(key, sized(question, best));
    return best;
  }

  /** The lay given, or a better one from a question that contains this one. */
  private bounded({ question, lay, copies, worth }: One): Lay {
    const promising: One[] = [];
    const look = (one: One): void => {
      if (
        one.copies >= copies &&
        one.worth >= worth * (1 - 1e-6) &&
        one.lay.missing.length === 0 &&
        one.lay.lengths.length === lay.lengths.length &&
        isShorter(question, one.lay, lay)
      )
        promising.push(one);
    };
    this.kept.forEach(look);
    this.bounds.forEach(look);
    promising.sort((a, b) => clothOf(question, a.lay) - clothOf(question, b.lay));
    for (const one of promising.slice(0, MOST_TRIES)) {
      const contained = containedLay(question, one.question, one.lay);
      if (contained && isBetter(question, contained, lay)) return contained;
    }
    return lay;
  }
}

const sized = (question: LayQuestion, lay: Lay): One => ({
  question,
  lay,
  copies: question.pieces.reduce((sum, { quantity }) => sum + quantity, 0),
  worth: question.pieces.reduce((sum, { quantity, outline }) => sum + quantity * areaOf(outline), 0),
});

/** The cloth that a lay of another question uses, at the widths of this one. */
const clothOf = ({ cloths }: LayQuestion, { lengths }: Lay): number =>
  lengths.reduce((sum, length, i) => sum + length * cloths[i]!.width, 0);

/** Whether the lay of another question, which leaves nothing out, would be better here than the one there is. */
const isShorter = (question: LayQuestion, lay: Lay, there: Lay): boolean =>
  there.missing.length > 0
    ? question.cloths.every(({ length }, i) => length === null || lay.lengths[i]! <= length * (1 + 1e-9))
    : clothOf(question, lay) < clothOf(question, there) * (1 - 1e-7);
