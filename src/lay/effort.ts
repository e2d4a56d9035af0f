/**
 * The lays of one what-if question. All are given the same effort, a quick lay first and then
 * searches of the same length, so that two steps differ by their pieces and not by their luck.
 */
import { questionHash } from "../../functions/cutting/lay-question.ts";
import type { Lay, LayQuestion, NoLay } from "../../functions/lay.ts";
import { layDesk } from "./desk.ts";
import { Known } from "./known.ts";
import { Search } from "./plan.ts";

interface Effortful {
  readonly question: LayQuestion;
  lay: Lay;
  proved: boolean;
}

/** Between two slices of a search, in milliseconds, newer questions are listened for. */
const SLICE_MS = 15;

export class Effort {
  readonly #lays = new Map<string, Effortful>();
  /** How long each lay was searched for, in seconds; 0 for quick lays. */
  #seconds = 0;

  /** How many lays the question rests on. */
  get size(): number {
    return this.#lays.size;
  }

  get seconds(): number {
    return this.#seconds;
  }

  /** Answers with the lay of this effort, and remembers the question for the next round. */
  readonly desk = (question: LayQuestion): Lay | NoLay => {
    if (question.passing) return layDesk(question, {});
    const hash = questionHash(question);
    const known = this.#lays.get(hash);
    if (known) return known.lay;
    const lay = layDesk(question, {});
    if ("refusal" in lay) return lay;
    const one: Effortful = { question, lay, proved: false };
    this.#lays.set(hash, one);
    if (this.#seconds > 0) for (const _ of this.#search(one, this.#seconds));
    return one.lay;
  };

  /** The same without remembering: for readings between two steps. */
  readonly peek = (question: LayQuestion): Lay | NoLay =>
    this.#lays.get(questionHash(question))?.lay ?? layDesk(question, {});

  /** One round more: every lay is searched for until it has had this many seconds. */
  *round(seconds: number): Generator<undefined, void> {
    const more = seconds - this.#seconds;
    for (const one of this.#lays.values()) yield* this.#search(one, more, seconds);
    this.#seconds = seconds;
    // Less to cut never takes more cloth than more: the second time all bounds are known.
    const known = new Known();
    for (const one of [...this.#lays.values(), ...this.#lays.values()]) {
      const { origin } = one.lay;
      one.lay = { ...known.best(one.question, one.lay), ...(origin && { origin }) };
      yield;
    }
  }

  *#search(one: Effortful, seconds: number, inAll = seconds): Generator<undefined, void> {
    if (one.proved) return;
    const search = new Search(one.question, { seed: 1, start: one.lay, milliseconds: 1000 * seconds });
    while (!one.proved && search.progress < 1) {
      one.proved = search.run({ milliseconds: SLICE_MS });
      yield;
    }
    const lay = search.best ?? one.lay;
    one.lay = { ...lay, origin: { by: "search", seconds: inAll, ...(one.proved && { proved: true }) } };
  }
}
