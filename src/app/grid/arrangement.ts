/** How a page lies in the grid: the columns that stay in sight, and the rows that are hidden. */

import type Handsontable from "handsontable/base";
import { phrase } from "../../../functions/phrase.ts";
import { columnLetters } from "../../book/address.ts";
import { hiddenRows } from "../../book/hidden-rows.ts";
import type { Page } from "../../book/shape.ts";

/** A narrow screen, where the figures are slid away from what they are called by. */
export const NARROW = matchMedia("(max-width: 37.5em)");

/** How many columns stay in sight: as the page says; on a narrow screen also the words that its rows begin with. */
const keptInSight = ({ frozen, columns }: Page): number =>
  frozen ?? (NARROW.matches && columns[0]?.kind === "text" ? 1 : 0);

/** The same for a grid of so many columns: one of them can always be slid away. */
const frozenOf = (page: Page, wide: number): number => Math.min(keptInSight(page), Math.max(0, wide - 1));

export class Arrangement {
  #hidden: Page["hidden"];
  #frozen = 0;

  /** How many columns stay in sight. */
  get frozen(): number {
    return this.#frozen;
  }

  /** How many columns of a grid that is being made stay in sight. */
  begin(page: Page, wide: number): number {
    this.#frozen = frozenOf(page, wide);
    return this.#frozen;
  }

  /** Arranges the grid as the page says. True when it was arranged otherwise before and has to be drawn. */
  apply(hot: Handsontable, page: Page, anew: boolean): boolean {
    const frozen = frozenOf(page, hot.countSourceCols());
    const stays = this.#frozen === frozen && this.#hidden === page.hidden;
    if (stays && !anew) return false;
    if (this.#frozen !== frozen) hot.updateSettings({ fixedColumnsStart: frozen });
    const plugin = hot.getPlugin("hiddenRows");
    const before = plugin.getHiddenRows();
    if (before.length > 0) plugin.showRows(before);
    const rows = [...hiddenRows(page)].filter((row) => row < hot.countSourceRows());
    if (rows.length > 0) plugin.hideRows(rows);
    this.#frozen = frozen;
    this.#hidden = page.hidden;
    return !stays || rows.length > 0 || before.length > 0;
  }
}

/** "Row 5 is hidden; it counts all the same."; "" when no row is hidden. */
export function hiddenText({ hidden = [] }: Page): string {
  if (hidden.length === 0) return "";
  const runs = hidden.map((run) => {
    const [first = "", last = first] = run.split(":");
    return first === last ? first : phrase`${first} to ${last}`;
  });
  const shown = runs.length > 6 ? [...runs.slice(0, 5), phrase`${runs.length - 5} more runs of rows`] : runs;
  const list = shown.length > 1 ? phrase`${shown.slice(0, -1).join(", ")} and ${shown.at(-1)!}` : shown[0]!;
  return /^\d+$/.test(list)
    ? phrase`Row ${list} is hidden; it counts all the same.`
    : phrase`Rows ${list} are hidden; they count all the same.`;
}

/** The head of a row beside hidden rows has a mark towards them, and says so. */
export function markHidden(th: HTMLElement, page: Page, row: number): void {
  const hidden = hiddenRows(page);
  const [above, below] = [hidden.has(row - 1), hidden.has(row + 1)];
  th.classList.toggle("hidden-above", above);
  th.classList.toggle("hidden-below", below);
  if (above || below) th.title = hiddenText(page);
  else th.removeAttribute("title");
}

/** The label of the menu's item that keeps columns in sight up to one of them. */
export const freezeLabel = (column: number): string =>
  column === 0 ? phrase`Keep column A in sight` : phrase`Keep columns A to ${columnLetters(column)} in sight`;
