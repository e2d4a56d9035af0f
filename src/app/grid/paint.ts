/** Draws the cells: typed values, calculated values and problems differ without colour too. */

import type Handsontable from "handsontable/base";
import type { Place } from "../../book/address.ts";
import { photographText } from "../../book/cell-marks.ts";
import type { Book, Column, ColumnKind } from "../../book/shape.ts";
import { ESTIMATE_SIGN } from "../../engine/estimates.ts";
import { FITTED_SIGN } from "../../engine/fitted-text.ts";
import { cellText, spokenCell } from "../../engine/label.ts";
import { laidSign, laidText } from "../../engine/laid.ts";
import { type Said, saidTexts } from "../../engine/pointed.ts";
import { hasAnswer } from "../../engine/sentences.ts";
import type { CellView } from "../../engine/view.ts";
import { drawShape } from "./cell-shape.ts";
import { samePlace } from "./edit-session.ts";

const TEXTS = new Set(["text", "verdict", "flag", "piece"]);

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

/** What a screen reader adds to the cell's text, and a pointer shows; "" when the text says it all. */
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
      ? `waits for ${cellText(book, problem.from)}: ${problem.sentence}`
      : problem.is === "pending"
        ? problem.sentence
        : `${problem.is === "error" ? "error" : "check"}: ${problem.sentence}`);
  return [
    looking,
    ...saidTexts(book, said).map((text) => `check: ${text}`),
    name && `named ${name}`,
    worked && !problem && "calculated",
    origin && laidText(origin),
    estimate,
    fitted,
    photographText(book, place),
    note && `note: ${note}`,
    cut && "cut: it moves to where you paste it",
  ]
    .filter(Boolean)
    .join("; ");
}

/** Puts a view of a cell into its element. Classes are toggled one by one: the others are the library's. */
export function drawCell(td: HTMLElement, view: CellView, place: Place, book: Book, beside: Beside): void {
  const { note, draft, said, estimate, fitted, cut } = beside;
  const text = draft ?? view.shown;
  if (td.textContent !== text) td.textContent = text;
  const { problem, worked } = view;
  const waits = problem !== null && (problem.is === "pending" || !samePlace(problem.from, place));
  const figure =
    !TEXTS.has(view.kind) && draft === null && (!problem || hasAnswer(problem) || problem.is === "pending");
  const is = td.classList;
  is.add("cell");
  is.toggle("cell-figure", figure);
  is.toggle("cell-typed", !worked && figure && view.kind !== "days");
  is.toggle("cell-worked", worked && !problem);
  is.toggle("cell-look", problem !== null && !waits);
  is.toggle("cell-waits", waits);
  is.toggle("cell-doubted", problem === null && said.length > 0);
  is.toggle("cell-named", view.name !== undefined);
  is.toggle("cell-noted", note !== "");
  is.toggle("cell-cut", cut);
  drawShape(td, view, place, book);
  // A verdict that all is well is proved by its lay.
  const sign = figure
    ? [view.origin && laidSign(view.origin), estimate && ESTIMATE_SIGN, fitted && FITTED_SIGN]
        .filter(Boolean)
        .join(" ")
    : "";
  if (sign !== (td.dataset.laid ?? "")) {
    if (sign) td.dataset.laid = sign;
    else delete td.dataset.laid;
  }
  name(td, "aria-label", spokenCell(book, place, text) ?? "");
  const words = description(view, place, book, beside);
  name(td, "aria-description", words);
  name(td, "title", words);
}

/** Sets an attribute, or takes it away for "". */
function name(of: HTMLElement, attribute: string, words: string): void {
  if (words === (of.getAttribute(attribute) ?? "")) return;
  if (words === "") of.removeAttribute(attribute);
  else of.setAttribute(attribute, words);
}

/** What a column holds, in a word for its heading. */
const KIND_WORDS: Readonly<Record<ColumnKind, string>> = {
  any: "any",
  text: "text",
  length: "lengths",
  number: "numbers",
  money: "money",
  date: "dates",
};

/** A column's letter and kind with its heading under them. */
export function drawHeading(th: HTMLElement, column: number, { heading, kind, choices }: Column): void {
  const label = th.querySelector(".colHeader");
  if (!label || label.childElementCount > 0) return;
  const [letter, under] = [document.createElement("span"), document.createElement("span")];
  letter.className = "column-letter";
  const letterOnly = label.textContent;
  letter.textContent = letterOnly;
  const kindOf = document.createElement("span");
  kindOf.className = "column-kind";
  kindOf.dataset.kindOf = String(column);
  kindOf.textContent = choices === undefined ? KIND_WORDS[kind] : "choices";
  kindOf.title = "What the column holds: click to change it";
  letter.append(kindOf);
  under.className = "column-heading";
  under.textContent = heading;
  label.replaceChildren(letter, under);
  name(th, "aria-label", [letterOnly, heading.trim(), kindOf.textContent].filter(Boolean).join(", "));
}

/**
 * One table is the grid for a screen reader, with a name; the copies of the headings laid over it
 * are pictures. (The library gives the role to a box that holds scroll areas too, which ARIA forbids.)
 */
export function nameTable(hot: Handsontable, label: string): void {
  const root = hot.rootElement as HTMLElement;
  for (const attribute of ["role", "aria-rowcount", "aria-colcount", "aria-multiselectable"]) {
    root.removeAttribute(attribute);
  }
  const table = root.querySelector(".ht_master table.htCore");
  const says = {
    role: "grid",
    "aria-label": label,
    "aria-multiselectable": "true",
    "aria-rowcount": String(hot.countRows() + 1),
    "aria-colcount": String(hot.countCols() + 1),
  };
  for (const [attribute, value] of Object.entries(says)) table?.setAttribute(attribute, value);
  for (const over of root.querySelectorAll('[class*="ht_clone"]')) over.setAttribute("aria-hidden", "true");
  // The columns kept in sight are a table of their own, and the keyboard goes into it.
  const kept = root.querySelector(".ht_clone_inline_start");
  const frozen = Number(hot.getSettings().fixedColumnsStart ?? 0) > 0;
  const keptTable = kept?.querySelector("table.htCore");
  if (frozen) {
    kept?.removeAttribute("aria-hidden");
    for (const [attribute, value] of Object.entries(says)) keptTable?.setAttribute(attribute, value);
    keptTable?.setAttribute("aria-label", `${label}: the columns kept in sight`);
  } else for (const attribute of Object.keys(says)) keptTable?.removeAttribute(attribute);
}
