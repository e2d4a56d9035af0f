/**
 * Texts with wildcards, as criteria and searches have them: * stands for any run of characters, ?
 * for one, and ~ takes their meaning from the sign after it. The time is bounded by the length of
 * the pattern times the length of the text, whatever the number of wildcards.
 */

/** One character, or null for any. */
type Sign = string | null;

/** The stretches of a pattern between its stars. */
export function stretches(pattern: string): readonly (readonly Sign[])[] {
  const parts: Sign[][] = [[]];
  for (let i = 0; i < pattern.length; i += 1) {
    const sign = pattern[i]!;
    if (sign === "*") parts.push([]);
    else if (sign === "?") parts.at(-1)!.push(null);
    else if (sign === "~" && i + 1 < pattern.length) {
      i += 1;
      parts.at(-1)!.push(pattern[i]!);
    } else parts.at(-1)!.push(sign);
  }
  return parts;
}

const standsAt = (part: readonly Sign[], text: string, at: number): boolean =>
  part.every((sign, i) => sign === null || sign === text[at + i]);

/** Where a stretch first stands in a text, from `at` on and ending by `end`; -1 where it doesn't. `pause` is called before each place that is tried. */
function placeOf(part: readonly Sign[], text: string, at: number, end: number, pause: () => void): number {
  for (let place = at; place + part.length <= end; place += 1) {
    pause();
    if (standsAt(part, text, place)) return place;
  }
  return -1;
}

/** Whether the whole text is as the pattern has it. */
export function matches(parts: readonly (readonly Sign[])[], text: string, pause: () => void): boolean {
  const first = parts[0]!;
  const last = parts.at(-1)!;
  if (parts.length === 1) return text.length === first.length && standsAt(first, text, 0);
  const end = text.length - last.length;
  if (first.length > end || !standsAt(first, text, 0) || !standsAt(last, text, end)) return false;
  let at = first.length;
  for (const part of parts.slice(1, -1)) {
    const place = placeOf(part, text, at, end, pause);
    if (place < 0) return false;
    at = place + part.length;
  }
  return true;
}

/** Where the first run of characters begins that is as the pattern has it; -1 when there is no such run. */
export function search(parts: readonly (readonly Sign[])[], text: string, pause: () => void): number {
  const found = placeOf(parts[0]!, text, 0, text.length, pause);
  if (found < 0) return -1;
  // The stretches after a star are looked for as early as they come: later starts can't do better.
  let at = found + parts[0]!.length;
  for (const part of parts.slice(1)) {
    const place = placeOf(part, text, at, text.length, pause);
    if (place < 0) return -1;
    at = place + part.length;
  }
  return found;
}
