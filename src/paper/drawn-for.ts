/** For whom a book is drawn, in which version, and in which unit its lengths are: the line at the head of every document. */

import { headingText } from "../../functions/block.ts";
import { comparedName } from "../../functions/compared-name.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { isWearerHeading } from "../../functions/wearers/chart.ts";
import { lookUp } from "../book/names.ts";
import { UNIT_WORDS } from "../book/unit-words.ts";
import { versionText } from "../book/version.ts";
import type { Engine } from "../engine/engine.ts";
import { DAY, layersOn } from "../engine/piece-notes.ts";
import { WEARER } from "../engine/wearer-cell.ts";

/** The most wearers that are named one by one. */
const MOST_NAMED = 3;

export const unitLine = ({ book }: Engine): string => phrase`Lengths are in ${UNIT_WORDS[book.unit]}.`;

/** The wearers of a book's garments, or of those on one page: those whom a page is drawn for, and those of a table of garments. */
function wearersOf(engine: Engine, only: number | null): string[] {
  const { book } = engine;
  const found = new Map<string, string>();
  const add = (text: string) => {
    if (text.trim() !== "") found.set(comparedName(text), text.trim());
  };
  for (const [page, { stage, columns, rows }] of book.pages.entries()) {
    if (page !== (only ?? page)) continue;
    const at = lookUp(book, WEARER, page);
    const headed = (column: number, on = page) =>
      isWearerHeading(headingText(book.pages[on]!.columns[column]?.heading ?? ""));
    // In a list of several wearers the name is that of one of them.
    if (at && !headed(at.column, at.page)) {
      const view = engine.view(at);
      if (!view.problem) add(view.shown);
    }
    const column = stage === "Measure" ? -1 : columns.findIndex((_, one) => headed(one));
    if (column >= 0) for (const row of rows.keys()) add(engine.view({ page, row, column }).shown);
  }
  return [...found.values()];
}

/** For whom the book or one of its pages is drawn, of which day and version; "" when nothing of it is known. */
export function drawnFor(engine: Engine, page: number | null = null): string {
  const { book } = engine;
  const wearers = wearersOf(engine, page);
  const at = page === null ? lookUp(book, WEARER) : { page };
  const over = wearers.length === 1 && at ? layersOn(engine, at.page) : "";
  const names =
    wearers.length > MOST_NAMED
      ? phrase`${plural(wearers.length, "# wearer", "# wearers")}`
      : wearers.join(", ");
  const day = lookUp(book, DAY);
  const view = day && engine.view(day);
  const when = [view && !view.problem ? view.shown : "", versionText(book.title)].filter(Boolean).join(", ");
  return [
    ...(names === "" ? [] : [phrase`Drawn for: ${[names, over].filter(Boolean).join(" ")}.`]),
    ...(when === "" ? [] : [phrase`Draft of ${when}.`]),
  ].join(" ");
}

/** The whole line, of the book or of one of its pages. */
export const bookLine = (engine: Engine, page: number | null = null): string =>
  [drawnFor(engine, page), unitLine(engine)].filter(Boolean).join(" ");
