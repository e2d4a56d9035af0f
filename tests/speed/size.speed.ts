/**
 * What a book costs against its size, in processor time: opening it, a key, the problems after a key, a
 * formula typed, and saving; beside plain HyperFormula with built-in functions only and as many formulas,
 * and beside the same arithmetic in plain TypeScript. Each size has the same mix: measurement figures, ease,
 * a sewing function, sums, names, and some cells with problems.
 * SIZES=500,5000 sets the numbers of formulas, KEYS=50 how often a key is pressed.
 * node --expose-gc node_modules/.bin/vitest run --config tests/speed/vitest.config.ts tests/speed/size.speed.ts
 */
import { HyperFormula } from "hyperformula";
import { it } from "vitest";
import { findPlace, type Place } from "../../src/book/address.ts";
import { type Book, blankBook } from "../../src/book/shape.ts";
import { asWritten, writeBook } from "../../src/book/write.ts";
import { checks } from "../../src/engine/checks.ts";
import { Engine } from "../../src/engine/engine.ts";
import { USUAL_LIMITS } from "../../src/engine/guards.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { typeCells } from "../../src/store/commands.ts";
import { Store } from "../../src/store/store.ts";
import { print, told } from "./heard.ts";

const SIZES = (process.env.SIZES ?? "500,5000,10000,100000").split(",").map(Number);
const KEYS = Number(process.env.KEYS ?? 30);

/** On a machine with other work the usual limits, which are of the clock, would stop cells. */
const NO_LIMITS = { ...USUAL_LIMITS, clock: () => 0 };

/** Formulas of each row. */
const IN_ROW = 5;
const HIP_EASE = "Measure!J1";

/** What stands in row `i`, counted from 1: a name, two measurements, and five formulas, one of 200 with a problem. */
function rowOf(i: number): string[] {
  const start = i % 50 === 0 ? "=D1" : "";
  return [
    `role ${i}`,
    `${60 + (i % 41) / 2}`,
    `${88 + (i % 37)}`,
    `=B${i}+hip_ease`,
    i % 200 === 7 ? `=EASE(B${i};"tight")` : `=EASE(B${i};C${i})`,
    `=SPREAD_PER_GAP(D${i};D${i}*2;sections)`,
    `=SUM(B${i}:F${i})`,
    `=IF(G${i}>300;E${i}+F${i};ROUND(F${i}*2;1))`,
    ...(start ? [""] : []),
  ];
}

/** The same in built-in functions, for plain HyperFormula. */
const plainRow = (i: number): (string | number)[] => [
  `role ${i}`,
  60 + (i % 41) / 2,
  88 + (i % 37),
  `=B${i}+$J$1`,
  i % 200 === 7 ? `=C${i}/0` : `=C${i}-B${i}`,
  `=(D${i}*2-D${i})/($J$2-1+2*0.5)`,
  `=SUM(B${i}:F${i})`,
  `=IF(G${i}>300,E${i}+F${i},ROUND(F${i}*2,1))`,
];

/** The same in plain TypeScript. */
function plainArithmetic(rows: number, ease: number, sections: number): number {
  let sum = 0;
  for (let i = 1; i <= rows; i += 1) {
    const [b, c] = [60 + (i % 41) / 2, 88 + (i % 37)];
    const d = b + ease;
    const e = c - b;
    const f = (d * 2 - d) / (sections - 1 + 2 * 0.5);
    const g = b + c + d + e + f;
    sum += g > 300 ? e + f : Math.round(f * 20) / 10;
  }
  return sum;
}

function bookOf(formulas: number): Book {
  const book = blankBook("Many", "cm", "1 mm");
  const rows = Array.from({ length: formulas / IN_ROW }, (_, i) => rowOf(i + 1));
  rows[0] = [...rows[0]!, "", "6"].toSpliced(8, 3, "", "6");
  rows[1] = [...rows[1]!.slice(0, 8), "", "7"];
  const columns = Array.from({ length: 10 }, () => ({ heading: "", kind: "any" as const, width: 90 }));
  return {
    ...book,
    names: { hip_ease: HIP_EASE, sections: "Measure!J2" },
    pages: book.pages.map((page, i) => (i === 0 ? { ...page, title: "Measure", columns, rows } : page)),
  };
}

