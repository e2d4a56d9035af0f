/**
 * Settings of a what-if question that another thread works ahead of the one that answers it. What a setting gives
 * must not depend on who works it: a helper lays with quick lays alone, which are the same everywhere, and the
 * answering thread takes a setting over only where its own lays would have been these.
 */
import type { LayOrigin, Planner } from "../../functions/lay.ts";
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { LaidLay } from "./laid.ts";
import type { Odd } from "./odd-steps.ts";
import { QuestionEngine, type Reading } from "./question-engine.ts";
import { isProblem, type VariedCell, variedCellAt } from "./varied-cell.ts";

/** The part of a question that a helper works on. */
export interface AheadTask {
  readonly book: Book;
  readonly varied: readonly Place[];
  readonly watched: readonly Place[];
}

/** What a helper found at one setting. */
export interface AheadStep {
  readonly readings: readonly Reading[];
  readonly odd: readonly Odd[];
  readonly origin: LayOrigin | null;
  /** The lays that the readings rest on: positions in the list of all that this helper has laid for the task. */
  readonly lays: readonly number[];
}

/** What a helper sends: steps of settings that follow one another, and the lays that are new in them. */
export interface AheadSteps {
  readonly steps: readonly AheadStep[];
  readonly laid: readonly LaidLay[];
}

/** A step that was taken over, with its lays themselves. */
export interface StepTaken extends Omit<AheadStep, "lays"> {
  readonly laid: readonly LaidLay[];
}

/** The helpers of one task. */
export interface Ahead {
  /** The settings that will be read, in this order: all of them, or up to one that can't be known before. */
  expect(settings: readonly (readonly number[])[], areAllRead: boolean): void;
  /** What a helper found at these figures; null when nobody has worked them. It is given once. */
  take(figures: readonly number[]): StepTaken | null;
  end(): void;
}

/** Begins to help with a task; null where there is no help. */
export type BeginAhead = (task: AheadTask) => Ahead | null;

/** The engine of a helper: `quick` answers lay questions, the same question always with the same lay. */
export class AheadEngine {
  readonly #engine: QuestionEngine;
  /** All lays of the task, each question once. */
  readonly #laid: LaidLay[] = [];
  readonly #positions = new Map<LaidLay["answer"], number>();
  #told = 0;

  constructor({ book, varied, watched }: AheadTask, quick: Planner) {
    const cells = varied.map((place) => variedCellAt(book, place));
    const desk: Planner = (question) => {
      const answer = quick(question);
      if (!this.#positions.has(answer)) {
        this.#positions.set(answer, this.#laid.length);
        this.#laid.push({ question, answer });
      }
      return answer;
    };
    this.#engine = new QuestionEngine(
      book,
      Object.assign(desk, { searches: true as const }),
      cells.filter((cell): cell is VariedCell => !isProblem(cell)),
      watched,
    );
  }

  /** Works settings one after the other. */
  work(settings: readonly (readonly number[])[]): AheadSteps {
    const steps = settings.map((figures) => this.#step(figures));
    const laid = this.#laid.slice(this.#told);
    this.#told = this.#laid.length;
    return { steps, laid };
  }

  #step(figures: readonly number[]): AheadStep {
    const before = this.#laid.length;
    const readings = this.#engine.read(figures);
    const asked = Array.from({ length: this.#laid.length - before }, (_, i) => before + i);
    const under = this.#engine.laid.map(({ answer }) => this.#positions.get(answer)!);
    const { odd, origin } = this.#engine;
    return { readings, odd, origin, lays: [...new Set([...asked, ...under])] };
  }

  destroy(): void {
    this.#engine.destroy();
  }
}
