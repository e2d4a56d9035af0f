/** What a search for a setting found, in words. */

import type { LayOrigin } from "../../functions/lay.ts";
import { phrase, plural } from "../../functions/phrase.ts";
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
      return phrase`from ${say(first)} to ${say(last)}`;
    })
    .join(" and ");
}

/** No step of the range has an answer. */
export function noAnswer(engine: QuestionEngine, make: Watched, rows: readonly Row[]): string {
  const reading = rows[0]?.readings[0];
  const why = reading && "sentence" in reading ? reading.sentence : phrase`it holds no number there`;
  return phrase`${make.label} has no answer at any step ${rangeText(engine, rows)}: at the first, ${why}`;
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
      ? phrase`makes ${make.label} ${value}`
      : aim.is === "atmost"
        ? phrase`keeps ${make.label} at most ${value}`
        : phrase`keeps ${make.label} at least ${value}`;
  return phrase`no ${names} ${rangeText(engine, rows)} ${wanted}; nearest is ${settingText(engine, nearest)}, which makes it ${madeText(engine.book, make, nearest, "value" in aim ? aim.value : undefined)}`;
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
  const setting = settingText(engine, found);
  const figure = madeText(engine.book, make, found, "value" in aim ? aim.value : undefined);
  const made =
    engine.varied.length > 1
      ? phrase`${setting} make ${make.label} ${figure}`
      : phrase`${setting} makes ${make.label} ${figure}`;
  const range = rangeText(engine, rows);
  const count = doing.filter(Boolean).length;
  const end = least ? phrase`smallest` : phrase`largest`;
  if (!("value" in aim)) {
    const also = count > 1 ? phrase`; ${count} settings make it so and this is the ${end}` : "";
    return aim.is === "lowest"
      ? phrase`${made}, the lowest ${range}${also}`
      : phrase`${made}, the highest ${range}${also}`;
  }
  if (aim.is !== "equal") return `${made}; ${beyondText(engine, request, rows, found)}`;
  const exact = exactly === null ? "" : phrase` (exactly at ${plainNumber(exactly, 4, engine.book.decimal)})`;
  if (count === 1) return phrase`${made}${exact}; no other step ${range} does as well`;
  if (engine.varied.length > 1) return phrase`${made}; ${count} settings ${range} do and this is the ${end}`;
  const say = (row: Row) => figureText(engine.book, engine.varied[0]!.kind, row.figures[0]!);
  const runs = runsOf(rows, doing).map(([from, to]) =>
    from === to ? say(from) : phrase`${say(from)} to ${say(to)}`,
  );
  return phrase`${made}${exact}; so do, ${range}: ${runs.join(", ")}`;
}

/** What lies beyond the setting found: steps that do not do it, or the end of the range. */
function beyondText(
  engine: QuestionEngine,
  { make, aim, least }: SolveRequest,
  rows: readonly Row[],
  found: Row,
): string {
  const end = least ? rows[0]! : rows.at(-1)!;
  const further = least ? phrase`smaller` : phrase`larger`;
  if (end === found) return phrase`it is the end of the range, so a ${further} one may do too`;
  if (engine.varied.length > 1) {
    const [first = "", second = ""] = engine.varied.map(({ label }) => label);
    return phrase`no setting with a ${further} ${first} does, nor with a ${further} ${second} beside it`;
  }
  const keeps = aim.is === "atmost" ? phrase`at most` : phrase`at least`;
  const value = "value" in aim ? figureText(engine.book, make.kind, aim.value) : "";
  return phrase`no ${further} step ${least ? phrase`down` : phrase`up`} to ${settingText(engine, end)} keeps it ${keeps} ${value}`;
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
      ? phrase`each lay at and near it was searched for ${origin.seconds} s`
      : phrase`it rests on quick lays`;
  const best = missOf(answer, aim)!;
  const open = rows.filter((row) => {
    const miss = missOf(row, aim);
    const made = Math.abs(numberOf(row.readings[0]) ?? 0);
    if (miss === null || row === answer) return false;
    return "value" in aim ? miss > 0 && miss <= share * made : miss - best <= share * made;
  });
  const further = least ? open[0] : open.at(-1);
  const others = !further
    ? phrase`no other step comes within that`
    : engine.varied.length > 1 || !("value" in aim)
      ? phrase`${plural(open.length, "# other step comes", "# other steps come")} within that`
      : phrase`after a longer search ${settingText(engine, further)} may do too`;
  return phrase`${how}, sure to some ${Number((100 * share).toFixed(1))} %: ${others}`;
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
