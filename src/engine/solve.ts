/**
 * Solving: which setting of one or two typed cells makes another cell reach a value or stay on
 * one side of it, or makes it least or greatest. Answers may jump (whole pleats, whole panels,
 * laid pieces), so nothing is guessed between steps: steps are worked from the preferred end until
 * one does it, or all of them where all could matter.
 */

import type { LayOrigin } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import { lessSearched } from "./laid.ts";
import { numberOf, type QuestionEngine } from "./question-engine.ts";
import { show } from "./show.ts";
import { foundText, noAnswer, noneText, surenessText } from "./solution.ts";

import { MOST_SETTINGS, type Row, type Span, settingsOf, stepsOf, sweep, type Watched } from "./sweep.ts";
import { bestOf, doingOf, missOf, type OpenSpan, type SolveRequest } from "./target.ts";
import { clean, isProblem, type Problem, type VariedCell } from "./varied-cell.ts";

export interface Solution {
  /** The setting asked for, or null when no step does it. */
  readonly found: Row | null;
  /** Where a smooth answer is exactly the value, between two steps; null when a step is exact or the answer jumps. */
  readonly exactly: number | null;
  /** The setting that comes nearest, found or not. */
  readonly nearest: Row;
  /** The settings worked, in order: the proof. */
  readonly rows: readonly Row[];
  /** Of them, how many do it. */
  readonly count: number;
  /** The answer in words. */
  readonly sentence: string;
  /** How sure an answer over laid cloth is, in words; null when it rests on no lays, or on proved ones. */
  readonly sureness: string | null;
}

/** Ranges that were left open are widened at most so many times over the figure as it stands. */
const WIDEST = 8;
/** By how much at a time. */
const WIDER = 1.5;

/** Works settings, yielding each row as it comes, and gives the answer. */
export function* solve(engine: QuestionEngine, request: SolveRequest): Generator<Row, Solution | Problem> {
  const apart = unrelated(engine, request.make);
  if (apart) return { problem: apart };
  const parts = settingsFor(engine.book, engine.varied, request);
  if (isProblem(parts)) return parts;
  const sided = request.aim.is === "atmost" || request.aim.is === "atleast";
  const rows: Row[] = [];
  let origin: LayOrigin | null = null;
  for (const row of sided ? fromTheEnd(engine, request, parts) : throughout(engine, request, parts)) {
    rows.push(row);
    origin = lessSearched(origin, engine.origin);
    yield row;
  }
  return conclude(
    engine,
    request,
    rows.toSorted((a, b) => ahead(a.figures, b.figures)),
    origin,
  );
}

/** The settings that a request may come to, in order; of an open range part by part. */
export function settingsFor(
  book: Book,
  varied: readonly VariedCell[],
  { spans: given }: Pick<SolveRequest, "spans">,
): (readonly number[])[][] | Problem {
  const spans = varied.map((cell, i) => spanFor(cell, given[i] ?? {}, varied.length > 1));
  const wrong = spans.find(isProblem);
  if (wrong) return wrong;
  const lists = varied.map((cell, i) => stepsOf(book, cell, spans[i] as Span));
  const bad = lists.find(isProblem);
  if (bad) return bad;
  const settings = settingsOf(lists as number[][]);
  if (isProblem(settings)) return settings;
  const open = varied.length === 1 && given[0]?.to === undefined;
  return open ? [settings, ...beyond(varied[0]!, spans[0] as Span, settings.length)] : [settings];
}

/** The order of settings: by the first figure, then by the second. */
export const ahead = (a: readonly number[], b: readonly number[]): number => {
  const i = a.findIndex((figure, at) => figure !== b[at]);
  return i < 0 ? 0 : a[i]! - b[i]!;
};

/** The settings past the end of an open range, part by part. */
function beyond(cell: VariedCell, span: Span, first: number): (readonly number[])[][] {
  const most = WIDEST * Math.abs(cell.now ?? 0);
  const parts: (readonly number[])[][] = [];
  let count = first;
  for (let end = span.to; end < most && count < MOST_SETTINGS; ) {
    end = Math.min(WIDER * end, most);
    const part: (readonly number[])[] = [];
    for (; count < MOST_SETTINGS && span.from + count * span.step <= end + 1e-9; count += 1) {
      part.push([clean(span.from + count * span.step)]);
    }
    if (part.length > 0) parts.push(part);
  }
  return parts;
}

