/** What a search for a setting found, in words. */
import type { LayOrigin } from "../../functions/lay.ts";
import type { Book } from "../book/shape.ts";
import { shownApart } from "./apart.ts";
import { uncertaintyOf } from "./laid.ts";
import { numberOf, type QuestionEngine } from "./question-engine.ts";
import { plainNumber, show } from "./show.ts";
import type { Row, Watched } from "./sweep.ts";
import { missOf, type SolveRequest } from "./target.ts";
import { figureText } from "./varied-cell.ts";

const settingText = (engine: QuestionEngine, row: Row): string =>
  engine.varied
    .map((cell, i) => `${cell.label} ${figureText(engine.book, cell.kind, row.figures[i]!)}`)
    .join(" and ");

/** What the setting makes; on a finer mark where it would read like what was asked for and is not. */
const madeText = (book: Book, make: Watched, row: Row, asked?: number): string => {
  const made = numberOf(row.readings[0]);
  return made === null || asked === undefined
    ? show(made, make.kind, book)
    : shownApart([made, asked], make.kind, book)[0]!;
};

/** "from 8 to 14": the figures looked at. */
function rangeText(engine: QuestionEngine, rows: readonly Row[]): string {
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return "";
  return engine.varied
    .map((cell, i) => {
      const say = (row: Row) => figureText(engine.book, cell.kind, row.figures[i]!);
      return `from ${say(first)} to ${say(last)}`;
    })
    .join(" and ");
}

/** No step of the range has an answer. */
export function noAnswer(engine: QuestionEngine, make: Watched, rows: readonly Row[]): string {
  const reading = rows[0]?.readings[0];
  const why = reading && "sentence" in reading ? reading.sentence : "it holds no number there";
  return `${make.label} has no answer at any step ${rangeText(engine, rows)}: at the first, ${why}`;
}

/** No step does it, and which comes nearest. */
export function noneText(
  engine: QuestionEngine,
  { make, aim }: SolveRequest,
  rows: readonly Row[],
  nearest: Row,
): string {
  const names = engine.varied.map(({ label }) => label).join(" and ");
  const value = "value" in aim ? figureText(engine.book, make.kind, aim.value) : "";
  const wanted =
    aim.is === "equal"
      ? `makes ${make.label} ${value}`
      : `keeps ${make.label} at ${aim.is === "atmost" ? "most" : "least"} ${value}`;
  return `no ${names} ${rangeText(engine, rows)} ${wanted}; nearest is ${settingText(engine, nearest)}, which makes it ${madeText(engine.book, make, nearest, "value" in aim ? aim.value : undefined)}`;
}

/** The setting found, and what else does it. */
export function foundText(
  engine: QuestionEngine,
  request: SolveRequest,
  rows: readonly Row[],
  found: Row,
  doing: readonly boolean[],
  exactly: number | null,
): string {
  const { make, aim, least } = request;
  const makes = engine.varied.length > 1 ? "make" : "makes";
  const made = `${settingText(engine, found)} ${makes} ${make.label} ${madeText(engine.book, make, found, "value" in aim ? aim.value : undefined)}`;
  const range = rangeText(engine, rows);
  const count = doing.filter(Boolean).length;
  const end = least ? "smallest" : "largest";
  if (!("value" in aim)) {
    const also = count > 1 ? `; ${count} settings make it so and this is the ${end}` : "";
    return `${made}, the ${aim.is} ${range}${also}`;
  }
  if (aim.is !== "equal") return `${made}; ${beyondText(engine, request, rows, found)}`;
  const exact = exactly === null ? "" : ` (exactly at ${plainNumber(exactly, 4, engine.book.decimal)})`;
  if (count === 1) return `${made}${exact}; no other step ${range} does as well`;
  if (engine.varied.length > 1) return `${made}; ${count} settings ${range} do and this is the ${end}`;
  const say = (row: Row) => figureText(engine.book, engine.varied[0]!.kind, row.figures[0]!);
  const runs = runsOf(rows, doing).map(([from, to]) =>
    from === to ? say(from) : `${say(from)} to ${say(to)}`,
  );
  return `${made}${exact}; so do, ${range}: ${runs.join(", ")}`;
}

/** What lies beyond the setting found: steps that do not do it, or the end of the range. */
function beyondText(
  engine: QuestionEngine,
  { make, aim, least }: SolveRequest,
  rows: readonly Row[],
  found: Row,
): string {
  const end = least ? rows[0]! : rows.at(-1)!;
  const further = least ? "smaller" : "larger";
  if (end === found) return `it is the end of the range, so a ${further} one may do too`;
  if (engine.varied.length > 1) {
    const [first, second] = engine.varied.map(({ label }) => label);
    return `no setting with a ${further} ${first} does, nor with a ${further} ${second} beside it`;
  }
  const keeps = aim.is === "atmost" ? "at most" : "at least";
  const value = "value" in aim ? figureText(engine.book, make.kind, aim.value) : "";
  return `no ${further} step ${least ? "down" : "up"} to ${settingText(engine, end)} keeps it ${keeps} ${value}`;
}

/**
 * How sure an answer over laid cloth is: how its lays were found, by which share a longer search may
 * change them, and which other settings may do it then. Null when every lay is proved, or nothing is laid.
 */
export function surenessText(
  engine: QuestionEngine,
  { aim, least }: SolveRequest,
  rows: readonly Row[],
  answer: Row,
  origin: LayOrigin | null,
): string | null {
  const share = uncertaintyOf(origin);
  if (!origin || share === 0) return null;
  const how =
    origin.by === "search"
      ? `each lay at and near it was searched for ${origin.seconds} s`
      : "it rests on quick lays";
  const best = missOf(answer, aim)!;
  const open = rows.filter((row) => {
    const miss = missOf(row, aim);
    const made = Math.abs(numberOf(row.readings[0]) ?? 0);
    if (miss === null || row === answer) return false;
    return "value" in aim ? miss > 0 && miss <= share * made : miss - best <= share * made;
  });
  const further = least ? open[0] : open.at(-1);
  const others = !further
    ? "no other step comes within that"
    : engine.varied.length > 1 || !("value" in aim)
      ? `${open.length} other ${open.length === 1 ? "step comes" : "steps come"} within that`
      : `after a longer search ${settingText(engine, further)} may do too`;
  return `${how}, sure to some ${Number((100 * share).toFixed(1))} %: ${others}`;
}

/** The unbroken stretches of rows that do it. */
function runsOf(rows: readonly Row[], doing: readonly boolean[]): (readonly [Row, Row])[] {
  const runs: [Row, Row][] = [];
  rows.forEach((row, i) => {
    if (!doing[i]) return;
    if (doing[i - 1]) runs.at(-1)![1] = row;
    else runs.push([row, row]);
  });
  return runs;
}
