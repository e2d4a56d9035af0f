/** The names and functions that may be meant by the beginning of a word. */
import { phrase, translated } from "../../../functions/phrase.ts";
import { fullAddress, type Place } from "../../book/address.ts";
import { everyName, lookUp, nameMeant, nameOf, nameText } from "../../book/names.ts";
import type { Book } from "../../book/shape.ts";
import type { Choices } from "../../engine/choices.ts";
import type { Caret } from "./caret.ts";

export interface Offer {
  /** As it is shown and put in. */
  readonly text: string;
  readonly is: "name" | "function" | "choice";
  /** What it is, in a few words. */
  readonly about: string;
}

export interface Vocabulary {
  readonly book: Book;
  /** The cell being typed: its own name is no offer. */
  readonly at: Place;
  /** What each function gives, by its name. */
  readonly functions: ReadonlyMap<string, { readonly summary: string }>;
  /** What stands in a cell now, in words. */
  readonly shown: (place: Place) => string;
}

const MOST = 8;

/** At most eight: what begins with the word before what only holds it; cells before functions, unless it is in capitals. */
export function offersFor(word: string, { book, at, functions, shown }: Vocabulary): Offer[] {
  if (word === "") return [];
  const lower = word.toLowerCase();
  const own = nameOf(book, at);
  const names = everyName(book)
    .map((one) => nameText(book, one, at.page))
    .filter((name) => name !== own && name.toLowerCase() !== lower);
  const begins = (text: string) => text.toLowerCase().startsWith(lower);
  const holds = (text: string) => lower.length > 2 && !begins(text) && text.toLowerCase().includes(lower);
  const fitting = (fits: (text: string) => boolean) => {
    const cells = names.filter(fits).map((text) => ({ text, is: "name" as const }));
    const calls = [...functions.keys()].filter(fits).map((text) => ({ text, is: "function" as const }));
    // Capitals are how functions are written.
    return word === word.toUpperCase() ? [...calls, ...cells] : [...cells, ...calls];
  };
  const picked = [...fitting(begins), ...fitting(holds)].slice(0, MOST);
  return picked.map(({ text, is }) => {
    if (is === "function") return { text, is, about: translated(functions.get(text)!.summary) };
    const place = lookUp(book, text, at.page);
    const list = place ? null : nameMeant(book, text, at.page);
    return {
      text,
      is,
      about: place
        ? `${fullAddress(book, place)}: ${shown(place) || phrase`blank`}`
        : phrase`the list ${list?.address ?? ""}`,
    };
  });
}

/** The choices of a cell that fit what is typed in it: all of them until something is typed that is not one of them. */
export function choiceOffers(text: string, before: string, { list, by }: Choices): Offer[] {
  const typed = text.trim().toLowerCase();
  const all = typed === "" || text === before || list.some((choice) => choice.toLowerCase() === typed);
  const about = typeof by === "object" ? phrase`for ${by.function}` : "";
  return list
    .filter((choice) => all || choice.toLowerCase().includes(typed))
    .slice(0, MOST_CHOICES)
    .map((choice) => ({ text: choice, is: "choice", about }));
}

const MOST_CHOICES = 30;

/** What to put in the text for an offer: from, to, and the new signs. A function brings its bracket. */
export function insertion(
  text: string,
  caret: Caret | null,
  offer: Offer,
): readonly [number, number, string] {
  if (offer.is === "choice" || !caret) return [0, text.length, offer.text];
  const bracket = offer.is === "function" && !/^\s*\(/.test(text.slice(caret.to));
  return [caret.from, caret.to, bracket ? `${offer.text}(` : offer.text];
}
