/**
 * The next version of a garment: figures that follow the fittings start from the fitted figures, and the
 * entries of the log that were carried into them stay as history, marked with the version.
 */

import { checkArguments } from "../../functions/arguments.ts";
import { isBlock, listOf } from "../../functions/block.ts";
import { comparedName } from "../../functions/compared-name.ts";
import type { Block as CellBlock, ListRow } from "../../functions/define.ts";
import { tapeText } from "../../functions/fractions.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { changeOf } from "../../functions/seams/carried-change.ts";
import { LOG_LIST, type LogEntry, logOf } from "../../functions/seams/log-list.ts";
import { seamsOf } from "../../functions/seams/seam-list.ts";
import { type Block, type Place, placeKey } from "../book/address.ts";
import { changeColumn, insertColumns, type Typing, type } from "../book/edit.ts";
import { LOG_NAME } from "../book/fitting.ts";
import { isFormula } from "../book/formula.ts";
import { blockAddress, nameMeant } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { withVersion } from "../book/version.ts";
import { Engine } from "./engine.ts";
import { fittingOf } from "./fitted-cells.ts";
import { cellText } from "./label.ts";
import type { LayDesk } from "./lay-desk.ts";
import { sameFigures } from "./same-figures.ts";
import { clean, figureFor, isProblem, typedFor, variedCellAt } from "./varied-cell.ts";
import { isVerdict } from "./view.ts";

export interface NextVersion {
  readonly book: Book;
  readonly number: number;
  /** What was done, in a sentence. */
  readonly sentence: string;
}

/** A figure that follows the fittings, and the entries that its change came from. */
interface Followed {
  readonly place: Place;
  readonly flat: number;
  readonly change: number;
  readonly entries: readonly LogEntry[];
  readonly log: Log;
}

interface Log {
  readonly block: Block;
  readonly cells: CellBlock;
  readonly rows: readonly ListRow[];
}

/** The next version of the book, or a sentence that says why it can't begin. */
export function nextVersion(book: Book, desk: LayDesk): NextVersion | { readonly refusal: string } {
  const engine = new Engine(book, desk);
  try {
    const followed: Followed[] = [];
    for (const place of fittedPlaces(book)) {
      const one = followedAt(engine, place);
      if ("refusal" in one) return one;
      followed.push(one);
    }
    if (followed.length === 0)
      return {
        refusal: phrase`no figure of this book follows the fittings: let a measurement follow a seam first, with Choices, decimals, unit and fittings in its menu; for a wearer who was only measured again, copy the book and type the new measurements in the copy`,
      };
    const logs = new Map(followed.map(({ log }) => [blockAddress(book, log.block), log]));
    const crowded = sharedPage([...logs.values()]);
    if (crowded !== undefined)
      return {
        refusal: phrase`${book.pages[crowded]!.title} holds several fitting logs without the column "carried into version": put that column into each of them first, or each log on a page of its own`,
      };
    const number = versionAfter([...logs.values()]);
    const fitted = type(
      book,
      followed.flatMap((one) => typingOf(book, one)),
    );
    const marked = [...logs].reduce((next, [address, log]) => {
      const mine = followed.filter((one) => blockAddress(book, one.log.block) === address);
      return withCarried(
        next,
        log,
        mine.flatMap(({ entries }) => entries),
        number,
      );
    }, fitted);
    const next = { ...marked, title: withVersion(book.title, number) };
    const restless = restlessAmong(followed, next, desk);
    if (restless)
      return {
        refusal: phrase`${cellText(book, restless.place)} would not start from its fitted figure: the log alters the edge that it is sewn to as well, and that would count from then on; write all changes of one seam under one name`,
      };
    const lost = movedAnswer(engine, next, new Set([...logs.values()].map(({ block }) => block.page)), desk);
    if (lost !== null)
      return {
        refusal: phrase`${lost} takes its change from the log by a formula of its own, and would lose it in the next version: let the measurement follow the fittings instead, with Choices, decimals, unit and fittings in its menu; for a wearer who was only measured again, copy the book and type the new measurements in the copy`,
      };
    const carried = new Set(
      followed.flatMap(({ entries, log }) =>
        entries.map((entry) => `${blockAddress(book, log.block)} ${entry.number}`),
      ),
    );
    const left =
      [...logs.values()].reduce((sum, { rows }) => sum + logOf(rows).entries.length, 0) - carried.size;
    const begun = followed.filter(({ change }) => change !== 0).length;
    return {
      book: next,
      number,
      sentence: phrase`Version ${number} begins: ${plural(begun, "one figure starts", "# figures start")} from what was fitted, and ${plural(carried.size, "one entry of the log is", "# entries of the log are")} history.${left > 0 ? phrase` ${plural(left, "One entry is", "# entries are")} followed by no figure and still ${plural(left, "counts", "count")}.` : ""}`,
    };
  } finally {
    engine.destroy();
  }
}

/** The cells that follow the fittings and hold something, in the order of the book. */
const fittedPlaces = (book: Book): Place[] =>
  book.pages.flatMap(({ cells, rows }, page) =>
    cells === undefined
      ? []
      : rows.flatMap((row, r) =>
          row.flatMap((typed, column) => {
            const place = { page, row: r, column };
            return typed.trim() !== "" && fittingOf(book, place) !== undefined ? [place] : [];
          }),
        ),
  );

