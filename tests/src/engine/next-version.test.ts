import { expect, test } from "vitest";
import { type Book, blankBook, type Page, typedAt } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { nextVersion } from "../../../src/engine/next-version.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { Store } from "../../../src/store/store.ts";
import { run } from "../command/io.ts";

const column = (heading: string) => ({ heading, kind: "any" as const, width: 100 });

function gown(
  log: readonly (readonly string[])[],
  figures: readonly (readonly string[])[],
  more: Partial<Page> = {},
): Book {
  const draft: Page = {
    title: "Draft", stage: "Draft", columns: [column("What"), column("Value")], notes: {},
    rows: figures, cells: { B1: { fitting: "bodice waist" }, B2: { fitting: "skirt waist" } }, ...more,
  }; // biome-ignore format: a page
  const fit: Page = {
    title: "Fit", stage: "Fit", columns: ["Piece", "Seam", "Amount", "In or out", "Note"].map(column), notes: {},
    rows: [...log, ["", "", "=SUM(C1:C3)", "", "on the log's page"]],
  }; // biome-ignore format: a page
  const seams: Page = {
    title: "Seams", stage: "Draft", columns: ["Piece", "Edge", "Sewn to", "Its edge"].map(column), notes: {},
    rows: [["bodice", "waist", "skirt", "waist"]],
  }; // biome-ignore format: a page
  const names = {
    waist: "Draft!B1",
    skirt_waist: "Draft!B2",
    fitting_log: "Fit!A1:E3",
    seams: "Seams!A1:D2",
  };
  return { ...blankBook("Gown", "in", "1/8"), pages: [draft, fit, seams], names };
}

const LOG = [
  ["bodice", "waist", "1/2", "out", "too tight to sing in"],
  ["bodice", "waist", "1/8", "in", ""],
  ["bodice", "shoulder", "3/8", "in", ""],
];
const FIGURES = [["Waist", "27"], ["Skirt", "=26 1/2+1"], ["Half", "=waist/2"], ["Hem", "=skirt_waist*2"]]; // biome-ignore format: rows
const values = (book: Book) => {
  const engine = new Engine(book, layDesk);
  expect(checks(engine)).toEqual([]);
  return [0, 1, 2, 3].map((row) => engine.value({ page: 0, row, column: 1 }));
};

test("the next version starts from the fitted figures, the log's entries are history, and no answer moves", () => {
  const book = gown(LOG, FIGURES);
  const begun = nextVersion(book, layDesk);
  if ("refusal" in begun) throw new Error(begun.refusal);
  expect(typedAt(begun.book, 0, 0, 1)).toBe("27 3/8");
  expect(typedAt(begun.book, 0, 1, 1)).toBe("=(26 1/2+1)+IN(0.375)");
  expect(values(begun.book)).toEqual(values(book));
  expect(begun.book.pages[1]!.columns.map(({ heading }) => heading)).toEqual([
    "Piece", "Seam", "Amount", "In or out", "Carried into version", "Note",
  ]); // biome-ignore format: headings
  expect(begun.book.pages[1]!.rows.map((row) => row[4] ?? "")).toEqual(["2", "2", "", ""]);
  expect(begun.book.names.fitting_log).toBe("Fit!A1:F3");
  expect(begun.book.title).toBe("Gown, version 2");
  expect(begun.sentence).toBe(
    "Version 2 begins: 2 figures start from what was fitted, and 2 entries of the log are history. One entry is followed by no figure and still counts.",
  );
  // What is fitted later is added to these, and the version after takes the next number.
  const later = {
    ...begun.book,
    pages: begun.book.pages.with(1, {
      ...begun.book.pages[1]!,
      rows: begun.book.pages[1]!.rows.with(2, ["bodice", "waist", "1/4", "out"]),
    }),
  };
  expect(values(later)[0]).toBe(27.625);
  const third = nextVersion(later, layDesk);
  if ("refusal" in third) throw new Error(third.refusal);
  expect(third.book.title).toBe("Gown, version 3");
  expect(third.book.pages[1]!.rows.map((row) => row[4] ?? "")).toEqual(["2", "2", "3", ""]);
  expect(typedAt(third.book, 0, 0, 1)).toBe("27 5/8");
});

