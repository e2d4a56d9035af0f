import * as XLSX from "@e965/xlsx";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readTable } from "../../../src/exchange/read-table.ts";
import { openFile, packed, refusal, sheetFile, understood, written } from "./foreign-files.ts";

/** A list of a village play's cloth with a bit of everything. */
function clothList(): XLSX.WorkSheet {
  const sheet = XLSX.utils.aoa_to_sheet([
    ["cloth", "length (cm)", "price", "bought", "share", "ready", "note"],
    ["linen", 250, 12.5, null, 0.25, true, "007"],
    ["wool", 137.5, 30, null, 0.5, false, "=1+1"],
  ]);
  sheet.C2!.z = sheet.C3!.z = '"£"0.00';
  sheet.D2 = { t: "n", v: 46146, z: "yyyy-mm-dd" };
  sheet.D3 = { t: "n", v: 46147.75, z: "yyyy-mm-dd hh:mm" };
  sheet.E2!.z = sheet.E3!.z = "0%";
  sheet.B4 = { t: "n", v: 387.5, f: "SUM(B2:B3)" };
  sheet.C4 = { t: "n", v: 5187.5, f: "SUM(B2:B3*Prices!A1)+total" };
  sheet.D4 = { t: "n", v: 0.604166666666667, z: "h:mm" };
  sheet.E4 = { t: "n", v: 3, f: "GETPIVOTDATA(B2)" };
  sheet.F4 = { t: "n", v: 9, f: "SUM(B2:B3)" };
  sheet.G4 = { t: "n", v: 46000, f: "TODAY()" };
  sheet.A2!.c = [{ a: "the cutter", t: "from the mill" }];
  sheet["!ref"] = "A1:G5";
  sheet["!merges"] = [{ s: { r: 4, c: 0 }, e: { r: 4, c: 2 } }];
  sheet["!cols"] = [{ wch: 20 }];
  sheet["!rows"] = [{}, {}, { hidden: true }];
  return sheet;
}
const names = {
  Names: [
    { Name: "total", Ref: "Cloth!$B$4" },
    { Name: "A1", Ref: "Cloth!$B$4" },
  ],
};

