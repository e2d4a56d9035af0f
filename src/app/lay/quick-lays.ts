/**
 * The quick lays that the page leaves to a worker: one question at a time, and only such as a cell still asks.
 * The cells are calculated again with the answers together, so that the page is painted once for all of them.
 */
import type { Lay, LayQuestion, NoLay } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import { isKnown, learnQuick } from "../../lay/desk.ts";
import { isLarge, setSliding } from "../../lay/large-questions.ts";
import type { Store } from "../../store/store.ts";
import { QuickLayer } from "../../worker/quick-client.ts";
import { browserClock } from "../following/after-paint.ts";
import { onePerStore } from "./watched.ts";

/** Answers wait for one another this long, in milliseconds. */
const TOGETHER = 120;

interface Waiting {
  /** The cell that waits; null for the Drawing. */
  readonly place: Place | null;
  readonly question: LayQuestion;
}

const isQuick = (question: LayQuestion, answer: Lay | NoLay): boolean =>
  "refusal" in answer &&
  answer.pending !== undefined &&
  (question.sharing !== undefined || !isLarge(question));

export class QuickLays {
  readonly #store: Store;
  readonly #layer: Pick<QuickLayer, "ask" | "stop">;
  readonly #now: () => number;
  /** Calls back once the next frame is painted; returns what cancels it. */
  readonly #afterPaint: (act: () => void) => () => void;
  #cancel = (): void => {};
  #isAsking = false;
  #beside: LayQuestion | null = null;
  /** Whether the Drawing was painted without the lay of that question. */
  #besideIsAwaited = false;
  /** When the first answer came that no cell was calculated with yet; null without such an answer. */
  #since: number | null = null;

  constructor(
    store: Store,
    layer: Pick<QuickLayer, "ask" | "stop"> = new QuickLayer(),
    now = () => performance.now(),
    afterPaint: (act: () => void) => () => void = (act) => browserClock.painted(act, 0),
  ) {
    this.#store = store;
    this.#layer = layer;
    this.#now = now;
    this.#afterPaint = afterPaint;
  }

  /** Looks at the book from now on; returns what ends it. */
  watch(): () => void {
    const off = this.#store.subscribe(() => {
      if (!this.#store.trying) setSliding(false);
      this.#cancel();
      // Looking through the cells and handing a question over would hold up the frame.
      this.#cancel = this.#afterPaint(() => this.#follow());
    });
    this.#follow();
    return () => {
      off();
      this.#cancel();
      this.#layer.stop();
      this.#isAsking = false;
    };
  }

  /** The question that the Drawing sets beside a lay and that no cell asks; null without one. */
  lookBeside(question: LayQuestion | null): void {
    this.#beside = question;
    this.#besideIsAwaited = false;
    this.#follow();
  }

  /** What is waited for; the lay of a large question is brought by the background search. */
  #waiting(): Waiting[] {
    const { engine } = this.#store;
    const cells = engine
      .laid()
      .flatMap(({ place, lays }) =>
        lays.flatMap(({ question, answer }) => (isQuick(question, answer) ? [{ place, question }] : [])),
      );
    const question = this.#beside;
    const answer = question && engine.setting.plan?.(question);
    if (question && answer && isQuick(question, answer)) this.#besideIsAwaited = true;
    return question && this.#besideIsAwaited ? [...cells, { place: null, question }] : cells;
  }

  #follow(): void {
    if (this.#isAsking) return;
    const { lays } = this.#store.shown;
    const waiting = this.#waiting();
    const asked = waiting.filter(({ question }) => !isKnown(question, lays));
    const answered = waiting.filter((one) => !asked.some(({ place }) => place === one.place));
    const isDue = this.#since !== null && this.#now() - this.#since > TOGETHER;
    const [next] = asked;
    if (next && !(isDue && answered.length > 0)) this.#ask(next.question);
    else if (this.#since !== null) {
      this.#since = null;
      if (answered.some(({ place }) => place === null)) this.#besideIsAwaited = false;
      if (answered.length > 0) this.#store.workAgain(answered.flatMap(({ place }) => place ?? []));
    }
  }

  #ask(question: LayQuestion): void {
    this.#isAsking = true;
    this.#layer.ask(question, (answer) => {
      this.#isAsking = false;
      this.#since ??= this.#now();
      learnQuick(question, answer);
      this.#follow();
    });
  }
}

/** The quick lays of a store. */
export const quickLaysOf = onePerStore((store) => new QuickLays(store));
