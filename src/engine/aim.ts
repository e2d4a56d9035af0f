/** What a solution is asked for, how far a setting misses it, and which settings do it. */
import { type Copy, numberOf } from "./copy.ts";
import { clean } from "./dial.ts";
import { show } from "./show.ts";
import type { Row, Span, Watched } from "./sweep.ts";

export type Aim =
  | { readonly is: "atmost" | "atleast" | "equal"; readonly value: number }
  | { readonly is: "lowest" | "highest" };

/** A range with open ends: what is not told is found from the figure as it stands. */
export type OpenSpan = { readonly [K in keyof Span]?: Span[K] | undefined };

export interface Wish {
  readonly spans: readonly OpenSpan[];
  /** The copy's first watched cell. */
  readonly make: Watched;
  readonly aim: Aim;
  /** The smallest figures for which it holds, not the largest. */
  readonly least: boolean;
}

/** How far a row misses the aim: 0 when it does it, null when it has no answer. */
export function missOf(row: Row, aim: Aim): number | null {
  const made = numberOf(row.readings[0]);
  if (made === null) return null;
  if (!("value" in aim)) return aim.is === "lowest" ? made : -made;
  const slack = 1e-9 * Math.max(1, Math.abs(aim.value));
  const over =
    aim.is === "atmost"
      ? made - aim.value
      : aim.is === "atleast"
        ? aim.value - made
        : Math.abs(made - aim.value);
  return over <= slack ? 0 : over;
}

/** The row that misses least (or any, when all count as `equals`); of equals the one with the largest (or least) figures, the first dial first. */
export function bestOf(rows: readonly Row[], { aim, least }: Wish, equals = false): Row | null {
  let best: Row | null = null;
  let bestMiss = Number.POSITIVE_INFINITY;
  for (const row of rows) {
    const miss = missOf(row, aim);
    if (miss === null) continue;
    const alike = equals || Math.abs(miss - bestMiss) <= 1e-9 * Math.max(1, Math.abs(miss));
    if (!best || (!alike && miss < bestMiss) || (alike && wins(row, best, least))) {
      best = row;
      bestMiss = alike ? Math.min(miss, bestMiss) : miss;
    }
  }
  return best;
}

function wins(row: Row, best: Row, least: boolean): boolean {
  const i = row.figures.findIndex((figure, at) => figure !== best.figures[at]);
  return i >= 0 && row.figures[i]! < best.figures[i]! === least;
}

/** Which rows do what is asked. */
export function doingOf(copy: Copy, { make, aim }: Wish, rows: readonly Row[], nearest: Row): boolean[] {
  const misses = rows.map((row) => missOf(row, aim));
  const least = missOf(nearest, aim)!;
  if (!("value" in aim)) {
    return misses.map(
      (miss) => miss !== null && Math.abs(miss - least) <= 1e-9 * Math.max(1, Math.abs(least)),
    );
  }
  if (aim.is !== "equal" || least === 0) return misses.map((miss) => miss === 0);
  // No step is exact: those count that the tape can't tell from it, and of a smooth answer that
  // passes it between two steps the nearer; of neighbours that do, only the best.
  const target = show(aim.value, make.kind, copy.book);
  const near = rows.map(
    (row, i) =>
      misses[i] !== null &&
      (show(numberOf(row.readings[0]), make.kind, copy.book) === target ||
        (copy.dials.length === 1 && crossing(copy, aim, rows, i) !== null)),
  );
  if (copy.dials.length > 1) return near.map((one, i) => one && rows[i] === nearest);
  const doing = rows.map(() => false);
  for (let i = 0; i < rows.length; i += 1) {
    if (!near[i]) continue;
    let best = i;
    for (; near[i]; i += 1) if (misses[i]! < misses[best]!) best = i;
    doing[best] = true;
  }
  return doing;
}

/** Where between this row and a neighbour a smooth answer is exactly the value; null when it jumps past it or stays away. */
export function crossing(copy: Copy, aim: Aim, rows: readonly Row[], at: number): number | null {
  if (!("value" in aim) || copy.dials[0]!.whole) return null;
  const off = (figure: number): number => {
    const made = numberOf(copy.read([figure])[0]);
    return made === null ? Number.NaN : made - aim.value;
  };
  const here = numberOf(rows[at]!.readings[0])! - aim.value;
  for (const next of [rows[at - 1], rows[at + 1]]) {
    const made = numberOf(next?.readings[0]);
    if (made === null || !next) continue;
    const there = made - aim.value;
    if (here * there >= 0) continue;
    let [low, high] = [rows[at]!.figures[0]!, next.figures[0]!];
    for (let i = 0; i < 50; i += 1) {
      const middle = (low + high) / 2;
      if (off(middle) * here > 0) low = middle;
      else high = middle;
    }
    // A smooth answer has come as near as it likes by now; a jump has kept its height.
    const left = Math.max(Math.abs(off(low)), Math.abs(off(high)));
    if (left <= 1e-6 * Math.abs(there - here)) return clean((low + high) / 2);
  }
  return null;
}
