/** The engine's own errors in plain sentences. */

import type { DetailedCellError } from "hyperformula";
import { catalogue } from "../../functions/catalogue.ts";
import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { columnNumber, findPlace, type Place, pageReference } from "../book/address.ts";
import { isClosed, isFormula, tokens } from "../book/formula.ts";
import type { Token } from "../book/lex.ts";
import { everyName, isCell, type Named, nameMeant, namesMeant, nameText } from "../book/names.ts";
import { refused } from "../book/refused.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS } from "../book/shape.ts";
import { ENGINE_WORDS, GENERAL, NOT_FOUND } from "./engine-words.ts";
import { RANGE_OF_ANSWERS } from "./guards.ts";
import { cellText } from "./label.ts";
import { rarelyAsked } from "./rarely-asked.ts";
import { precedents } from "./references.ts";
import { searchedInVain } from "./unmatched.ts";
import type { CellProblem, CellView } from "./view.ts";

/** What is known of the formula in which an error began. */
export interface Scene {
  readonly book: Book;
  /** The formula that went wrong, as typed, and the page it is read on. */
  readonly formula: string;
  readonly page: number;
  /** Its cell, when it stands in one. */
  readonly place?: Place | undefined;
  readonly isFunction: (name: string) => boolean;
  readonly value: (place: Place) => unknown;
  /** All cells that rest on themselves. */
  readonly circular: () => readonly Place[];
}

/** What HyperFormula says where it needs a number and is given a text. */
const TEXT_FOR_NUMBER = "Value cannot be coerced to number.";

/** Whether a cell has its answer in spite of the problem. */
export const hasAnswer = ({ is }: CellProblem): boolean =>
  is === "unusual" || is === "uncounted" || is === "unchosen";

/** What a cell answers, in one line: its value, or its problem where it has no value or is a verdict. */
export const answerText = ({ problem, shown }: Pick<CellView, "problem" | "shown">): string =>
  problem && !hasAnswer(problem) ? problem.sentence : shown;

/** What is wrong in a cell, for an error of the engine. */
export function sentence(error: DetailedCellError, scene: Scene): string {
  const { formula, book } = scene;
  const refusal = refused(formula, book.decimal);
  if (refusal) return refusal;
  switch (error.type) {
    case "CYCLE":
      return (
        (scene.place && rarelyAsked.circularReferenceSentence?.(book, scene.place, scene.circular)) ??
        phrase`this formula rests on itself; break the circle`
      );
    case "NAME":
      return unknownWord(scene) ?? phrase`a name in this formula is not known; check the spelling`;
    case "ERROR":
      return unreadable(scene);
    case "DIV_BY_ZERO":
      return (
        rarelyAsked.dividesBy?.(scene) ??
        phrase`this divides by zero or by a blank cell; give the divisor a number`
      );
    case "REF":
      return unknownPage(scene) ?? lostOrNowhere(formula);
    default:
      return said(error, scene);
  }
}

/** A refusal of a sewing function is a sentence already; the engine's own messages end with a full stop. */
function said(error: DetailedCellError, scene: Scene): string {
  const { message } = error;
  if (message === RANGE_OF_ANSWERS) return listAsCell(scene) ?? message;
  if (message !== "" && !message.endsWith(".")) return message;
  if (message === TEXT_FOR_NUMBER) return textForNumber(scene) ?? ENGINE_WORDS[message]!;
  if (message === "Wrong number of arguments.") {
    const called = tokens(scene.formula).filter(({ kind }) => kind === "function");
    const only = called.length === 1 ? called[0]!.text.toUpperCase() : null;
    return only ? phrase`${only} is given too many or too few arguments` : ENGINE_WORDS[message]!;
  }
  const inVain =
    ENGINE_WORDS[message] === NOT_FOUND ? searchedInVain(scene.formula, scene.page, scene) : null;
  return inVain ?? ENGINE_WORDS[message] ?? GENERAL[error.type] ?? phrase`this formula has no answer`;
}

/** The list of the formula that stands where one value is needed, in a sentence; null unless the formula has exactly one list. */
function listAsCell({ book, formula, page }: Scene): string | null {
  const lists = tokens(formula).flatMap(({ kind, text }) => {
    const meant = kind === "name" ? nameMeant(book, text, page) : null;
    return meant && !isCell(meant.block) ? [meant] : [];
  });
  const [list] = lists;
  return list && lists.length === 1
    ? phrase`${list.name} is a list (${list.address}), and a cell holds one value: use it in a function, such as =COUNTA(${list.name})`
    : null;
}

/** The cell that holds a text where the formula calculates with a number, in a sentence. */
function textForNumber(scene: Scene): string | null {
  const place = heldText(scene);
  return (
    place &&
    phrase`${cellText(scene.book, place)} must be a number here, not "${short(String(scene.value(place)))}"`
  );
}

/** The first cell behind the formula that holds a text. */
function heldText({ book, formula, page, value }: Scene): Place | null {
  if (!isFormula(formula)) return null;
  const holdsText = (place: Place) => typeof value(place) === "string" && value(place) !== "";
  return precedents(book, formula, page).find(holdsText) ?? null;
}

/** The cell that the sentence of an error names as its cause; null for a sentence that names none. */
export function causeOf(error: DetailedCellError, scene: Scene): Place | null {
  if (refused(scene.formula, scene.book.decimal)) return null;
  if (error.type === "DIV_BY_ZERO") return rarelyAsked.divisorOf?.(scene) ?? null;
  return error.message === TEXT_FOR_NUMBER ? heldText(scene) : null;
}