const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
/** Milliseconds of processor time of an act, the rubbish of the act before left out. */
function cost<T>(act: () => T): readonly [number, T] {
  globalThis.gc?.();
  const begun = worked();
  const found = act();
  return [worked() - begun, found];
}
const times = (count: number, act: (n: number) => void): number[] =>
  Array.from({ length: count }, (_, n) => {
    const begun = worked();
    act(n);
    return worked() - begun;
  });
const held = (): number => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
};

/** The cells of a screen, at a place that has nothing to do with the key. */
function paint(store: Store): void {
  for (let row = 0; row < 40; row += 1)
    for (let column = 0; column < 10; column += 1) void store.engine.view({ page: 0, row, column }).shown;
}

it("what a book costs against its size", () => {
  const table = [
    ["formulas", "plain TypeScript", "built-ins: open", "open", "ratio", "first screen", "first problems"],
  ];
  const keys = [["formulas", "engine", "screen", "problems", "all three", "one formula typed", "built-ins"]];
  const rest = [["formulas", "memory, MB", "built-ins, MB", "ratio", "a step written down", "saved"]];
  for (const size of SIZES) {
    const rows = size / IN_ROW;
    const [arithmetic] = cost(() => plainArithmetic(rows, 6, 7));
    const empty = held();
    const sheet = Array.from({ length: rows }, (_, i) => plainRow(i + 1));
    sheet[0]!.push("", 6);
    sheet[1]!.push("", 7);
    const beside = (name: string) => ({ licenseKey: "gpl-v3", maxRows: 1e5, [name]: 0 });
    const [plain, hf] = cost(() => HyperFormula.buildFromSheets({ Measure: sheet }, beside("undoLimit")));
    const plainHeld = held() - empty;
    const plainKeys = times(KEYS, (n) => hf.setCellContents({ sheet: 0, row: 20, col: 1 }, 70 + n / 10));
    hf.destroy();
    const before = held();
    const book = bookOf(size);
    const [open, store] = cost(() => new Store(book, layDesk, (one) => new Engine(one, layDesk, NO_LIMITS)));
    const [screen] = cost(() => paint(store));
    const [first, found] = cost(() => checks(store.engine));
    if (found.length !== Math.ceil((rows - 6) / 200)) throw new Error(`${found.length} problems`);
    const memory = held() - before;
    const place = findPlace(book, "Measure!B21")!;
    const typed = (at: Place, text: string) => {
      const fault = store.run(typeCells([{ ...at, typed: text }]));
      if (fault) throw new Error(fault);
    };
    const parts: number[][] = [[], [], []];
    const all = times(KEYS, (n) => {
      const acts = [() => typed(place, `${70 + n / 10}`), () => paint(store), () => checks(store.engine)];
      for (const [i, act] of acts.entries()) parts[i]!.push(...times(1, act));
    });
    const formula = times(5, (n) => {
      typed(findPlace(book, "Measure!I31")!, `=B31+C31+${n}`);
      paint(store);
      checks(store.engine);
    });
    const last = asWritten(store.book);
    const [written] = cost(() => {
      typed(place, "77");
      return asWritten(store.book).pages[0]!.rows.filter((row, i) => row !== last.pages[0]!.rows[i]);
    });
    writeBook(store.book);
    typed(place, "78");
    const [saved] = cost(() => writeBook(store.book));
    const ms = (one: number) => one.toFixed(one < 10 ? 1 : 0);
    const ratio = (a: number, b: number) => (a / b).toFixed(2);
    table.push([`${size}`, ...[arithmetic, plain, open].map(ms), ratio(open, plain), ms(screen), ms(first)]);
    keys.push([`${size}`, ...parts.map(told), told(all), told(formula), told(plainKeys)]);
    rest.push([`${size}`, ms(memory), ms(plainHeld), ratio(memory, plainHeld), ms(written), ms(saved)]);
    store.engine.destroy();
  }
  print("opening, ms of processor time", table);
  print("after a key, median / 95th percentile in ms of processor time", keys);
  print("memory (exact only with --expose-gc) and saving, ms of processor time", rest);
});