describe.each(["xlsx", "ods"] as const)("a file that SheetJS writes as %s", (type) => {
  const file = () => written({ Cloth: clothList(), Prices: XLSX.utils.aoa_to_sheet([[2]]) }, type, names);

  test("becomes pages: values, kinds, headings, notes, names and living formulas", async () => {
    const { book, all } = await understood(file());
    const [cloth, prices] = book.pages;
    expect(book.unit).toBe("cm");
    expect(book.pages.map(({ title }) => title)).toEqual(["Cloth", "Prices"]);
    expect(cloth!.columns.map(({ heading, kind }) => `${heading}: ${kind}`)).toEqual([
      "cloth: any", "length: length", "price: any", "bought: any", "share: any", "ready: any", "note: any",
    ]); // biome-ignore format: a list
    expect(cloth!.rows[0]).toEqual(["linen", "250", "12.50", "2026-05-04", "25%", "TRUE", "007"]);
    expect(cloth!.rows[1]!.slice(3)).toEqual(["2026-05-05", "50%", "FALSE", "'=1+1"]);
    expect(prices!.rows).toEqual([["2"]]);
    expect(cloth!.rows[2]![1]).toBe("=SUM(B1:B2)");
    expect(cloth!.notes.A1).toBe("from the mill");
    expect(book.names).toEqual({ total: "Cloth!B3" });
    expect(all).toContain("1 text of the file reads as a number or a date: G1 “007”.");
    expect(all).toContain("got ' before it");
    expect(all).toContain("reads like a cell's address");
    expect(all).toContain("had a time of day, which is in a note: D2");
  });

  test("a formula that can't be calculated, or comes to another value, is kept as the value with a note", async () => {
    const { book, all } = await understood(file());
    const [{ rows, notes }] = book.pages as [(typeof book.pages)[0]];
    expect(rows[2]!.slice(3)).toEqual(["14:30", "3", "9", "=TODAY()"]);
    expect(notes.E3).toContain("GETPIVOTDATA is not a function here");
    expect(notes.F3).toMatch(
      /=SUM\(B1:B2\)\nThis formula of the file comes to 387.5 here and came to 9 there/,
    );
    expect(all).toMatch(/1 formula can't be calculated here .*: E3\./);
    expect(all).toMatch(/another value here and (?:is|are) kept as the value of the file, with a note: .*F3/);
    expect(all).toContain("1 formula changes with the day or by chance: G3.");
    expect(all).toContain("1 time of day is kept as text: D3.");
  });
});

test.each([
  ["29500", written({ Cloth: clothList(), Prices: XLSX.utils.aoa_to_sheet([[2]]) }, "xlsx"), "C1, C2"],
  ["26300", openFile('<table:table table:name="List"><table:table-row><table:table-cell office:value-type="currency" office:currency="GBP" office:value="30"/><table:table-cell office:value-type="currency" office:currency="EUR" office:value="5"/></table:table-row></table:table>'), "A1, B1"],
])("amounts of money in a file of ISO/IEC %s lose the sign of their currency, and the import says which", async (_, bytes, where) => {
  const { all } = await understood(bytes);
  expect(all).toContain(`2 amounts of money are kept as plain numbers, without the sign of the currency: ${where}.`);
}); // biome-ignore format: long lines

test("hidden sheets, rows and columns, widths, merged cells and lists of choices are kept or said", async () => {
  const sheet = clothList();
  sheet["!cols"]!.push({ hidden: true, wch: 9 });
  const workbook = { ...names, Sheets: [{}, { Hidden: 1 }] };
  const { book, all } = await understood(written({ Cloth: sheet, Prices: XLSX.utils.aoa_to_sheet([[2]]) }, "xlsx", workbook));
  expect(book.pages[0]!.hidden).toEqual(["2:2"]);
  expect(book.pages[0]!.columns[0]!.width).toBeGreaterThan(130);
  expect(all).toContain("It was hidden in the file.");
  expect(all).toContain("1 hidden column is shown: B.");
  expect(all).toContain("1 block of merged cells is separated again; the value is in the first cell: A5:C5 of the file.");
  const choosing = sheetFile('<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>', {
    "xl/worksheets/sheet1.xml": '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="str"><v>box</v></c><c r="B1"><v>2</v></c></row><row r="2"><c r="A2" t="str"><v>knife</v></c><c r="B2"><v>3</v></c></row></sheetData><dataValidations count="2"><dataValidation type="list" sqref="A1:A100"><formula1>"box,knife"</formula1></dataValidation><dataValidation type="list" sqref="B2"><formula1>$A$1:$A$2</formula1></dataValidation></dataValidations></worksheet>',
  });
  const [page] = (await understood(choosing)).book.pages;
  expect(page!.columns.map(({ choices }) => choices)).toEqual(["box; knife", undefined]);
  expect(page!.cells).toEqual({ B2: { choices: "=A1:A2" } });
}); // biome-ignore format: long lines

test("the formulas of a block that share one are each their own", async () => {
  const rows = [1, 2, 3].map((row) => `<row r="${row}"><c r="A${row}"><v>${row}</v></c><c r="B${row}"><f t="shared" ${row === 1 ? 'ref="B1:B3" ' : ""}si="0">${row === 1 ? "A1*2+$A$1" : ""}</f><v>${row * 2 + 1}</v></c></row>`);
  const { book, all } = await understood(sheetFile(rows.join("")));
  expect(book.pages[0]!.rows.map((row) => row[1])).toEqual(["=A1*2+$A$1", "=A2*2+$A$1", "=A3*2+$A$1"]);
  expect(all).toContain("3 formulas stay alive and give the values of the file.");
}); // biome-ignore format: long lines

test.each([
  ["0", "2026-05-05"],
  ["1", "2030-05-06"],
])(
  "in a file that counts its days from 1904 (%s), dates begin there and durations stay what they are",
  async (since, day) => {
    const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    const xf =
      '<xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="46" applyNumberFormat="1"/>';
    const { book } = await understood(
      sheetFile(
        '<row r="1"><c r="A1" s="1"><v>46147</v></c><c r="B1" s="2"><v>1.5</v></c><c r="C1" s="2"><v>100.25</v></c></row>',
        {
          "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${relation}"><workbookPr date1904="${since}"/><sheets><sheet name="List" sheetId="1" r:id="r1"/></sheets></workbook>`,
          "xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="${relation}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="r2" Type="${relation}/styles" Target="styles.xml"/></Relationships>`,
          "xl/styles.xml": `<styleSheet xmlns="${main}"><cellXfs>${xf}</cellXfs></styleSheet>`,
        },
      ),
    );
    expect(book.pages[0]!.rows[0]).toEqual([day, "36:00", "2406:00"]);
  },
);

test("a file of ISO/IEC 26300 with groups of rows, repeats, notes and lists is read whole", async () => {
  const cell = (value: number) => `<table:table-cell office:value-type="float" office:value="${value}"/>`;
  const { book, all } = await understood(
    openFile(
      `<table:content-validations><table:content-validation table:name="v" table:condition="of:cell-content-is-in-list(&quot;box&quot;;&quot;knife&quot;)"/></table:content-validations>
      <table:table table:name="List" table:style-name="hid"><table:table-column table:style-name="co" table:number-columns-repeated="2"/><table:table-column table:visibility="collapse" table:number-columns-repeated="16382"/>
      <table:table-header-rows><table:table-row>${cell(1)}${cell(2)}</table:table-row></table:table-header-rows>
      <table:table-row-group><table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="2" office:value-type="float" office:value="7"/></table:table-row></table:table-row-group>
      <table:table-row table:visibility="collapse"><table:table-cell office:value-type="string" table:content-validation-name="v"><office:annotation><dc:creator>me</dc:creator><dc:date>2026-01-01</dc:date><text:p>of linen</text:p></office:annotation><text:p>box<text:s text:c="2"/>&amp; knife</text:p><text:p>two</text:p></table:table-cell><table:table-cell table:formula="of:=SUM([.A1:.B3])" office:value-type="float" office:value="31"/></table:table-row>
      <table:table-row><table:table-cell office:value-type="date" office:date-value="2026-05-04"/><table:table-cell office:value-type="time" office:time-value="PT14H30M00S"/></table:table-row>
      <table:table-row table:number-rows-repeated="1048560"><table:table-cell table:number-columns-repeated="16384"/></table:table-row></table:table>
      <table:named-expressions><table:named-range table:name="sevens" table:cell-range-address="$List.$A$2:.$B$3"/></table:named-expressions>`,
      '<style:style style:name="co" style:family="table-column"><style:table-column-properties style:column-width="2in"/></style:style><style:style style:name="hid" style:family="table"><style:table-properties table:display="false"/></style:style>',
    ),
  );
  const [page] = book.pages;
  expect(page!.rows).toEqual([["1", "2"], ["7", "7"], ["7", "7"], ["box  & knife\ntwo", "=SUM(A1:B3)"], ["2026-05-04", "14:30"]]);
  expect(page!.notes).toEqual({ A4: "of linen" });
  expect(page!.columns.map(({ width }) => width)).toEqual([192, 192]);
  expect(page!.cells).toEqual({ A4: { choices: "box; knife" } });
  expect(page!.hidden).toEqual(["4:4"]);
  expect(book.names).toEqual({ sevens: "List!A2:B3" });
  expect(all).toContain("It was hidden in the file.");
}); // biome-ignore format: long lines

test("what the form says goes before what is found out", async () => {
  const file = written({ Cloth: clothList(), Prices: XLSX.utils.aoa_to_sheet([[2]]) }, "xlsx", names);
  const { book, all } = await understood(file, { unit: "in", sheets: { 0: { headings: false, kinds: { 6: "text" } }, 1: { take: false } } });
  expect([book.unit, book.pages.length]).toEqual(["in", 1]);
  expect(book.pages[0]!.rows[0]![1]).toBe("length (cm)");
  expect(book.pages[0]!.rows[3]![1]).toBe("=SUM(B2:B3)");
  expect(book.pages[0]!.notes.C4).toContain("the sheet Prices, which is left out");
  expect(all).not.toContain("reads as a number");
  expect((await understood(file, {}, "list", "comma")).book.pages[0]!.rows[0]!.slice(1, 3)).toEqual(["250", "12,50"]);
}); // biome-ignore format: long lines

test("figures too great for any program, and ends of cells that never began, are errors or damage, not answers", async () => {
  const styles = '<styleSheet><numFmts><numFmt numFmtId="200" formatCode="yyyy-mm-dd"/></numFmts><cellXfs><xf numFmtId="200" applyNumberFormat="1"/></cellXfs></styleSheet>';
  const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const { book, all } = await understood(
    sheetFile('<row r="1"><c r="A1" s="0"><v>1e308</v></c><c r="B1"><v>1e999</v></c></row>', {
      "xl/styles.xml": styles,
      "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="r1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="r2" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
    }),
  );
  expect(book.pages[0]!.rows).toEqual([["#NUM!", "#NUM!"]]);
  expect(all).toContain("2 errors of the file are kept as text: A1, B1.");
  const nested = "<table:table><table:table-row><table:table-cell office:value-type=\"float\" office:value=\"1\"><table:table-cell/></table:table-cell></table:table-row></table:table>";
  expect((await understood(openFile(nested))).book.pages[0]!.rows).toEqual([["1"]]);
}); // biome-ignore format: long lines

test("macros and links to other files are said and left alone", async () => {
  const { all } = await understood(
    sheetFile('<row r="1"><c r="A1"><f>[1]List!A1</f><v>5</v></c></row>', { "xl/vbaProject.bin": "macro", "xl/externalLinks/externalLink1.xml": "<externalLink/>" }),
  );
  expect(all).toContain("It has macros: they are not read and not run.");
  expect(all).toContain("It refers to other files: they are not opened.");
  expect(all).toContain("kept as the last value, with the formula in a note: A1");
}); // biome-ignore format: long lines

describe("bad files are refused in one sentence", () => {
  const row = '<row r="1"><c r="A1"><v>1</v></c></row>';

  test("too large, empty, encrypted, of an old kind, packed but no spreadsheet", async () => {
    expect(await refusal(new Uint8Array(100_000_000))).toBe("the file has 100 MB, and the most is 50 MB; cut it into parts");
    expect(await refusal(new Uint8Array(0))).toBe("the file is empty");
    const old = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Uint8Array(600)]);
    expect(await refusal(old)).toMatch(/^it is a spreadsheet or a document of an old kind/);
    const locked = Uint8Array.from([...old, ...[..."EncryptedPackage"].flatMap((sign) => [sign.charCodeAt(0), 0])]);
    expect(await refusal(locked)).toMatch(/^it is encrypted/);
    expect(await refusal(packed({ "a.txt": "a" }))).toMatch(/no spreadsheet in it/);
    expect(await refusal(packed({ "xl/workbook.bin": "a" }))).toMatch(/binary form/);
    const manifest = { "META-INF/manifest.xml": "<manifest:manifest><manifest:encryption-data/></manifest:manifest>" };
    expect(await refusal(openFile("", "", manifest))).toMatch(/^it is encrypted/);
    const damaged = { mimetype: "application/vnd.oasis\n.spread\ufffdsheet" };
    expect(await refusal(openFile("", "", damaged))).toBe(
      "it is no spreadsheet but application/vnd.oasis?.spread?sheet",
    );
  });

  test("cut off, damaged, with other bytes in the middle", async () => {
    const good = sheetFile(row);
    expect(await refusal(good.slice(0, good.length - 40))).toMatch(/cut off or damaged/);
    const broken = good.slice();
    broken.fill(0xff, 700, 760);
    expect(await refusal(broken)).toMatch(/damaged/);
    expect(await refusal(sheetFile("<row"))).toMatch(/damaged/);
    expect(await refusal(openFile("<table:table>"))).toMatch(/content is damaged/);
    expect(await refusal(sheetFile(""))).toBe("its sheets are empty: there is nothing to read");
  });

  test("bombs: a part of a gigabyte, and one that is greater than it says", async () => {
    const claiming = (size: number): Uint8Array => {
      const file = zipSync({ "xl/workbook.xml": new Uint8Array(3_000_000) });
      const view = new DataView(file.buffer);
      const at = file.findLastIndex((_, i) => i + 4 < file.length && view.getUint32(i, true) === 0x02014b50);
      view.setUint32(at + 24, size, true);
      return file;
    };
    expect(await refusal(claiming(1_000_000_000))).toBe(
      "unpacked it would have 1000 MB, and the most is 250 MB; save the sheets as separate files",
    );
    const lying = claiming(100);
    expect(await refusal(lying)).toMatch(/not as long as the file says/);
  });

  test("entities that may name other files or grow without end", async () => {
    const evil = '<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]>';
    expect(await refusal(sheetFile(row, { "xl/sharedStrings.xml": `${evil}<sst>&x;</sst>` }))).toMatch(/entities of its own/);
    expect(await refusal(openFile("", "", { "content.xml": `${evil}<office:document-content>&x;</office:document-content>` }))).toMatch(/entities/);
    expect(await refusal(openFile("<table:table><text:p>&x;</text:p></table:table>"))).toMatch(/content is damaged/);
  });

  test("200,000 columns, and cells far out", async () => {
    const wide = Array.from({ length: 200_000 }, () => "1").join(",");
    expect(await refusal(strToU8(`${wide}\n`), "wide.csv")).toMatch(/200,000 cells, and a page holds at most 200 columns/);
    expect(await refusal(sheetFile('<row r="1"><c r="XFD1"><v>1</v></c></row>'))).toMatch(/16,384 columns, and a page holds at most 200/);
    expect(await refusal(sheetFile('<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'))).toMatch(/too many to read/);
    expect(await refusal(openFile('<table:table><table:table-row table:number-rows-repeated="900000000"><table:table-cell office:value-type="float" office:value="1"/></table:table-row></table:table>'))).toMatch(/cells, and a book holds at most|too many to read/);
  });

  test("a PDF, a picture or a program called .csv", async () => {
    expect(await refusal(strToU8("%PDF-1.7"), "list.csv")).toMatch(/^it is a PDF/);
    expect(await refusal(new Uint8Array([0x89, 0x50, 0x4e, 0x47]), "list.csv")).toMatch(/^it is a picture/);
  });
}); // biome-ignore format: long lines

test("the title of a page is the file's name without folders, ending and signs", async () => {
  const read = await readTable(strToU8("a;1\nb;2"), "C:\\lists\\the [mill]'s cloth.csv");
  expect("title" in read && read.title).toBe("the mill s cloth");
});

test("of a file with more sheets than a book has pages it is said how many are left out, and from which on", async () => {
  const one =
    '<table:table-row><table:table-cell office:value-type="float" office:value="1"/></table:table-row>';
  const tables = Array.from(
    { length: 230 },
    (_, i) => `<table:table table:name="Scene ${i + 1}">${one}</table:table>`,
  );
  const { said, book } = await understood(openFile(tables.join("")));
  expect(book.pages).toHaveLength(100);
  expect(said).toContain(
    "130 sheets are left out, from “Scene 101” on, because a book has at most 100 pages: choose which to take, or save the others as a file of their own.",
  );
});