function followedAt(engine: Engine, place: Place): Followed | { readonly refusal: string } {
  const { book } = engine;
  const { problem } = engine.view(place);
  const calls = engine.calls(place);
  const fitted = calls.findLast(({ declaration }) => declaration.name === "FITTED");
  const asked = calls.findLast(({ declaration }) => declaration.name === "FITTING_CHANGE");
  const [flat, change] = fitted?.args ?? [];
  const cells = asked?.args[0];
  const named = nameMeant(book, LOG_NAME, place.page);
  if (
    problem?.is === "error" ||
    typeof flat !== "number" ||
    typeof change !== "number" ||
    !isBlock(cells) ||
    !named
  )
    return {
      refusal: phrase`${cellText(book, place)} has no answer: ${problem?.sentence ?? phrase`its fitting changes are not known`}`,
    };
  const given = checkArguments(asked!.declaration, asked!.args, engine.setting) as unknown as {
    readonly fitting_log: readonly ListRow[];
    readonly seam: string;
    readonly seams: readonly ListRow[] | null;
    readonly end: "top" | "bottom" | null;
  };
  const log = logOf(given.fitting_log);
  const seams = given.seams ? seamsOf(given.seams) : [];
  const { from } = changeOf(comparedName(given.seam), given.end, log, seams);
  return {
    place,
    flat,
    change,
    entries: from.flatMap(({ entries }) => entries),
    log: { block: named.block, cells, rows: given.fitting_log },
  };
}

/** The version after those that the logs name; the first book is version 1. */
function versionAfter(logs: readonly Log[]): number {
  const named = logs.flatMap(({ rows }) => rows.map(({ cells }) => Number(cells.carried ?? 1)));
  return Math.max(1, ...named.filter(Number.isInteger)) + 1;
}

/** What is typed in a figure's cell so that it starts from the fitted figure. */
function typingOf(book: Book, { place, flat, change }: Followed): Typing[] {
  if (change === 0) return [];
  const typed = typedAt(book, place.page, place.row, place.column);
  if (isFormula(typed)) {
    const by = `${book.unit.toUpperCase()}(${clean(Math.abs(change))})`;
    return [{ ...place, typed: `=(${typed.trim().slice(1)})${change < 0 ? "-" : "+"}${by}` }];
  }
  const figure = flat + change;
  const cell = variedCellAt(book, place);
  const tape = tapeText(figure, book.unit, book.mark, book.decimal);
  const bare = !/[a-z"']\.?\s*$/i.test(typed.trim());
  if (bare && figureFor(book, { kind: "length" }, tape) === clean(figure)) return [{ ...place, typed: tape }];
  return isProblem(cell) ? [] : [{ ...place, typed: typedFor(book, cell, figure) }];
}

/** A page with several logs of which one lacks the column for carried entries: a column put in for one would go through the others. */
const sharedPage = (logs: readonly Log[]): number | undefined =>
  logs.find(
    ({ block, cells }) =>
      !listOf(cells, LOG_LIST).columns.has("carried") &&
      logs.filter((other) => other.block.page === block.page).length > 1,
  )?.block.page;

/** The book with these entries of a log marked as carried; a log without a column for it gets one, before its last. */
function withCarried(book: Book, { block, cells }: Log, entries: readonly LogEntry[], number: number): Book {
  const { columns, above } = listOf(cells, LOG_LIST);
  const wide = block.right - block.left + 1;
  const known = columns.get("carried");
  const column = known === undefined ? block.right : block.left + known;
  const heading = "Carried into version";
  let next = book;
  if (known === undefined) {
    next = insertColumns(next, block.page, column, 1);
    next =
      above === 1
        ? type(next, [{ page: block.page, row: block.top, column, typed: heading }])
        : changeColumn(next, block.page, column, { heading });
  }
  const rows = [...new Set(entries.map(({ places }) => block.top + Math.floor(places.piece! / wide)))];
  return type(
    next,
    rows.map((row) => ({ page: block.page, row, column, typed: String(number) })),
  );
}

/** The first figure that the next version would not start from its fitted value, because the log still alters it. */
function restlessAmong(followed: readonly Followed[], next: Book, desk: LayDesk): Followed | undefined {
  const after = new Engine(next, desk);
  try {
    return followed.find(({ place, flat, change }) => {
      const value = after.value(place);
      return typeof value === "number" && Math.abs(value - flat - change) > 1e-6 * (flat + change);
    });
  } finally {
    after.destroy();
  }
}

/**
 * The name of the first cell whose answer changes in the next version, looking at every page that holds no log.
 * Returns null when no answer changes.
 */
function movedAnswer(
  engine: Engine,
  next: Book,
  logPages: ReadonlySet<number>,
  desk: LayDesk,
): string | null {
  const { book } = engine;
  const after = new Engine(next, desk);
  const isSame = (place: Place) => {
    const [before, now] = [engine.value(place), after.value(place)];
    if (now === null) return before === null || after.view(place).problem?.is !== "error";
    if (typeof before === "number" && typeof now === "number")
      return Math.abs(before - now) <= 1e-9 * Math.max(1, Math.abs(before));
    const texts = typeof before === "string" && typeof now === "string";
    // A verdict may change with the log: it is a remark, and no figure or piece.
    return (
      !texts || [before, now].some((text) => text === "ok" || isVerdict(text)) || sameFigures(before, now)
    );
  };
  try {
    for (const [page, { rows }] of book.pages.entries()) {
      if (logPages.has(page)) continue;
      for (const [row, cells] of rows.entries())
        for (const [column, typed] of cells.entries()) {
          const place = { page, row, column };
          if (!isFormula(typed) || isSame(place)) continue;
          const under = engine.restsOn(place).find((one) => !logPages.has(one.page) && !isSame(one));
          return cellText(book, under && placeKey(under) !== placeKey(place) ? under : place);
        }
    }
    return null;
  } finally {
    after.destroy();
  }
}
