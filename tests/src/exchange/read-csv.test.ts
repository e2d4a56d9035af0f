import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { machine } from "../../../src/command/machine.ts";
import { main } from "../../../src/command/main.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { pageCsv } from "../../../src/exchange/page-csv.ts";
import { readCsv } from "../../../src/exchange/read-csv.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string, bigEnd: boolean) => {
  const view = new DataView(new ArrayBuffer(text.length * 2));
  for (let i = 0; i < text.length; i += 1) view.setUint16(i * 2, text.charCodeAt(i), !bigEnd);
  return new Uint8Array(view.buffer);
};
const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

const page = (text: string | Uint8Array, form = {}, decimal: "point" | "comma" = "point") => {
  const read = readCsv(typeof text === "string" ? utf8(text) : text, "List", decimal, form);
  if ("refusal" in read) throw new Error(read.refusal);
  return {
    ...read.page,
    said: read.understood.join(" "),
    headings: read.page.columns.map(({ heading }) => heading),
  };
};
const refusal = (bytes: Uint8Array) => {
  const read = readCsv(bytes, "List");
  return "refusal" in read ? read.refusal : "read";
};

test.each([
  ["tabs", "\t"], ["semicolons", ";"], ["upright strokes", "|"], ["commas", ","],
])("cells are separated by %s, quoted or not", (noun, sign) => {
  const text = [["Seam", "Taken in"], ["side", "1.5"], [`"centre${sign}back"`, "2"]].map((row) => row.join(sign)).join("\r\n");
  const { headings, rows, said } = page(text);
  expect(headings).toEqual(["Seam", "Taken in"]);
  expect(rows).toEqual([["side", "1.5"], [`centre${sign}back`, "2"]]);
  expect(said).toContain(`separated by ${noun}`);
}); // biome-ignore format: a table

test.each([
  ["UTF-8", utf8("Mieder;Länge\nTüll;3")],
  ["UTF-8 with a byte order mark", utf8("\ufeffMieder;Länge\nTüll;3")],
  ["UTF-16 with a byte order mark", utf16("\ufeffMieder;Länge\nTüll;3", false)],
  ["UTF-16 with a byte order mark", utf16("\ufeffMieder;Länge\nTüll;3", true)],
  ["UTF-16", utf16("Mieder;Länge\nTüll;3", false)],
  ["Windows-1252, because it is not UTF-8", latin("Mieder;Länge\nTüll;3")],
])("letters in %s are read", (encoding, bytes) => {
  const { headings, rows, said } = page(bytes);
  expect([headings, rows]).toEqual([["Mieder", "Länge"], [["Tüll", "3"]]]);
  expect(said).toContain(`The letters are ${encoding}.`);
}); // biome-ignore format: a table

// RFC 4180, section 2, rules 1 to 7.
test.each([
  ["1: lines end with CR LF", "aaa,bbb\r\nzzz,yyy\r\n", [["aaa", "bbb"], ["zzz", "yyy"]]],
  ["2: the last line may have no end", "aaa,bbb\r\nzzz,yyy", [["aaa", "bbb"], ["zzz", "yyy"]]],
  ["4: spaces are part of a field", "a a , b\r\nc,d\r\n", [["a a ", " b"], ["c", "d"]]],
  ["5: fields may stand in quotes", '"aaa","bbb"\r\nzzz,yyy', [["aaa", "bbb"], ["zzz", "yyy"]]],
  ["6: a quoted field may hold line ends and commas", '"aaa","b\r\nb,b"\r\nzzz,yyy', [["aaa", "b\nb,b"], ["zzz", "yyy"]]],
  ["7: a quote within quotes is doubled", '"aaa","b""bb"\r\nzzz,yyy', [["aaa", 'b"bb'], ["zzz", "yyy"]]],
])("RFC 4180, rule %s", (_, text, rows) => expect(page(text).rows).toEqual(rows)); // biome-ignore format: a table

test("RFC 4180, rule 3: the first line may hold headings, and whoever reads it can say so", () => {
  expect(page("name,seam\r\naaa,bbb", { headings: true })).toMatchObject({ headings: ["name", "seam"], rows: [["aaa", "bbb"]] });
}); // biome-ignore format: long lines

