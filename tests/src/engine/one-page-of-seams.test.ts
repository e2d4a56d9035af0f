import { expect, test } from "vitest";
import { type Book, blankBook, type Page } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { dependents } from "../../../src/engine/dependents.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import * as commands from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const page = (title: string, headings: string, rows: string[][], cells?: Page["cells"]): Page => ({
  title,
  stage: "Draft",
  columns: headings.split(", ").map((heading) => ({ heading, kind: "any", width: 100 })),
  rows,
  notes: {},
  ...(cells && { cells }),
});

/**
 * A bodice whose waist follows the fittings of the skirt's. Its darts, 1 in for every 14 in of waist, are the wanted
 * difference of the very seam that the change comes along. The list of seams has its lengths and verdicts within it.
 */
function gown(headings: readonly string[], inPage = false): Book {
  const cell: Record<string, string> = {
    Piece: "bodice",
    Edge: "bottom",
    "Sewn to": "skirt",
    "Its edge": "top",
    How: "eased",
    "Wanted difference": "=darts",
    "Length of the first": '=SEAM_LENGTH(seams;pieces;"bodice";"bottom")',
    "Do they meet?": '=SEAM_VERDICT(seams;pieces;"bodice";"bottom")',
    Remark: '=waist&" in the waist"',
  };
  const row = headings.map((heading) => cell[heading]!);
  const last = "ABCDEFGHI"[headings.length - 1];
  return {
    ...blankBook("Gown", "in", "1/8"),
    pages: [
      page("Draft", "What, Value", [["Waist", "28"], ["Darts", "=waist/28"], ["Skirt", "=waist/2"]], {
        B1: { fitting: "skirt top" },
      }),
      page("Pieces", "Piece, Outline, How many", [
        ["bodice", "=RECTANGLE(waist/2+darts;15)", "2"],
        ["skirt", "=RECTANGLE(B3;38)".replace("B3", "Draft!B3"), "2"],
      ]),
      inPage
        ? page("Seams", headings.join(", "), [row])
        : page("Seams", headings.map(() => "").join(", "), [[...headings], row]),
      page("Fit", "Piece, Seam, Amount, In or out", [["skirt", "top", "1/2", "out"]]),
    ],
    names: {
      waist: "Draft!B1", darts: "Draft!B2", pieces: "Pieces!A1:C2",
      seams: `Seams!A1:${last}${inPage ? 1 : 2}`, fitting_log: "Fit!A1:D1",
    },
  }; // biome-ignore format: a book
}

const USUAL = [
  "Piece",
  "Edge",
  "Sewn to",
  "Its edge",
  "How",
  "Wanted difference",
  "Length of the first",
  "Do they meet?",
];
const MIXED = [
  "Do they meet?",
  "Edge",
  "Piece",
  "Wanted difference",
  "Its edge",
  "Remark",
  "Sewn to",
  "Length of the first",
  "How",
];

test.each([
  ["in the usual order", gown(USUAL)],
  ["in any order", gown(MIXED)],
  ["under the headings of its page", gown(MIXED, true)],
])(
  "one list of seams takes a fitting to the draft and checks the drafted pieces, its columns %s",
  (_, book) => {
    const engine = new Engine(book, layDesk);
    const { rows, columns } = book.pages[2]!;
    const row = rows.length - 1;
    const headings = row > 0 ? rows[0]! : columns.map(({ heading }) => heading);
    const at = (heading: string) => ({ page: 2, row, column: headings.indexOf(heading) });
    const waist = { page: 0, row: 0, column: 1 };
    expect(engine.value(waist)).toBe(28.5);
    expect(engine.value(at("Length of the first"))).toBeCloseTo(28.5 / 2 + 28.5 / 28, 9);
    expect(engine.value(at("Do they meet?"))).toBe("ok");
    expect(checks(engine)).toEqual([]);
    // The waist rests on how the edges are joined, and the verdict alone rests on the wanted difference.
    expect(dependents(book, at("How"))).toContainEqual(waist);
    expect(dependents(book, at("Wanted difference"))).toEqual([at("Do they meet?")]);
    // A retyped heading is read at once: the column is not known to be "How" any more.
    const other = (text: string) => (text === "How" ? "Remark" : text);
    const pages = book.pages.with(2, {
      ...book.pages[2]!,
      columns: columns.map((one) => ({ ...one, heading: other(one.heading) })),
      rows: row > 0 ? rows.with(0, rows[0]!.map(other)) : rows,
    });
    expect(dependents({ ...book, pages }, at("How"))).not.toContainEqual(waist);
  },
);

test("a heading that is typed anew changes which column is read", () => {
  const store = new Store(gown(USUAL), layDesk);
  const waist = () => store.engine.view({ page: 0, row: 0, column: 1 });
  const type = (column: number, typed: string) =>
    store.run(commands.typeCells([{ page: 2, row: 0, column, typed }]));
  type(4, "Stitch");
  expect(waist().value).toBe(28.5);
  type(5, "How");
  // Now the column that rests on the waist says how the seam is sewn: a circle, which is named.
  expect(waist().problem?.sentence).toMatch(/rests on itself through .*Seams!F2.*break the circle/);
  type(5, "Wanted difference");
  type(0, "Pieec");
  expect(waist().problem?.sentence).toMatch(/has a column headed "pieec"; is "piece" meant\?/);
  type(0, "Piece");
  type(4, "How");
  expect(waist().value).toBe(28.5);
  expect(checks(store.engine)).toEqual([]);
});
