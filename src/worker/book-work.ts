/** Work on whole books that takes longer than a moment: what a worker is asked for and what it answers, all plain data. */
import { type Reading, readBook } from "../book/read.ts";
import type { Book } from "../book/shape.ts";
import { type BookDifferences, bookDifferences } from "../engine/book-differences.ts";
import { Engine } from "../engine/engine.ts";
import type { NextVersion } from "../engine/next-version.ts";
import type { Figures } from "../exchange/page-csv.ts";
import type { Spreadsheet } from "../exchange/write-xlsx.ts";
import { layDesk, type quickLays } from "../lay/desk.ts";

/** How a spreadsheet's file ends. */
export type SpreadsheetEnding = "xlsx" | "ods";

export type BookOrder =
  | { readonly is: "compare"; readonly before: Book; readonly after: Book }
  | { readonly is: "spreadsheet"; readonly book: Book; readonly ending: SpreadsheetEnding }
  | { readonly is: "table"; readonly book: Book; readonly page: number; readonly figures: Figures }
  | { readonly is: "next"; readonly book: Book }
  | { readonly is: "read"; readonly file: Blob };

/** The answer to each kind of order. */
export interface BookAnswers {
  readonly compare: BookDifferences;
  readonly spreadsheet: Spreadsheet;
  /** A page as comma-separated values. */
  readonly table: { readonly text: string };
  readonly next: NextVersion | { readonly refusal: string };
  readonly read: Reading;
}

/** The answer that belongs to an order. */
export type AnswerTo<Order extends BookOrder> = BookAnswers[Order["is"]];

/** What a worker is sent: an order, and the quick lays that the page has made already. */
export interface BookTask {
  readonly order: BookOrder;
  readonly laid: ReturnType<typeof quickLays>;
}

/** Does what is ordered; every lay of a book that it does not keep is a quick one. */
export async function bookWork(order: BookOrder): Promise<AnswerTo<BookOrder>> {
  if (order.is === "compare") return bookDifferences(order.before, order.after, layDesk);
  if (order.is === "read") return readBook(await order.file.text());
  if (order.is === "next") {
    const { nextVersion } = await import("../engine/next-version.ts");
    return nextVersion(order.book, layDesk);
  }
  const engine = new Engine(order.book, layDesk);
  try {
    if (order.is === "table") {
      const { pageCsv } = await import("../exchange/page-csv.ts");
      return { text: pageCsv(engine, order.page, order.figures) };
    }
    if (order.ending === "ods") return (await import("../exchange/write-ods.ts")).writeOds(engine);
    return await (await import("../exchange/write-xlsx.ts")).writeXlsx(engine);
  } finally {
    engine.destroy();
  }
}
