/** Answers what-if questions off the main thread, a slice at a time, so that a newer question can end an older one. */
import { phrase } from "../../functions/phrase.ts";
import type { BeginAhead } from "../engine/ahead.ts";
import { type AnswerNews, answering, type Question } from "../engine/question.ts";
import type { Row } from "../engine/sweep.ts";
import { Effort } from "../lay/effort.ts";

/** How long a slice of work is, in milliseconds, before newer questions are listened for. */
const SLICE_MS = 15;
/** After so much silence, in milliseconds, the page hears that the work goes on. */
const BEAT_MS = 5000;

/** Answers one question at a time: a newer one ends the older. `pause` lets waiting messages arrive; `beginAhead` has settings worked ahead by others. */
export class Answerer {
  #id = 0;

  constructor(
    private readonly tell: (id: number, news: AnswerNews) => void,
    private readonly pause: () => Promise<void>,
    private readonly beginAhead?: BeginAhead,
    private readonly beat = BEAT_MS,
  ) {}

  async ask(id: number, question: Question): Promise<void> {
    this.#id = id;
    let told = performance.now();
    const tell = (news: AnswerNews) => {
      told = performance.now();
      this.tell(id, news);
    };
    const work = answering(question, () => new Effort(), this.beginAhead);
    try {
      for (;;) {
        const until = performance.now() + SLICE_MS;
        const rows: Row[] = [];
        let ended = false;
        while (!ended && performance.now() < until) {
          const { done, value } = work.next();
          ended = done === true;
          if (value && "rows" in value) rows.push(...value.rows);
          else if (value) {
            flush(rows, tell);
            tell(value);
          }
        }
        flush(rows, tell);
        if (ended) return;
        if (performance.now() - told >= this.beat) tell({ atWork: true });
        await this.pause();
        if (this.#id !== id) return;
      }
    } catch (reason) {
      this.tell(id, { problem: phrase`this question could not be worked (${(reason as Error).message})` });
      this.tell(id, { done: true });
    } finally {
      work.return();
    }
  }

  /** Ends what is being worked. */
  stop(): void {
    this.#id = 0;
  }
}

function flush(rows: Row[], tell: (news: AnswerNews) => void): void {
  if (rows.length > 0) tell({ rows: rows.splice(0) });
}
