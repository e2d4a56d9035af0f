/** What a spreadsheet that Ellwand wrote says of the book it came from, in a cell of its sheet of workings. */
import * as v from "valibot";
import { TAPE_MARKS } from "../../functions/fractions.ts";
import { UNITS } from "../../functions/units.ts";
import { type Book, COLUMN_KINDS, STAGES } from "../book/shape.ts";

/** How the text of that cell begins. */
const BEGINS = "Ellwand ";

const shape = v.object({
  version: v.literal(1),
  unit: v.picklist(UNITS),
  mark: v.picklist(TAPE_MARKS),
  /** The decimal mark of the book, where it is the comma. */
  decimal: v.optional(v.literal("comma")),
  pages: v.array(
    v.object({
      title: v.string(),
      stage: v.picklist(STAGES),
      /** The heading and the kind of each column; a kind is used where the heading is still the same. */
      columns: v.array(v.tuple([v.string(), v.picklist(COLUMN_KINDS)])),
      /** The seams whose fitting changes cells follow, by their addresses. */
      fittings: v.optional(v.record(v.string(), v.string())),
    }),
  ),
});

export type OwnMark = v.InferOutput<typeof shape>;

export const ownMark = ({ unit, mark, decimal, pages }: Book): string =>
  `${BEGINS}${JSON.stringify({
    version: 1,
    unit,
    mark,
    ...(decimal === "comma" && { decimal }),
    pages: pages.map(({ title, stage, columns, cells = {} }) => {
      const fittings = Object.entries(cells).flatMap(([address, { fitting }]) =>
        fitting === undefined ? [] : [[address, fitting] as const],
      );
      return {
        title,
        stage,
        columns: columns.map(({ heading, kind }): [string, (typeof COLUMN_KINDS)[number]] => [heading, kind]),
        ...(fittings.length > 0 && { fittings: Object.fromEntries(fittings) }),
      };
    }),
  } satisfies OwnMark)}`;

/** The mark that was written, or null when the text is not a mark. */
export function readOwnMark(text: string): OwnMark | null {
  if (!text.startsWith(BEGINS)) return null;
  try {
    const read = v.safeParse(shape, JSON.parse(text.slice(BEGINS.length)));
    return read.success ? read.output : null;
  } catch {
    return null;
  }
}
