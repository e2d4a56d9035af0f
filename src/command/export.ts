import { phrase, plural } from "../../functions/phrase.ts";
import { photographCount, photographsLeftOut } from "../book/photographs.ts";
import type { Book } from "../book/shape.ts";
import { careText, cautionsAt } from "../engine/cautions.ts";
import type { Engine } from "../engine/engine.ts";
import { type Figures, pageCsv } from "../exchange/page-csv.ts";
import type { Spreadsheet } from "../exchange/write-xlsx.ts";
import { openBook } from "./open.ts";
import { needsBook, notOneOf, readOptions } from "./options.ts";
import { JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  to: {
    type: "string",
    value: "csv|xlsx|ods",
    about: phrase`the format: csv is comma-separated values of one page; xlsx (ISO/IEC 29500) and ods (ISO/IEC 26300) are spreadsheets of the whole book whose formulas stay alive`,
  },
  page: {
    type: "string",
    value: "TITLE",
    about: phrase`the page to write; a book of one page needs no title`,
  },
  full: {
    type: "boolean",
    about: phrase`writes figures with all their places and pieces as outlines, not as the page shows them`,
  },
  out: { type: "string", value: "FILE", about: phrase`the file to write; - is standard output` },
  ...JSON_OPTION,
} as const satisfies VerbOptions;

export const exportBook: Verb = {
  name: "export",
  usage: "BOOK --to csv|xlsx|ods [--page TITLE] [--full] --out FILE [--json]",
  about: phrase`Writes a page of a book, or the whole book, as a file for other programs.`,
  options: OPTIONS,
  examples: [
    "export templates/peplum-bodice.json --to csv --page Cut --out cut.csv",
    "export templates/peplum-bodice.json --to xlsx --out bodice.xlsx",
  ],
  writes: phrase`FILE, and on standard output what it holds; with --out - the file itself.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const [path] = positionals;
    if (path === undefined) throw needsBook("export");
    if (values.to === undefined)
      throw new Wrong(phrase`${"export"} needs a format: ${"--to csv, --to xlsx, --to ods"}`);
    const { to } = values;
    if (to !== "csv" && to !== "xlsx" && to !== "ods") throw notOneOf("--to", ["csv", "xlsx", "ods"], to);
    const out = values.out?.trim() ?? "";
    if (out === "") throw new Wrong(phrase`${"export"} needs a file to write, such as ${"--out page.csv"}`);
    const engine = openBook(path, io);
    if (to !== "csv") {
      if (values.page !== undefined || values.full)
        throw new Wrong(phrase`--page and --full are for csv; ${to} holds the whole book`);
      if (out === "-")
        throw new Wrong(phrase`${to} needs the name of a file in --out, such as ${`--out book.${to}`}`);
      const { bytes, alive, fixed } = await spreadsheet(to, engine);
      io.write(out, bytes);
      const photographs = photographCount(engine.book);
      const left = photographsLeftOut(photographs, "a spreadsheet");
      if (values.json)
        io.out(
          JSON.stringify({
            file: out,
            formulas: alive,
            fixed,
            ...(photographs > 0 && { photographsLeftOut: photographs }),
          }),
        );
      else
        io.out(
          [
            phrase`${out}  ${plural(alive, "# formula stays", "# formulas stay")} alive; ${plural(fixed, "# cell is a fixed value or rests", "# cells are fixed values or rest")} on one, each with a note`,
            ...(left ? [left] : []),
          ].join("; "),
        );
      return 0;
    }
    const figures: Figures = values.full ? "full" : "shown";
    const page = pageCalled(engine.book, values.page);
    const text = pageCsv(engine, page, figures);
    if (out === "-") {
      io.pass(text);
      return 0;
    }
    io.write(out, text);
    const { title } = engine.book.pages[page]!;
    const photographs = photographCount(engine.book, page);
    const left = photographsLeftOut(photographs, "a table");
    // The table itself has no room for them.
    const cells = engine.book.pages[page]!.rows.flatMap((row, r) =>
      row.map((_, column) => ({ page, row: r, column })),
    );
    const cautions = cautionsAt(engine, cells);
    if (values.json)
      io.out(
        JSON.stringify({
          file: out,
          page: title,
          figures,
          ...(photographs > 0 && { photographsLeftOut: photographs }),
          ...(cautions.length > 0 && { takeCare: cautions }),
        }),
      );
    else {
      io.out(
        [
          values.full
            ? phrase`${out}  the page ${title}, figures in full`
            : phrase`${out}  the page ${title}, figures as shown`,
          ...(left ? [left] : []),
        ].join("; "),
      );
      for (const caution of cautions) io.out(careText(caution));
    }
    return 0;
  },
};

/** The libraries of a format take time to load. */
async function spreadsheet(to: "xlsx" | "ods", engine: Engine): Promise<Spreadsheet> {
  if (to === "ods") return (await import("../exchange/write-ods.ts")).writeOds(engine);
  return (await import("../exchange/write-xlsx.ts")).writeXlsx(engine);
}

/** The page of a title, capitals or not; the only page of a book needs none. */
function pageCalled({ pages }: Book, title: string | undefined): number {
  const titles = pages.map((page) => page.title).join(", ");
  if (title === undefined) {
    if (pages.length === 1) return 0;
    throw new Wrong(phrase`--page must say which page to write; the pages are ${titles}`);
  }
  const wanted = title.trim().toLowerCase();
  const found = pages.findIndex((page) => page.title.toLowerCase() === wanted);
  if (found < 0) throw new Wrong(phrase`this book has no page "${title}"; the pages are ${titles}`);
  return found;
}
