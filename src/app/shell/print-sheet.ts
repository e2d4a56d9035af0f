/** What the browser prints: the current page of the book with what is to be known of its figures, and the drawing beside it, without menus. */

import type { Point } from "../../../functions/geometry/strokes.ts";
import { phrase } from "../../../functions/phrase.ts";
import { bookLine } from "../../paper/drawn-for.ts";
import { isoDay } from "../../paper/flow.ts";
import { type PageTable, pageTable } from "../../paper/page-table.ts";
import type { TableRow } from "../../paper/table.ts";
import type { Store } from "../../store/store.ts";
import { reasonOf } from "../faults/in-time.ts";
import "./print-sheet.css";

const NAME = "print-sheet";
const SVG = "http://www.w3.org/2000/svg";

function tag<K extends keyof HTMLElementTagNameMap>(name: K, text = ""): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

/** A figure, or a day: it stands at the right and in one line. */
const isFigure = (text: string): boolean => text.length < 16 && /\d/.test(text) && !/\p{L}/u.test(text);

/** The outline of a piece small, beside its words. */
function smallPicture(outline: readonly Point[]): SVGSVGElement {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("viewBox", `${left} ${top} ${Math.max(...xs) - left} ${Math.max(...ys) - top}`);
  svg.classList.add("print-sheet-piece");
  const polygon = document.createElementNS(SVG, "polygon");
  polygon.setAttribute("points", outline.map((at) => at.join(" ")).join(" "));
  svg.append(polygon);
  return svg;
}

function addRow(body: HTMLTableSectionElement, { cells, notes }: TableRow, columns: number): void {
  const line = body.insertRow();
  const [only] = cells;
  if (cells.length === 1 && columns > 1) {
    const heading = tag("th", only!.text);
    heading.colSpan = columns;
    line.append(heading);
  } else
    for (const { text, outline } of cells) {
      const cell = tag("td", text);
      if (isFigure(text)) cell.className = "print-sheet-figure";
      if (outline && outline.length > 2) cell.prepend(smallPicture(outline));
      line.append(cell);
    }
  for (const note of notes) {
    const cell = tag("td", note);
    cell.colSpan = columns;
    const beneath = body.insertRow();
    beneath.className = "print-sheet-note";
    beneath.append(cell);
  }
}

/** The page as a plain table; the grid itself holds only the rows that are in sight. */
function shownTable({ table: { headings, rows } }: PageTable): HTMLTableElement {
  const table = tag("table");
  table
    .createTHead()
    .insertRow()
    .append(...headings.map((heading) => tag("th", heading)));
  const body = table.createTBody();
  for (const row of rows) addRow(body, row, headings.length);
  return table;
}

/** The drawing, or the lays, as they are in view: what each shows, the picture, and the words about it. */
function addPictures(sheet: HTMLElement): void {
  for (const picture of document.querySelectorAll<SVGSVGElement>(".drawing svg:is(.picture, .lay-picture)")) {
    const copy = picture.cloneNode(true) as SVGSVGElement;
    const { width, height } = picture.getBoundingClientRect();
    copy.setAttribute("viewBox", `0 0 ${width} ${height}`);
    const shows = picture.querySelector(":scope > title")?.textContent ?? picture.getAttribute("aria-label")!;
    sheet.append(tag("h2", shows), copy);
    const keys = picture.parentElement!.querySelector(".lay-keys");
    if (keys) sheet.append(keys.cloneNode(true));
  }
  for (const words of document.querySelectorAll(
    ".drawing :is(.lay-what, .lay-figures, .legend, .worn-words)",
  ))
    sheet.append(words.cloneNode(true));
}

/** Makes the sheet before the browser prints and takes it away afterwards; gives what ends this. */
export function printing(store: Store, page: () => number): () => void {
  const clear = () => document.querySelector(`.${NAME}`)?.remove();
  const make = () => {
    clear();
    const at = page();
    const { title, pages } = store.shown;
    const sheet = tag("section");
    sheet.className = NAME;
    // The rest of the page is not printed, so that the sheet stands there even if the table can't be made.
    document.body.append(sheet);
    const tried = store.trying ? phrase` The figures are those that are being tried under What if.` : "";
    sheet.append(
      tag("h1", pages[at]!.title),
      tag("p", phrase`${title}, printed ${isoDay(new Date())}. ${bookLine(store.engine, at)}${tried}`),
    );
    try {
      const made = pageTable(store.engine, at);
      sheet.append(shownTable(made), ...made.remarks.map((remark) => tag("p", remark)));
    } catch (fault) {
      sheet.append(tag("p", phrase`The page could not be printed: ${reasonOf(fault)}.`));
    }
    addPictures(sheet);
  };
  window.addEventListener("beforeprint", make);
  window.addEventListener("afterprint", clear);
  return () => {
    window.removeEventListener("beforeprint", make);
    window.removeEventListener("afterprint", clear);
    clear();
  };
}
