/** What is chosen in the print dialog; it is remembered while the browser's tab is open. */
import { BOOK_UNITS, type Unit } from "../../../functions/units.ts";
import type { Place } from "../../book/address.ts";
import {
  DOCUMENTS,
  type DocumentKind,
  type DocumentName,
  type DocumentOption,
  type PaperRequest,
} from "../../paper/kinds.ts";
import { PAPER_NAMES, SCALES } from "../../paper/paper.ts";
import { recall, remember } from "../files/storage.ts";

export interface Choices {
  readonly what: DocumentName;
  /** The name of a paper, or ROLL. */
  readonly paper: string;
  /** The width of the roll as typed. */
  readonly roll: string;
  readonly scale: string;
  /** The scale of a lay; FITTING for one that is as large as the paper holds. */
  readonly layScale: string;
  /** WHOLE_BOOK, EVERY_PIECE, THIS_PAGE, CHOSEN_CELL, or the address of a piece. */
  readonly of: string;
  /** Names or addresses of cells as typed, with semicolons between: those whose working is printed. */
  readonly cells: string;
  /** The same for a document of everything. */
  readonly alsoCells: string;
  readonly blank: boolean;
  readonly large: boolean;
}

export const ROLL = "roll";
export const WHOLE_BOOK = "book";
/** Also the pieces that no cut list cuts. */
export const EVERY_PIECE = "every";
export const THIS_PAGE = "page";
export const CHOSEN_CELL = "cell";
export const FITTING = "";
/** A lay is longer than a piece. */
export const LAY_SCALES = [FITTING, ...Object.keys(SCALES), "1/10", "1/20"];

/** What the dialog is opened for, such as what is drawn beside the grid. */
export interface PrintFor {
  readonly what?: DocumentName;
  /** The cell that holds it. */
  readonly place?: Place;
}

const KEY = "ellwand.print";

export const kindOf = (what: DocumentName): DocumentKind => DOCUMENTS.find(({ name }) => name === what)!;

export const takes = ({ what }: Choices, option: DocumentOption): boolean =>
  kindOf(what).takes.includes(option);

/** Whether the cells are typed; a document with something for each page is of the chosen cell alone instead. */
export const typesCells = (choices: Choices): boolean =>
  takes(choices, "cells") && (!takes(choices, "page") || takes(choices, "pieces"));

/** Whether only what the chosen cell holds can be printed: a piece, a lay, a strip. */
export const takesChosen = (choices: Choices): boolean =>
  takes(choices, "pieces") || (takes(choices, "cells") && takes(choices, "page"));

/** Paper that the maker's shop has: inches go with Letter, centimetres with A4. */
function usual(unit: Unit): Choices {
  const isInches = BOOK_UNITS[unit].tape === "in";
  return {
    what: DOCUMENTS[0].name,
    paper: isInches ? "letter" : "a4",
    roll: isInches ? "36 in" : "90 cm",
    scale: "1",
    layScale: FITTING,
    of: WHOLE_BOOK,
    cells: "",
    alsoCells: "",
    blank: false,
    large: false,
  };
}

/** The choices of last time where they still mean something. */
export function firstChoices(unit: Unit, chosen: string, wanted: PrintFor): Choices {
  const first = usual(unit);
  let last: Partial<Record<keyof Choices, unknown>> = {};
  try {
    last = JSON.parse(recall("sessionStorage", `${KEY}.${BOOK_UNITS[unit].tape}`) ?? "{}") ?? {};
  } catch {
    // What cannot be read is no choice.
  }
  const one = <T extends string>(key: keyof Choices, known: readonly T[], otherwise: T): T =>
    known.find((name) => name === last[key]) ?? otherwise;
  return {
    what: one(
      "what",
      DOCUMENTS.map(({ name }) => name),
      first.what,
    ),
    paper: one("paper", [...PAPER_NAMES, ROLL], first.paper),
    roll: typeof last.roll === "string" ? last.roll : first.roll,
    scale: one("scale", Object.keys(SCALES), first.scale),
    layScale: one("layScale", LAY_SCALES, first.layScale),
    of: one("of", [WHOLE_BOOK, THIS_PAGE], first.of),
    cells: chosen,
    alsoCells: "",
    blank: last.blank === true,
    large: last.large === true,
    ...(wanted.what && { what: wanted.what }),
    ...(wanted.place && { of: CHOSEN_CELL }),
  };
}

export function keepChoices(unit: Unit, choices: Choices): void {
  remember("sessionStorage", `${KEY}.${BOOK_UNITS[unit].tape}`, JSON.stringify(choices));
}

/** What the page on the screen and the chosen cell are called in a request. */
export interface OnScreen {
  /** The title of the page. */
  readonly page: string;
  /** The address of the chosen cell. */
  readonly cell: string;
}

/** What the worker is asked. */
export function requestOf(choices: Choices, unit: Unit, { page, cell }: OnScreen): Omit<PaperRequest, "day"> {
  const { what, paper, roll, of, blank, large } = choices;
  const scale = what === "lay" ? choices.layScale : choices.scale;
  const width = roll.trim().replace(",", ".");
  const cells = typesCells(choices)
    ? cellNames(takes(choices, "page") ? choices.alsoCells : choices.cells)
    : of === CHOSEN_CELL
      ? [cell]
      : [];
  const piece =
    of === CHOSEN_CELL ? cell : [WHOLE_BOOK, EVERY_PIECE, THIS_PAGE].includes(of) ? undefined : of;
  return {
    what,
    paper: paper === ROLL ? `roll=${/[a-z"]$/i.test(width) ? width : `${width} ${unit}`}` : paper,
    ...(takes(choices, "scale") && scale !== FITTING && { scale }),
    ...(takes(choices, "pieces") && piece !== undefined && { pieces: [piece] }),
    ...(takes(choices, "pieces") && of === EVERY_PIECE && { everyPiece: true }),
    ...(takes(choices, "page") && of === THIS_PAGE && { page }),
    ...(takes(choices, "cells") && cells.length > 0 && { cells }),
    ...(takes(choices, "blank") && blank && { blank }),
    ...(large && { large }),
  };
}

const cellNames = (typed: string): string[] =>
  typed
    .split(";")
    .map((name) => name.trim())
    .filter((name) => name !== "");
