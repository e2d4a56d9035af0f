/** What a solution is asked for, how far a setting misses it, and which settings do it. */

import { numberOf, type QuestionEngine } from "./question-engine.ts";
import { show } from "./show.ts";
import type { Row, Span, Watched } from "./sweep.ts";
import { clean } from "./varied-cell.ts";

export type Target =
  | { readonly is: "atmost" | "atleast" | "equal"; readonly value: number }
  | { readonly is: "lowest" | "highest" };

/** A range with open ends: an end that is not given is found from the present value. */
export type OpenSpan = { readonly [K in keyof Span]?: Span[K] | undefined };

export interface SolveRequest {
  readonly spans: readonly OpenSpan[];
  /** The first watched cell of the question engine. */
  readonly make: Watched;
  readonly aim: Target;
  /** The smallest figures for which it holds, not the largest. */
  readonly least: boolean;
}

/** How far a row misses the aim: 0 when it does it, null when it has no answer. */
export function missOf(row: Row, aim: Target): number | null {
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

/** The row that misses least (or any row, when all count as `equals`). Ties: the larger figure of the first varied cell, then of the second; the smaller one when `least`. */
export function bestOf(rows: readonly Row[], { aim, least }: SolveRequest, equals = false): Row | null {
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

export interface Doing {
  /** Which rows do what is asked. */
  readonly rows: readonly boolean[];
  /** Where between a row and the next a smooth answer is exactly the value, when that was looked for. */
  readonly exact: readonly (number | null)[];
}

export function doingOf(
  engine: QuestionEngine,
  { make, aim }: SolveRequest,
  rows: readonly Row[],
  nearest: Row,
): Doing {
  const misses = rows.map((row) => missOf(row, aim));
  const least = missOf(nearest, aim)!;
  if (!("value" in aim)) {
    const alike = (miss: number | null) =>
      miss !== null && Math.abs(miss - least) <= 1e-9 * Math.max(1, Math.abs(least));
    return { rows: misses.map(alike), exact: [] };
  }
  if (aim.is !== "equal" || least === 0) return { rows: misses.map((miss) => miss === 0), exact: [] };
  // No step is exact: the steps count that the tape shows alike, and of a smooth answer that
  // passes it between two steps the nearer; of neighbours that do, only the best.
  const target = show(aim.value, make.kind, engine.book);
  const alike = rows.map(
    (row, i) => misses[i] !== null && show(numberOf(row.readings[0]), make.kind, engine.book) === target,
  );
  // A laid length does not change smoothly: it proves nothing between two steps.
  const exact = rows.map((row, i) => (engine.lays ? null : crossing(engine, aim, row, rows[i + 1])));
  const near = alike.map((one, i) => one || exact[i] !== null || (i > 0 && exact[i - 1] !== null));
  if (engine.varied.length > 1) return { rows: near.map((one, i) => one && rows[i] === nearest), exact };
  const doing = rows.map(() => false);
  for (let i = 0; i < rows.length; i += 1) {
    if (!near[i]) continue;
    let best = i;
    for (; near[i]; i += 1) if (misses[i]! < misses[best]!) best = i;
    doing[best] = true;
  }
  return { rows: doing, exact };
}

/** Readings spent on finding where a smooth answer passes a value. */
const MOST_READINGS = 40;
/** Between figures so near one another, as a share of the step, a smooth answer has lost most of its rise. */
const NARROW = 1e-3;

/**
 * Where between two neighbouring rows a smooth answer is exactly the value; null when it jumps past
 * it or stays on one side. By false position, the idle end's weight halved (the Illinois rule).
 */
export function crossing(
  engine: QuestionEngine,
  aim: Target,
  one: Row,
  next: Row | undefined,
): number | null {
  const [made, after] = [numberOf(one.readings[0]), numberOf(next?.readings[0])];
  if (!("value" in aim) || !next || made === null || after === null) return null;
  if (engine.varied.length > 1 || engine.varied[0]!.whole || (made - aim.value) * (after - aim.value) >= 0)
    return null;
  const off = (figure: number): number => (numberOf(engine.read([figure])[0]) ?? Number.NaN) - aim.value;
  let [a, b] = [one.figures[0]!, next.figures[0]!];
  let [atA, atB] = [made - aim.value, after - aim.value];
  // What the answer truly is at `a`, its weight not halved.
  let trueA = atA;
  const [wide, rise] = [Math.abs(b - a), Math.abs(after - made)];
  const close = 1e-12 * Math.max(1, Math.abs(aim.value));
  for (let i = 0; i < MOST_READINGS; i += 1) {
    const figure = (a * atB - b * atA) / (atB - atA);
    const here = off(figure);
    if (Math.abs(here) <= close) return clean(figure);
    if (Number.isNaN(here)) return null;
    // The figures are as close as figures get: the engine's own rounding is left, or a leap.
    if (Math.abs(b - a) <= 1e-13 * Math.abs(b)) return Math.abs(here) <= 1e3 * close ? clean(figure) : null;
    if (here * atB < 0) {
      [a, atA] = [b, atB];
      trueA = atB;
    } else atA /= 2;
    [b, atB] = [figure, here];
    if (Math.abs(b - a) <= NARROW * wide && Math.abs(atB - trueA) >= rise / 2) return null;
  }
  return null;
}
