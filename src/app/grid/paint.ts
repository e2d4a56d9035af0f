/** Draws the cells: typed values, calculated values and problems differ without colour too. */

import type Handsontable from "handsontable/base";
import { phrase } from "../../../functions/phrase.ts";
import type { Column, ColumnKind } from "../../book/shape.ts";
import { drawOutline, drawPhotograph } from "./cell-shape.ts";
import { type Looks, OWN_CLASSES } from "./looks.ts";

/**
 * Puts the looks of a cell into its element. Classes are toggled one by one: the others are the library's.
 * `before`: how the element looks, where that is known; its classes are left alone when they stay the same.
 */
export function drawCell(td: HTMLElement, looks: Looks, before?: Looks): void {
  const { text, classes, sign, label, words, path, image } = looks;
  if (td.textContent !== text) write(td, text);
  if (classes !== before?.classes) {
    const has = new Set(classes.split(" "));
    for (const one of OWN_CLASSES) td.classList.toggle(one, has.has(one));
  }
  drawOutline(td, path);
  drawPhotograph(td, image);
  if (sign !== (td.dataset.laid ?? "")) {
    if (sign) td.dataset.laid = sign;
    else delete td.dataset.laid;
  }
  name(td, "aria-label", label);
  name(td, "aria-description", words);
  name(td, "title", words);
}

/** Puts a text into a cell. Where only the words of a text change, the browser need not look at the cell's styles again. */
function write(td: HTMLElement, text: string): void {
  const { firstChild } = td;
  if (text !== "" && firstChild instanceof Text && firstChild === td.lastChild) firstChild.data = text;
  else td.textContent = text;
}

/** Sets an attribute, or takes it away for "". */
function name(of: HTMLElement, attribute: string, words: string): void {
  if (words === (of.getAttribute(attribute) ?? "")) return;
  if (words === "") of.removeAttribute(attribute);
  else of.setAttribute(attribute, words);
}

/** What a column holds, in a word for its heading. */
const KIND_WORDS: Readonly<Record<ColumnKind, string>> = {
  any: phrase`any`,
  text: phrase`text`,
  length: phrase`lengths`,
  number: phrase`numbers`,
  money: phrase`money`,
  date: phrase`dates`,
};

/** What a column holds, as its heading says it. */
export const kindWord = ({ kind, choices }: Column): string =>
  choices === undefined ? KIND_WORDS[kind] : phrase`choices`;

/** A column's letter and kind with its heading under them. */
export function drawHeading(th: HTMLElement, column: number, described: Column): void {
  const { heading } = described;
  const label = th.querySelector(".colHeader");
  if (!label || label.childElementCount > 0) return;
  const [letter, under] = [document.createElement("span"), document.createElement("span")];
  letter.className = "column-letter";
  const letterOnly = label.textContent;
  letter.textContent = letterOnly;
  const kindOf = document.createElement("span");
  kindOf.className = "column-kind";
  kindOf.dataset.kindOf = String(column);
  kindOf.textContent = kindWord(described);
  kindOf.title = phrase`What the column holds: click to change it`;
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
    keptTable?.setAttribute("aria-label", phrase`${label}: the columns kept in sight`);
  } else for (const attribute of Object.keys(says)) keptTable?.removeAttribute(attribute);
}
