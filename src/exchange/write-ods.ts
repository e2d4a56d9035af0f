/** A book as a spreadsheet file of ISO/IEC 26300 whose formulas other programs calculate. */
import { strToU8, zipSync } from "fflate";
import { cellAddress } from "../book/address.ts";
import type { Engine } from "../engine/engine.ts";
import { dayText } from "../engine/show.ts";
import { openFormula } from "./foreign-formula.ts";
import { NumberStyles } from "./ods-styles.ts";
import { type PlainBook, type PlainCell, type PlainSheet, plainBook } from "./plain-book.ts";
import { ODS_TYPE } from "./read-ods.ts";
import type { Spreadsheet } from "./write-xlsx.ts";
import { attributes, escaped, paragraphs } from "./xml-text.ts";

const NAMESPACES = attributes({
  "xmlns:office": "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
  "xmlns:table": "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
  "xmlns:text": "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
  "xmlns:style": "urn:oasis:names:tc:opendocument:xmlns:style:1.0",
  "xmlns:number": "urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0",
  "xmlns:fo": "urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0",
  "xmlns:of": "urn:oasis:names:tc:opendocument:xmlns:of:1.2",
  "xmlns:dc": "http://purl.org/dc/elements/1.1/",
  "xmlns:meta": "urn:oasis:names:tc:opendocument:xmlns:meta:1.0",
  "office:version": "1.2",
});

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n';

export async function writeOds(engine: Engine): Promise<Spreadsheet> {
  const { book } = engine;
  const plain = plainBook(engine);
  const manifest = ["/", "content.xml", "styles.xml", "meta.xml"].map(
    (path) =>
      `<manifest:file-entry manifest:full-path="${path}" manifest:media-type="${path === "/" ? ODS_TYPE : "text/xml"}"/>`,
  );
  const meta = `<dc:title>${escaped(book.title)}</dc:title><dc:description>${escaped(book.about)}</dc:description>`;
  const bytes = zipSync({
    // First and stored, so that the kind of the file stands at a fixed place (26300-2, 3.3).
    mimetype: [strToU8(ODS_TYPE), { level: 0 }],
    "content.xml": strToU8(content(plain)),
    "styles.xml": strToU8(
      `${HEAD}<office:document-styles ${NAMESPACES}><office:styles/></office:document-styles>`,
    ),
    "meta.xml": strToU8(
      `${HEAD}<office:document-meta ${NAMESPACES}><office:meta>${meta}</office:meta></office:document-meta>`,
    ),
    "META-INF/manifest.xml": strToU8(
      `${HEAD}<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0" manifest:version="1.2">${manifest.join("")}</manifest:manifest>`,
    ),
  });
  return { bytes, alive: plain.alive, fixed: plain.fixed };
}

function content({ sheets, names }: PlainBook): string {
  const styles = new NumberStyles();
  const validations = new Validations();
  const tables = sheets.map((sheet) => table(sheet, names, styles, validations));
  const widths = [...new Set(sheets.flatMap((sheet) => sheet.widths))].map(
    (width) =>
      `<style:style style:name="co${width}" style:family="table-column"><style:table-column-properties style:column-width="${((width * 2.54) / 96).toFixed(3)}cm"/></style:style>`,
  );
  const shared = names.filter(({ scope }) => scope === undefined);
  return `${HEAD}<office:document-content ${NAMESPACES}><office:automatic-styles>${widths.join("")}${styles.xml}</office:automatic-styles><office:body><office:spreadsheet>${validations.xml}${tables.join("")}${namesXml(shared)}</office:spreadsheet></office:body></office:document-content>`;
}

/** "'Cut'!$A$1:$B$2" → "$'Cut'.$A$1:.$B$2". */
const address = (range: string): string => openFormula(range).replace(/^of:=\[|\]$/g, "");

const namesXml = (names: PlainBook["names"]): string =>
  names.length === 0
    ? ""
    : `<table:named-expressions>${names
        .map(({ name, range }) => {
          const where = address(range);
          return `<table:named-range ${attributes({
            "table:name": name,
            "table:base-cell-address": where.replace(/:.*$/s, ""),
            "table:cell-range-address": where,
          })}/>`;
        })
        .join("")}</table:named-expressions>`;

