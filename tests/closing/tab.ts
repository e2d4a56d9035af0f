/** One tab in which somebody works, and what the page has said about that work so far. */
import type { Page } from "playwright-core";
import { expect } from "vitest";
import type { Random } from "../attack/random.ts";
import { cell } from "../browser/page.ts";

/** The cell in which everything is typed: blank in the ready book and in the large one. */
const CELL = "A21";

/** Everything that is waited for comes within this time, in milliseconds, also beside other work. */
const SOON = 60_000;

/** Waits until the page says that everything is saved. */
export const saved = (page: Page) =>
  expect.poll(() => page.locator(".kept").textContent(), { timeout: 60_000 }).toBe("Saved in this browser");

interface Look {
  readonly saved: boolean;
  readonly text: string;
}

export class Tab {
  readonly page: Page;
  readonly #name: string;
  /** The texts that the cell has had in this round, one after the other. */
  readonly #texts: string[] = [];
  /** What undo leads back to, and redo forward to. */
  #past: string[] = [];
  #future: string[] = [];
  /** The last of the texts that the page said was saved, and that a key had put into the book; −1: none. */
  #claimed = -1;
  #committed = -1;
  claims = 0;
  /** The word that is being typed and that no key has put into the book yet; "" when there is none. */
  #typing = "";

  constructor(page: Page, name: string) {
    this.page = page;
    this.#name = name;
  }

  /** The number of the last text that a key has put into the book; −1: none. */
  get committed(): number {
    return this.#committed;
  }

  /** The texts of which one has to be there: the last that was said to be saved, or the one with this number where that is later, and all after it. */
  mustHave(number = -1): readonly string[] {
    const from = Math.max(this.#claimed, number);
    return from < 0 ? [] : this.#texts.slice(from);
  }

  /** Whether a text is the beginning of the word that was being typed: a page that is left keeps what is half typed. */
  isHalfTyped(text: string): boolean {
    // Keys that came after the page was left went nowhere, and the word counts as not begun.
    const next = `${this.#name}-${this.#texts.length}`;
    return text !== "" && [this.#typing, next].some((word) => word.startsWith(text));
  }

  /** Types the first word and waits until the page says that it is saved. */
  async begin(random: Random): Promise<void> {
    await this.act(random);
    await expect.poll(() => this.#look().then(() => this.#claimed), { timeout: SOON }).toBe(0);
  }

  /** Types a word, or undoes or redoes one, and looks at what the page says. Rejects when the page is gone. */
  async act(random: Random): Promise<void> {
    const { keyboard } = this.page;
    const what = random.next();
    if (this.#past.length > 1 && what < 0.3) {
      this.#future.push(this.#past.pop()!);
      await this.#commit(this.#past.at(-1)!, () => keyboard.press("Control+z"));
    } else if (this.#future.length > 0 && what < 0.5) {
      this.#past.push(this.#future.pop()!);
      await this.#commit(this.#past.at(-1)!, () => keyboard.press("Control+y"));
    } else {
      const word = `${this.#name}-${this.#texts.length}`;
      this.#past.push(word);
      this.#future = [];
      await cell(this.page, CELL).click();
      // A second click may have opened the editor.
      await keyboard.press("Escape");
      this.#typing = word;
      await keyboard.type(word);
      await this.#commit(word, () => keyboard.press("Enter"));
    }
    const looks = random.below(4);
    for (let i = 0; i < looks; i += 1) await this.#look();
  }

  async #commit(text: string, press: () => Promise<void>): Promise<void> {
    this.#texts.push(text);
    const at = this.#texts.length - 1;
    await press();
    this.#committed = at;
    this.#typing = "";
  }

  /** What the page says and shows at one moment. */
  async #look(): Promise<void> {
    const [place] = await cell(this.page, CELL).elementHandles();
    if (!place) return;
    const look = await place.evaluate(
      (shown): Look => ({
        saved: document.querySelector(".kept")?.textContent === "Saved in this browser",
        text: shown.textContent ?? "",
      }),
    );
    const at = this.#texts.lastIndexOf(look.text);
    if (!look.saved || at < 0) return;
    if (at > this.#claimed) this.claims += 1;
    this.#claimed = Math.max(this.#claimed, at);
  }
}
