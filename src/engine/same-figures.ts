/** Whether two texts, such as two path data, have the same words and the same numbers, but for rounding. */
export function sameFigures(one: string, other: string): boolean {
  const [a, b] = [one.split(" "), other.split(" ")];
  return (
    a.length === b.length &&
    a.every(
      (word, i) =>
        word === b[i] || Math.abs(Number(word) - Number(b[i])) <= 1e-9 * (1 + Math.abs(Number(word))),
    )
  );
}