test.each(["03/04/2026", "25.4.2026", "2026-04-25"])(
  "a first line of words over a column of dates such as %s holds the headings",
  (day) => {
    expect(page(`Role,Fitted on\nthe cook,${day}\nthe widow,${day}\n`).headings).toEqual([
      "Role",
      "Fitted on",
    ]);
    expect(page(`${day},the cook\n${day},the widow\n`).headings).toEqual(["", ""]);
  },
);

test.each(["Hip (cm)", "Hip [cm]"])("the unit of a heading such as %s is that of its lengths", (heading) => {
  const { columns, headings } = page(`Role,${heading}\nthe cook,97\n`);
  expect([headings, columns[1]!.kind]).toEqual([["Role", "Hip"], "length"]);
});

test("what is said of the encoding, the headings and the kinds goes before what is found out", () => {
  expect(page(latin("Tüll;3"), { encoding: "windows-1252" }).rows).toEqual([["Tüll", "3"]]);
  expect(refusal(latin("Tüll;3"))).toBe("read");
  expect(readCsv(latin("Tüll;3"), "List", "point", { encoding: "utf-8" })).toEqual({ refusal: "its letters are not UTF-8; choose another encoding" });
  const { columns, said, rows } = page("waist (cm);hip (in)\n70,5;41", { unit: "cm" });
  expect(columns.map(({ heading, kind }) => `${heading}: ${kind}`)).toEqual(["waist: length", "hip (in): any"]);
  expect(rows).toEqual([["70.5", "41"]]);
  expect(said).toContain("columns headed in inches are left as plain numbers");
}); // biome-ignore format: long lines

test.each([
  ["4.5.2026;1\n13.5.2026;2", undefined, ["2026-05-04", "2026-05-13"], "read as day, month, year: some first numbers are above 12"],
  ["04.05.2026;1\n13.05.2026;2", undefined, ["2026-05-04", "2026-05-13"], "read as day, month, year"],
  ["4/5/2026;1\n4/13/2026;2", undefined, ["2026-04-05", "2026-04-13"], "read as month, day, year"],
  ["4.5.2026;1\n5.6.2026;2", undefined, ["4.5.2026", "5.6.2026"], "2 dates such as 4.5.2026 can be read in two ways"],
  ["4.5.2026;1\n31.2.2026;2", "day-month", ["2026-05-04", "31.2.2026"], "read as day, month, year, as you say"],
  ["13.5.2026;1\n5.13.2026;2", undefined, ["13.5.2026", "5.13.2026"], "have no order in common"],
  ["4.5.2026;1\n13.5.2026;2", "text", ["4.5.2026", "13.5.2026"], "left as text"],
] as const)("dates of %j, said to be %j, are read or asked about", (text, dates, wanted, sentence) => {
  const { rows, said } = page(text, { dates, headings: false });
  expect(rows.map((row) => row[0])).toEqual(wanted);
  expect(said).toContain(sentence);
}); // biome-ignore format: a table

describe("figures", () => {
  test("decimal commas between semicolons are not taken for commas between cells", () => {
    const { rows, said } = page("waist;70,5\nhip;1.094,25\nlong;1.234");
    expect(rows).toEqual([["waist", "70.5"], ["hip", "1094.25"], ["long", "1234"]]);
    expect(said).toContain("decimal comma");
    expect(page("waist;70,5\nlong;1.234", {}, "comma").rows).toEqual([["waist", "70,5"], ["long", "1234"]]);
  });

  test("a figure with two readings stays as it is and is named, until the decimal mark is given", () => {
    const text = "waist;1,234\nhip;2";
    expect(page(text)).toMatchObject({ rows: [["waist", "1,234"], ["hip", "2"]] });
    expect(page(text).said).toContain("such as 1,234 can be read in two ways");
    expect(page(text, { decimal: "comma" }).rows[0]).toEqual(["waist", "1.234"]);
    expect(page(text, { decimal: "point" }).rows[0]).toEqual(["waist", "1234"]);
  });

  test("figures that begin with 0 or are too long keep every digit, as text", () => {
    const { columns, rows } = page("Size;Number;Fee\n007;12345678901234567;3\n010;1;4");
    expect(columns.map(({ kind }) => kind)).toEqual(["text", "text", "any"]);
    expect(rows[0]).toEqual(["007", "12345678901234567", "3"]);
  });
}); // biome-ignore format: tables

