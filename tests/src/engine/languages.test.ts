/** What the sewing functions say, to a reader of another language: the sentences are in it, and the answers are the same. */
import { afterAll, expect, test, vi } from "vitest";
import { inLetters, madeUpLanguage, untranslated } from "../setup/made-up.ts";

const CYRILLIC = inLetters("абвгдежзийклмнопрстуфхцчшщ");

// Other files of tests share the modules of this one, and their constants are in English.
afterAll(() => vi.resetModules());

const CELLS = {
  refused: "=CAP_CHECK(50;48;3;2)",
  absent: '=WITH_EASE("wide";2)',
  beyond: "=PLEAT_DEPTH(-4;10;3)",
  longer: "=SEAM_CHECK(30;28.5)",
  passed: '=IF(TRUE;longer;"")',
  fine: "=SEAM_CHECK(30;30)",
  tested: '=IF(LEFT(longer;6)="check:";LEN(longer);0)',
  found: '=IF(ISNUMBER(SEARCH("equally long";longer));1;0)',
  layers: '=LAYERS_CHECK("shift and stays";"shift, petticoat")',
  measured: '=MEASURE_CHECK("waist girth";83;"hip girth";100;"female")',
  unusual: "=CUFF(4;20;3)",
  guessed: "=GIRTH_OVER(90;0.3)",
  packs: "=PACKS_TO_BUY(30)",
};

/** Every cell of the book: its value, what is shown of it, and all that is said of it. */
async function read(decimal: "point" | "comma", language: ReturnType<typeof madeUpLanguage> | null) {
  // Constants with sentences are made as their modules are loaded, so the language is taken up before them.
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(language);
  const { Engine } = await import("../../../src/engine/engine.ts");
  const { layDesk } = await import("../../../src/lay/desk.ts");
  const { checks } = await import("../../../src/engine/checks.ts");
  const { remarksOf } = await import("../../../src/engine/remarks.ts");
  const { printed: print } = await import("../../../src/paper/documents.ts");
  const { bookOf } = await import("./whatif-books.ts");
  const engine = new Engine({ ...bookOf(CELLS, "cm"), decimal }, layDesk);
  const names = Object.keys(CELLS);
  const cells = names.map((name, row) => {
    const place = { page: 0, row, column: 1 };
    const { shown, problem } = engine.view(place);
    return { name, value: engine.value(place), shown, problem, remarks: remarksOf(engine, place) };
  });
  const made = await print(engine, {
    what: "working",
    cells: ["Draft!B4"],
    paper: "a4",
    day: new Date(2026, 4, 20),
  } as never);
  const printed =
    "reason" in made
      ? [made.reason]
      : made.drawn.map(({ marks }) =>
          marks.flatMap((mark) => (mark.is === "text" ? [mark.text] : [])).join(" "),
        );
  const list = checks(engine).map(({ sentence }) => sentence);
  engine.destroy();
  speak(null);
  return { cells, list, printed };
}

test.each(["point", "comma"] as const)(
  "refusals, verdicts and remarks are in the reader's language, and every answer is that of an English reader: decimal %s",
  async (decimal) => {
    const english = await read(decimal, null);
    const other = await read(decimal, madeUpLanguage("en-XA", CYRILLIC));
    const answers = ({ cells }: typeof english) => cells.map(({ name, value }) => [name, value]);
    expect(answers(other)).toEqual(answers(english));
    const by = (name: string, { cells }: typeof english) => cells.find((one) => one.name === name)!;
    expect(by("longer", english).shown).toContain("check: the first edge is 1");
    expect(by("longer", other).shown).toContain(CYRILLIC("check:"));
    expect(by("fine", english).shown).toBe("ok");
    expect(by("fine", other).shown).toBe(CYRILLIC("ok"));
    expect(by("passed", other).shown).toBe(by("longer", other).shown);
    expect(other.list.length).toBe(english.list.length);
    expect(other.list.length).toBeGreaterThan(5);
    // Names of arguments, measurements, layers and cells are the book's.
    const own = new Set([
      ...Object.keys(CELLS),
      "most",
      "body",
      "wide",
      "finished",
      "spacing",
      "waist girth",
      "hip girth",
      "shift",
      "stays",
      "petticoat",
      "stays and",
      "depth",
      "wrist",
      "Draft",
      "flat",
      "count",
    ]);
    const said = [
      ...other.cells.flatMap(({ shown, problem, remarks }) => [shown, problem?.sentence ?? "", ...remarks]),
      ...other.list,
    ];
    expect(untranslated(said, own)).toEqual([]);
    expect(other.printed.join(" ")).toContain(CYRILLIC("they should be equally long").slice(0, 8));
  },
);
