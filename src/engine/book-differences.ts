/**
 * What differs between two books, where, and what came of it. Rows and columns that were only put in or
 * moved down are recognised by their labels and headings, so that what lies below them counts as the same.
 */

import { phrase } from "../../functions/phrase.ts";
import { cellAddress, fullAddress, type Place, pageReference, placeKey } from "../book/address.ts";
import { aligned } from "../book/align.ts";
import { isFormula } from "../book/formula.ts";
import { everyName, nameOf } from "../book/names.ts";
import { afterMapping, type Span } from "../book/references.ts";
import { type Book, type Page, typedAt } from "../book/shape.ts";
import { convertBook } from "./convert.ts";
import { type CopiedPage, copiedFrom, copiedText, type Shown, sharingRows } from "./copied-pages.ts";
import { Engine } from "./engine.ts";
import { fittingOf } from "./fitted-cells.ts";
import { labelOf } from "./label.ts";
import type { LayDesk } from "./lay-desk.ts";

/** One thing that differs; `before` is the first book's, `after` the second's, "" where it has no such thing. */
export interface Difference {
  readonly is: "book" | "page" | "column" | "cell" | "name" | "note" | "trial";
  /** "Draft!B3" and the like, as the second book has it; as the first where it is gone. */
  readonly where: string;
  /** What names the cell: its name, else its label; "" where it has neither. */
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

/** A formula that stands in both books alike and has another answer. */
export type AnswerDifference = Omit<Difference, "is">;

export interface BookDifferences {
  readonly changes: readonly Difference[];
  readonly answers: readonly AnswerDifference[];
}

/** Where the lines of a page of the first book are in the second. */
interface Lines {
  readonly page: number;
  readonly rows: readonly (number | null)[];
  readonly columns: readonly (number | null)[];
}

export function bookDifferences(first: Book, second: Book, desk: LayDesk): BookDifferences {
  // Lengths are compared in one unit, the first book's.
  const other = convertBook(second, first.unit);
  const engine = new Engine(first, desk);
  const old = new Map<string, string>();
  for (const [page, { rows }] of first.pages.entries())
    for (const [row, cells] of rows.entries())
      for (const [column, typed] of cells.entries()) {
        const place = { page, row, column };
        if (isFormula(typed) || fittingOf(first, place) !== undefined)
          old.set(placeKey(place), shownBy(engine, place));
      }
  // What both books have in common is calculated once.
  engine.become(sharingRows(other, first));
  const found = differences(first, second, other, {
    old: (place) => old.get(placeKey(place)) ?? "",
    next: (place) => shownBy(engine, place),
  });
  engine.destroy();
  return found;
}

function shownBy(engine: Engine, place: Place): string {
  const { shown, problem } = engine.view(place);
  return problem?.is === "error" ? phrase`error: ${problem.sentence}` : shown;
}

/** What was typed otherwise in two books, without the answers: nothing is calculated. */
export const typedDifferences = (first: Book, second: Book): readonly Difference[] =>
  differences(first, second, convertBook(second, first.unit), null).changes;

/** `other` is the second book in the unit of the first; without `shown` no answer is compared or shown, and no copied page is looked for. */
function differences(
  first: Book,
  second: Book,
  other: Book,
  shown: { readonly old: Shown; readonly next: Shown } | null,
): BookDifferences {
  const changes: Difference[] = settingsOf(first, second);
  const lines = first.pages.map((page) => linesOf(page, other));
  const copies = { first: new Map<number, CopiedPage>(), other: new Map<number, CopiedPage>() };
  const asPage = (which: "first" | "other", index: number): string => {
    const [one, two] = [
      { book: first, shown: shown?.old },
      { book: other, shown: shown?.next },
    ];
    const [here, there] = which === "first" ? [one, two] : [two, one];
    const { stage } = here.book.pages[index]!;
    if (!here.shown || !there.shown) return stage;
    const copy = copiedFrom(
      { book: here.book, index, shown: here.shown },
      { book: there.book, shown: there.shown },
    );
    if (!copy) return stage;
    copies[which].set(index, copy);
    return copiedText(stage, copy);
  };
  for (const [i, page] of first.pages.entries()) {
    if (!lines[i]) changes.push(change("page", page.title, "", asPage("first", i), ""));
  }
  for (const [i, page] of other.pages.entries()) {
    const before = first.pages.find(({ title }) => same(title, page.title));
    if (!before) changes.push(change("page", page.title, "", "", asPage("other", i)));
    else if (before.stage !== page.stage)
      changes.push(change("page", page.title, "", before.stage, page.stage));
  }
  const answers: AnswerDifference[] = [];
  const label = (book: Book, place: Place) => nameOf(book, place) ?? labelOf(book, place) ?? "";
  const met = new Set<string>();
  const said = (which: "old" | "next", place: Place, typed: string) =>
    shown && isFormula(typed) ? `${typed} (${shown[which](place)})` : typed;
  for (const [index, at] of lines.entries()) {
    if (!at) continue;
    const page = first.pages[index]!;
    for (const [row, cells] of page.rows.entries()) {
      for (const [column, typed] of cells.entries()) {
        const place = { page: index, row, column };
        const [r, c] = [at.rows[row], at.columns[column]];
        const to =
          r === null || r === undefined || c === null || c === undefined
            ? null
            : { page: at.page, row: r, column: c };
        if (to) met.add(placeKey(to));
        const now = to ? typedAt(other, to.page, to.row, to.column) : "";
        if (typed.trim() === "" && now.trim() === "") continue;
        const where = to ? fullAddress(other, to) : fullAddress(first, place);
        const name = to ? label(other, to) : label(first, place);
        if (!to || followed(first, lines, typed, page.title) !== now) {
          const after = to ? said("next", to, now) : "";
          changes.push({ is: "cell", where, label: name, before: said("old", place, typed), after });
        } else if (shown && (isFormula(now) || fittingOf(first, place) !== undefined)) {
          const [before, after] = [shown.old(place), shown.next(to)];
          if (before !== after) answers.push({ where, label: name, before, after });
        }
      }
    }
  }
  for (const [page, { rows }] of other.pages.entries())
    for (const [row, cells] of rows.entries())
      for (const [column, typed] of cells.entries()) {
        const place = { page, row, column };
        if (typed.trim() === "" || met.has(placeKey(place))) continue;
        if (copies.other.get(page)?.cells.has(`${row} ${column}`)) continue;
        changes.push(
          change("cell", fullAddress(other, place), label(other, place), "", said("next", place, typed)),
        );
      }
  changes.push(
    ...columnsOf(first, other, lines),
    ...namesOf(first, other, lines, copies),
    ...notesOf(first, other, lines),
  );
  changes.push(...fittingsOf(first, other, lines), ...trialsOf(first, other));
  return { changes, answers };
}

const change = (
  is: Difference["is"],
  where: string,
  label: string,
  before: string,
  after: string,
): Difference => ({ is, where, label, before, after });

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

function settingsOf(first: Book, second: Book): Difference[] {
  const fields = [
    ["title", first.title, second.title],
    ["description", first.about, second.about],
    ["unit", first.unit, second.unit],
    [phrase`finest mark`, first.mark, second.mark],
    [phrase`decimal mark`, first.decimal ?? "point", second.decimal ?? "point"],
  ] as const;
  return fields.flatMap(([field, before, after]) =>
    before === after ? [] : [change("book", phrase`the book`, field, before, after)],
  );
}

/** What a row is known by: its first text. */
function rowKeys({ rows }: Page): string[] {
  return rows.map((row) => row.find((typed) => typed.trim() !== "" && !isFormula(typed))?.trim() ?? "");
}

function linesOf(page: Page, other: Book): Lines | null {
  const to = other.pages.findIndex(({ title }) => same(title, page.title));
  const there = other.pages[to];
  if (!there) return null;
  const heads = ({ columns }: Page) => columns.map(({ heading }) => heading);
  return {
    page: to,
    rows: aligned(rowKeys(page), rowKeys(there)),
    columns: aligned(heads(page), heads(there)),
  };
}

/** A formula of the first book with its references where their cells are in the second; a text as it is. */
function followed(first: Book, lines: readonly (Lines | null)[], typed: string, home: string): string {
  if (!isFormula(typed)) return typed;
  return lines.reduce((formula, at, i) => {
    if (!at || (isStill(at.rows) && isStill(at.columns))) return formula;
    const line = (list: Lines["rows"], n: number | null) => (n === null ? null : (list[n] ?? n));
    return afterMapping(
      formula,
      home,
      first.pages[i]!.title,
      (span): Span => ({
        top: line(at.rows, span.top),
        bottom: line(at.rows, span.bottom),
        left: line(at.columns, span.left),
        right: line(at.columns, span.right),
      }),
    );
  }, typed);
}

const isStill = (list: Lines["rows"]): boolean => list.every((to, i) => to === i);

/** Cells that follow the fittings in one book and not, or otherwise, in the other. */
function fittingsOf(first: Book, other: Book, lines: readonly (Lines | null)[]): Difference[] {
  const followed = (book: Book) =>
    book.pages.flatMap(({ rows }, page) =>
      rows.flatMap((cells, row) =>
        cells.flatMap((_, column) => {
          const setting = fittingOf(book, { page, row, column });
          return setting === undefined ? [] : [{ place: { page, row, column }, setting }];
        }),
      ),
    );
  const words = (setting: string | undefined) =>
    setting === undefined ? "" : phrase`follows the fittings of ${setting}`;
  const met = new Set<string>();
  const label = (book: Book, place: Place) => nameOf(book, place) ?? labelOf(book, place) ?? "";
  const changed = followed(first).flatMap(({ place, setting }) => {
    const at = lines[place.page];
    const [row, column] = [at?.rows[place.row], at?.columns[place.column]];
    const to = at && row != null && column != null ? { page: at.page, row, column } : null;
    const now = to ? fittingOf(other, to) : undefined;
    if (to) met.add(placeKey(to));
    return now === setting || !to
      ? []
      : [change("cell", fullAddress(other, to), label(other, to), words(setting), words(now))];
  });
  const added = followed(other).flatMap(({ place, setting }) =>
    met.has(placeKey(place))
      ? []
      : [change("cell", fullAddress(other, place), label(other, place), "", words(setting))],
  );
  return [...changed, ...added];
}

function columnsOf(first: Book, other: Book, lines: readonly (Lines | null)[]): Difference[] {
  return first.pages.flatMap((page, index) => {
    const at = lines[index];
    if (!at) return [];
    const there = other.pages[at.page]!;
    return page.columns.flatMap((column, i) => {
      const to = at.columns[i];
      const now = to === null || to === undefined ? undefined : there.columns[to];
      const text = ({ heading, kind, choices }: Page["columns"][number]) =>
        [heading, kind, choices].filter(Boolean).join(", ");
      const where = `${page.title}!${cellAddress(0, now ? to! : i).slice(0, -1)}`;
      if (now && text(now) === text(column)) return [];
      return [change("column", where, "", text(column), now ? text(now) : "")];
    });
  });
}

function namesOf(
  first: Book,
  other: Book,
  lines: readonly (Lines | null)[],
  copies: Readonly<Record<"first" | "other", ReadonlyMap<number, CopiedPage>>>,
): Difference[] {
  const list = (which: "first" | "other", book: Book, follow: (address: string) => string) =>
    new Map(everyName(book).flatMap(({ name, of, address }) => {
      if (of !== null && copies[which].get(of)?.names.has(name)) return [];
      const owner = of === null ? "" : `${book.pages[of]!.title}!`;
      return [[`${owner}${name}`, follow(address)] as const];
    })); // biome-ignore format: short
  const before = list("first", first, (address) => followed(first, lines, `=${address}`, "").slice(1));
  const after = list("other", other, (address) => address);
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((name) => {
    const [was, is] = [before.get(name) ?? "", after.get(name) ?? ""];
    return was === is ? [] : [change("name", name, "", was, is)];
  });
}

function notesOf(first: Book, other: Book, lines: readonly (Lines | null)[]): Difference[] {
  const before = new Map(
    first.pages.flatMap(({ title, notes }, i) =>
      lines[i]
        ? Object.entries(notes).map(
            ([at, note]) =>
              [followed(first, lines, `=${fullAddressOf(title, at)}`, "").slice(1), note] as const,
          )
        : [],
    ),
  );
  const after = new Map(
    other.pages.flatMap(({ title, notes }) =>
      Object.entries(notes).map(([at, note]) => [fullAddressOf(title, at), note] as const),
    ),
  );
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((where) => {
    const [was, is] = [before.get(where) ?? "", after.get(where) ?? ""];
    return was === is ? [] : [change("note", where, "", was, is)];
  });
}

const fullAddressOf = (title: string, address: string): string => `${pageReference(title)}!${address}`;

function trialsOf(first: Book, other: Book): Difference[] {
  const list = (book: Book) => new Map(book.trials.map(({ title, cells }) => [title, JSON.stringify(cells)]));
  const [before, after] = [list(first), list(other)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((title) => {
    const [was, is] = [before.get(title) ?? "", after.get(title) ?? ""];
    return was === is ? [] : [change("trial", title, "", was, is)];
  });
}
