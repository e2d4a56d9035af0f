import { asBlock } from "../block.ts";
import {
  blankLines,
  itemOf,
  LIST,
  type ListLine,
  lacking,
  linesWith,
  listed,
  refuseMisspelt,
} from "../cutting/list-block.ts";
import { define } from "../define.ts";
import { phrase, plural } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * The sum under a heading of a list, of the rows that have one item under another heading: all braid, all
 * hours of one wearer, the cost of one cloth. In the unit of the column that is added up. A second pair of
 * heading and item narrows the rows. A dash counts as nothing; a blank or a text in a row that counts is
 * refused, and so are headings that the list does not have. An item that the list does not have, such as a cloth
 * of which nothing is in stock, gives 0 with a caution, and is refused where it is near one that the list has: it is
 * likely misspelt. A blank item gives an empty text. Rows with a figure and no item are left out, with a caution; a lone
 * figure below zero counts, with a caution. Source: common practice.
 */
export const LIST_SUM = define({
  name: "LIST_SUM",
  summary:
    "The sum of a column of a list over the rows of one item, such as one wearer's hours or the cost of one cloth.",
  source: "common practice",
  words: "roll up total add by wearer sum if shopping list per item budget",
  takes: {
    list: LIST,
    sum: { kind: "text", about: "the heading of the column to add up" },
    by: { kind: "text", about: "the heading of the column that says what each row is for" },
    item: { kind: "text", about: "which of them to add up; a blank gives an empty text", otherwise: null },
    and_by: { kind: "text", about: "the heading of a second column that chooses rows", otherwise: null },
    and_item: { kind: "text", about: "what stands in that column in the rows that count", otherwise: null },
  },
  returns: "figure",
  compute({ list, sum, by, item, and_by, and_item }, { measure, doubt }) {
    const also = (and_by ?? "").trim() === "" ? null : and_by!;
    const { columns, lines } = listed(list, { sum, by, ...(also !== null && { and_by: also }) } as {
      sum: string;
      by: string;
      and_by: string;
    });
    const wanted = itemOf(item, by);
    const alsoWanted = also === null ? null : itemOf(and_item, also);
    if (wanted === null || (also !== null && alsoWanted === null))
      return measure("sum", "no item is named, so no row counts", "");
    const rowsOfItem = (
      among: readonly ListLine[],
      column: number,
      heading: string,
      one: string | number,
    ) => {
      refuseMisspelt(lines, column, heading, one);
      if (linesWith(lines, column, heading, one).length === 0)
        doubt(phrase`${lacking(lines, column, heading, one)}; so nothing is added up`);
      return linesWith(among, column, heading, one);
    };
    const first = rowsOfItem(lines, columns.by, by, wanted);
    const rows = also === null ? first : rowsOfItem(first, columns.and_by, also, alsoWanted!);
    const total = rows.reduce(
      (all, line) => all + figureOf(list.wide, line, columns.sum, sum, String(wanted)),
      0,
    );
    const loose = blankLines(lines, columns.by, by).filter(
      ({ cells }) => typeof cells[columns.sum] === "number",
    );
    if (loose.length > 0)
      doubt(
        phrase`${plural(loose.length, "one row has", "# rows have")} a figure under ${sum.trim()} and nothing under ${by.trim()}, and ${plural(loose.length, "is", "are")} not counted`,
      );
    for (const line of loneBelowZero(rows, lines, columns.sum))
      doubt(
        phrase`${Number(line.cells[columns.sum])} under ${sum.trim()} is below zero, and hardly another number there is: type 0 or more`,
        { argument: "list", cell: line.number * list.wide + columns.sum },
      );
    measure("rows", () => phrase`rows with ${wanted} under ${by.trim()}`, rows.length);
    return measure("sum", () => phrase`the sum of ${sum.trim()} in these rows`, total);
  },
  examples: [
    {
      given: {
        list: asBlock(
          [
            ...["Garment", "Trimming", "Length", "Cost"],
            ...["peplum", "braid", 40, 4, "cape", "lace", 30, 6, "apron", "Braid", 12.5, "-"],
          ],
          4,
          [],
        ),
        sum: "length",
        by: "trimming",
        item: "braid",
      },
      gives: 52.5,
      because: "40 and 12 1/2, added up by hand",
    },
    {
      given: {
        list: asBlock(
          ["wearer", "hours", "stage", "cook", 2, "cut", "cook", 6, "sew", "smith", 9, "sew"],
          3,
          [],
        ),
        sum: "hours",
        by: "wearer",
        item: "cook",
        and_by: "stage",
        and_item: "sew",
      },
      gives: 6,
      because: "one row is the cook's and of sewing",
    },
  ],
});

/** The rows that count with a figure below zero, where the column has at least three times as many above. */
function loneBelowZero(rows: readonly ListLine[], all: readonly ListLine[], column: number): ListLine[] {
  const figure = ({ cells }: ListLine) => (typeof cells[column] === "number" ? cells[column] : 0);
  const below = rows.filter((line) => figure(line) < 0);
  if (below.length === 0) return below;
  const [under, above] = [all.filter((line) => figure(line) < 0), all.filter((line) => figure(line) > 0)];
  return above.length >= 3 * under.length ? below : [];
}

/** The figure of a row that counts; a dash is nothing. */
function figureOf(
  wide: number,
  { number, cells }: ListLine,
  column: number,
  heading: string,
  item: string,
): number {
  const cell = cells[column] ?? null;
  if (typeof cell === "number") return cell;
  const text = cell === null ? "" : String(cell).trim();
  if (/^[-–—−]$/.test(text)) return 0;
  const at = { argument: "list", cell: number * wide + column };
  throw new Refusal(
    text === ""
      ? phrase`a row of ${item} is empty under ${heading.trim()}: write a number, or - where there is no number`
      : phrase`a row of ${item} has "${text.slice(0, 24)}" under ${heading.trim()}, where a number is needed`,
    at,
  );
}
