/** The first screen as text, for the build. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { readBook } from "../../book/read.ts";
import { layDesk } from "../../lay/desk.ts";
import { Store } from "../../store/store.ts";
import { columnStyles, FirstScreen } from "./FirstScreen.tsx";
import { showFirstScreen } from "./first-start.ts";

/** What the build puts into the page: elements, style rules, and the script that shows them at a first start. */
export interface Rendered {
  readonly html: string;
  readonly css: string;
  readonly script: string;
}

/** Calculates a book, given as the text of its file, and renders its first page; throws where the book is damaged. */
export function render(text: string): Rendered {
  const reading = readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  const store = new Store(reading.book, layDesk);
  return {
    html: renderToStaticMarkup(createElement(FirstScreen, { store })),
    css: columnStyles(store),
    script: `(${showFirstScreen})()`,
  };
}
