/** Spreadsheet files that are damaged, hostile or strange: bytes changed, parts changed, formulas without sense. */
import { strToU8, zipSync } from "fflate";
import { readBook } from "../../../src/book/read.ts";
import { writeBook } from "../../../src/book/write.ts";
import { fileKind, JUDGED_BYTES } from "../../../src/exchange/file-kind.ts";
import { readTable, understandTable } from "../../../src/exchange/read-table.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { define } from "../generator.ts";
import type { Random } from "../random.ts";

/** A file as what it is made of, so that it can be printed and made again. */
interface Case {
  readonly parts: Readonly<Record<string, string>>;
  /** Bytes that are put in places of the finished file; shares of its length. */
  readonly changed: readonly (readonly [place: number, byte: number])[];
  /** The share of it that is kept. */
  readonly kept: number;
}

const NUMBERS = [
  "1",
  "-0",
  "1e308",
  "1e999",
  "NaN",
  "",
  "2958466.5",
  "-1",
  "0.1",
  "46146.75",
  "９",
  "1,5",
  " 3 ",
];
const FORMULAS = [
  "SUM(A1:B9)", "A1", "A1:A1048576", "$A$1:XFD1", "Sheet9!A1", "'[1]x'!A1", "TODAY()+1", "IF(A1,B1", "((((", "1/0",
  "OFFSET(A1,1,1)", "INDIRECT(\"A1\")", "{1,2;3}", "#REF!", "_xlfn.XLOOKUP(1,A:A,B:B)", "LAMBDA(x,x)(1)", "A1#", "@A1",
  "REPT(\"a\",1000000)", "\"", "'", "SUM(1:1048576)", "SPREAD_PER_GAP(A1,B1,2)", "=1", "of:=[.A1]", "YARDAGE(A:C,45)", "=",
  "\u0000", "\ud800", "A0", "AAAA1", "A99999999", "-A1^2%", "TRUE", "waist",
]; // biome-ignore format: a list
const TEXTS = [
  "",
  "=1+1",
  "007",
  "16 1/2",
  "<&>",
  "\u000b",
  "__proto__",
  "a".repeat(40_000),
  "1.234",
  "2026-05-04",
  "'",
  "#N/A",
];
const FORMATS = [
  "General",
  "0%",
  "yyyy-mm-dd",
  "h:mm",
  "# ?/?",
  "[$£-809]0.00",
  "@",
  '"cm"0',
  "[h]:mm",
  "\\",
  "0".repeat(300),
];

const xml = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[sign]!);

const address = (random: Random): string =>
  random.pick(["A1", "B1", "C3", "A2", "XFD1", "A1048576", "A0", "ZZZZ9", "A9999999", "", "a1", "C7", "D9"]);

function xlsxParts(random: Random): Record<string, string> {
  const cell = () => {
    const formula = random.chance(0.4)
      ? `<f${random.chance(0.2) ? ' t="shared" si="0" ref="A1:C3"' : ""}>${xml(random.pick(FORMULAS))}</f>`
      : "";
    const type = random.pick(["n", "n", "n", "str", "b", "e", "s", "inlineStr", "d", "zz"]);
    const value = random.chance(0.5) ? random.pick(NUMBERS) : random.pick(TEXTS);
    return `<c r="${address(random)}" t="${type}" s="${random.below(14)}">${formula}<v>${xml(value)}</v></c>`;
  };
  const row = () =>
    `<row r="${random.pick(["1", "2", "3", "9", "1048576", "-1", "x"])}"${random.chance(0.2) ? ' hidden="1"' : ""}>${random.many(random.below(5), cell).join("")}</row>`;
  const extra = random.pick([
    "", "", '<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>', '<mergeCells><mergeCell ref="B2:A1"/></mergeCells>',
    '<dataValidations><dataValidation type="list" sqref="A1:XFD1048576"><formula1>"a,b"</formula1></dataValidation></dataValidations>',
    '<cols><col min="1" max="16384" width="1e9" hidden="1"/></cols>', "<!-- --><?x?>",
  ]); // biome-ignore format: a list
  const formats = FORMATS.map((code, i) => `<numFmt numFmtId="${200 + i}" formatCode="${xml(code)}"/>`).join(
    "",
  );
  const styles = FORMATS.map((_, i) => `<xf numFmtId="${200 + i}" applyNumberFormat="1"/>`).join("");
  const relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  return {
    "[Content_Types].xml": '<Types><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>',
    "_rels/.rels": `<Relationships><Relationship Id="r1" Type="${relation}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns:r="r"><workbookPr date1904="${random.below(2)}"/><sheets><sheet name="${xml(random.pick(["List", "a'b", "[x]", "", "\u{1f9f5}", "a".repeat(300)]))}" sheetId="1" r:id="r1"/></sheets><definedNames><definedName name="${random.pick(["waist", "A1", "a b", "__proto__", "_xlnm.Print_Area"])}">${xml(random.pick(["List!$A$1", "List!$A$1:$B$9", "1+1", "#REF!", "List!$A:$A"]))}</definedName></definedNames></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="r1" Type="${relation}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="r2" Type="${relation}/styles" Target="styles.xml"/></Relationships>`,
    "xl/styles.xml": `<styleSheet><numFmts>${formats}</numFmts><cellXfs>${styles}</cellXfs></styleSheet>`,
    "xl/worksheets/sheet1.xml": `<worksheet><sheetData>${random.many(random.below(6), row).join("")}</sheetData>${extra}</worksheet>`,
  }; // biome-ignore format: parts
}

