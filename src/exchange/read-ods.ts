/** A spreadsheet file of ISO/IEC 26300 as plain data: its content.xml (26300-3, 9), read in one pass. */

import { type SaxesAttributePlain, SaxesParser } from "saxes";
import { phrase, plural } from "../../functions/phrase.ts";
import { cellAddress } from "../book/address.ts";
import { MOST_CELLS } from "../book/shape.ts";
import type { ForeignBook, ForeignCell, ForeignName, ForeignSheet, Rectangle } from "./foreign-book.ts";
import { count, daysOf, joined, plainFormula, timeOf } from "./ods-values.ts";
import { type Attributes, ReadStyles } from "./read-ods-styles.ts";
import { BadZip, partText, unpacked, type ZipPart } from "./zip-parts.ts";

export const ODS_TYPE = "application/vnd.oasis.opendocument.spreadsheet";

/** A kind of file as a sentence can hold it: such names are short, and of plain letters (RFC 6838). */
const inOneLine = (type: string): string => type.slice(0, 80).replace(/[^ -~]/g, "?");

/** Throws `BadZip`. */
export function readOds(parts: ReadonlyMap<string, ZipPart>): ForeignBook {
  const manifest = parts.get("META-INF/manifest.xml");
  if (manifest && /encryption-data/.test(partText(manifest)))
    throw new BadZip(phrase`it is encrypted; open it with its password and save it without one`);
  const mimetype = parts.get("mimetype");
  const type = mimetype ? new TextDecoder().decode(unpacked(mimetype)).trim() : ODS_TYPE;
  if (!type.startsWith(ODS_TYPE)) throw new BadZip(phrase`it is no spreadsheet but ${inOneLine(type)}`);
  const content = parts.get("content.xml");
  if (!content) throw new BadZip(phrase`it has no content; look for a whole copy, or save it again`);
  const reading = new Reading();
  parse(partText(content), reading);
  const meta = parts.get("meta.xml");
  return {
    signs: "26300",
    title: meta ? property(partText(meta), "title") : null,
    about: meta ? property(partText(meta), "description") : null,
    sheets: reading.sheets,
    names: reading.names,
    macros: [...parts.keys()].some((name) => /^(?:Basic|Scripts)\/.*\/./.test(name)),
    elsewhere: reading.elsewhere,
  };
}

function parse(text: string, reading: Reading): void {
  const parser = new SaxesParser({ xmlns: false });
  parser.on("opentag", ({ name, attributes }) =>
    reading.open(name, attributes as Record<string, SaxesAttributePlain & string>),
  );
  parser.on("closetag", ({ name }) => reading.close(name));
  parser.on("text", (said) => reading.text(said));
  parser.on("cdata", (said) => reading.text(said));
  parser.on("error", (reason) => {
    throw new BadZip(
      phrase`its content is damaged (${reason.message.replace(/^undefined:/, "").slice(0, 100)}); save it again`,
    );
  });
  parser.write(text).close();
}

/** A property of the file in meta.xml. */
const property = (text: string, name: "title" | "description"): string | null =>
  new RegExp(`<dc:${name}>([^<]*)<`)
    .exec(text)?.[1]
    ?.replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&")
    .trim() || null;

/** A cell that is being read. */
interface OpenCell {
  readonly attributes: Attributes;
  readonly covered: boolean;
  readonly paragraphs: string[];
  readonly note: string[];
}

/** A sheet that is being read. */
interface OpenSheet {
  readonly title: string;
  readonly hidden: boolean;
  readonly rows: (ForeignCell | undefined)[][];
  readonly merged: Rectangle[];
  readonly widths: Map<number, number>;
  readonly hiddenRows: Set<number>;
  readonly hiddenColumns: Set<number>;
  readonly notes: Map<string, string>;
  readonly validated: Map<string, Rectangle[]>;
  column: number;
  row: number;
  links: number;
  pictures: number;
  charts: number;
}

