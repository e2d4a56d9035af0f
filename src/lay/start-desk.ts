/**
 * The desk that the page starts with. The page loads the lay planner after its start; until then every lay
 * is being worked out. Workers and the command line have the planner from the beginning.
 */
import type { Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import { knownJoins } from "./joins.ts";
import { later } from "./large-questions.ts";
import { refusalOf } from "./refuse.ts";

type Desk = (question: LayQuestion, found: Book["lays"]) => Lay | NoLay;

const planner = {
  desk: null as Desk | null,
  /** Why it could not be loaded; null where it could, or is still being loaded. */
  fault: null as string | null,
  tell: (): void => {},
};

/** Calls `tell` when the planner is there, and when it could not be loaded: what was asked before is asked again. */
export function whenPlannerComes(tell: () => void): void {
  planner.tell = tell;
}

/** Answers with this desk from now on. */
export function takePlanner(desk: Desk): void {
  planner.desk = desk;
  planner.tell();
}

/** Notes that the planner could not be loaded, and why. */
export function plannerDidNotCome(fault: string): void {
  if (planner.desk) return;
  planner.fault = fault;
  planner.tell();
}

function answer(question: LayQuestion, found: Book["lays"]): Lay | NoLay {
  const { desk, fault } = planner;
  if (desk) return desk(question, found);
  const refusal = refusalOf(question);
  if (refusal) return { refusal };
  return fault === null
    ? later(question)
    : {
        refusal: `the lay planner could not be loaded (${fault}): see that the server is running, then reload the page`,
      };
}

/** The desk of the page. */
export const startDesk = Object.assign(answer, { joins: knownJoins });
