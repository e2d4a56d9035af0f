/** Which lines, rows or columns, of two lists are the same line: the longest run in common, in order. */

/** With more comparisons than this, lines are paired by their position. */
const MOST = 4_000_000;

/**
 * For each line of `a` the line of `b` that is the same, or null. Lines with equal keys are the same; a line
 * between two pairs that has no equal is paired with the one at its place there, when both gaps are equally long.
 */
export function aligned(a: readonly string[], b: readonly string[]): (number | null)[] {
  const to: (number | null)[] = Array(a.length).fill(null);
  let first = 0;
  while (first < a.length && first < b.length && a[first] === b[first]) {
    to[first] = first;
    first += 1;
  }
  let [last, other] = [a.length, b.length];
  while (last > first && other > first && a[last - 1] === b[other - 1]) {
    last -= 1;
    other -= 1;
    to[last] = other;
  }
  if ((last - first) * (other - first) > MOST) {
    for (let i = first; i < Math.min(last, other); i += 1) to[i] = i;
    return to;
  }
  for (const [i, j] of longestCommon(a.slice(first, last), b.slice(first, other))) to[first + i] = first + j;
  pairGaps(to, b.length);
  return to;
}

function longestCommon(a: readonly string[], b: readonly string[]): (readonly [number, number])[] {
  const wide = b.length + 1;
  const lengths = new Uint32Array((a.length + 1) * wide);
  for (let i = a.length - 1; i >= 0; i -= 1)
    for (let j = b.length - 1; j >= 0; j -= 1)
      lengths[i * wide + j] =
        a[i] === b[j]
          ? lengths[(i + 1) * wide + j + 1]! + 1
          : Math.max(lengths[(i + 1) * wide + j]!, lengths[i * wide + j + 1]!);
  const pairs: (readonly [number, number])[] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    if (a[i] === b[j]) {
      pairs.push([i, j]);
      i += 1;
      j += 1;
    } else if (lengths[(i + 1) * wide + j]! >= lengths[i * wide + j + 1]!) i += 1;
    else j += 1;
  }
  return pairs;
}

function pairGaps(to: (number | null)[], count: number): void {
  let from = -1;
  for (let i = 0; i <= to.length; i += 1) {
    const end = i === to.length ? count : to[i];
    if (end === null || end === undefined) continue;
    const start = from < 0 ? -1 : to[from]!;
    if (i - from === end - start) for (let gap = from + 1; gap < i; gap += 1) to[gap] = start + gap - from;
    from = i;
  }
}
