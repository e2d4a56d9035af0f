/** What a screen or a list needs to know about one cell. */

import { DetailedCellError } from "hyperformula";
import type { Kind } from "../../functions/define.ts";
import type { LayOrigin } from "../../functions/lay.ts";
import { asRead, phrase } from "../../functions/phrase.ts";
import { cellAddress, findPlace, type Place, placeKey } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { nameOf } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { choiceFault, choicesSet } from "./choices.ts";
import { fittingOf } from "./fitted-cells.ts";
import type { Instance } from "./instance.ts";
import type { Kinds } from "./kinds.ts";
import { cellText } from "./label.ts";
import { leastSearched, pendingOf, pendingText } from "./laid.ts";
import { rarelyAsked } from "./rarely-asked.ts";
import { show, showSet } from "./show.ts";
import type { UncountedCells } from "./uncounted.ts";

/** A problem in a cell: an error, a verdict that is not ok, or a typed cell that counts as nothing. */
export interface CellProblem {
  /** A cell that holds something unusual has an answer; the answer of a pending cell comes later. */
  readonly is: "error" | "verdict" | "uncounted" | "unusual" | "unchosen" | "pending";
  readonly sentence: string;
  /** The cell where the problem begins; not this cell when it only waits for another. */
  readonly from: Place;
  /** Whether the calculation there took too long: `Engine.again` gives it more time. */
  readonly stopped?: true;
  /** The cells that it is about: of lists, or given as single arguments. */
  readonly at?: readonly Place[];
}

export interface CellView {
  readonly typed: string;
  readonly shown: string;
  readonly value: number | string | boolean | null;
  readonly kind: Kind;
  readonly worked: boolean;
  readonly problem: CellProblem | null;
  readonly name: string | undefined;
  /** For a cell that lays pieces on cloth: how its lay was found. */
  readonly origin: LayOrigin | null;
  /** The seam whose fitting changes are added to what is typed, as its settings write it. */
  readonly fitting?: string;
}

/** What the view of a cell is read from. */
export interface Sources {
  /** The book as it is typed. The instance has the book as it is calculated. */
  readonly book: Book;
  readonly instance: Instance;
  readonly kinds: Kinds;
  /** The typed cells that count as nothing, and the formulas whose answers leave one out. */
  readonly uncounted: () => { readonly cells: UncountedCells; readonly users: UncountedCells };
  /** The sentence of an error that begins at a cell. */
  readonly sentence: (error: DetailedCellError, from: Place) => string;
  /** The cell that this sentence names as the cause. */
  readonly cause: (error: DetailedCellError, from: Place) => Place | null;
  /** What is unusual in the formula of a cell, or null. */
  readonly unusual: (place: Place) => string | null;
}

/** A verdict that is not ok. Formulas in books of earlier versions begin it with "look: ". */
const VERDICT = /^(?:check|look): (.*)$/s;

/** Whether the answer of a formula is a verdict that is not ok. */
export const isVerdict = (value: string): boolean => VERDICT.test(value);

export function cellView(place: Place, sources: Sources): CellView {
  const { instance, kinds, book } = sources;
  const typed = typedAt(book, place.page, place.row, place.column);
  const kind = kinds.of(place);
  const fitting = fittingOf(book, place);
  const worked = isFormula(typedAt(instance.book, place.page, place.row, place.column));
  const origin = worked ? leastSearched(instance.records.laysOf(place)) : null;
  const common = {
    typed,
    kind,
    worked: isFormula(typed),
    name: nameOf(book, place),
    origin,
    ...(fitting !== undefined && { fitting }),
  };
  const raw = instance.raw(place);
  const failed = raw instanceof DetailedCellError;
  const from = (failed && raw.address && findPlace(book, raw.address)) || place;
  const awaited = worked ? pendingOf(instance.records.laysOf(from)) : null;
  if (awaited) {
    const { sentence, shown } = pendingText(awaited, kind, book);
    const own = placeKey(from) === placeKey(place);
    return { ...common, value: null, shown: own ? shown : "…", problem: { is: "pending", sentence, from } };
  }
  if (failed)
    return { ...common, value: null, shown: phrase`error`, problem: errorProblem(raw, from, sources) };
  const verdict = worked && typeof raw === "string" ? VERDICT.exec(raw)?.[1] : undefined;
  const problem: CellProblem | null =
    verdict !== undefined
      ? { is: "verdict", sentence: asRead(verdict), from: place, ...aboutCells(place, sources) }
      : (uncountedProblem(place, worked, sources) ??
        choiceProblem(place, raw, sources) ??
        unusualProblem(place, sources));
  return {
    ...common,
    value: raw,
    problem,
    // The list of problems goes through all cells and shows few.
    get shown() {
      const settings = book.pages[place.page]?.cells?.[cellAddress(place.row, place.column)];
      return settings ? showSet(raw, kind, book, settings) : show(raw, kind, book);
    },
  };
}

function errorProblem(
  error: DetailedCellError,
  from: Place,
  { instance, uncounted, sentence, cause }: Sources,
): CellProblem {
  const stopped = instance.isStopped(from);
  const left = error.type === "VALUE" && !stopped ? uncounted().users.get(placeKey(from)) : undefined;
  if (left) return { is: "error", sentence: left.sentence, from: left.place };
  const about = aboutCells(from, { instance });
  const named =
    cause(error, from) ??
    rarelyAsked.culpritOf?.(instance.book, about.at ?? [], (place) => instance.raw(place));
  return {
    is: "error",
    sentence: sentence(error, from),
    from,
    ...(stopped && { stopped: true }),
    ...(named ? { at: [named] } : about),
  };
}

/** The cells that the problem of a formula is about, each once. */
function aboutCells(formula: Place, { instance }: Pick<Sources, "instance">): Pick<CellProblem, "at"> {
  const at = new Map(instance.pointedAt(formula).map((one) => [placeKey(one.at), one.at]));
  return at.size > 0 ? { at: [...at.values()] } : {};
}

/** A typed cell that counts as nothing, or a formula whose answer leaves one out. */
function uncountedProblem(
  place: Place,
  worked: boolean,
  { instance, uncounted }: Sources,
): CellProblem | null {
  const { cells, users } = uncounted();
  const own = (worked ? users : cells).get(placeKey(place));
  if (!own) return null;
  const where = cellText(instance.book, own.place);
  return { is: "uncounted", sentence: worked ? `${where}: ${own.sentence}` : own.sentence, from: place };
}

/** A value that is not among the choices set for its cell: it counts all the same. */
function choiceProblem(place: Place, raw: CellView["value"], sources: Sources): CellProblem | null {
  const { instance, kinds } = sources;
  const { book } = instance;
  if (choicesSet(book, place) === undefined) return null;
  const shown = (at: Place) => {
    const value = instance.raw(at);
    return value instanceof DetailedCellError ? "" : show(value, kinds.of(at), book);
  };
  const typed = typedAt(book, place.page, place.row, place.column);
  const texts = [show(raw, kinds.of(place), book), ...(isFormula(typed) ? [] : [typed])];
  const sentence = choiceFault(book, place, texts, shown);
  return sentence === null ? null : { is: "unchosen", sentence, from: place };
}

function unusualProblem(place: Place, sources: Sources): CellProblem | null {
  const sentence = sources.unusual(place);
  return sentence === null ? null : { is: "unusual", sentence, from: place, ...aboutCells(place, sources) };
}
