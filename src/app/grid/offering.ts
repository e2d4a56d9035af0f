/** The list of offers beside what is being typed: what stands in it, which offer is chosen, and its keys. */
import { catalogue } from "../../../functions/catalogue.ts";
import { type Place, placeKey } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import { builtIns } from "../../engine/built-ins/described.ts";
import { type Choices, choicesAt } from "../../engine/choices.ts";
import type { Store } from "../../store/store.ts";
import type { Caret } from "./caret.ts";
import { choiceOffers, insertion, type Offer, offersFor } from "./offers.ts";

/** What is being typed where. */
interface Typing {
  readonly place: Place;
  readonly text: string;
  readonly field: HTMLTextAreaElement;
  /** Where the caret stands in a formula; null for another text. */
  readonly caret: Caret | null;
  /** The text of the cell before. */
  readonly before: string;
}

/** The functions that are offered: those for sewing that are there by now, and the built-in ones that a maker needs. */
const functionsNow = () => new Map<string, { readonly summary: string }>([...catalogue, ...builtIns]);

export class Offering {
  readonly #store: Store;
  readonly #tell: () => void;
  #typing: Typing | null = null;
  #all: readonly Offer[] = [];
  #chosen: number | null = null;
  /** The text for which the list was put away. */
  #shut: string | null = null;
  #choices: { readonly book: Book; readonly at: string; readonly all: Choices | null } | null = null;

  /** `tell` is called when the list changed by a key or a press. */
  constructor(store: Store, tell: () => void) {
    this.#store = store;
    this.#tell = tell;
  }

  get all(): readonly Offer[] {
    return this.#all;
  }

  /** The offer that an arrow key came to; null before any. */
  get chosen(): number | null {
    return this.#chosen;
  }

  /** Follows what is being typed; null ends the list. */
  follow(typing: Typing | null): void {
    if (typing?.text !== this.#typing?.text) this.#shut = null;
    this.#typing = typing;
    this.#chosen = null;
    this.#all = typing && typing.text !== this.#shut ? this.#fitting(typing) : [];
  }

  #fitting({ place, text, caret, before }: Typing): readonly Offer[] {
    const { shown: book, engine } = this.#store;
    if (!caret) {
      const choices = this.#choicesAt(place);
      return choices ? choiceOffers(text, before, choices) : [];
    }
    const shown = (one: Place) => engine.view(one).shown;
    return offersFor(caret.word, { book, at: place, functions: functionsNow(), shown });
  }

  /** Puts an offer in place of the word that was begun. */
  accept(offer: Offer): void {
    if (!this.#typing) return;
    const { field, text, caret } = this.#typing;
    const [from, to, put] = insertion(text, caret, offer);
    field.setRangeText(put, from, to, "end");
    field.dispatchEvent(new Event("input", { bubbles: true }));
    if (offer.is !== "function") this.#putAway();
  }

  #putAway(): void {
    this.#shut = this.#typing?.text ?? null;
    this.follow(this.#typing);
    this.#tell();
  }

  /** A key while the list is open. True when the list took it: arrows choose, Tab takes, Enter takes what was chosen. */
  take(event: KeyboardEvent): boolean {
    const { length } = this.#all;
    if (length === 0 || event.isComposing || event.ctrlKey || event.altKey || event.metaKey) return false;
    if (event.key === "ArrowDown") this.#choose(((this.#chosen ?? -1) + 1) % length);
    else if (event.key === "ArrowUp") this.#choose(((this.#chosen ?? 0) + length - 1) % length);
    else if (event.key === "Tab" && !event.shiftKey && (this.#typing?.caret || this.#chosen !== null))
      this.accept(this.#all[this.#chosen ?? 0]!);
    else if (event.key === "Enter" && this.#chosen !== null) this.accept(this.#all[this.#chosen]!);
    else if (event.key === "Escape") this.#putAway();
    else return false;
    return true;
  }

  #choose(index: number): void {
    this.#chosen = index;
    this.#tell();
  }

  /** What a cell is chosen from, or null; calculated once for each book and cell. */
  #choicesAt(place: Place): Choices | null {
    const { shown: book, engine } = this.#store;
    const at = placeKey(place);
    if (this.#choices?.book !== book || this.#choices.at !== at) {
      const all = choicesAt(book, place, (one) => engine.view(one).shown);
      this.#choices = { book, at, all };
    }
    return this.#choices.all;
  }
}
