import { readdirSync, readFileSync } from "node:fs";
import * as XLSX from "@e965/xlsx";
import { HyperFormula } from "hyperformula";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { cellAddress } from "../../../src/book/address.ts";
import { isFormula } from "../../../src/book/formula.ts";
import { readGarment } from "../../../src/book/garment.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { hasAnswer } from "../../../src/engine/sentences.ts";
import { writeOds } from "../../../src/exchange/write-ods.ts";
import { writeXlsx } from "../../../src/exchange/write-xlsx.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "../engine/whatif-books.ts";

const book = (file: string): Book => {
  const text = readFileSync(file, "utf8");
  const reading = file.includes("garments/") ? readGarment(text) : readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  return "garment" in reading ? reading.garment.books.in : reading.book;
};
const FILES = ["templates", "templates/garments"].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .map((name) => `${folder}/${name}`),
);
/** SheetJS drops the signs of fixed addresses from the names of an .ods file. */
const fixed = (area: string) => area.replace(/(?<=[!:])\$?([A-Z]+)\$?(\d+)/g, "$$$1$$$2");
/** SheetJS leaves references that name a sheet as OpenFormula has them: "['Cut'.$A$1:.$B$2]". */
const plain = (formula: string) =>
  formula
    .replaceAll("_xlfn.", "")
    .replace(
      /\[('(?:[^']|'')+')\.([^:\]]+)(?::\.([^\]]+))?\]/g,
      (_, sheet, from, to) => `${sheet}!${from}${to ? `:${to}` : ""}`,
    );

/** The file as SheetJS reads it, and its formulas worked again by HyperFormula: the cached values are not looked at. */
function recalculated(bytes: Uint8Array, typedInto?: (sheets: XLSX.WorkBook) => void) {
  const file = XLSX.read(bytes, { cellFormula: true, cellNF: true });
  typedInto?.(file);
  const sheets = Object.fromEntries(
    file.SheetNames.map((name) => {
      const sheet = file.Sheets[name]!;
      const { e } = XLSX.utils.decode_range(sheet["!ref"] ?? "A1");
      const rows = Array.from({ length: e.r + 1 }, (_, r) =>
        Array.from({ length: e.c + 1 }, (_, c) => {
          const cell = sheet[cellAddress(r, c)] as XLSX.CellObject | undefined;
          if (cell?.f !== undefined) return `=${plain(cell.f)}`;
          return typeof cell?.v === "string" ? `'${cell.v}` : (cell?.v as number | boolean | undefined);
        }),
      );
      return [name, rows];
    }),
  );
  const names = (file.Workbook?.Names ?? [])
    .filter(({ Sheet }) => Sheet === undefined)
    .map(({ Name, Ref }) => ({ name: Name, expression: `=${fixed(Ref)}` }));
  return { file, hf: HyperFormula.buildFromSheets(sheets as never, { licenseKey: "gpl-v3" }, names) };
}

const WRITERS = { xlsx: writeXlsx, ods: writeOds };

// Every book as .xlsx; the ready ones as .ods too, whose formulas come from the same plain ones.
const CASES = FILES.flatMap((path) => [
  [path, "xlsx"] as const,
  ...(path.includes("garments/") ? [] : [[path, "ods"] as const]),
]);