class Reading {
  readonly sheets: ForeignSheet[] = [];
  readonly names: ForeignName[] = [];
  elsewhere = false;
  readonly #styles = new ReadStyles();
  #sheet: OpenSheet | null = null;
  #row: {
    readonly attributes: Attributes;
    cells: number;
    readonly found: (ForeignCell | undefined)[];
  } | null = null;
  #cell: OpenCell | null = null;
  /** How deep the reader is in what does not count: drawings, tables within cells, tracked changes. */
  #aside = 0;
  #inNote = false;
  #cells = 0;

  open(name: string, attributes: Attributes): void {
    if (this.#aside > 0 || ASIDE.has(name)) {
      this.#aside += 1;
      if (this.#sheet && name === "draw:image") this.#sheet.pictures += 1;
      if (this.#sheet && name === "draw:object") this.#sheet.charts += 1;
      return;
    }
    if (this.#cell) {
      this.#inCell(name, attributes);
      return;
    }
    if (this.#styles.open(name, attributes)) return;
    switch (name) {
      case "table:table":
        this.#openSheet(attributes);
        break;
      case "table:table-source":
        this.elsewhere = true;
        break;
      case "table:table-column":
        this.#column(attributes);
        break;
      case "table:table-row":
        if (this.#sheet) this.#row = { attributes, cells: 0, found: [] };
        break;
      case "table:table-cell":
      case "table:covered-table-cell":
        if (this.#row)
          this.#cell = { attributes, covered: name === "table:covered-table-cell", paragraphs: [], note: [] };
        break;
      case "table:named-range":
        this.names.push({
          name: attributes["table:name"] ?? "",
          sheet: this.#sheet?.title ?? null,
          formula: `[${attributes["table:cell-range-address"] ?? ""}]`,
        });
        break;
      case "table:named-expression":
        this.names.push({
          name: attributes["table:name"] ?? "",
          sheet: this.#sheet?.title ?? null,
          formula: plainFormula(attributes["table:expression"] ?? ""),
        });
    }
  }

  #inCell(name: string, attributes: Attributes): void {
    const texts = this.#inNote ? this.#cell!.note : this.#cell!.paragraphs;
    if (name === "office:annotation") this.#inNote = true;
    else if (name === "text:p") texts.push("");
    else if (name === "text:s") this.text(" ".repeat(Math.min(1000, Number(attributes["text:c"] ?? 1) || 1)));
    else if (name === "text:tab") this.text("\t");
    else if (name === "text:line-break") this.text("\n");
    else if (name === "text:a") this.#sheet!.links += 1;
    // The author and the day of a note are no part of its text.
    else if (this.#inNote && /^(?:dc:|meta:)/.test(name)) this.#aside = 1;
  }

  text(said: string): void {
    if (this.#aside > 0 || !this.#cell) return;
    const texts = this.#inNote ? this.#cell.note : this.#cell.paragraphs;
    if (texts.length > 0) texts[texts.length - 1] += said;
  }

  close(name: string): void {
    if (this.#aside > 0) {
      this.#aside -= 1;
      return;
    }
    switch (name) {
      case "office:annotation":
        this.#inNote = false;
        break;
      case "style:style":
        this.#styles.close();
        break;
      case "table:table-cell":
      case "table:covered-table-cell":
        this.#closeCell();
        break;
      case "table:table-row":
        this.#closeRow();
        break;
      case "table:table":
        this.#closeSheet();
    }
  }

  #openSheet(attributes: Attributes): void {
    this.#sheet = {
      title: attributes["table:name"] ?? `Sheet ${this.sheets.length + 1}`,
      hidden: this.#styles.hidesTable(attributes["table:style-name"]),
      rows: [], merged: [], widths: new Map(), hiddenRows: new Set(), hiddenColumns: new Set(), notes: new Map(),
      validated: new Map(), column: 0, row: 0, links: 0, pictures: 0, charts: 0,
    }; // biome-ignore format: a list
  }

  #column(attributes: Attributes): void {
    const sheet = this.#sheet;
    if (!sheet) return;
    const width = this.#styles.width(attributes["table:style-name"]);
    const hidden = /collapse|filter/.test(attributes["table:visibility"] ?? "");
    const last = sheet.column + count(attributes["table:number-columns-repeated"]);
    // Files give the columns to the very last one a width.
    for (; sheet.column < Math.min(last, KEPT_COLUMNS); sheet.column += 1) {
      if (width !== undefined) sheet.widths.set(sheet.column, width);
      if (hidden) sheet.hiddenColumns.add(sheet.column);
    }
    sheet.column = last;
  }

  #closeCell(): void {
    const [cell, row, sheet] = [this.#cell, this.#row, this.#sheet];
    this.#cell = null;
    // A damaged file may end a cell that it never began.
    if (!cell || !row || !sheet) return;
    const { attributes } = cell;
    const times = count(attributes["table:number-columns-repeated"]);
    const at = row.cells;
    row.cells += times;
    const found = cell.covered ? undefined : this.#valueOf(cell);
    const validated = this.#styles.choices(attributes["table:content-validation-name"]) !== undefined;
    if (cell.note.length > 0) sheet.notes.set(cellAddress(sheet.row, at), cell.note.join("\n").trim());
    const rows = count(row.attributes["table:number-rows-repeated"]);
    if (validated) {
      const name = attributes["table:content-validation-name"]!;
      const where = { top: sheet.row, left: at, bottom: sheet.row + rows - 1, right: at + times - 1 };
      sheet.validated.set(name, [...(sheet.validated.get(name) ?? []), where]);
    }
    const [across, down] = [
      count(attributes["table:number-columns-spanned"]),
      count(attributes["table:number-rows-spanned"]),
    ];
    if (across > 1 || down > 1)
      sheet.merged.push({ top: sheet.row, left: at, bottom: sheet.row + down - 1, right: at + across - 1 });
    if (!found) return;
    this.#counted(times);
    while (row.found.length < at) row.found.push(undefined);
    for (let i = 0; i < times; i += 1) row.found.push(found);
  }

  #counted(cells: number): void {
    this.#cells += cells;
    if (this.#cells > MOST_CELLS * 2)
      throw new BadZip(
        phrase`it has more than ${(MOST_CELLS * 2).toLocaleString("en")} cells, and a book holds at most ${MOST_CELLS.toLocaleString("en")}; save a part of it`,
      );
  }

  #closeRow(): void {
    const [row, sheet] = [this.#row, this.#sheet];
    this.#row = null;
    if (!row || !sheet) return;
    const times = count(row.attributes["table:number-rows-repeated"]);
    const hidden = /collapse|filter/.test(row.attributes["table:visibility"] ?? "");
    // A run of rows to the end of the sheet has no cells, whatever it says of itself.
    if (hidden && times < 100_000) for (let i = 0; i < times; i += 1) sheet.hiddenRows.add(sheet.row + i);
    if (row.found.length > 0) {
      this.#counted(row.found.length * (times - 1));
      while (sheet.rows.length < Math.min(sheet.row, KEPT_ROWS)) sheet.rows.push([]);
      if (sheet.row + times > KEPT_ROWS)
        throw new BadZip(
          phrase`a sheet reaches over more than ${KEPT_ROWS.toLocaleString("en")} rows, too many to read; save a part of it`,
        );
      for (let i = 0; i < times; i += 1) sheet.rows.push(row.found);
    }
    sheet.row += times;
  }

  #valueOf({ attributes, paragraphs }: OpenCell): ForeignCell | undefined {
    const type = attributes["office:value-type"] ?? attributes["calcext:value-type"];
    const text = attributes["office:string-value"] ?? paragraphs.join("\n");
    const formula = attributes["table:formula"];
    if (formula?.includes("#") && /'file:|\]?'?#\$/.test(formula)) this.elsewhere = true;
    const rest = formula === undefined ? {} : { formula: plainFormula(formula) };
    const number = Number(attributes["office:value"]);
    switch (type) {
      case "float":
        return {
          value: number,
          as: this.#styles.shown(attributes["table:style-name"]),
          ...this.#styles.places(attributes["table:style-name"]),
          ...rest,
        };
      case "percentage":
        return { value: number, as: "share", ...rest };
      case "currency":
        return {
          value: number,
          as: "money",
          ...this.#styles.places(attributes["table:style-name"]),
          ...rest,
        };
      case "boolean":
        return { value: attributes["office:boolean-value"] === "true", as: "flag", ...rest };
      case "date":
        return { value: daysOf(attributes["office:date-value"] ?? ""), as: "date", ...rest };
      case "time":
        return { value: timeOf(attributes["office:time-value"] ?? ""), as: "time", ...rest };
    }
    if (text === "" && formula === undefined) return undefined;
    const isError = formula !== undefined && /^(?:#[A-Z/0!?]+|Err:\d+)$/.test(text);
    return { value: text, as: isError ? "error" : "text", ...rest };
  }

  #closeSheet(): void {
    const sheet = this.#sheet;
    this.#sheet = null;
    if (!sheet) return;
    const { title, hidden, rows, merged, widths, hiddenRows, hiddenColumns, notes, links } = sheet;
    const pictures = phrase`${plural(sheet.pictures, "# picture", "# pictures")}`;
    const charts = phrase`${plural(sheet.charts, "# chart", "# charts")}`;
    const choices = [...sheet.validated].flatMap(([name, places]) =>
      joined(places).map((where) => ({ where, list: this.#styles.choices(name)! })),
    );
    this.sheets.push({
      title, hidden, rows, merged, widths, hiddenRows, hiddenColumns, notes, choices, frozen: 0, links,
      ignored: [...(sheet.pictures > 0 ? [pictures] : []), ...(sheet.charts > 0 ? [charts] : [])],
    }); // biome-ignore format: a list
  }
}

/** Elements whose texts and tables are no cells of the sheet. */
const ASIDE = new Set([
  "draw:frame", "draw:custom-shape", "draw:g", "draw:control", "draw:line", "draw:rect", "draw:a", "table:shapes",
  "table:sub-table", "table:tracked-changes", "office:forms", "office:event-listeners", "office:scripts",
]); // biome-ignore format: a list

/** What lies beyond is more than any page holds; the reader of sheets says so where something stands there. */
const KEPT_ROWS = 2_000_000;
const KEPT_COLUMNS = 2000;
