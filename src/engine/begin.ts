/** A garment begun: the answers to a template's questions typed into its book. */

import { type Decimal, withDecimalMark } from "../../functions/decimal.ts";
import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import { BOOK_UNITS, convert, type Unit } from "../../functions/units.ts";
import { cellAddress, findPlace, type Place, placeKey } from "../book/address.ts";
import { type } from "../book/edit.ts";
import { EXAMPLE_NOTE } from "../book/example-note.ts";
import type { Garment, Question } from "../book/garment.ts";
import { findBlock } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { understand } from "./content.ts";
import { convertBook } from "./convert.ts";
import { showDecimal } from "./show-decimal.ts";

/** What was typed as the answer to each question, by the question's name; a missing one is empty. */
export type Answers = Readonly<Record<string, string>>;

/** How the new book is kept: its unit and decimal mark, and the day on which it is begun, as ISO writes it. */
export interface BeginIn {
  readonly unit: Unit;
  readonly decimal?: Decimal;
  readonly today: string;
}

/** The message about one answer. A fault keeps the garment from being begun; a notice does not. */
export interface Remark {
  readonly name: string;
  readonly sentence: string;
  readonly fault: boolean;
}

export interface Begun {
  readonly book: Book;
  readonly remarks: readonly Remark[];
  /** The questions that have no answer, so that the example stands in the book. */
  readonly examples: readonly Question[];
}

/** The template's own answer to a question, in this unit. */
export function exampleOf(garment: Garment, question: Question, { unit, decimal }: BeginIn): string {
  const book = bookIn(garment, unit, decimal);
  const { page, row, column } = placeOf(book, question);
  return typedAt(book, page, row, column);
}

/**
 * The book with the answers typed in. What can't be an answer, and what is needed and left empty, is
 * a fault; the example then stands in its cell, with a note that it is one, so that the garment can
 * be drawn all the same.
 */
export function begin(garment: Garment, answers: Answers, how: BeginIn): Begun {
  const start = bookIn(garment, how.unit, how.decimal);
  const remarks: Remark[] = [];
  const examples: Question[] = [];
  const typings = garment.questions.flatMap((question) => {
    const place = placeOf(start, question);
    const given = (answers[question.name] ?? "").trim();
    if (given === "" && question.kind === "date") return [{ ...place, typed: how.today }];
    if (given === "" && !question.needed) return [];
    const remark = remarkOn(question, given, typedAt(start, place.page, place.row, place.column), how);
    if (remark) remarks.push({ name: question.name, ...remark });
    if (!remark?.fault) return [{ ...place, typed: spelt(question, given) }];
    examples.push(question);
    return [];
  });
  const wearer = (answers.wearer ?? "").trim();
  const book = {
    ...withDays(type(start, typings), garment),
    title: wearer ? phrase`${garment.title} for ${wearer}` : garment.title,
  };
  // What nobody said is worn beneath is an example, too.
  const unsaid = garment.questions.filter(
    (question) => question.kind === "text" && (answers[question.name] ?? "").trim() === "",
  );
  const unanswered = [...examples, ...unsaid]
    .map((question) => placeOf(book, question))
    .filter(({ page, row, column }) => typedAt(book, page, row, column) !== "");
  const asked = new Set(garment.questions.map((question) => placeKey(placeOf(book, question))));
  const others = garment.examples.flatMap((block) => typedFigures(book, block));
  const places = [...unanswered, ...others.filter((place) => !asked.has(placeKey(place)))];
  return { book: withNotes(book, places), remarks, examples };
}

/**
 * The book with the day of the draft typed wherever its formulas are the name of that day, "=today": the
 * measurements keep the day on which they were taken when the draft gets a later one.
 */
function withDays(book: Book, garment: Garment): Book {
  const dates = garment.questions.filter(({ kind }) => kind === "date");
  const days = new Map(
    dates.map((question) => {
      const { page, row, column } = placeOf(book, question);
      return [`=${question.name}`, typedAt(book, page, row, column)];
    }),
  );
  const typings = book.pages.flatMap(({ rows }, page) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((formula, column) => {
        const typed = days.get(formula);
        return typed === undefined ? [] : [{ page, row, column, typed }];
      }),
    ),
  );
  return type(book, typings);
}

/**
 * What tells the pages of a garment for `wearer` from those of the open book, to which they are added: the
 * wearer, or the garment where the open book has pages of this wearer already, or nobody was named.
 */
