/**
 * Which columns of a list a function reads. A function that reads a list by its headings rests on the columns
 * that it reads, and on no other: a column of the same page may be worked out from its answer.
 */
import { headingsAmong, headingText, knownHeadings, misspeltHeading } from "../../functions/block.ts";
import { catalogue, ofCatalogue } from "../../functions/catalogue.ts";
import type { ListForm, Take } from "../../functions/define.ts";
import type { Block } from "../book/address.ts";
import { type Call, formulaTree, isFormula } from "../book/formula.ts";
import { type Book, MOST_ROWS } from "../book/shape.ts";

/** The lists of a function that say what is read of them, by the positions of its arguments. */
const lists = ofCatalogue(
  (): ReadonlyMap<string, ReadonlyMap<number, Take>> =>
    new Map(
      [...catalogue.values()].flatMap(({ name, takes }) => {
        const found = Object.values(takes).flatMap((take, at) =>
          take.list && take.reads ? [[at, take] as const] : [],
        );
        return found.length > 0 ? [[name, new Map(found)] as const] : [];
      }),
    ),
);

const reader = ofCatalogue(() => {
  const names = [...lists().keys()];
  return names.length > 0 ? new RegExp(String.raw`\b(?:${names.join("|")})\s*\(`, "i") : null;
});

/** Whether a formula calls a function that has such lists. */
export const readsList = (formula: string): boolean => reader()?.test(formula) ?? false;

/** Whether a function has such a list at a position of its arguments. */
export const readsListAt = (name: string, position: number): boolean =>
  lists().get(name)?.has(position) ?? false;

const headings = ofCatalogue(
  (): ReadonlySet<string> =>
    new Set(
      [...lists().values()].flatMap((takes) =>
        [...takes.values()].flatMap(({ list }) => knownHeadings(list!)),
      ),
    ),
);

/** Whether a typed text is a heading of such a list, so that other columns may be read once it is changed. */
export const isListHeading = (typed: string): boolean => headings().has(headingText(typed));

/**
 * The columns that a call reads of the list at a position of its arguments, which stands in `area`: blocks of
 * neighbouring columns as tall as the list, from left to right. Returns null when the whole area is read, or when the headings
 * are not known before the book is calculated.
 */
export function columnsRead(book: Book, call: Call, position: number, area: Block): readonly Block[] | null {
  const take = lists().get(call.name)?.get(position);
  if (
    !take?.list ||
    !take.reads ||
    area.left === area.right ||
    (area.top === 0 && area.bottom === MOST_ROWS - 1)
  )
    return null;
  const read = areRead(book, area, take.list, take.reads);
  if (!read || read.every(Boolean)) return null;
  const blocks: Block[] = [];
  read.forEach((isRead, i) => {
    if (!isRead) return;
    const left = area.left + i;
    const last = blocks.at(-1);
    if (last?.right === left - 1) blocks[blocks.length - 1] = { ...last, right: left };
    else blocks.push({ ...area, left, right: left });
  });
  return blocks.length > 0 ? blocks : null;
}

/** For each column of the list whether it is read; null when its headings are not known. */
function areRead(
  { pages }: Book,
  { page, top, left, right }: Block,
  list: ListForm,
  reads: readonly string[],
): readonly boolean[] | null {
  const { rows = [], columns = [] } = pages[page] ?? {};
  const known = knownHeadings(list);
  const wide = Math.min(right, Math.max(rows[top]?.length ?? 0, columns.length) - 1) - left + 1;
  if (wide < 1) return null;
  const across = Array.from({ length: wide }, (_, i) => left + i);
  const typed = across.map((column) => rows[top]?.[column] ?? "");
  const open = typed.map(mayBecomeHeading);
  const first = typed.map((text) => (isFormula(text) ? "" : headingText(text)));
  const above = across.map((column) => headingText(columns[column]?.heading ?? ""));
  const { headings, isInside } = headingsAmong(first, above, known);
  const wanted = new Set(reads.flatMap((field) => list.columns[field]!.headings));
  // Where formulas of the first row might become its headings, only a page that heads all that is needed is certain.
  const areAbove = reads.every(
    (field) =>
      !list.columns[field]!.needed || above.some((one) => list.columns[field]!.headings.includes(one)),
  );
  if (!isInside && !areAbove && open.includes(true)) return null;
  // A misspelt heading is refused by the function, which must see it.
  const isRead = headings.map(
    (one, i) =>
      wanted.has(one) || (isInside && open[i] === true) || misspeltHeading(one, known) !== undefined,
  );
  return [...isRead, ...Array.from({ length: right - left + 1 - wide }, () => false)];
}

/** Whether a formula may have a heading as its value: one that repeats a cell, or joins texts, or is not calculated from figures. */
function mayBecomeHeading(typed: string): boolean {
  if (!isFormula(typed)) return false;
  const tree = formulaTree(typed);
  if (tree.is === "sign") return tree.sign === "&";
  return tree.is === "call" ? !catalogue.has(tree.name) : tree.is !== "number" && tree.is !== "tape";
}
