/** The verdict of a check that finds something: the engine lists texts that begin so among the problems. */
import { written } from "./phrase.ts";

/** A verdict that is not ok. The sentence is a `written` one, since the verdict is the answer of a cell. */
export const toCheck = (sentence: string): string => written`check: ${sentence}`;

type Joined = (before: string, word: string) => string;

const list = (joined: Joined) => (words: readonly string[]) =>
  words.length === 0 ? "" : words.reduce((before, word) => joined(before, word));

/** A list in a sentence, "front and back and sleeve", each of them a `written` text or a word of the maker. */
export const joinedByAnd = list((before, word) => written`${before} and ${word}`);

/** "front; back" in the same way. */
export const semicolonList = list((before, word) => written`${before}; ${word}`);

/** "front, back" in the same way. */
export const commaList = list((before, word) => written`${before}, ${word}`);

/** The first words of a list, and in place of many others how many they are, as `rest` says it. */
export const shortened = (
  words: readonly string[],
  most: number,
  rest: (count: number) => string,
): readonly string[] =>
  words.length > most + 1 ? [...words.slice(0, most), rest(words.length - most)] : words;

/** A list in a sentence: "front, back and sleeve", "front, back or sleeve". */
export function orderedList(words: readonly string[], before: "and" | "or"): string {
  const [first, last] = [words.slice(0, -1).join(", "), words.at(-1) ?? ""];
  if (first === "") return last;
  return before === "and" ? written`${first} and ${last}` : written`${first} or ${last}`;
}

/** How much longer the first of two edges should be than the second; `by` is how much, in words. */
export const wantedText = (difference: number, by: string): string =>
  difference === 0
    ? written`they should be equally long`
    : difference > 0
      ? written`the first should be ${by} longer`
      : written`the first should be ${by} shorter`;
