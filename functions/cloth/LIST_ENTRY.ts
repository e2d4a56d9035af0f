import { asBlock } from "../block.ts";
import { entriesOf, itemOf, LIST, linesOf, listed } from "../cutting/list-block.ts";
import { define } from "../define.ts";

/**
 * The n-th different entry under a heading of a list, in the order in which they first occur: each cloth
 * of a cut list once, each trimming once. An empty text past the last, so that the formula may be
 * filled down farther than there are entries. Capitals and spaces make no difference; of a cloth, what
 * follows a comma is a note, as in a cut list. `by` and `item` choose rows: the widths of one cloth. A blank
 * item gives an empty text. Refuses headings and items that the list does not have. Source: common practice.
 */
export const LIST_ENTRY = define({
  name: "LIST_ENTRY",
  summary: "The first, second, third and so on of the different entries in a column of a list.",
  source: "common practice",
  words: "distinct unique once each cloths trimmings roll up shopping names column heading nth",
  takes: {
    list: LIST,
    heading: { kind: "text", about: "the heading of the column whose entries are wanted" },
    number: { kind: "count", about: "which of the different entries, from 1", from: 1, to: 20_000 },
    by: { kind: "text", about: "the heading of a column that chooses the rows", otherwise: null },
    item: { kind: "text", about: "what stands in that column in the rows that count", otherwise: null },
  },
  returns: "text",
  compute({ list, heading, number, by, item }, { measure }) {
    const wanted = { heading, ...(by !== null && by.trim() !== "" && { by }) };
    const { columns, lines } = listed(list, wanted as { heading: string; by: string });
    const chosen = by === null || by.trim() === "" ? null : itemOf(item, by);
    if (by !== null && by.trim() !== "" && chosen === null)
      return measure("entry", "no item is named, so no row counts", "");
    const rows = chosen === null ? lines : linesOf(lines, columns.by, by!, chosen);
    const entries = entriesOf(rows, columns.heading, heading);
    measure("different", "different entries in the column", entries.length);
    return measure("entry", "the one asked for; empty past the last", entries[number - 1] ?? "");
  },
  examples: [
    {
      given: {
        list: asBlock(
          [
            ...["Piece", "Cloth", "Width"],
            ...["skirt front", "wool", 54, "skirt back", "Wool, lies across", 54, "lining", "linen", 36],
          ],
          3,
          [],
        ),
        heading: "cloth",
        number: 2,
      },
      gives: "linen",
      because: "wool is one cloth, however it is written and whatever is noted behind it",
    },
    {
      given: {
        list: asBlock(["trimming", "metres", "braid", 3, "lace", 2], 2, []),
        heading: "trimming",
        number: 3,
      },
      gives: "",
      because: "there are two trimmings",
    },
  ],
});
