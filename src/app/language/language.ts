/** The language of the page: set before anything of it is shown, from a file of the page's own server. */
import type { Language } from "../../../functions/phrase.ts";
import { chosenLanguage, ENGLISH } from "../../languages/choose.ts";
import { recall, remember } from "../files/storage.ts";

const KEY = "ellwand.language";

/** The tags of the languages that the page is served with; src/setup/strings/plugin.ts writes them into the page. */
const there = (): readonly string[] =>
  globalThis.document?.documentElement.dataset.languages?.split(" ").filter((tag) => tag !== "") ?? [];

let current = ENGLISH;
let fault: unknown = null;

export const language = {
  /** The tag of the language in use. */
  get tag(): string {
    return current;
  },
  /** Why the wanted language is not in use; null when it is. */
  get fault(): unknown {
    return fault;
  },
  /** Every language that can be set, each with the name that its readers give it. */
  get all(): readonly { tag: string; name: string }[] {
    return [ENGLISH, ...there()].map((tag) => ({
      tag,
      name: new Intl.DisplayNames([tag], { type: "language" }).of(tag) ?? tag,
    }));
  },
};

/** Takes up the reader's language. Where its sentences don't come, the page is in English and `language.fault` says why. */
export async function takeUpLanguage(): Promise<void> {
  const tag = chosenLanguage(there(), navigator.languages, recall("localStorage", KEY));
  if (tag === ENGLISH) return;
  try {
    const file = new URL(`languages/${tag}.js`, document.baseURI).href;
    const { default: sentences } = (await import(/* @vite-ignore */ file)) as { default: Language };
    const { speak } = await import("../../../functions/speech.ts");
    speak(sentences);
    current = tag;
    document.documentElement.lang = tag;
    document.documentElement.dir = sentences.direction;
  } catch (failed) {
    console.error(failed);
    fault = failed;
  }
}

/** Loads the page anew in another language. What is typed and not yet saved is taken up again, as after any start. */
export function setLanguage(tag: string): void {
  remember("localStorage", KEY, tag);
  location.reload();
}