/**
 * Works down from the largest setting (or up from the smallest) until one does it: none beyond it
 * does. Of an open range the next part is begun only when the end of this one does it, or none in it.
 */
function* fromTheEnd(
  engine: QuestionEngine,
  { aim, least }: SolveRequest,
  parts: readonly (readonly (readonly number[])[])[],
): Generator<Row, void> {
  if (least) {
    for (const row of sweep(engine, parts.flat(), false)) {
      yield row;
      if (missOf(row, aim) === 0) return;
    }
    return;
  }
  let held = false;
  for (const part of parts) {
    let further = false;
    let end = true;
    for (const row of sweep(engine, part.toReversed(), false)) {
      yield row;
      const does = missOf(row, aim) === 0;
      if (does && !end) return;
      further = does;
      if (does) break;
      end = false;
    }
    if (held && !further) return;
    held = further;
  }
}

/** Works every setting; of an open range further parts while its end decides the answer, or none is found. */
function* throughout(
  engine: QuestionEngine,
  request: SolveRequest,
  parts: readonly (readonly (readonly number[])[])[],
): Generator<Row, void> {
  const rows: Row[] = [];
  for (const part of parts) {
    for (const row of sweep(engine, part)) {
      rows.push(row);
      yield row;
    }
    if (decided(rows, request)) return;
  }
}

/** Whether more of the range could not do better: the best lies inside, or the value between two answers. */
function decided(rows: readonly Row[], request: SolveRequest): boolean {
  const best = bestOf(rows, request);
  if (!best || best === rows.at(-1)) return false;
  const { aim } = request;
  if (!("value" in aim)) return true;
  const made = rows.flatMap(({ readings }) => numberOf(readings[0]) ?? []);
  return made.some((one) => one >= aim.value) && made.some((one) => one <= aim.value);
}

/** The answer that these settings give, chosen among those that are `eligible`; `origin` says how their lays were found. */
export function conclude(
  engine: QuestionEngine,
  request: SolveRequest,
  rows: readonly Row[],
  origin: LayOrigin | null,
  eligible: (row: Row) => boolean = () => true,
): Solution | Problem {
  const nearest = bestOf(rows.filter(eligible), request);
  if (!nearest) return { problem: noAnswer(engine, request.make, rows) };
  const doing = doingOf(engine, request, rows, nearest);
  const does = doing.rows.map((one, i) => one && eligible(rows[i]!));
  const found = bestOf(
    rows.filter((_, i) => does[i]),
    request,
    engine.varied.length === 1,
  );
  const at = found ? rows.indexOf(found) : -1;
  const exactly =
    found && missOf(found, request.aim) !== 0 ? (doing.exact[at - 1] ?? doing.exact[at] ?? null) : null;
  const sentence = found
    ? foundText(engine, request, rows, found, does, exactly)
    : noneText(engine, request, rows, nearest);
  const sureness = surenessText(engine, request, rows, found ?? nearest, origin);
  return { found, exactly, nearest, rows, count: does.filter(Boolean).length, sentence, sureness };
}

function unrelated(engine: QuestionEngine, make: Watched): string | null {
  const idle = engine.varied.find(({ place }) => !engine.upstream.has(place));
  if (!idle) return null;
  const now = show(numberOf(engine.now()[0]), make.kind, engine.book);
  return phrase`${make.label} does not rest on ${idle.label}: it is ${now || phrase`without an answer`} whatever ${idle.label} is`;
}

/** The range to search, its open ends filled: steps of the tape from one step up to twice what stands there. */
function spanFor(cell: VariedCell, { from, to, step }: OpenSpan, both: boolean): Span | Problem {
  if (both && (from === undefined || to === undefined)) {
    return { problem: phrase`two cells need a range each: give a from and a to for ${cell.label}` };
  }
  const by = step ?? cell.step;
  if (cell.kind === "days" && (from === undefined || to === undefined)) {
    return { problem: phrase`a date needs a range: give a from and a to for ${cell.label}` };
  }
  const start = from ?? Math.min(by, cell.now ?? by);
  const reach = Math.max(2 * Math.abs(cell.now ?? 0), Math.abs(start) + 40 * by);
  return { from: start, to: to ?? reach, step: by };
}
