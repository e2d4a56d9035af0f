import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { afterRemoval, afterRename, afterShift, copied } from "../../../src/book/references.ts";
import { often } from "../../often.ts";
import { COLUMNS, cellReference, ROWS, rangeReference, referringFormula, rowsOf, TITLES } from "./books.ts";

// The oracle is HyperFormula itself: it moves the references of formulas when its own sheets change.
const config = { licenseKey: "gpl-v3", functionArgSeparator: ";" };
const seed = 20_260_504;

const cell = fc.oneof(fc.integer({ min: 1, max: 99 }).map(String), referringFormula, fc.constant(""));
const sheets = fc.tuple(...TITLES.map(() => rowsOf(cell)));
type Sheets = string[][][];

const build = (pages: Sheets, titles: readonly string[] = TITLES) =>
  HyperFormula.buildFromSheets(Object.fromEntries(titles.map((title, i) => [title, pages[i]!])), config);

const plain = (formula: unknown) => String(formula ?? "").toUpperCase();

/** Every formula of the oracle, page by page in the order of the titles. */
const formulasOf = (hf: HyperFormula, titles: readonly string[]): string[][] =>
  titles.map((title) =>
    hf
      .getSheetFormulas(hf.getSheetId(title)!)
      .flatMap((row, r) => row.flatMap((formula, c) => (formula ? [`${r},${c} ${plain(formula)}`] : []))),
  );

const rewritten = (
  pages: Sheets,
  change: (formula: string, home: string) => string,
  titles: readonly string[] = TITLES,
) => pages.map((rows, i) => rows.map((row) => row.map((typed) => change(typed, titles[i]!))));

const listed = (pages: Sheets): string[][] =>
  pages.map((rows) =>
    rows.flatMap((row, r) =>
      row.flatMap((typed, c) => (typed.startsWith("=") ? [`${r},${c} ${plain(typed)}`] : [])),
    ),
  );

test("references follow rows and columns put in or taken out, as the engine's own do", () => {
  fc.assert(
    fc.property(
      sheets,
      fc.nat(TITLES.length - 1),
      fc.constantFrom("row" as const, "column" as const),
      fc.nat(4),
      fc.integer({ min: 1, max: 3 }),
      fc.boolean(),
      (pages, index, axis, at, size, out) => {
        const most = axis === "row" ? ROWS : COLUMNS;
        fc.pre(at < most && (!out || at + size < most));
        const hf = build(pages);
        const title = TITLES[index]!;
        const id = hf.getSheetId(title)!;
        const change = out
          ? axis === "row" ? hf.removeRows.bind(hf) : hf.removeColumns.bind(hf)
          : axis === "row" ? hf.addRows.bind(hf) : hf.addColumns.bind(hf); // biome-ignore format: a table
        change(id, [at, size]);
        const next = rewritten(pages, (formula, home) =>
          afterShift(formula, home, title, axis, at, out ? -size : size),
        );
        const rows = next[index]!;
        if (axis === "row")
          rows.splice(at, out ? size : 0, ...(out ? [] : Array.from({ length: size }, () => [] as string[])));
        else
          for (const row of rows)
            row.splice(at, out ? size : 0, ...(out ? [] : Array<string>(size).fill("")));
        expect(listed(next)).toEqual(formulasOf(hf, TITLES));
        hf.destroy();
      },
    ),
    { seed, numRuns: often(250) },
  );
});

test("a formula copied elsewhere moves what is not fixed, as the engine's own fill does", () => {
  const hf = build([[[]], [[]], [[]]]);
  fc.assert(
    fc.property(
      referringFormula,
      fc.nat(ROWS - 1),
      fc.nat(COLUMNS - 1),
      fc.nat(7),
      fc.nat(7),
      (formula, r, c, toRow, toColumn) => {
        hf.setCellContents({ sheet: 0, row: r, col: c }, formula);
        const one = (row: number, col: number) => ({
          start: { sheet: 0, row, col },
          end: { sheet: 0, row, col },
        });
        const [[filled]] = hf.getFillRangeData(one(r, c), one(toRow, toColumn)) as [[string]];
        // The engine keeps the page before what is lost, which it then can't read again itself.
        const lost = plain(filled).replace(/(?:'(?:[^']|'')+'|\w+)!#REF!/g, "#REF!");
        expect(plain(copied(formula, toRow - r, toColumn - c))).toBe(lost);
      },
    ),
    { seed, numRuns: often(250) },
  );
  hf.destroy();
});

test("formulas keep pointing at a page that gets another title, quotes in it or not", () => {
  fc.assert(
    fc.property(
      sheets,
      fc.nat(TITLES.length - 1),
      fc.constantFrom("Cut list", "Fit", "The widow's", "Größe"),
      (pages, index, title) => {
        const hf = build(pages);
        hf.renameSheet(hf.getSheetId(TITLES[index]!)!, title);
        const titles = TITLES.map((one, i) => (i === index ? title : one));
        // The engine leaves the quotes off where it can; so a fresh engine on our text is asked.
        const ours = build(
          rewritten(pages, (formula) => afterRename(formula, TITLES[index]!, title)),
          titles,
        );
        expect(formulasOf(ours, titles)).toEqual(formulasOf(hf, titles));
        hf.destroy();
        ours.destroy();
      },
    ),
    { seed, numRuns: often(80) },
  );
});

test("what pointed at a page that was taken out is lost, and nothing else", () => {
  fc.assert(
    fc.property(sheets, fc.nat(TITLES.length - 1), (pages, index) => {
      const hf = build(pages);
      hf.removeSheet(hf.getSheetId(TITLES[index]!)!);
      const left = TITLES.filter((_, i) => i !== index);
      const ours = build(
        rewritten(pages, (formula, home) => afterRemoval(formula, home, TITLES[index]!)).filter(
          (_, i) => i !== index,
        ),
        left,
      );
      for (const title of left) {
        expect(ours.getSheetValues(ours.getSheetId(title)!).map((row) => row.map(String))).toEqual(
          hf.getSheetValues(hf.getSheetId(title)!).map((row) => row.map(String)),
        );
      }
      hf.destroy();
      ours.destroy();
    }),
    { seed, numRuns: often(80) },
  );
});

test("a range written from its far end keeps both ends when rows are put in between", () => {
  expect(afterShift("=SUM(B5:B2)", "Draft", "Draft", "row", 3, 2)).toBe("=SUM(B7:B2)");
  expect(afterShift("=SUM(B5:B2)", "Draft", "Draft", "row", 0, -3)).toBe("=SUM(B2:B1)");
  expect(afterShift("=SUM(C1:A1)", "Draft", "Draft", "column", 0, -3)).toBe("=SUM(#REF!)");
});

test("texts, names and tape figures that look like addresses stay as they were", () => {
  const formula = '=IF("B2"="draft!B2";hem2_x+B2_+12 in;IN(3))+B2.x';
  expect(afterShift(formula, "Draft", "Draft", "row", 0, 5)).toBe(formula);
  expect(copied(formula, 3, 3)).toBe(formula);
});

test("moving there and back is no change", () => {
  fc.assert(
    fc.property(
      fc.oneof(cellReference, rangeReference),
      fc.nat(6),
      fc.integer({ min: 1, max: 4 }),
      (reference, at, count) => {
        const formula = `=SUM(${reference})`;
        const there = afterShift(formula, "Draft", "Draft", "row", at, count);
        expect(afterShift(there, "Draft", "Draft", "row", at, -count)).toBe(formula);
      },
    ),
    { seed },
  );
});
