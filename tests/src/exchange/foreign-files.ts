/** Small spreadsheet files for the tests: made part by part, or by SheetJS. */
import * as XLSX from "@e965/xlsx";
import { strToU8, zipSync } from "fflate";
import { readTable, understandTable } from "../../../src/exchange/read-table.ts";
import type { TableForm } from "../../../src/exchange/table-form.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const RELATION = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const CONTENT = "http://schemas.openxmlformats.org/package/2006";

/** A file of ISO/IEC 29500 of one sheet with these rows as XML; `more` adds parts or takes their place. */
export function sheetFile(
  rows: string,
  more: Readonly<Record<string, string | Uint8Array>> = {},
): Uint8Array {
  const parts: Record<string, string | Uint8Array> = {
    "[Content_Types].xml": `<Types xmlns="${CONTENT}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="${CONTENT}/relationships"><Relationship Id="r1" Type="${RELATION}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${RELATION}"><sheets><sheet name="List" sheetId="1" r:id="r1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${CONTENT}/relationships"><Relationship Id="r1" Type="${RELATION}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData></worksheet>`,
    ...more,
  };
  return packed(parts);
}

export const packed = (parts: Readonly<Record<string, string | Uint8Array>>): Uint8Array =>
  zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
    ),
  );

/** A file of ISO/IEC 26300 with this body of the spreadsheet, and these styles before it. */
export const openFile = (
  body: string,
  styles = "",
  more: Readonly<Record<string, string>> = {},
): Uint8Array =>
  packed({
    mimetype: "application/vnd.oasis.opendocument.spreadsheet",
    "content.xml": `<?xml version="1.0"?><office:document-content><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${body}</office:spreadsheet></office:body></office:document-content>`,
    ...more,
  });

/** A file that SheetJS writes. */
export const written = (
  sheets: Readonly<Record<string, XLSX.WorkSheet>>,
  type: "xlsx" | "ods",
  workbook: object = {},
): Uint8Array =>
  new Uint8Array(
    XLSX.write({ SheetNames: Object.keys(sheets), Sheets: sheets, Workbook: workbook } as XLSX.WorkBook, {
      type: "array",
      bookType: type,
      cellStyles: true,
    }),
  );

/** A file as it is understood; throws the sentence of a refusal. */
export async function understood(
  bytes: Uint8Array,
  form: TableForm = {},
  name = "list.xlsx",
  decimal: "point" | "comma" | null = "point",
) {
  const read = await readTable(bytes, name);
  const found =
    "refusal" in read ? read : understandTable(read, form, { decimal, unit: "in", desk: layDesk });
  if ("refusal" in found) throw new Error(found.refusal);
  return { ...found, all: [...found.said, ...found.sheets.flatMap(({ said }) => said)].join("\n") };
}

/** The sentence with which a file is refused. */
export async function refusal(bytes: Uint8Array, name?: string): Promise<string> {
  try {
    await understood(bytes, {}, name);
    return "read";
  } catch (reason) {
    return (reason as Error).message;
  }
}
