/** Where a figure may press on a body, or a cord may catch, the caution stands with the figure, however one comes to it. */
import { expect, test } from "vitest";
import { BONING, CORDS, FLAME, LACING } from "../../../functions/cautions.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { cautionsAt, cautionsIn } from "../../../src/engine/cautions.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { plainBook } from "../../../src/exchange/plain-book.ts";
import { writeOds } from "../../../src/exchange/write-ods.ts";
import { writeXlsx } from "../../../src/exchange/write-xlsx.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { printed } from "../../../src/paper/documents.ts";
import { run } from "../command/io.ts";
import { understood } from "../exchange/foreign-files.ts";
import { readPdf } from "../paper/read-pdf.ts";

/** A child's bodice laced at the back over bones, with a cape, and a list of what to buy on another page. */
const goose = (): Book => {
  const blank = blankBook("The goose girl", "in", "1/8");
  const columns = ["what", "figure"].map((heading, i) => ({
    heading,
    kind: i === 0 ? ("text" as const) : ("any" as const),
    width: 140,
  }));
  const page = (title: string, rows: string[][]) => ({
    ...blank.pages[0]!,
    title,
    stage: "Trimmings" as const,
    columns,
    rows,
  });
  return {
    ...blank,
    pages: [
      page("Trimmings", [
        ["wearer", "a child of 7"],
        ["eyelets on each edge", "=EYELET_COUNT(9;3/4)"],
        ["lace", '=LACE_LENGTH(4;B2;3/4;"cross";10)'],
        ["bone", "=BONE_CUT(9)"],
        ["cape", "=CAPE(12;24)"],
        ["waist", "=WITH_EASE(22;1)"],
        ["waist of the stays", "=WITH_EASE(22;-1)"],
        ["buttons", "=BUTTON_COUNT(12;3)"],
      ]),
      page("To buy", [
        ["laces", "=ROUNDUP(Trimmings!B3*2/36;0)"],
        ["pins", "12"],
        ["bones", "=2*Trimmings!B4"],
      ]),
    ],
  };
};

const at = (page: number, row: number) => ({ page, row, column: 1 });

test("a figure has the cautions of its own function and of those that it rests on, and no others", () => {
  const engine = new Engine(goose(), layDesk);
  const of = (page: number, row: number) => cautionsAt(engine, [at(page, row)]);
  expect([of(0, 1), of(0, 2), of(0, 3)]).toEqual([[LACING, CORDS], [LACING, CORDS], [BONING]]);
  expect(of(0, 4)).toEqual([CORDS, FLAME]);
  expect([of(0, 5), of(0, 6), of(0, 7)]).toEqual([[], [LACING], []]);
  expect([of(1, 0), of(1, 1), of(1, 2)]).toEqual([[LACING, CORDS], [], [BONING]]);
  expect(cautionsIn(engine, "=2*'To buy'!B1")).toEqual([LACING, CORDS]);
  expect(cautionsIn(engine, "=BONE_CUT(9)+1")).toEqual([BONING]);
  engine.destroy();
});

test("they stand on paper: under the page, beside the strip, with the working and before the pattern", async () => {
  const engine = new Engine(goose(), layDesk);
  const words = async (request: { what: "shopping" | "strip" | "working" | "pattern"; cells?: string[] }) => {
    const done = await printed(engine, { paper: "a4", day: new Date(2026, 4, 20), ...request });
    if ("reason" in done) throw new Error(done.reason);
    const pages = await readPdf(done.bytes, { words: true });
    return pages
      .map(({ text }) => text)
      .join(" ")
      .replace(/\s+/g, " ");
  };
  const shopping = await words({ what: "shopping" });
  for (const caution of [LACING, CORDS, BONING]) expect(shopping).toContain(`Take care: ${caution}`);
  expect(await words({ what: "working", cells: ["To buy!B1"] })).toContain(LACING);
  const pattern = await words({ what: "pattern" });
  for (const caution of [CORDS, FLAME]) expect(pattern).toContain(`Take care: ${caution}`);
  engine.destroy();
});

test.each([writeXlsx, writeOds])(
  "a spreadsheet that is read again has them in no note of the maker's",
  async (write) => {
    const engine = new Engine(goose(), layDesk);
    const { bytes } = await write(engine);
    const { book } = await understood(bytes);
    expect(book.pages.map(({ notes }) => notes)).toEqual([{}, {}]);
    expect(book.pages.map(({ rows }) => rows.map((row) => row[1]))).toEqual(
      goose().pages.map(({ rows }) => rows.map((row) => row[1])),
    );
    engine.destroy();
  },
);

test("they stand in files and on the command line", async () => {
  const engine = new Engine(goose(), layDesk);
  const cell = (page: number, row: number) => plainBook(engine).sheets[page]!.rows[row + 1]![1]!;
  expect(cell(1, 0).note).toContain(`Take care: ${LACING}`);
  expect(cell(1, 2).note).toContain(`Take care: ${BONING}`);
  expect(cell(1, 1).note).toBeUndefined();
  engine.destroy();

  const shown = await run(goose(), "calculate", "book.json", "--show", "To buy!B1");
  expect(shown.out).toContain(`Take care: ${LACING}`);
  const data = JSON.parse(
    (await run(goose(), "calculate", "book.json", "--show", "To buy!B3", "--json")).out,
  );
  expect(data["take care"]).toEqual([BONING]);
  expect((await run(goose(), "calculate", "--formula", "=LACE_LENGTH(4;9;3/4)")).out).toContain(LACING);
  expect((await run(goose(), "explain", "book.json", "To buy!B1")).out).toContain(LACING);
  expect(
    (await run(goose(), "export", "book.json", "--to", "csv", "--page", "To buy", "--out", "buy.csv")).out,
  ).toContain(`Take care: ${BONING}`);
  const drafted = await run(goose(), "draft", "book.json", "--out", "pieces");
  const [sheet] = Object.values(drafted.files);
  expect(sheet!.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ")).toContain(
    "at the neck or hood of children's clothes",
  );
});