function odsParts(random: Random): Record<string, string> {
  const repeat = (what: string) =>
    random.chance(0.2)
      ? ` table:number-${what}-repeated="${random.pick(["2", "1000000000", "-1", "x", "1e3"])}"`
      : "";
  const cell = () => {
    const formula = random.chance(0.3)
      ? ` table:formula="of:=${xml(random.pick([...FORMULAS, "SUM([.A1:.B9])", "[#REF!.A1]", "[.A1:.B2:.C3]", "[$'a''b'.A1]"]))}"`
      : "";
    const type = random.pick([
      "float",
      "float",
      "string",
      "date",
      "time",
      "percentage",
      "currency",
      "boolean",
      "zz",
    ]);
    return `<table:table-cell${repeat("columns")}${formula} office:value-type="${type}" office:value="${xml(random.pick(NUMBERS))}" office:date-value="${random.pick(["2026-05-04", "x", "99999-01-01", "2026-05-04T18:00:00Z"])}" office:time-value="${random.pick(["PT1H", "x", "-P1DT1H"])}"${random.chance(0.1) ? ' table:number-columns-spanned="99999999" table:number-rows-spanned="3"' : ""}><text:p>${xml(random.pick(TEXTS))}<text:s text:c="${random.pick(["1", "900000000", "x"])}"/></text:p></table:table-cell>`;
  };
  const row = () =>
    `<table:table-row${repeat("rows")}>${random.many(random.below(5), cell).join("")}</table:table-row>`;
  const group = (inner: string) =>
    random.chance(0.2) ? `<table:table-row-group>${inner}</table:table-row-group>` : inner;
  return {
    mimetype: "application/vnd.oasis.opendocument.spreadsheet",
    "content.xml": `<office:document-content><office:body><office:spreadsheet><table:table table:name="${xml(random.pick(["List", "a'b", "", "x.y"]))}"><table:table-column${repeat("columns")}/>${group(random.many(random.below(6), row).join(""))}</table:table></office:spreadsheet></office:body></office:document-content>`,
  };
}

export const generator = define<Case>({
  name: "table files",
  about: "damaged and hostile spreadsheets: a sound book, or a refusal in one sentence, in its time",
  longest: 12_000,
  make(random) {
    const parts = random.chance(0.5) ? xlsxParts(random) : odsParts(random);
    for (const name of Object.keys(parts)) if (random.chance(0.02)) delete parts[name];
    const changed = random.chance(0.4)
      ? random.many(random.between(1, 6), () => [random.next(), random.below(256)] as const)
      : [];
    return { parts, changed, kept: random.chance(0.1) ? random.next() : 1 };
  },
  async attempt({ parts, changed, kept }) {
    const file = zipSync(
      Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, strToU8(part)])),
      {
        level: changed.length > 0 ? 0 : 6,
      },
    );
    for (const [place, byte] of changed) file[Math.floor(place * file.length)] = byte;
    const bytes = file.slice(0, Math.ceil(file.length * kept));
    const judged = fileKind(bytes.subarray(0, JUDGED_BYTES), "list.xlsx");
    if ("refusal" in judged) return unsound(judged.refusal);
    if (judged.kind !== "table") return null;
    const read = await readTable(bytes, "list.xlsx");
    if ("refusal" in read) return unsound(read.refusal);
    const found = understandTable(read, {}, { decimal: "point", unit: "in", desk: layDesk });
    if ("refusal" in found) return unsound(found.refusal);
    const said = [...found.said, ...found.sheets.flatMap((sheet) => sheet.said)].find((one) => unsound(one));
    if (said !== undefined) return unsound(said);
    const text = writeBook(found.book);
    const again = readBook(text);
    if ("reason" in again) return `its book can't be read: ${again.reason}`;
    return writeBook(again.book) === text ? null : "its book is another one read again";
  },
});

/** A refusal, or what is said of a file, is one line that a person can read. */
const unsound = (sentence: string): string | null =>
  sentence.length > 0 && sentence.length < 900 && !/[\n\r]|undefined(?! entity)|\[object/.test(sentence)
    ? null
    : `no sentence: ${sentence.slice(0, 300)}`;