/** The lists that cells are chosen from, each once. */
class Validations {
  readonly #names = new Map<string, string>();

  nameOf(list: PlainSheet["choices"][number]["list"]): string {
    const of =
      "area" in list
        ? (list.name ?? `[${address(list.area)}]`)
        : list.map((word) => `"${word.replaceAll('"', '""')}"`).join(";");
    const known = this.#names.get(of);
    if (known !== undefined) return known;
    const name = `list${this.#names.size + 1}`;
    this.#names.set(of, name);
    return name;
  }

  get xml(): string {
    if (this.#names.size === 0) return "";
    const each = [...this.#names].map(
      ([of, name]) =>
        `<table:content-validation ${attributes({
          "table:name": name,
          "table:condition": `of:cell-content-is-in-list(${of})`,
          "table:allow-empty-cell": "true",
          "table:display-list": "unsorted",
        })}><table:error-message table:display="false"/></table:content-validation>`,
    );
    return `<table:content-validations>${each.join("")}</table:content-validations>`;
  }
}

function table(
  sheet: PlainSheet,
  names: PlainBook["names"],
  styles: NumberStyles,
  validations: Validations,
): string {
  const chosen = new Map<string, string>();
  let [tall, wide] = [sheet.rows.length, sheet.widths.length];
  for (const { where, list } of sheet.choices) {
    const name = validations.nameOf(list);
    tall = Math.max(tall, where.bottom + 1);
    wide = Math.max(wide, where.right + 1);
    for (let row = where.top; row <= where.bottom; row += 1)
      for (let column = where.left; column <= where.right; column += 1)
        chosen.set(cellAddress(row, column), name);
  }
  const columns = sheet.widths.map((width) => `<table:table-column table:style-name="co${width}"/>`);
  const rows = Array.from({ length: tall }, (_, r) => {
    const row = sheet.rows[r] ?? [];
    let end = Math.max(row.length, wide);
    while (end > 0 && !row[end - 1] && !chosen.has(cellAddress(r, end - 1))) end -= 1;
    const cells = Array.from({ length: end }, (_, c) =>
      cellXml(row[c], chosen.get(cellAddress(r, c)), styles),
    );
    const hidden = sheet.hidden.has(r) ? ' table:visibility="collapse"' : "";
    return `<table:table-row${hidden}>${cells.join("") || "<table:table-cell/>"}</table:table-row>`;
  });
  const own = names.filter(({ scope }) => scope === sheet.title);
  return `<table:table table:name="${escaped(sheet.title)}">${columns.join("") || "<table:table-column/>"}${rows.join("")}${namesXml(own)}</table:table>`;
}

function cellXml(cell: PlainCell | undefined, list: string | undefined, styles: NumberStyles): string {
  const validation = list === undefined ? {} : { "table:content-validation-name": list };
  if (!cell) return `<table:table-cell ${attributes(validation)}/>`;
  const { value, formula, format, note, bold } = cell;
  const style = bold ? styles.bold : styles.nameOf(format);
  const all = {
    ...(style !== null && { "table:style-name": style }),
    ...validation,
    ...(formula !== undefined && { "table:formula": openFormula(formula) }),
    ...valueAttributes(value, format),
  };
  const texts = typeof value === "string" ? paragraphs(value) : "";
  const said = note === undefined ? "" : `<office:annotation>${paragraphs(note)}</office:annotation>`;
  return `<table:table-cell ${attributes(all)}>${said}${texts}</table:table-cell>`;
}

function valueAttributes(value: PlainCell["value"], format = ""): Record<string, string> {
  if (value === null) return {};
  if (typeof value === "boolean")
    return { "office:value-type": "boolean", "office:boolean-value": value ? "true" : "false" };
  if (typeof value === "string") return { "office:value-type": "string" };
  if (format === "yyyy-mm-dd") return { "office:value-type": "date", "office:date-value": dayText(value) };
  return {
    "office:value-type": format.endsWith("%") ? "percentage" : "float",
    "office:value": String(value),
  };
}
