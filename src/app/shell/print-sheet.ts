/** What the browser prints: the current page of the book with every row, and the drawing beside it, without menus. */
import type { Store } from "../../store/store.ts";
import "./print-sheet.css";

const NAME = "print-sheet";

function tag<K extends keyof HTMLElementTagNameMap>(name: K, text = ""): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

/** The page as a plain table; the grid itself holds only the rows that are in sight. */
function pageTable(store: Store, page: number): HTMLTableElement {
  const { columns, rows } = store.shown.pages[page]!;
  const shown = rows.map((cells, row) =>
    cells.map((_, column) => store.engine.view({ page, row, column }).shown),
  );
  const last = shown.findLastIndex((cells) => cells.some((text) => text !== ""));
  const table = tag("table");
  const head = table.createTHead().insertRow();
  for (const { heading } of columns) head.append(tag("th", heading ?? ""));
  const body = table.createTBody();
  for (const cells of shown.slice(0, last + 1)) {
    const line = body.insertRow();
    for (const text of cells) line.append(tag("td", text));
  }
  return table;
}

/** Makes the sheet before the browser prints and takes it away afterwards; gives what ends this. */
export function printing(store: Store, page: () => number): () => void {
  const clear = () => document.querySelector(`.${NAME}`)?.remove();
  const make = () => {
    clear();
    const at = page();
    const sheet = tag("section");
    sheet.className = NAME;
    sheet.append(tag("h1", store.shown.title), tag("h2", store.shown.pages[at]!.title), pageTable(store, at));
    const picture = document.querySelector<SVGSVGElement>("svg.picture");
    if (picture) {
      const copy = picture.cloneNode(true) as SVGSVGElement;
      const { width, height } = picture.getBoundingClientRect();
      copy.setAttribute("viewBox", `0 0 ${width} ${height}`);
      sheet.append(copy);
    }
    document.body.append(sheet);
  };
  window.addEventListener("beforeprint", make);
  window.addEventListener("afterprint", clear);
  return () => {
    window.removeEventListener("beforeprint", make);
    window.removeEventListener("afterprint", clear);
    clear();
  };
}
