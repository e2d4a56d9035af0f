/** A sweep: one or two typed cells taken through a range step by step, and what the watched cells hold at each. */

import type { Kind } from "../../functions/define.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import { csvText } from "./csv.ts";
import type { Engine } from "./engine.ts";
import { cellKey } from "./label.ts";
import { type Odd, oddText } from "./odd-steps.ts";
import type { QuestionEngine, Reading } from "./question-engine.ts";
import { exact, show } from "./show.ts";
import { clean, figureText, type Problem, type VariedCell } from "./varied-cell.ts";

/** A range of figures: from, from + step, … up to `to`. Lengths in the book's unit. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** A cell whose answer is looked at. */
export interface Watched {
  readonly place: Place;
  readonly label: string;
  readonly kind: Kind;
}

/** One setting of the varied cells and what the watched cells hold at it. */
export interface Row {
  readonly figures: readonly number[];
  readonly readings: readonly Reading[];
  /** What is unusual at this setting in the formulas that the watched cells rest on; left out when nothing is. */
  readonly odd?: readonly Odd[];
}

/** The most settings of one question. */
export const MOST_SETTINGS = 20_000;

/** A cell to watch, or why it can't be. */
export function watchAt(engine: Engine, place: Place): Watched | Problem {
  const label = cellKey(engine.book, place);
  const { value, problem, typed, kind: kindHere } = engine.view(place);
  const verdict = value === "ok" || problem?.is === "verdict";
  const kind = verdict ? "verdict" : kindHere;
  if (typed.trim() === "") return { problem: phrase`${label} is blank; watch a cell that holds a number` };
  if (kind === "piece") {
    return {
      problem: phrase`${label} is a piece; watch one of its measures, such as its PIECE_AREA or PIECE_LENGTH`,
    };
  }
  if (problem?.is !== "error" && typeof value === "string" && kind !== "verdict") {
    const kindHere = value.length > 40 ? `${value.slice(0, 37)}...` : value;
    return { problem: phrase`${label} is a text ("${kindHere}"); watch a cell that holds a number` };
  }
  return { place, label, kind };
}

/** The figures of a range, or why it is not a range. */
export function stepsOf(book: Book, cell: VariedCell, { from, to, step }: Span): number[] | Problem {
  const say = (figure: number) => figureText(book, cell.kind, figure);
  const { label } = cell;
  if (![from, to, step].every(Number.isFinite))
    return { problem: phrase`${label} needs a from, a to and a step` };
  if (step === 0)
    return { problem: phrase`the step of ${label} must be more than 0; give one such as ${say(cell.step)}` };
  if (step < 0) return { problem: phrase`the step of ${label} must be more than 0, not ${say(step)}` };
  if (from > to) {
    return { problem: phrase`from must be at most to: ${label} can't go from ${say(from)} up to ${say(to)}` };
  }
  if (cell.whole && !(Number.isInteger(from) && Number.isInteger(step))) {
    return {
      problem: phrase`${label} is counted: from and step must be whole numbers, not ${from} and ${step}`,
    };
  }
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (count > MOST_SETTINGS) return { problem: tooMany(count) };
  return Array.from({ length: count }, (_, i) => clean(from + i * step));
}

const tooMany = (count: number): string =>
  phrase`that makes ${count.toLocaleString("en")} steps and the most is ${MOST_SETTINGS.toLocaleString("en")}; take a larger step or a shorter range`;

/** Every setting of one or two lists of figures, the figures of the last cell changing fastest. */
export function settingsOf(lists: readonly (readonly number[])[]): (readonly number[])[] | Problem {
  const count = lists.reduce((product, list) => product * list.length, 1);
  if (count > MOST_SETTINGS) return { problem: tooMany(count) };
  return lists.reduce<(readonly number[])[]>(
    (settings, list) => settings.flatMap((setting) => list.map((figure) => [...setting, figure])),
    [[]],
  );
}

/** The rows one by one, so that a long sweep can be shown as it comes and stopped. `areAllRead` is false where it will be stopped at a row that does what is wanted. */
export function* sweep(
  engine: QuestionEngine,
  settings: readonly (readonly number[])[],
  areAllRead = true,
): Generator<Row, void> {
  engine.expect(settings, areAllRead);
  for (const figures of settings) {
    const readings = engine.read(figures);
    const { odd } = engine;
    yield { figures, readings, ...(odd.length > 0 && { odd }) };
  }
}

/** What a reading shows: the tape's words, or the sentence of what is wrong. */
export function readingText(book: Book, { kind }: Watched, reading: Reading): string {
  return "sentence" in reading ? phrase`check: ${reading.sentence}` : show(reading.value, kind, book);
}

/** A sweep as a table for other programs: exact figures, and a last column with what is wrong or unusual, if anything is. */
export function sweepCsv(
  engine: Pick<QuestionEngine, "book" | "varied">,
  watched: readonly Watched[],
  rows: readonly Row[],
): string {
  const checks = rows.map(({ readings, odd = [] }) =>
    [...readings.flatMap((one) => ("sentence" in one ? [one.sentence] : [])), ...odd.map(oddText)].join("; "),
  );
  const wrong = checks.some((text) => text !== "");
  const head = [...engine.varied, ...watched].map(({ label }) => label);
  const lines = rows.map(({ figures, readings }, row) => [
    ...figures.map(String),
    ...readings.map((reading) =>
      "sentence" in reading
        ? ""
        : typeof reading.value === "number"
          ? String(clean(reading.value))
          : exact(reading.value, "text", engine.book),
    ),
    ...(wrong ? [checks[row]!] : []),
  ]);
  return csvText([[...head, ...(wrong ? ["check"] : [])], ...lines]);
}

/** Works a question to its end, when nobody needs to look in between. */
export function finish<T>(work: Generator<unknown, T, undefined>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}
