/** How a cell looks, as plain data: a cell that looks as it did is not painted again. */
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { photographText, settingsAt } from "../../book/cell-marks.ts";
import type { Book } from "../../book/shape.ts";
import { choicesSet } from "../../engine/choices.ts";
import { ESTIMATE_SIGN } from "../../engine/estimates.ts";
import { FITTED_SIGN } from "../../engine/fitted-text.ts";
import { cellText, spokenCell } from "../../engine/label.ts";
import { laidSign, laidText } from "../../engine/laid.ts";
import { type Said, saidTexts } from "../../engine/pointed.ts";
import { hasAnswer } from "../../engine/sentences.ts";
import type { CellView } from "../../engine/view.ts";
import { isSectionHeading, isToType } from "./cell-shape.ts";
import { samePlace } from "./edit-session.ts";

const TEXTS = new Set(["text", "verdict", "flag", "piece"]);

/** The longest path that is drawn in a cell, in characters. */
const MOST_PATH = 20_000;

/** What belongs to a cell beside its view. */
export interface Beside {
  readonly note: string;
  /** What is being typed for it in the formula bar. */
  readonly draft: string | null;
  /** What formulas elsewhere say about it. */
  readonly said: readonly Said[];
  /** Which estimate it is or rests on; "" when it rests on measurements. */
  readonly estimate: string;
  /** What its fitting changes came to; "" when it follows none. */
  readonly fitted: string;
  /** Whether it moves to where it is pasted. */
  readonly cut: boolean;
}

/** The classes of a cell that are the page's own: the others are the library's. */
export const OWN_CLASSES = [
  "cell",
  "cell-figure",
  "cell-typed",
  "cell-worked",
  "cell-look",
  "cell-waits",
  "cell-doubted",
  "cell-named",
  "cell-noted",
  "cell-cut",
  "cell-input",
  "cell-choice",
  "cell-heading",
] as const;

type OwnClass = (typeof OWN_CLASSES)[number];

export interface Looks {
  readonly text: string;
  /** The classes of the page's own that the cell has, parted by spaces. */
  readonly classes: string;
  /** The signs beside a figure: how its lay was found, an estimate, fitted; "" without one. */
  readonly sign: string;
  /** What a screen reader says in place of the text; "" for the text itself. */
  readonly label: string;
  /** What a screen reader adds to it, and a pointer shows; "" when the text says it all. */
  readonly words: string;
  /** The outline drawn before the text, as a piece is written; "" without one. */
  readonly path: string;
  /** The photograph before the text; "" without one. */
  readonly image: string;
}

export const sameLooks = (a: Looks, b: Looks): boolean =>
  (Object.keys(a) as (keyof Looks)[]).every((key) => a[key] === b[key]);

function description(
  { problem, name, worked, origin }: CellView,
  place: Place,
  book: Book,
  { note, said, estimate, fitted, cut }: Beside,
): string {
  const waits = problem && !samePlace(problem.from, place);
  const looking =
    problem &&
    (waits
      ? phrase`waits for ${cellText(book, problem.from)}: ${problem.sentence}`
      : problem.is === "pending"
        ? problem.sentence
        : problem.is === "error"
          ? phrase`error: ${problem.sentence}`
          : phrase`check: ${problem.sentence}`);
  return [
    looking,
    ...saidTexts(book, said).map((text) => phrase`check: ${text}`),
    name && phrase`named ${name}`,
    worked && !problem && phrase`calculated`,
    origin && laidText(origin),
    estimate,
    fitted,
    photographText(book, place),
    note && phrase`note: ${note}`,
    cut && phrase`cut: it moves to where you paste it`,
  ]
    .filter(Boolean)
    .join("; ");
}

/** How a cell looks with what belongs to it. */
export function looksOf(view: CellView, place: Place, book: Book, beside: Beside): Looks {
  const { note, draft, said, estimate, fitted, cut } = beside;
  const text = draft ?? view.shown;
  const { problem, worked } = view;
  const waits = problem !== null && (problem.is === "pending" || !samePlace(problem.from, place));
  const figure =
    !TEXTS.has(view.kind) && draft === null && (!problem || hasAnswer(problem) || problem.is === "pending");
  const choice = choicesSet(book, place) !== undefined;
  const classes: readonly (readonly [OwnClass, boolean])[] = [
    ["cell", true],
    ["cell-figure", figure],
    ["cell-typed", !worked && figure && view.kind !== "days"],
    ["cell-worked", worked && !problem],
    ["cell-look", problem !== null && !waits],
    ["cell-waits", waits],
    ["cell-doubted", problem === null && said.length > 0],
    ["cell-named", view.name !== undefined],
    ["cell-noted", note !== ""],
    ["cell-cut", cut],
    ["cell-input", isToType(view, choice)],
    ["cell-choice", choice && !worked],
    ["cell-heading", isSectionHeading(book, place.page, place.row)],
  ];
  // A verdict that all is well is proved by its lay.
  const signs = [view.origin && laidSign(view.origin), estimate && ESTIMATE_SIGN, fitted && FITTED_SIGN];
  const path = view.kind === "piece" && typeof view.value === "string" ? view.value : "";
  return {
    text,
    classes: classes.flatMap(([name, has]) => (has ? name : [])).join(" "),
    sign: figure ? signs.filter(Boolean).join(" ") : "",
    label: spokenCell(book, place, text) ?? "",
    words: description(view, place, book, beside),
    path: path.length <= MOST_PATH ? path : "",
    image: settingsAt(book, place)?.photograph ?? "",
  };
}