export function labelAmong(open: Book, { title }: Garment, wearer: string): string {
  const place = open.names.wearer === undefined ? null : findPlace(open, open.names.wearer);
  const same = (text: string) => text.trim().toLowerCase() === wearer.toLowerCase();
  if (!wearer || (place && same(typedAt(open, place.page, place.row, place.column)))) return title;
  const isKnown = open.pages.some((page) => same(page.title.split(", ").slice(1).join(", ")));
  return isKnown ? `${wearer}, ${title}` : wearer;
}

/** A choice as the template writes it, whatever its case; anything else as it was typed. */
const spelt = ({ choices }: Question, given: string): string =>
  choices.find((choice) => choice.toLowerCase() === given.toLowerCase()) ?? given;

const placeOf = (book: Book, { name }: Question): Place => findPlace(book, book.names[name]!)!;

function bookIn({ books }: Garment, unit: Unit, decimal: Decimal = "point"): Book {
  const book = convertBook(books[BOOK_UNITS[unit].tape], unit);
  return decimal === "comma" ? showDecimal(book, decimal) : book;
}

/** The cells of a block that hold figures which are typed. */
function typedFigures(book: Book, address: string): Place[] {
  const { page, top, bottom, left, right } = findBlock(book, address)!;
  const places: Place[] = [];
  for (let row = top; row <= bottom; row += 1)
    for (let column = left; column <= right; column += 1)
      if (/^\d/.test(typedAt(book, page, row, column))) places.push({ page, row, column });
  return places;
}

function withNotes(book: Book, places: readonly Place[]): Book {
  const pages = book.pages.map((page, index) => {
    const noted = places.filter((place) => place.page === index);
    const notes = noted.map(({ row, column }) => [cellAddress(row, column), EXAMPLE_NOTE] as const);
    return notes.length === 0 ? page : { ...page, notes: { ...page.notes, ...Object.fromEntries(notes) } };
  });
  return { ...book, pages };
}

type Said = Omit<Remark, "name"> | null;
const fault = (sentence: string): Said => ({ sentence, fault: true });

/** The message about an answer: why it is refused, or that it is unusual; null when there is nothing to say. */
function remarkOn(question: Question, given: string, example: string, how: BeginIn): Said {
  const { ask, kind, choices, usual } = question;
  const such = phrase`such as ${example}`;
  if (given === "") return fault(phrase`${ask} is still missing: type ${KINDS[kind]}, ${such}`);
  if (given.startsWith("="))
    return fault(
      phrase`${ask} must be ${KINDS[kind]}, ${such}, not a formula; type formulas into the page later`,
    );
  if (kind === "text") return null;
  if (kind === "choice") {
    if (choices.some((choice) => choice.toLowerCase() === given.toLowerCase())) return null;
    const near = nearestWord(given, choices);
    const [others, last] = [choices.slice(0, -1).join(", "), choices.at(-1)!];
    return fault(
      near
        ? phrase`${ask} must be ${others} or ${last}, not "${short(given)}"; is ${near} meant?`
        : phrase`${ask} must be ${others} or ${last}, not "${short(given)}"`,
    );
  }
  const content = understand(given, kind === "length" ? "length" : "any", how.unit, how.decimal);
  if (content.is === "text" && content.unclear) return fault(`${ask}: ${content.unclear}`);
  if (kind === "date")
    return content.is === "date"
      ? null
      : fault(phrase`${ask} must be a date such as ${how.today}, not "${short(given)}"`);
  const figure =
    content.is === "number" || content.is === "share" || (kind !== "count" && content.is === "length");
  const value = figure ? (content as { value: number }).value : Number.NaN;
  if (!(value >= 0) || (kind === "length" && value === 0 && question.needed))
    return fault(phrase`${ask} must be ${KINDS[kind]}, ${such}, not "${short(given)}"`);
  if (kind === "count" && !Number.isInteger(value))
    return fault(phrase`${ask} must be a whole number, ${such}, not "${short(given)}"`);
  if (!usual) return null;
  const [least, most] = kind === "length" ? usual.map((cm) => convert(cm, "cm", how.unit)) : usual;
  if (value >= least! && value <= most!) return null;
  const said = (figure: number) =>
    withDecimalMark(String(Number(figure.toPrecision(2))), how.decimal) +
    (kind === "length" ? ` ${how.unit}` : "");
  return {
    sentence: phrase`${ask} is usually between ${said(least!)} and ${said(most!)}; check ${short(given)}`,
    fault: false,
  };
}

const KINDS = {
  length: phrase`a length`, number: phrase`a number`, count: phrase`a whole number`, choice: phrase`one of the choices`, date: phrase`a date`, text: phrase`a text`,
} as const; // biome-ignore format: a table

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 37)}...` : text);
