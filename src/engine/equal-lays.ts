/** What a what-if question needs of the lay planner: equal effort for every lay. */
import type { Lay } from "../../functions/lay.ts";
import type { LaidLay } from "./laid.ts";
import type { LayDesk } from "./lay-desk.ts";

/** The lays of one question, all searched for equally long: quick lays at first. */
export interface EqualLays {
  readonly lays: readonly Lay[];
  readonly desk: LayDesk;
  /** Remembers a question for the next round; until then a lay of less effort answers. */
  readonly enlist: LayDesk;
  /** Answers without remembering the question. */
  readonly peek: LayDesk;
  /** Whether this quick lay, made by another thread, is what `desk` answers; the question is remembered. */
  agrees(lay: LaidLay): boolean;
  /** Brings every lay up to this many seconds of search. */
  round(seconds: number): Generator<undefined, void>;
}
