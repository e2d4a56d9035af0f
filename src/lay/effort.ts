/**
 * The lays of one what-if question. All are given the same effort, a quick lay first and then
 * searches of the same length, so that two steps differ by their pieces and not by their luck.
 */
import { questionHash } from "../../functions/cutting/lay-question.ts";
import type { Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import { layDesk, learnQuick } from "./desk.ts";
import { Known } from "./known.ts";
import { isEqual, type Kept } from "./memory.ts";
import { Search } from "./search.ts";

interface SearchedLay {
  readonly question: LayQuestion;
  lay: Lay;
  proved: boolean;
  /** How long it was searched for, in seconds; 0 for a quick lay. */
  seconds: number;
}

/** Between two slices of a search, in milliseconds, newer questions are listened for. */
const SLICE_MS = 15;

export class Effort {
  readonly #lays = new Map<string, SearchedLay>();
  /** How long each lay is searched for, in seconds; 0 for quick lays. */
  #seconds = 0;

  /** The lays that the question rests on. */
  get lays(): Lay[] {
    return [...this.#lays.values()].map(({ lay }) => lay);
  }

  /** Answers with the lay of this effort, and remembers the question for the next round. */
  readonly desk = Object.assign((question: LayQuestion) => this.#answer(question), {
    searches: true as const,
  });

  /** Remembers the question for the next round; until then a lay of less effort answers. */
  readonly enlist = (question: LayQuestion): Lay | NoLay => {
    if (question.passing) return layDesk(question, {});
    const one = this.#remembered(question);
    return "refusal" in one ? one : one.lay;
  };

  /** Answers without remembering: for readings between two steps. */
  readonly peek = (question: LayQuestion): Lay | NoLay =>
    this.#lays.get(questionHash(question))?.lay ?? layDesk(question, {});

  /** Whether this quick lay, made by another thread, is what `desk` answers; the question is remembered. */
  readonly agrees = ({ question, answer }: Kept): boolean => {
    learnQuick(question, answer);
    return isEqual(this.#answer(question), answer);
  };

  #answer(question: LayQuestion): Lay | NoLay {
    if (question.passing) return layDesk(question, {});
    const one = this.#remembered(question);
    if ("refusal" in one) return one;
    for (const _ of this.#search(one, this.#seconds));
    return one.lay;
  }

  #remembered(question: LayQuestion): SearchedLay | NoLay {
    const hash = questionHash(question);
    const known = this.#lays.get(hash);
    if (known) return known;
    const lay = layDesk(question, {});
    if ("refusal" in lay) return lay;
    const one = { question, lay, proved: false, seconds: 0 };
    this.#lays.set(hash, one);
    return one;
  }

  /**
   * One round more: every lay is searched for until it has had this many seconds, and takes over
   * what is proved by the others. A round of 0 seconds searches for none.
   */
  *round(seconds: number): Generator<undefined, void> {
    this.#seconds = seconds;
    for (const one of this.#lays.values()) yield* this.#search(one, seconds);
    // Less to cut never takes more cloth than more: the second time all bounds are known.
    const known = new Known();
    for (const one of [...this.#lays.values(), ...this.#lays.values()]) {
      const { origin } = one.lay;
      one.lay = { ...known.best(one.question, one.lay), ...(origin && { origin }) };
      yield;
    }
  }

  *#search(one: SearchedLay, seconds: number): Generator<undefined, void> {
    if (one.proved || one.seconds >= seconds) return;
    const milliseconds = 1000 * (seconds - one.seconds);
    const search = new Search(one.question, { seed: 1, start: one.lay, milliseconds });
    while (!one.proved && search.progress < 1) {
      one.proved = search.run({ milliseconds: SLICE_MS });
      yield;
    }
    one.seconds = seconds;
    const lay = search.best ?? one.lay;
    one.lay = { ...lay, origin: { by: "search", seconds, ...(one.proved && { proved: true }) } };
  }
}
