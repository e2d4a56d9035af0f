/** Who answers what the formulas ask about lays. */
import type { JoinPlanner, Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import type { TimeLimits } from "./guards.ts";

/** Answers lay questions. */
export interface LayDesk {
  /** `found` are the lays that the book keeps. */
  (question: LayQuestion, found: Book["lays"]): Lay | NoLay;
  /** Where joins are looked for; without it, in the cell's own calculation. */
  readonly joins?: JoinPlanner;
  /** Whether it searches for as long as it was asked to: then its time does not count as the time of formulas. */
  readonly searches?: true;
}

/** A searching desk, and the limits of formulas by a clock that stands still while it works. Other desks and their limits stay as they are. */
export function withOwnTime(desk: LayDesk, limits: TimeLimits): { desk: LayDesk; limits: TimeLimits } {
  if (!desk.searches) return { desk, limits };
  let spent = 0;
  const timed = (...asked: Parameters<LayDesk>): Lay | NoLay => {
    const began = limits.clock();
    try {
      return desk(...asked);
    } finally {
      spent += limits.clock() - began;
    }
  };
  return { desk: Object.assign(timed, desk), limits: { ...limits, clock: () => limits.clock() - spent } };
}
