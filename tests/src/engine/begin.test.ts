import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { convert, UNITS, type Unit } from "../../../functions/units.ts";
import { addPages } from "../../../src/book/add-pages.ts";
import { findPlace, noteAt } from "../../../src/book/address.ts";
import { type } from "../../../src/book/edit.ts";
import { type Garment, readGarment } from "../../../src/book/garment.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { type Answers, begin, labelAmong } from "../../../src/engine/begin.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const folder = new URL("../../../templates/garments/", import.meta.url);
const files = readdirSync(folder);
function garmentIn(file: string): Garment {
  const reading = readGarment(readFileSync(new URL(file, folder), "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.garment;
}
const skirt = garmentIn("gored-skirt.json");
const today = "2026-06-01";
const inUnit = (unit: Unit) => ({ unit, today });
const typedIn = (book: Book, name: string): string => {
  const { page, row, column } = findPlace(book, book.names[name]!)!;
  return book.pages[page]!.rows[row]![column]!;
};
const valueIn = (engine: Engine, name: string) =>
  engine.view(findPlace(engine.book, engine.book.names[name]!)!).value;

const answers: Answers = {
  wearer: "the widow",
  waist: "32",
  hip: "46 1/2",
  hip_drop: "8 1/2",
  skirt_length: "39",
};

test("a second garment of one wearer is told from the first by what it is, of another wearer by the name", () => {
  const cape = garmentIn("cape.json");
  const first = begin(skirt, answers, inUnit("in")).book;
  const label = (book: Book, wearer: string) => labelAmong(book, cape, wearer);
  expect([label(first, "The widow"), label(first, ""), label(first, "the cook")]).toEqual([
    "Cape",
    "Cape",
    "the cook",
  ]);
  const both = addPages(first, begin(cape, {}, inUnit("in")).book, "the cook");
  expect(label(both, "the cook")).toBe("the cook, Cape");
});

test("what is worn beneath is asked once, and stands beside all that was measured over it", () => {
  for (const [file, beneath, also] of [
    ["bodice.json", "a linen shirt", "a linen shirt"],
    ["petticoat.json", "shift", "shift, hip pad"],
  ] as const) {
    const engine = new Engine(begin(garmentIn(file), { beneath }, inUnit("in")).book, layDesk);
    const over = (row: number) => engine.view({ page: 0, row, column: 2 }).shown;
    expect([over(3), over(4), over(7)], file).toEqual([beneath, beneath, also]);
    engine.destroy();
  }
  const { book } = begin(skirt, answers, inUnit("in"));
  const unsaid = findPlace(book, book.names.beneath!)!;
  expect([typedIn(book, "beneath"), noteAt(book, unsaid)]).toEqual([
    "shift, stays, petticoat",
    "An example: type your own over it.",
  ]);
  const asking = files
    .map(garmentIn)
    .filter(({ questions }) => questions.some(({ name }) => name === "beneath"));
  expect(asking.length).toBe(13);
});

test("a cut list begun with a pattern repeat has every piece at the same place of it", () => {
  const list = garmentIn("cut-list.json");
  const length = (pattern_repeat: string) => {
    const given = { cloth_width: "44", one_way: "yes", pattern_repeat };
    const engine = new Engine(begin(list, given, inUnit("in")).book, layDesk);
    const value = valueIn(engine, "cloth_length");
    engine.destroy();
    return value;
  };
  // Two panels of 30 in, two sleeves of 22 in and the band across, 4 in: 30 + 22 + 4 and two gaps of 1/4 in.
  expect(length("0")).toBeCloseTo(56.5, 9);
  // On a repeat of 12 in the sleeves begin at 36, 6 in below the panels, and the band at 60.
  expect(length("12")).toBeCloseTo(64, 9);
});

describe("a garment begun", () => {
  test("marks the figures of a list that nobody was asked for, until another figure is typed", () => {
    const { book } = begin(garmentIn("company.json"), { wearer: "the ferryman" }, inUnit("cm"));
    const at = (address: string) => findPlace(book, address)!;
    expect(noteAt(book, at("Measure!G3"))).toBe("An example: type your own over it.");
    expect(noteAt(book, at("Measure!D3"))).toBe("");
    const measured = type(book, [
      { ...at("Measure!G3"), typed: "103" },
      // As the example has it.
      { ...at("Measure!F3"), typed: "165" },
    ]);
    expect(["Measure!G3", "Measure!F3", "Measure!H3"].map((one) => noteAt(measured, at(one)))).toEqual([
      "",
      "",
      "An example: type your own over it.",
    ]);
  });

  test("doubts none of the figures of a child's breeches", () => {
    const child = { waist: "23", seat: "26 1/2", rise: "8", knee_length: "15 1/2", side_length: "18" };
    const given = { ...child, knee_girth: "11 3/4", small_girth: "10 1/2" };
    const { book, remarks } = begin(garmentIn("breeches.json"), given, inUnit("in"));
    const engine = new Engine(book, layDesk);
    expect([remarks, checks(engine)]).toEqual([[], []]);
    engine.destroy();
  });

  test("has no fittings before the first: the waist of a fitting log is the waist that was typed", () => {
    const { book } = begin(garmentIn("fitting-log.json"), { waist: "94" }, inUnit("cm"));
    const engine = new Engine(book, layDesk);
    expect([valueIn(engine, "waist"), valueIn(engine, "waist_change")]).toEqual([94, 0]);
    engine.destroy();
  });

  test("keeps the day of each measurement when the draft gets a later day: what was not measured again is asked for", () => {
    for (const file of files) {
      const { book } = begin(garmentIn(file), {}, inUnit("in"));
      const texts = book.pages.flatMap(({ rows }) => rows.flat());
      expect(texts, file).not.toContain("=today");
    }
    const { book } = begin(skirt, answers, inUnit("in"));
    const later = type(book, [{ ...findPlace(book, book.names.today!)!, typed: "2026-10-01" }]);
    const engine = new Engine(later, layDesk);
    const said = checks(engine).map(({ sentence }) => sentence);
    engine.destroy();
    expect(said).toContainEqual(expect.stringContaining("taken 122 days ago"));
  });

  test("has the answers in its named cells, and the day", () => {
    const { book, remarks, examples } = begin(skirt, answers, inUnit("in"));
    expect(remarks).toEqual([]);
    expect(examples).toEqual([]);
    expect(book.title).toBe("Gored skirt for the widow");
    expect(["waist", "hip", "today", "gores"].map((name) => typedIn(book, name))).toEqual([
      "32",
      "46 1/2",
      today,
      "6",
    ]);
    // Six gores for a waist of 32 in and half an inch of ease: 32 1/2 / 6.
    const engine = new Engine(book, layDesk);
    expect(valueIn(engine, "top_of_gore")).toBeCloseTo(32.5 / 6, 9);
    engine.destroy();
  });

  test("says what is missing or can't be an answer, and marks the example that stands there", () => {
    const { book, remarks, examples } = begin(
      skirt,
      { ...answers, waist: "", hip: "wide", gores: "6 1/2", one_way: "yess" },
      inUnit("in"),
    );
    expect(remarks).toEqual([
      { name: "waist", fault: true, sentence: "Waist girth is still missing: type a length, such as 27" },
      { name: "hip", fault: true, sentence: 'Hip girth must be a length, such as 40, not "wide"' },
      {
        name: "gores",
        fault: true,
        sentence: 'How many gores? must be a whole number, such as 6, not "6 1/2"',
      },
      {
        name: "one_way",
        fault: true,
        sentence: 'Has the cloth an up and a down? must be no or yes, not "yess"; is yes meant?',
      },
    ]);
    expect(examples.map(({ name }) => name)).toEqual(["waist", "hip", "gores", "one_way"]);
    expect(noteAt(book, findPlace(book, book.names.waist!)!)).toMatch(/^An example: type your own/);
    expect(noteAt(book, findPlace(book, book.names.hip_drop!)!)).toBe("");
  });

  test("refuses formulas, figures with two readings, and dates that are none", () => {
    const sentence = (name: string, given: string) =>
      begin(skirt, { ...answers, [name]: given }, inUnit("in")).remarks.find((one) => one.name === name)
        ?.sentence;
    expect(sentence("waist", "=1/0")).toMatch(/not a formula/);
    expect(sentence("waist", "1,250")).toMatch(/^Waist girth: .*1,250/);
    expect(sentence("waist", "0")).toMatch(/must be a length/);
    expect(sentence("waist", "-27")).toMatch(/must be a length/);
    expect(sentence("today", "yesterday")).toBe(
      'Day of this draft must be a date such as 2026-06-01, not "yesterday"',
    );
    expect(sentence("waist", "270")).toBe("Waist girth is usually between 20 in and 55 in; check 270");
    expect(sentence("waist", "70 cm")).toBe(undefined);
  });

  test("answers typed with a decimal comma count", () => {
    const { book, remarks } = begin(
      skirt,
      { ...answers, waist: "68,5", hip: "110", hip_drop: "21", skirt_length: "99" },
      { ...inUnit("cm"), decimal: "comma" },
    );
    expect(remarks).toEqual([]);
    const engine = new Engine(book, layDesk);
    expect(valueIn(engine, "waist")).toBe(68.5);
    engine.destroy();
  });
});

describe.each(files)("the garment of %s", (file) => {
  const garment = garmentIn(file);

  test.each(UNITS)("is complete, without a problem, in %s", (unit) => {
    // The template's own examples, typed as the answers.
    const given = Object.fromEntries(garment.questions.map(({ name }) => [name, ""]));
    const { book } = begin(garment, given, inUnit(unit));
    expect(readBook(writeBook(book))).toHaveProperty("book");
    const engine = new Engine(book, layDesk);
    expect(checks(engine)).toEqual([]);
    for (const name of garment.tells) expect(valueIn(engine, name), name).not.toBe("");
    for (const name of garment.draws) expect(String(valueIn(engine, name)), name).toMatch(/^M /);
    engine.destroy();
  });

  test("has the same answers in centimetres and millimetres", () => {
    const books = (["cm", "mm"] as const).map((unit) => begin(garment, {}, inUnit(unit)).book);
    const [cm, mm] = books.map((book) => new Engine(book, layDesk)) as [Engine, Engine];
    for (const name of garment.tells) {
      const [a, b] = [valueIn(cm, name), valueIn(mm, name)];
      if (typeof a === "number" && cm.view(findPlace(cm.book, cm.book.names[name]!)!).kind === "length")
        expect(Math.abs(convert(b as number, "mm", "cm") - a), name).toBeLessThanOrEqual(1e-6 * Math.abs(a));
      else expect(b, name).toEqual(a);
    }
    cm.destroy();
    mm.destroy();
  });

  test("can be added twice to an open book, and the two do not touch each other", () => {
    const one = begin(garment, { wearer: "the widow" }, inUnit("in")).book;
    const two = begin(garment, { wearer: "the bell-ringer" }, inUnit("in")).book;
    const both = addPages(addPages(one, two, "the bell-ringer"), two, "the bell-ringer");
    expect(readBook(writeBook(both))).toHaveProperty("book");
    expect(both.pages.length).toBe(3 * one.pages.length);
    expect(both.pages[one.pages.length]!.title).toMatch(/, the bell-ringer$/);
    const [single, triple] = [new Engine(two, layDesk), new Engine(both, layDesk)];
    for (const [name, address] of Object.entries(two.names)) {
      // A name may stand for a list; what rests on the list is compared.
      const at = findPlace(two, address);
      if (!at) continue;
      for (const first of [0, one.pages.length, 2 * one.pages.length])
        if (first > 0)
          expect(triple.view({ ...at, page: at.page + first }).value, name).toEqual(single.view(at).value);
    }
    single.destroy();
    triple.destroy();
  });
});