test("one undo takes it back", () => {
  const book = gown(LOG, FIGURES);
  const store = new Store(book, layDesk);
  const begun = nextVersion(book, layDesk);
  if ("refusal" in begun) throw new Error(begun.refusal);
  expect(store.run({ label: "begin version 2", edit: () => begun.book })).toBeNull();
  store.undo();
  expect(store.book).toEqual(book);
  expect(store.engine.value({ page: 0, row: 0, column: 1 })).toBe(27.375);
});

test("a book in which nothing follows the fittings, a figure without an answer, and a change by formula are refused", () => {
  const refusal = (book: Book) => {
    const begun = nextVersion(book, layDesk);
    return "refusal" in begun ? begun.refusal : "begun";
  };
  expect(refusal(gown(LOG, FIGURES, { cells: {} }))).toMatch(/^no figure of this book follows the fittings/);
  expect(refusal(gown(LOG.with(0, ["bodice", "wiast", "1/2"]), FIGURES))).toMatch(
    /^Waist.* has no answer: row 1 of the fitting log names "bodice wiast"/,
  );
  const byFormula = gown(LOG, [
    ...FIGURES,
    ["Again", '=FITTED(20;FITTING_CHANGE(fitting_log;"bodice waist"))'],
  ]);
  expect(refusal(byFormula)).toMatch(/^Again.* takes its change from the log by a formula of its own/);
  const band = gown(LOG, [
    ...FIGURES,
    ["Band", '=RECTANGLE(waist+FITTING_CHANGE(fitting_log;"bodice shoulder");2)'],
    ["Belt", '=RECTANGLE(26+FITTING_CHANGE(fitting_log;"bodice waist");2)'],
  ]);
  expect(refusal(band)).toMatch(/^Belt.* takes its change from the log by a formula of its own/);
});

test("the command line writes the next version into a file of its own", async () => {
  const ran = await run(gown(LOG, FIGURES), "next", "book.json", "--out", "gown-2.json");
  expect(ran).toMatchObject({ status: 0, err: "" });
  expect(ran.files["gown-2.json"]).toContain('"title": "Gown, version 2"');
  expect((await run(gown(LOG, FIGURES), "next", "book.json")).err).toMatch(/needs --out FILE/);
});

test("a figure whose seam is logged under its other name too is refused, for it would not start from what was fitted", () => {
  const log = [["bodice", "waist", "1/2", "out", ""], ["skirt", "waist", "1/4", "in", ""], []]; // biome-ignore format: rows
  const followed = gown(log, [["Waist", "27"]], { cells: { B1: { fitting: "bodice waist" } } });
  expect(nextVersion(followed, layDesk)).toMatchObject({
    refusal: expect.stringMatching(
      /would not start from its fitted figure: the log alters the edge that it is sewn to/,
    ),
  });
});

test("several logs on one page need their column for carried entries first", () => {
  const one = gown(LOG, FIGURES);
  const [draft, fit, ...others] = one.pages;
  const book: Book = {
    ...one,
    pages: [
      draft!,
      {
        ...fit!,
        rows: [
          ...LOG,
          [],
          ["Piece", "Seam", "Amount", "In or out", "Note"],
          ["coat", "side", "1/4", "out", ""],
        ],
      },
      ...others,
      {
        ...draft!,
        title: "Coat",
        rows: [["Side", "20"]],
        cells: { B1: { fitting: "coat side" } },
        names: { fitting_log: "Fit!A5:E6" },
      },
    ],
  };
  const refused = nextVersion(book, layDesk);
  expect("refusal" in refused && refused.refusal).toMatch(
    /^Fit holds several fitting logs without the column "carried into version"/,
  );
});