describe.each(CASES)("%s as .%s", (path, ending) => {
  test("gives every figure again, to 1e-9, worked without the sewing functions", async () => {
    const engine = new Engine(book(path), layDesk);
    const { bytes } = await WRITERS[ending](engine);
    const { file, hf } = recalculated(bytes);
    const [formulas, calls]: [string[], number[]] = [[], []];
    engine.worked.pages.forEach((page, index) => {
      page.rows.forEach((cells, row) => {
        for (const [column, typed] of cells.entries()) {
          const place = { page: index, row, column };
          const wanted = engine.value(place);
          const where = `${file.SheetNames[index]} ${cellAddress(row, column)} ${typed}`;
          const { problem } = engine.view(place);
          if (wanted === null && problem && !hasAnswer(problem)) continue;
          const found = hf.getCellValue({ sheet: index, row: row + 1, col: column });
          if (typeof wanted === "number")
            expect(Math.abs((found as number) - wanted), where).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));
          else if (String(wanted).length < 32_767) expect(found ?? "", where).toBe(wanted ?? "");
          const cell = file.Sheets[file.SheetNames[index]!]![cellAddress(row + 1, column)] as XLSX.CellObject | undefined;
          if (!isFormula(typed)) {
            expect(cell?.f, where).toBeUndefined();
            continue;
          }
          calls.push(cell?.f === undefined ? 0 : 1);
          if (cell?.f !== undefined) formulas.push(cell.f);
          // A cell that is no formula any more says why.
          else expect(JSON.stringify(cell?.c), where).toContain("fixed");
        }
      });
    });
    for (const cell of Object.values(file.Sheets.Workings ?? {}) as XLSX.CellObject[])
      if (typeof cell === "object" && cell?.f !== undefined) formulas.push(cell.f);
    for (const formula of formulas)
      for (const [, word] of plain(formula).matchAll(/([A-Z][A-Z0-9_]*)\(/g)) expect(catalogue.has(word!), formula).toBe(false);
    const alive = calls.reduce((sum, one) => sum + one, 0);
    expect(alive / Math.max(1, calls.length), `${alive} of ${calls.length} formulas`).toBeGreaterThan(0.8);
    engine.destroy();
    hf.destroy();
  });
}); // biome-ignore format: long lines

test("a measurement changed in another program changes every figure that rests on it, as in Ellwand", async () => {
  const cells = {
    waist: "27", hip: "40", gores: "6",
    spread: "=SPREAD_PER_GAP(waist/2;hip/2;gores-1)",
    eased: '=IF(waist>30;WITH_EASE(waist;2);WITH_EASE(waist;1))',
    hoop: "=HOOP_CUT(hip*2)",
    buy: "=BUY_LENGTH(hip*3+0.3;4.5;0.1)",
  }; // biome-ignore format: a book
  const engine = new Engine(bookOf(cells), layDesk);
  const { bytes, fixed } = await writeXlsx(engine);
  expect(fixed).toBe(0);
  const { file, hf } = recalculated(bytes);
  expect(file.Workbook!.Names!.map(({ Name }) => Name)).toEqual(Object.keys(cells));
  expect(file.Sheets.Workings!.A1!.v).toBe("Lengths are in inches.");
  const changed = new Engine(bookOf({ ...cells, waist: "28", hip: "45" }), layDesk);
  hf.setCellContents({ sheet: 0, row: 1, col: 1 }, 28);
  hf.setCellContents({ sheet: 0, row: 2, col: 1 }, 45);
  Object.keys(cells).forEach((name, row) => {
    const wanted = changed.value({ page: 0, row, column: 1 }) as number;
    expect(hf.getCellValue({ sheet: 0, row: row + 1, col: 1 }), name).toBeCloseTo(wanted, 9);
  });
});

test("notes and widths go along, and a fixed value says what it is", async () => {
  const start = bookOf({ apron: "=RECTANGLE(20;30)", side: "=EDGE_LENGTH(apron;2)" });
  const [page] = start.pages;
  const noted = { ...start, pages: [{ ...page!, notes: { B1: "of linen" } }] };
  const { bytes, fixed } = await writeXlsx(new Engine(noted, layDesk));
  expect(fixed).toBe(2);
  const sheet = XLSX.read(bytes, { cellStyles: true }).Sheets.Draft!;
  expect(sheet.B2!.c![0]!.t).toMatch(/^of linen\n.*outline of a piece is drawn by Ellwand/);
  expect(sheet.B3!.c![0]!.t).toContain("EDGE_LENGTH(apron;2): ");
  expect(sheet["!cols"]![0]!.width).toBeGreaterThan(sheet["!cols"]![1]!.width!);
});