test("nothing of a file is calculated", () => {
  const { rows, said } = page('What;Figure\n=1+1;2\n"  =HYPERLINK(""x"")";3');
  expect(rows).toEqual([["'=1+1", "2"], [`'  =HYPERLINK("x")`, "3"]]);
  expect(said).toContain("2 cells that begin with = got ' before it");
}); // biome-ignore format: a table

test("quotes that do not pair are signs, inches among them, and short lines are filled", () => {
  expect(page('a;27"\nb;"3"x\nc;').rows).toEqual([["a", '27"'], ["b", '"3"x'], ["c", ""]]);
  expect(page("a;1\nb;2\nc").said).toContain("1 line had fewer cells");
}); // biome-ignore format: a table

test.each([
  ["an empty file", utf8(""), "the file is empty"],
  ["blanks", utf8(" \n\n"), "the file has only blanks"],
  ["a PDF named .csv", utf8("%PDF-1.7\n1 0 obj"), /^it is a PDF, not a table/],
  ["a packed file", latin("PK\u0003\u0004abcd"), /^it is a packed file/],
  ["zero bytes", utf8("a;b\nc;\u0000"), /^it is not a text file: character 7 is a zero byte/],
  ["letters of no known encoding", latin("a;\u0081\nb;\u008d"), /^its letters are neither UTF-8 nor Windows-1252/],
  ["a broken UTF-8", latin("\u00ef\u00bb\u00bfa;\u00ff"), /^its first bytes say UTF-8/],
  ["100 MB", new Uint8Array(100_000_000), "the file has 100 MB, and the most is 50 MB; cut it into parts"],
  ["20,002 rows", utf8("1;2\n".repeat(20_002)), /^the file has 20,002 lines, and a page holds at most 20,000 rows/],
  ["201 columns", utf8(`${"1;".repeat(200)}1\n`), /^line 1 has 201 cells, and a page holds at most 200 columns/],
])("%s is refused in one sentence", (_, bytes, sentence) => {
  expect(refusal(bytes)).toMatch(sentence);
}); // biome-ignore format: a table

test("a page written as CSV comes back cell for cell", () => {
  const rows = [["side seam", "1.5"], ['a "long",\nnote', "2"], ["Länge; weit", "-3"]];
  const columns = ["What", "Figure"].map((heading) => ({ heading, kind: "any" as const, width: 90 }));
  const book = { title: "", about: "", unit: "cm" as const, mark: "1 mm" as const, names: {}, trials: [], lays: {}, pages: [{ title: "A", stage: "Fit" as const, columns, rows, notes: {} }] };
  const read = page(pageCsv(new Engine(book, layDesk), 0, "full"));
  expect([read.headings, read.rows]).toEqual([["What", "Figure"], rows]);
}); // biome-ignore format: tables

describe("import", () => {
  test("shows how the file was understood, writes a book only with --out, and refuses a large file unread", async () => {
    const folder = mkdtempSync(join(tmpdir(), "ellwand-"));
    const out: string[] = [];
    const err: string[] = [];
    const io = { ...machine, out: (text: string) => out.push(text), err: (text: string) => err.push(text) };
    const file = "tests/src/exchange/fittings.csv";
    const book = join(folder, "fittings.json");
    expect(await main(["import", file, "--unit", "cm", "--out", book], io)).toBe(0);
    expect(out.join("\n")).toMatch(/The letters are UTF-8\.\n.*semicolons: 3 lines of 3 cells[\s\S]*Date \| Seam \| Taken in\n2026-05-04 \| side \| 1\.5/);
    const reading = readBook(readFileSync(book, "utf8"));
    if ("reason" in reading) throw new Error(reading.reason);
    expect(reading.book).toMatchObject({ title: "fittings", unit: "cm" });
    expect(reading.book.pages[0]!.rows[1]).toEqual(["2026-05-04", "centre back", "0.25"]);
    const large = join(folder, "large.csv");
    writeFileSync(large, new Uint8Array(51_000_000));
    expect(await main(["import", large], io)).toBe(2);
    expect(err.at(-1)).toBe(`${large}: it has 51 MB, and the most is 50 MB; cut it into parts`);
    expect(await main(["import", file, "--delimiter", "dot"], io)).toBe(2);
    expect(err.at(-1)).toBe('--delimiter must be one of tab, semicolon, stroke, comma, not "dot"');
    rmSync(folder, { recursive: true });
  });
}); // biome-ignore format: long lines
