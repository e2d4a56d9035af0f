/** Takes the better lays of one question into the book as they come, but not so often that the page gets slow. */
import type { Lay } from "../../../functions/lay.ts";
import type { Asked } from "../../engine/lays-asked.ts";
import { isBetter } from "../../lay/answer.ts";
import { keepChecked } from "../../lay/desk.ts";
import type { Store } from "../../store/store.ts";
import { isProved, searchedFor, secondsOf } from "./origin.ts";

export class Taking {
  /** The lay every cell that asks the question answers with; null before the first. */
  standing: Lay | null;
  readonly #store: Store;
  readonly #asked: Pick<Asked, "question" | "hash">;
  readonly #before: number;
  /** Seconds that this search has taken so far. */
  #seconds = 0;
  #best: Lay | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    store: Store,
    asked: Pick<Asked, "question" | "hash">,
    standing: Lay | null,
    private readonly every: number,
  ) {
    this.#store = store;
    this.#asked = asked;
    this.standing = standing;
    this.#before = secondsOf(store.shown.lays[asked.hash]);
  }

  /** Seconds of all searches of this question together. */
  get seconds(): number {
    return this.#before + this.#seconds;
  }

  /** Notes how long the search has taken so far. */
  spent(seconds: number): void {
    this.#seconds = seconds;
  }

  /** Notes a better lay; it is taken into the book at once or soon. */
  better(lay: Lay): void {
    this.#best = lay;
    if (this.standing) this.#timer ??= setTimeout(() => this.take(), this.every);
    else this.take();
  }

  /** Takes the best lay into the book now. Returns whether it is better than the book's own. */
  take(): boolean {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const lay = this.#best;
    this.#best = null;
    if (!lay || (this.standing && !isBetter(this.#asked.question, lay, this.standing))) return false;
    // The first lay of a question that had none is a quick one.
    this.#keep(this.standing ? searchedFor(lay, this.seconds, false) : { ...lay, origin: { by: "quick" } });
    return true;
  }

  /**
   * The search is over: the lay that stands was searched for so much longer, whether or not a better
   * one was found. A lay by hand stays one unless it is proved to be the best.
   */
  end(proved: boolean): void {
    this.take();
    const { standing } = this;
    if (!standing || isProved(standing) || (standing.origin?.by === "hand" && !proved)) return;
    if (this.#seconds > 0 || proved) this.#keep(searchedFor(standing, this.seconds, proved));
  }

  #keep(lay: Lay): void {
    this.standing = lay;
    this.#store.keepLay(this.#asked.hash, keepChecked(this.#asked.question, lay));
  }
}
