/** Documents that are pages of the book, set as tables: the measurement chart, the cut list, the fitting log. */
import { phrase, plural } from "../../functions/phrase.ts";
import type { Book, Stage } from "../book/shape.ts";
import type { Engine } from "../engine/engine.ts";
import type { Asked, Built } from "./documents.ts";
import { bookLine, unitLine } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";
import { type PageTableOptions, pageTable, toCheckBeneath } from "./page-table.ts";
import { partsOf, setTable } from "./table.ts";

const RULED = "_".repeat(18);

/** The pages of a stage, or only the page that is asked for; a sentence that says why when there is no such page. */
export function pagesOf(book: Book, page: number | null, stage: Stage): number[] | NotPrinted {
  const pages = book.pages.flatMap((one, i) => (one.stage === stage && (page ?? i) === i ? [i] : []));
  if (pages.length > 0) return pages;
  return {
    reason:
      page === null
        ? phrase`this book has no page in the stage ${stage}`
        : phrase`the page ${book.pages[page]!.title} is not in the stage ${stage}`,
  };
}

/** Pages of the book under each other, upright or on their side as they need fewer parts. */
export function tableDocument(
  engine: Engine,
  { manner, letters }: Asked,
  pages: readonly number[],
  { title, ...options }: PageTableOptions & { readonly title: string },
): Built {
  const tables = pages.map((page) => ({ page, ...pageTable(engine, page, options) }));
  const flows = [false, true].map((isTurned) => new Flow(letters, manner, title, isTurned));
  const partsOn = ({ size, left, right }: Flow) =>
    tables.reduce((sum, { table }) => sum + partsOf(letters, table, size, right - left).length, 0);
  const flow = partsOn(flows[1]!) < partsOn(flows[0]!) ? flows[1]! : flows[0]!;
  if (options.blank) {
    flow.space(0.6);
    flow.say(phrase`For: ${RULED}  Taken by: ${RULED}  On: ${RULED}`);
    flow.space(0.4);
  }
  flow.say(options.blank ? unitLine(engine) : bookLine(engine));
  flow.space(0.4);
  for (const { page, table, remarks } of tables) {
    flow.heading(engine.book.pages[page]!.title);
    if (table.rows.length === 0) flow.say(phrase`There is nothing on this page.`);
    else setTable(flow, table);
    for (const remark of remarks) flow.say(remark, { size: 0.9 * flow.size });
    flow.space(0.6);
  }
  const problems = tables.reduce((sum, one) => sum + one.problems, 0);
  return {
    sheets: flow.sheets(),
    says: phrase`${plural(pages.length, "# page", "# pages")} of the book`,
    sentences: toCheckBeneath(problems),
  };
}

export function chartDocument(engine: Engine, asked: Asked): Built | NotPrinted {
  const pages = pagesOf(engine.book, asked.page, "Measure");
  if ("reason" in pages) return pages;
  const blank = asked.request.blank ?? false;
  const title = blank ? phrase`Measurement chart, to fill in` : phrase`Measurement chart`;
  return tableDocument(engine, asked, pages, { blank, title });
}

export function cutListDocument(engine: Engine, asked: Asked): Built | NotPrinted {
  const pages = pagesOf(engine.book, asked.page, "Cut");
  if ("reason" in pages) return pages;
  return tableDocument(engine, asked, pages, { title: phrase`Cut list` });
}

export function logDocument(engine: Engine, asked: Asked): Built | NotPrinted {
  const pages = pagesOf(engine.book, asked.page, "Fit");
  if ("reason" in pages) return pages;
  const blank = asked.request.blank ?? false;
  return tableDocument(engine, asked, pages, {
    blank,
    title: blank ? phrase`Fitting log, to fill in` : phrase`Fitting log`,
  });
}
