/** Who answers what the formulas ask about lays. */
import type { JoinPlanner, Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";

/** Answers lay questions. */
export interface LayDesk {
  /** `found` are the lays that the book keeps. */
  (question: LayQuestion, found: Book["lays"]): Lay | NoLay;
  /** Where joins are looked for; without it, in the cell's own calculation. */
  readonly joins?: JoinPlanner;
}
