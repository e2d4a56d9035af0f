import { expect, test } from "vitest";
import { knownHeadings } from "../../../functions/block.ts";
import { cutListColumns } from "../../../functions/cutting/cut-list-block.ts";
import { STOCK_LIST } from "../../../functions/cutting/stock-form.ts";
import { LOG_LIST } from "../../../functions/seams/log-list.ts";
import { SEAM_LIST } from "../../../functions/seams/seam-list.ts";
import { measureNamed } from "../../../functions/survey/survey.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { type HeadingLanguage, MEANINGS } from "../../../src/exchange/heading-words.ts";
import { readTable, understandTable } from "../../../src/exchange/read-table.ts";
import type { TableForm } from "../../../src/exchange/table-form.ts";
import { layDesk } from "../../../src/lay/desk.ts";

async function read(lines: readonly string[], form: TableForm = {}) {
  const table = await readTable(new TextEncoder().encode(lines.join("\n")), "list.csv");
  if ("refusal" in table) throw new Error(table.refusal);
  const found = understandTable(table, form, { decimal: null, unit: "cm", desk: layDesk });
  if ("refusal" in found) throw new Error(found.refusal);
  const [page] = found.book.pages;
  return {
    book: found.book,
    headings: page!.columns.map(({ heading }) => heading),
    rows: page!.rows,
    said: found.sheets[0]!.said.join("\n"),
  };
}

/** The length of cloth 140 cm wide for the cut list on the first page. */
function yardage({ book }: { book: Awaited<ReturnType<typeof read>>["book"] }): string {
  const { columns, rows } = book.pages[0]!;
  const last = String.fromCharCode(64 + columns.length);
  const asked = [...rows, [`=YARDAGE(A1:${last}${rows.length};140)`]];
  const laid = { ...book, pages: [{ ...book.pages[0]!, rows: asked }] };
  return new Engine(laid, layDesk).view({ page: 0, row: rows.length, column: 0 }).shown;
}

const OUTLINE = "M 0 0 L 60 0 L 60 90 L 0 90 Z";
const SLEEVE = "M 0 0 L 40 0 L 40 50 L 0 50 Z";
const LISTS: readonly (readonly [string, readonly string[]])[] = [
  ["English", ["Piece;How many;Outline;On the fold;Grain", `front;2;${OUTLINE};no;straight`, `sleeve;2;${SLEEVE};yes;cross`]],
  ["German", ["Schnittteil;Anzahl;Umriss;Im Bruch;Fadenlauf", `front;2;${OUTLINE};nein;gerade`, `sleeve;2;${SLEEVE};ja;quer`]],
  ["French", ["Pièce;Quantité;Contour;Au pli;Droit fil", `front;2;${OUTLINE};non;droit fil`, `sleeve;2;${SLEEVE};oui;travers`]],
  ["Spanish", ["Pieza;Cantidad;Contorno;Al doblez;Hilo", `front;2;${OUTLINE};no;recto`, `sleeve;2;${SLEEVE};sí;atravesado`]],
]; // biome-ignore format: a table

test("a cut list in German, French or Spanish is laid as the same list in English", async () => {
  const lists = await Promise.all(LISTS.map(([, lines]) => read(lines)));
  const [english, ...others] = lists;
  expect(english!.said).not.toContain("Headings in");
  expect(yardage(english!)).toMatch(/^\d/);
  for (const [i, other] of others.entries()) {
    expect(other.said).toContain(`Headings in ${LISTS[i + 1]![0]} get the words`);
    expect(other.headings).toEqual(["piece", "how many", "outline", "on the fold", "grain"]);
    expect(other.rows).toEqual(english!.rows);
    expect(yardage(other)).toBe(yardage(english!));
  }
});

test("a column is as wide as its heading needs, in the words that came and in ours", async () => {
  const { book } = await read(["Brust;Taille;genommen am", "98;88;2026-05-04"]);
  // A letter of a heading takes 8.7 px on average in the widest of the page's types, and 6 px are blank on either side.
  for (const { heading, width } of book.pages[0]!.columns)
    expect(width, heading).toBeGreaterThanOrEqual(12 + 8.7 * heading.length);
});

test("one word of two languages goes by the other headings", async () => {
  expect((await read(["Nombre;Tissu", "2;drap"])).headings).toEqual(["how many", "cloth"]);
  expect((await read(["Nombre;Tela;Ancho", "falda;lino;140"])).headings).toEqual(["name", "cloth", "width"]);
});

test("one word of two meanings goes by the cells below it", async () => {
  expect((await read(["Stück;Stoff", "2;Leinen"])).headings).toEqual(["how many", "cloth"]);
  expect((await read(["Stück;Stoff;Breite", "Rock;Leinen;140"])).headings).toEqual([
    "piece",
    "cloth",
    "width",
  ]);
});

test("a heading that stays unclear is kept, and asked about, until the maker says which is meant", async () => {
  const lines = ["Personne;Tour de hanches;Taille", "la veuve;101;76"];
  const asked = await read(lines);
  expect(asked.headings).toEqual(["wearer", "hip girth", "Taille"]);
  expect(asked.said).toContain(
    "The heading “Taille” of column C may mean “waist girth” or “stature”; it is kept as it is until you say which.",
  );
  const chosen = await read(lines, { sheets: { 0: { called: { 1: "", 2: "waist girth" } } } });
  expect(chosen.headings).toEqual(["wearer", "Tour de hanches", "waist girth"]);
  expect(chosen.said).not.toContain("may mean");
  const single = await read(["Länge;Zweck", "2;Rock"]);
  expect([single.headings[0], single.said]).toEqual(["Länge", expect.stringContaining("may mean “length”")]);
  const size = await read(["Größe;Brustumfang;Taillenumfang", "42;96;80"]);
  expect(size.headings).toEqual(["Größe", "bust girth", "waist girth"]);
});

test("two columns of one meaning both keep their headings", async () => {
  const { headings, said } = await read(["Teil;Anzahl;Menge", "Rock;2;4"]);
  expect(headings).toEqual(["piece", "Anzahl", "Menge"]);
  expect(said).toContain("“Menge” of column C may mean “how many”");
});

test("a unit behind the words stays where the rest of the file is in another", async () => {
  const { headings } = await read(["Stoff;Breite (mm);Länge (cm)", "Leinen;1400;200"], { unit: "cm" });
  expect(headings).toEqual(["cloth", "width (mm)", "length"]);
});

test("headings in English are left alone, whatever they are in another language", async () => {
  const { headings, said } = await read(["Person;Color;Price", "the miller;grey;12"]);
  expect(headings).toEqual(["Person", "Color", "Price"]);
  expect(said).not.toMatch(/may mean|Headings in/);
});

test("every meaning is a heading that a list or a chart knows, with a word in each language", () => {
  const lists = [...knownHeadings(SEAM_LIST), ...knownHeadings(LOG_LIST), ...knownHeadings(STOCK_LIST)];
  // Of charts, and of lists that are read by any heading.
  const others = ["wearer", "worn beneath", "date", "measurement"];
  for (const { heading, words } of MEANINGS) {
    const isKnown =
      lists.includes(heading) ||
      measureNamed(heading) === heading ||
      (cutListColumns([heading, "how many"])?.size ?? 0) > (heading === "how many" ? 0 : 1) ||
      others.includes(heading);
    expect(isKnown, heading).toBe(true);
    for (const language of ["de", "fr", "es"] as HeadingLanguage[])
      expect(words[language].length, `${heading} in ${language}`).toBeGreaterThan(0);
  }
});
