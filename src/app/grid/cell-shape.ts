/** What a cell is for, seen at a glance: to be typed in, to be chosen, a section's heading, or a piece with its outline. */
import { outlinePath, pieceBounds, readPiece } from "../../../functions/pieces/piece.ts";
import { isFormula } from "../../book/formula.ts";
import { nameOf } from "../../book/names.ts";
import type { Book, Page } from "../../book/shape.ts";
import { choicesSet } from "../../engine/choices.ts";
import type { CellView } from "../../engine/view.ts";

const filled = (row: readonly string[] | undefined, from = 0): boolean =>
  row?.some((typed, column) => column >= from && typed.trim() !== "") ?? false;

/**
 * Whether a row is the heading of a section: a text in its first cell and nothing beside it, above a row
 * that has more than a text. A label whose figure is still to be typed has a name or a choice beside it.
 */
export function isSectionHeading(book: Book, index: number, row: number): boolean {
  const page: Page | undefined = book.pages[index];
  const cells = page?.rows[row];
  const first = cells?.[0]?.trim() ?? "";
  if (!page || !/\p{L}/u.test(first) || isFormula(first) || filled(cells, 1)) return false;
  const beside = { page: index, row, column: 1 };
  if (nameOf(book, beside) !== undefined || choicesSet(book, beside) !== undefined) return false;
  return filled(page.rows[row + 1], 1);
}

/** Whether a cell is one to type in: a typed figure or date, a choice, or a named cell that is still blank. */
export function isToType({ typed, worked, kind, name }: CellView, choice: boolean): boolean {
  if (worked) return false;
  if (choice || (typed.trim() === "" && name !== undefined)) return true;
  return typed.trim() !== "" && !["text", "verdict", "piece", "flag"].includes(kind);
}

/** Draws the photograph of a cell before its text; its words are among what the cell says. */
export function drawPhotograph(td: HTMLElement, image: string): void {
  const before = td.querySelector("img");
  if ((before?.getAttribute("src") ?? "") === image) return;
  before?.remove();
  if (image === "") return;
  const picture = document.createElement("img");
  picture.className = "cell-photograph";
  picture.alt = "";
  picture.src = image;
  td.prepend(picture);
}

const SVG = "http://www.w3.org/2000/svg";

/** Draws the outline of a piece before the text of its cell; "" takes it away. */
export function drawOutline(td: HTMLElement, path: string): void {
  const before = td.querySelector("svg");
  if ((before?.dataset.path ?? "") === path) return;
  before?.remove();
  if (path === "") return;
  const picture = document.createElementNS(SVG, "svg");
  const line = document.createElementNS(SVG, "path");
  try {
    const piece = readPiece(path);
    const { left, right, low, high } = pieceBounds(piece);
    // The piece's text also names its marks and edges, which are no path data.
    line.setAttribute("d", outlinePath(piece));
    const edge = Math.max(right - left, high - low) * 0.04;
    picture.setAttribute(
      "viewBox",
      [left - edge, low - edge, right - left + 2 * edge, high - low + 2 * edge].join(" "),
    );
  } catch {
    return;
  }
  picture.dataset.path = path;
  picture.setAttribute("class", "cell-piece");
  picture.setAttribute("aria-hidden", "true");
  line.setAttribute("vector-effect", "non-scaling-stroke");
  picture.append(line);
  td.prepend(picture);
}
