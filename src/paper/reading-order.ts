/** Words in the order in which they stand on paper. Letters within a word are put in their order by the type's own rules. */

const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
const LETTER = /\p{L}/u;

/**
 * The words of a line from left to right, or null where all of it is read from left to right. A run of words that are
 * read from right to left, figures between them included, stands the other way round.
 */
export function wordsFromLeft(text: string): string[] | null {
  if (!RIGHT_TO_LEFT.test(text)) return null;
  const words = text.split(" ");
  const isRight = (word: string) => RIGHT_TO_LEFT.test(word);
  const placed: string[] = [];
  for (let i = 0; i < words.length; ) {
    if (!isRight(words[i]!)) {
      placed.push(words[i]!);
      i += 1;
      continue;
    }
    let last = i;
    for (let k = i; k < words.length && (isRight(words[k]!) || !LETTER.test(words[k]!)); k += 1)
      if (isRight(words[k]!)) last = k;
    placed.push(...words.slice(i, last + 1).reverse());
    i = last + 1;
  }
  return placed;
}
