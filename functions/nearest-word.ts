/** Finds the word that a misspelt word was probably meant to be. */
import { written } from "./phrase.ts";

/** Edit distance: the fewest letters to change, insert, delete or swap with a neighbour to turn one word into the other. */
function editDistance(a: string, b: string): number {
  let [before, row] = [[] as number[], Array.from({ length: b.length + 1 }, (_, i) => i)];
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, change, swapped ? before[j - 2]! + 1 : change));
    }
    [before, row] = [row, next];
  }
  return row[b.length]!;
}

/** The word of the list nearest to what was typed, when it is near enough to be meant. */
export function nearestWord(word: string, list: Iterable<string>): string | undefined {
  // No list has a word this long.
  if (word.length > 80) return undefined;
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const one of list) {
    const distance = editDistance(word.toLowerCase(), one.toLowerCase());
    if (distance < least) [best, least] = [one, distance];
  }
  return best;
}

/** The end of a sentence that asks for the nearest word of the list, `; is "waist" meant?`; empty when no word is near. */
export const suggestion = (word: string, list: Iterable<string>): string => isMeant(nearestWord(word, list));

/** The same end for a word that was found. */
export const isMeant = (word: string | undefined): string => (word ? written`; is "${word}" meant?` : "");

/**
 * The phrase of the list that was probably meant: it has the same number of words, and each typed
 * word equals its word or is a misspelling of it: "waist girht" is near "waist girth", "front waist" is
 * not near "back waist". Returns undefined when the phrase itself is in the list.
 */
export function misspeltPhrase(phrase: string, list: Iterable<string>): string | undefined {
  const words = phrase.trim().toLowerCase().split(/\s+/);
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const one of list) {
    const others = one.toLowerCase().split(" ");
    if (others.length !== words.length) continue;
    const distances = words.map((word, i) => (word.length > 40 ? 99 : editDistance(word, others[i]!)));
    if (distances.some((distance, i) => distance > Math.max(1, Math.floor(words[i]!.length / 4)))) continue;
    const distance = distances.reduce((sum, figure) => sum + figure, 0);
    if (distance === 0) return undefined;
    if (distance < least) [best, least] = [one, distance];
  }
  return best;
}
