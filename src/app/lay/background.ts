/**
 * The search for better lays that runs by itself. Shortly after the last key it searches in the workers for
 * better lays of the book, round by round, until a round gains nothing. It rests while the maker types or
 * slides, while the page is hidden, and while a search that the maker began is running.
 */

import type { LayQuestion } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import { hashOf } from "../../engine/laid.ts";
import type { Laid } from "../../engine/records.ts";
import { isFound, keepChecked } from "../../lay/desk.ts";
import { quickLay } from "../../lay/plan.ts";
import type { Store } from "../../store/store.ts";
import { LaySearcher } from "../../worker/client.ts";
import { onSearchesByItself, searchesByItself } from "./by-itself.ts";
import { sessionOf } from "./search-session.ts";
import { Taking } from "./taking.ts";
import { nextWant, type Want } from "./want.ts";
import { onePerStore, Watched } from "./watched.ts";

export interface ByItself {
  /** "waiting" for the hand to rest, "searching", or "idle" when nothing is left to gain. */
  readonly is: "waiting" | "searching" | "idle";
  /** The hash of the question that is searched for, "" without one. */
  readonly hash: string;
  /** Seconds that the question was searched for, in all. */
  readonly seconds: number;
}

/** A search begins this long after the last key, in milliseconds. */
const SETTLE = 400;
/** The book takes up better lays at most this often, in milliseconds. */
const SELDOM = 500;
/** A search that has gained nothing for this many seconds is over. */
const PATIENCE = 10;

interface Running {
  readonly want: Want;
  readonly taking: Taking;
}

export class Background extends Watched<ByItself> {
  readonly #store: Store;
  readonly #searcher: LaySearcher;
  #running: Running | null = null;
  #looked: Place | null = null;
  #beside: LayQuestion | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #seed = 7;
  /** Whether this tab is the one that writes the book. */
  #writes = true;
  #pages: Book["pages"] | null = null;
  /** Seconds searched at the last better lay, by question. */
  readonly #gained = new Map<string, number>();
  /** Questions that a search has given up. */
  readonly #over = new Set<string>();

  constructor(store: Store, searcher = new LaySearcher()) {
    super({ is: "waiting", hash: "", seconds: 0 });
    this.#store = store;
    this.#searcher = searcher;
  }

  protected override become(state: ByItself): void {
    document.body.dataset.laySearch = state.is;
    super.become(state);
  }

  /** Watches the page and the book from now on. Returns the function that ends this. */
  watch(): () => void {
    const off = [
      this.#store.subscribe(() => this.#follow()),
      sessionOf(this.#store).subscribe(() => this.#begin()),
      onSearchesByItself(() => this.#touch()),
      ...["keydown", "input", "pointerdown", "wheel"].map((kind) => listen(kind, () => this.#touch())),
      listen("pointermove", (event) => (event as PointerEvent).buttons !== 0 && this.#touch()),
      listen("visibilitychange", () => this.#touch()),
    ];
    this.#pages = this.#store.shown.pages;
    this.#touch();
    return () => {
      for (const end of off) end();
      clearTimeout(this.#timer);
      this.#searcher.stop();
    };
  }

  /** The cell that is looked at: its lay is searched for before the others, and then what it is compared with. */
  lookAt(place: Place | null, beside: LayQuestion | null = null): void {
    this.#looked = place;
    this.#beside = beside;
    if (beside && this.state().is === "idle") this.#touch();
  }

  /** All lays that the book asks for now, and the one beside the lay that is looked at. */
  #laid(): Laid[] {
    const { engine } = this.#store;
    const [place, question] = [this.#looked, this.#beside];
    const answer = question && engine.setting.plan?.(question);
    return [...engine.laid(), ...(place && answer ? [{ place, lays: [{ question, answer }] }] : [])];
  }

  /** A book that is open in another tab too is searched for in one of them. */
  writes(alone: boolean): void {
    if (alone === this.#writes) return;
    this.#writes = alone;
    this.#touch();
  }

  /** Begins again when the book has changed. Better lays alone are no change. */
  #follow(): void {
    const { pages } = this.#store.shown;
    if (pages === this.#pages) return;
    this.#pages = pages;
    this.#touch();
  }

  #touch(): void {
    this.#searcher.rest(true);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#begin(), SETTLE);
    if (this.state().is !== "waiting") this.become({ ...this.state(), is: "waiting" });
  }

  /** Continues the search that rests, or begins the most important one. */
  #begin(): void {
    clearTimeout(this.#timer);
    const asked = sessionOf(this.#store).state().running;
    if (document.visibilityState === "hidden" || asked) {
      this.#searcher.rest(true);
      this.become({ ...this.state(), is: "waiting" });
      return;
    }
    const laid = this.#laid();
    const quickOnly = !searchesByItself() || !this.#writes;
    if (this.#running) {
      const { hash, lay } = this.#running.want;
      const asks = laid.some(({ lays }) => lays.some(({ question }) => hashOf(question) === hash));
      if (asks && !(quickOnly && lay)) {
        this.#searcher.rest(false);
        this.become({ ...this.state(), is: "searching" });
        return;
      }
      this.#searcher.stop();
    }
    const want = nextWant(laid, this.#store.shown.lays, this.#looked, this.#over, quickOnly);
    if (want) this.#search(want);
    else this.become({ is: "idle", hash: "", seconds: 0 });
  }

  #search(want: Want): void {
    const { question, hash, lay, seconds } = want;
    // The lay of a larger job is known for this visit only: the value would grow when the book is opened again.
    if (lay?.origin?.by === "search" && !isFound(question, this.#store.shown.lays)) {
      const origin = { by: "search", seconds: 0 } as const;
      this.#store.keepLay(hash, keepChecked(question, { ...lay, origin }));
    }
    const taking = new Taking(this.#store, want, lay, SELDOM);
    const running: Running = { want, taking };
    this.#running = running;
    this.#seed += 100;
    if (!this.#gained.has(hash)) this.#gained.set(hash, taking.seconds);
    const wish = { question, start: lay ?? undefined, milliseconds: seconds * 1000, seed: this.#seed };
    this.#searcher.search(wish, {
      better: (better) => {
        this.#gained.set(hash, taking.seconds);
        taking.better(better);
      },
      progress: (share) => {
        taking.spent(share * seconds);
        if (Math.floor(taking.seconds) !== Math.floor(this.state().seconds))
          this.become({ is: this.state().is, hash, seconds: taking.seconds });
        if (taking.seconds - this.#gained.get(hash)! >= PATIENCE) {
          this.#over.add(hash);
          this.#searcher.stop();
        }
      },
      // The lay of the book is as good as before. The search that the maker begins says what is wrong.
      trouble: () => this.#over.add(hash),
      ended: (ending) => {
        this.#running = null;
        if (ending === "failed" && !taking.standing) {
          const here = quickLay(question);
          if (!("refusal" in here)) taking.better(here);
        }
        taking.end(ending === "best");
        if (this.state().is === "searching") this.#timer = setTimeout(() => this.#begin());
      },
    });
    this.become({ is: "searching", hash, seconds: taking.seconds });
  }
}

function listen(kind: string, listener: (event: Event) => void): () => void {
  const options = { capture: true, passive: true };
  document.addEventListener(kind, listener, options);
  return () => document.removeEventListener(kind, listener, options);
}

/** The one background search of a store. */
export const backgroundOf = onePerStore((store) => new Background(store));