/** Why a formula can't be read at all. */
export function unreadable(scene: Scene): string {
  return (
    unknownWord(scene) ??
    unbalanced(scene.formula) ??
    phrase`this formula can't be read; check its brackets, quotes and the ; between arguments`
  );
}

function unbalanced(formula: string): string | null {
  const list = tokens(formula);
  let open = 0;
  for (const token of list) {
    const { kind, text } = token;
    if (kind === "text" && !isClosed(token))
      return phrase`a text in this formula has no closing quote: ${short(text)}`;
    if (kind === "stray")
      return text.trim() === ""
        ? phrase`the sign at the end has no meaning in a formula; delete it`
        : phrase`the sign ${text} has no meaning in a formula; delete it`;
    if (kind === "separator" && open === 0)
      return phrase`unexpected ${text === "," ? phrase`comma` : text}: it separates the arguments of a function and stands only inside brackets`;
    if (kind === "open") open += 1;
    if (kind === "close") open -= 1;
    if (open < 0) return phrase`this formula has a ) too many`;
  }
  if (open > 0)
    return phrase`${plural(open, "a ( in this formula is never closed; put a ) where it ends", "# ( in this formula are never closed; put a ) where each ends")}`;
  return null;
}

/** The beginning of a text, on one line. */
function short(text: string): string {
  const plain = text.slice(0, 30).replace(/[\p{C}\s]+/gu, " ");
  return plain.length > 24 ? `${plain.slice(0, 21)}...` : plain;
}

/** The first name, function or cell of a formula that does not exist, in a sentence. */
export function unknownWord(scene: Scene): string | null {
  for (const token of tokens(scene.formula)) {
    const fault =
      token.kind === "name"
        ? unknownName(token, scene)
        : token.kind === "function"
          ? unknownFunction(token, scene)
          : beyond(token);
    if (fault) return fault;
  }
  return null;
}

function unknownName({ text }: Token, { book, page, isFunction }: Scene): string | null {
  const meant = namesMeant(book, text, page);
  if (/^(true|false)$/i.test(text) || meant.length === 1) return null;
  if (meant.length > 1) return ambiguous(book, text, meant);
  const name = text.toUpperCase();
  if (isFunction(name))
    return phrase`no cell is named "${short(text)}"; the function ${name}(...) has its arguments in brackets`;
  const noPage = missingPage(text, book);
  if (noPage) return noPage;
  const near = nearestWord(
    text,
    everyName(book).map((one) => nameText(book, one, page)),
  );
  return near
    ? phrase`no cell is named "${short(text)}"; is ${near} meant?`
    : phrase`no cell is named "${short(text)}"; check the spelling or give a cell that name`;
}

/** A name that two pages have, in a formula of a third. */
function ambiguous(book: Book, text: string, meant: readonly Named[]): string {
  const ways = meant.slice(0, 3).map(({ name, of }) => `${pageReference(book.pages[of!]!.title)}!${name}`);
  const more = meant.length > ways.length ? phrase` or that of another page` : "";
  return phrase`${meant.length} pages have a name "${short(text)}", and this page does not: write ${ways.slice(0, -1).join(", ")} or ${ways.at(-1)!}${more}`;
}

function unknownFunction({ text }: Token, { isFunction }: Scene): string | null {
  const name = text.toUpperCase();
  if (isFunction(name)) return null;
  const near = nearestWord(name, catalogue.keys());
  return near
    ? phrase`no function is named ${short(name)}; is ${near} meant?`
    : phrase`no function is named ${short(name)}; check the spelling in the list of functions`;
}

/** A cell farther out than any page reaches. */
function beyond({ kind, text }: Token): string | null {
  const found = kind === "cell" ? /\$?([A-Za-z]+)\$?(\d+)$/.exec(text) : null;
  if (!found) return null;
  if (Number(found[2]) > MOST_ROWS)
    return phrase`${short(text)} lies below the last row of a page, which is ${MOST_ROWS}`;
  return columnNumber(found[1]!) >= MOST_COLUMNS
    ? phrase`no cell is named "${short(text)}", and a page has no such column`
    : null;
}

/** A page that is not in the book. */
function unknownPage({ formula, book }: Scene): string | null {
  for (const { kind, text } of tokens(formula)) {
    const sentence =
      kind === "cell" || kind === "columns" || kind === "rows" ? missingPage(text, book) : null;
    if (sentence) return sentence;
  }
  return null;
}

/** The sentence that the page of "Page!B4" or "Page!name" is not in the book; null when it is, or when no page is written. */
function missingPage(text: string, book: Book): string | null {
  const title = /^(.+)![^!]*$/.exec(text)?.[1];
  if (title === undefined || findPlace(book, `${title}!A1`)) return null;
  const plain = title.replace(/^'|'$/g, "").replaceAll("''", "'");
  const near = nearestWord(
    plain,
    book.pages.map((page) => page.title),
  );
  return phrase`there is no page called "${short(plain)}"${near ? phrase`; is ${near} meant?` : ""}`;
}

const lostOrNowhere = (formula: string): string =>
  formula.includes("#REF!")
    ? phrase`this points at a cell that was deleted; point it at another`
    : phrase`this refers to no cell of the book; check its addresses`;
