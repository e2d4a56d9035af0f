/** The word that was meant. */

/** Letters to change, put in, take out or swap with their neighbour to get from one word to the other. */
function apart(a: string, b: string): number {
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
export function nearest(word: string, list: Iterable<string>): string | undefined {
  // No word of any list is so long.
  if (word.length > 80) return undefined;
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const one of list) {
    const distance = apart(word.toLowerCase(), one.toLowerCase());
    if (distance < least) [best, least] = [one, distance];
  }
  return best;
}
