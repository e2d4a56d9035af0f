import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { figureOf } from "../../../functions/worn/figure.ts";
import { girthOf } from "../../../functions/worn/section.ts";
import { between, skirt } from "../../../functions/worn/skirt.ts";
import { lookUp } from "../../../src/book/names.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankPage, type Page } from "../../../src/book/shape.ts";
import { canWear, wornAt } from "../../../src/engine/drawn.ts";
import { bodyAt } from "../../../src/engine/drawn-body.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

function template(name: string): Engine {
  const reading = readBook(readFileSync(`templates/${name}.json`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return new Engine(reading.book, layDesk);
}

/** A book of a Measure page with these rows and a Draft page whose B1 is the garment. */
function chart(
  rows: readonly (readonly string[])[],
  garment: string,
  more: Partial<Book> = {},
  page: Partial<Page> = {},
): Engine {
  const columns = (["text", "length", "length"] as const).map((kind) => ({ heading: "", kind, width: 99 }));
  const measure = { ...blankPage("Measure", "Measure"), columns, rows, ...page };
  const draft = { ...blankPage("Draft", "Draft"), rows: [["the skirt", garment]] };
  return new Engine(
    {
      title: "",
      about: "",
      unit: "in",
      mark: "1/8",
      pages: [measure, draft],
      names: {},
      trials: [],
      lays: {},
      ...more,
    },
    layDesk,
  );
}
const garmentOf = (engine: Engine) => bodyAt(engine, { page: 1, row: 0, column: 1 });
const SKIRT = "=CIRCLE_PANEL(28;24;1/2)";

test("the figure has the girths of the book's named cells, and says from where", () => {
  const engine = template("peplum-bodice");
  const body = bodyAt(engine, lookUp(engine.book, "skirt_flat")!);
  expect(body.known).toMatchObject({
    waist: { length: 27, from: "Measure!B10" },
    hip: { length: 42.5, from: "Measure!B11" },
    hip_drop: { length: 8, from: "Measure!B12" },
  });
  const lengths = { cm: (figure: number) => figure / 2.54, say: String, body };
  const { section, hip_level } = figureOf(
    skirt({ waist: 28, depth: 9, round: between(28, 50) }, lengths).figure,
  );
  expect(girthOf(section(hip_level))).toBeCloseTo(42.5, 6);
});

test("of several wearers side by side the column of the named cells is the drawn wearer's", () => {
  const engine = template("peplum-bodice");
  const place = lookUp(engine.book, "skirt_flat")!;
  expect(bodyAt(engine, place).known.stature).toEqual({ length: 65, from: "Measure!B4" });
  expect(wornAt(engine, place)!.worn.measured).toContain("stature 65 in from Measure!B4");
});

test("several figures in a row without a named column, or two rows of one measurement, are said and not taken", () => {
  const { known, unsure } = garmentOf(
    chart([["hip girth", "40", "44"], ["stature", "65"], ["stature", "66"], ["bust girth", "36"]], SKIRT),
  ); // biome-ignore format: rows of a page
  expect(known).toEqual({ bust: { length: 36, from: "Measure!B4" } });
  expect(unsure.hip).toBe(
    "the hip girth is not used, as its row at Measure!A1 has several figures and no name says whose counts",
  );
  expect(unsure.stature).toContain("2 rows have it: Measure!A2, Measure!A3");
});

test("a chart without names gives what its labels say; a book without measurements gives nothing, and all is assumed", () => {
  const { known } = garmentOf(chart([["Hip girth", "40"], ["waist to hip, along the side", "8"], ["wrist girth", "6"]], SKIRT)); // biome-ignore format: rows of a page
  expect(known).toEqual({
    hip: { length: 40, from: "Measure!B1" },
    hip_drop: { length: 8, from: "Measure!B2" },
  });
  const blank = chart([], SKIRT);
  const drawn = wornAt(blank, { page: 1, row: 0, column: 1 })!.worn;
  expect(drawn.measured).toEqual([]);
  expect(drawn.assumed.join("; ")).toMatch(/a hip of .* below the waist; the figure stands .* tall/);
});

test("a page's own name comes before the book's, and a figure that is no body's is said and not taken", () => {
  const rows = [["a", "40"], ["b", "44"], ["stature", "6"]]; // biome-ignore format: rows of a page
  const own = chart(rows, SKIRT, { names: { hip: "Measure!B1" } });
  expect(garmentOf(own).known.hip).toEqual({ length: 40, from: "Measure!B1" });
  expect(garmentOf(own).unsure.stature).toBe(
    "the stature in Measure!B3 is not used, as no body measures so much or so little",
  );
  const { book } = own;
  const pages = book.pages.map((page, i) => (i === 1 ? { ...page, names: { hip: "Measure!B2" } } : page));
  expect(garmentOf(new Engine({ ...book, pages }, layDesk)).known.hip).toEqual({
    length: 44,
    from: "Measure!B2",
  });
});

test("a cape on a page of two wearers takes nothing from the other wearer's rows, and says so", () => {
  const engine = template("petticoat-and-cape");
  const { known, unsure } = bodyAt(engine, lookUp(engine.book, "cape_half")!);
  expect(known.waist).toBeUndefined();
  expect(known.neck).toEqual({ length: 17, from: "Measure!B10" });
  expect(unsure.hip).toBe(
    'the hip girth in Measure!B4 is not used, as it stands under "The widow, for the petticoat", perhaps for another wearer',
  );
  expect(bodyAt(engine, lookUp(engine.book, "petticoat_half")!).known).toMatchObject({
    waist: { length: 32, from: "Measure!B2" },
    hip: { length: 43.5, from: "Measure!B4" },
  });
});

test("a flared or slashed panel is a skirt where it goes round the waist or its dipped seam, and not as a cuff or a guard", () => {
  const rows = [["waist girth", "28"], ["hip girth", "40"], ["waist to hip", "8"]]; // biome-ignore format: rows of a page
  const wears = (label: string, formula: string, names: Book["names"] = { waist: "Measure!B1" }) => {
    const engine = chart(rows, formula, { names });
    const pages = engine.book.pages.map((page, i) =>
      i === 1 ? { ...page, rows: [[label, formula]] } : page,
    );
    return canWear(new Engine({ ...engine.book, pages }, layDesk), { page: 1, row: 0, column: 1 });
  };
  expect(wears("peplum, one half", "=FLARED_PANEL(14;24;8)")).toBe("yes");
  expect(wears("peplum with ease", "=FLARED_PANEL(29;48;8)")).toBe("yes");
  expect(wears("one of four", "=SLASHED_PANEL(7;30;D1:D1)")).toBe("perhaps");
  expect(wears("one gore", "=FLARED_PANEL(7;22;34)")).toBe("yes");
  // The chart's waist is found by its label too, and a dipped seam where it is longer than the waist.
  expect(wears("peplum, one half", "=FLARED_PANEL(14;24;8)", {})).toBe("yes");
  expect(wears("peplum", "=FLARED_PANEL(SEAM_GIRTH(28;40;8;6;0);60;9)", {})).toBe("yes");
  expect(wears("peplum", "=FLARED_PANEL(35;60;9)", {})).toBe("perhaps");
  // Three cuffs would go round the waist: they are too shallow to be gores. So is a facing at the waist itself.
  expect(wears("wrist", "=FLARED_PANEL(28/3;11;3 1/2)")).toBe("perhaps");
  expect(wears("inside the waist", "=FLARED_PANEL(28;32;2)")).toBe("perhaps");
  expect(wears("skirt facing", "=FLARED_PANEL(28;32;5)")).toBe("perhaps");
  expect(wears("any", "=RECTANGLE(28;32)")).toBe("no");
  expect(wears("any", "=CIRCLE_PANEL(90;32;1/2)")).toBe("yes");
});

test("a panel that may be no skirt is drawn as if it were, and says so", () => {
  const engine = template("peplum-bodice");
  const cuff = lookUp(engine.book, "Cut!B4")!;
  expect(canWear(engine, cuff)).toBe("perhaps");
  expect(wornAt(engine, cuff)!.asIf).toBe(true);
  const skirt = lookUp(engine.book, "skirt_cut")!;
  expect(canWear(engine, skirt)).toBe("yes");
  expect(wornAt(engine, skirt)!.asIf).toBe(false);
});
