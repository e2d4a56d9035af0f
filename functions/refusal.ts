/** The sentence with which a sewing function explains why its arguments have no answer. */
import { numberText } from "./number-text.ts";

/** A cell that was given for an argument: its number in the list, row by row, counted from 0; 0 where the argument is one cell. */
export interface CellOfList {
  /** The name of the argument, or the list itself. */
  readonly argument: string | readonly unknown[];
  readonly cell: number;
}

/** The same as a caller finds it: by the position of the argument in the call, counted from 0. */
export interface CellOfCall {
  readonly position: number;
  readonly cell: number;
}

/** Writes a length in a refusal as the tape shows it; `beside` are lengths that must not read the same. */
type Say = (length: number, ...beside: number[]) => string;

/** How many calls an error lists as its trace, in the JavaScript engines that can be asked. */
const traces = Error as ErrorConstructor & { stackTraceLimit?: number | undefined };

/**
 * Thrown inside `compute` when the arguments have no answer; the sentence says why. A sentence
 * with lengths in it is a function of `say`, so that they are written as the book's tape shows them.
 * `at` is the cell that the sentence is about, where it is about one.
 */
export class Refusal extends Error {
  readonly sentence: (say: Say) => string;

  constructor(
    sentence: string | ((say: Say) => string),
    readonly at?: CellOfList,
    /** Where `at` stands in the call; `run.ts` finds it. */
    readonly found?: CellOfCall,
  ) {
    const words = typeof sentence === "string" ? () => sentence : sentence;
    // Its sentence says where it comes from; a trace of the calls would cost more than many a function.
    const { stackTraceLimit } = traces;
    traces.stackTraceLimit = 0;
    super(words((length) => numberText(length)));
    traces.stackTraceLimit = stackTraceLimit;
    this.sentence = words;
  }
}

/** What `act` gives; a refusal from it is about the cell `at`, unless it names another. */
export function refusingAt<T>(at: CellOfList | undefined, act: () => T): T {
  try {
    return act();
  } catch (reason) {
    throw reason instanceof Refusal && !reason.at && at ? new Refusal(reason.sentence, at) : reason;
  }
}
