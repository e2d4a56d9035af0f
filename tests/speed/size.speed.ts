/**
 * What a book costs against its size, in processor time: opening it, a key, the problems after a key, a
 * formula typed, memory and saving; beside plain HyperFormula with built-in functions only and as many formulas,
 * and beside the same arithmetic in plain TypeScript, which calculates everything anew at each key. Each size
 * has the same mix: measurement figures, ease, a sewing function, sums, names, and some cells with problems.
 * Prints tables with the ratios and writes the plot dist/cost-against-size.svg.
 * SIZES=500,5000 sets the numbers of formulas, KEYS=50 how often a key is pressed, PLOT=file.svg where the plot goes.
 * npm run speed -- tests/speed/size.speed.ts
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { DetailedCellError, HyperFormula } from "hyperformula";
import { it, vi } from "vitest";
import { findPlace, type Place } from "../../src/book/address.ts";
import { type Book, blankBook } from "../../src/book/shape.ts";
import type { Store } from "../../src/store/store.ts";
import { costPlot, type Line } from "./cost-plot.ts";
import { print, told } from "./heard.ts";

const SIZES = (process.env.SIZES ?? "500,1000,2000,5000,10000,20000,50000,100000").split(",").map(Number);
const KEYS = Number(process.env.KEYS ?? 30);
const PLOT = process.env.PLOT ?? "dist/cost-against-size.svg";

/** The program as it is just loaded: what it keeps from one size must not serve the next. */
async function loaded() {
  vi.resetModules();
  const { asWritten, writeBook } = await import("../../src/book/write.ts");
  const { checks } = await import("../../src/engine/checks.ts");
  const { Engine } = await import("../../src/engine/engine.ts");
  const { USUAL_LIMITS } = await import("../../src/engine/guards.ts");
  const { layDesk } = await import("../../src/lay/desk.ts");
  const { typeCells } = await import("../../src/store/commands.ts");
  const { Store } = await import("../../src/store/store.ts");
  // On a machine with other work the usual limits, which are of the clock, would stop cells.
  const limits = { ...USUAL_LIMITS, clock: () => 0 };
  const open = (book: Book) => new Store(book, layDesk, (one) => new Engine(one, layDesk, limits));
  return { asWritten, writeBook, checks, typeCells, open };
}

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

/** The same in plain TypeScript: the values of all rows. */
function plainArithmetic(rows: number, first: number, ease: number, sections: number): Float64Array {
  const values = new Float64Array(rows * 7);
  for (let i = 1; i <= rows; i += 1) {
    const [b, c] = [i === 21 ? first : 60 + (i % 41) / 2, 88 + (i % 37)];
    const d = b + ease;
    const e = c - b;
    const f = (d * 2 - d) / (sections - 1 + 2 * 0.5);
    const g = b + c + d + e + f;
    values.set([b, c, d, e, f, g, g > 300 ? e + f : Math.round(f * 20) / 10], (i - 1) * 7);
  }
  return values;
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

setFlagsFromString("--expose-gc");
const collect: () => void = runInNewContext("gc");

const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
/** Milliseconds of processor time of an act, the rubbish of the act before left out. */
function cost<T>(act: () => T): readonly [number, T] {
  collect();
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
  // The second time takes what only the first has let go.
  collect();
  collect();
  return process.memoryUsage().heapUsed / 1e6;
};

/** The cells of a screen, at a place that has nothing to do with the key. */
function paint(store: Store): void {
  for (let row = 0; row < 40; row += 1)
    for (let column = 0; column < 10; column += 1) void store.engine.view({ page: 0, row, column }).shown;
}

/** What was measured at one size: processor time in milliseconds, memory in MB. */
interface Cost {
  readonly open: number;
  readonly key: number;
  readonly problems: number;
  readonly memory: number;
}

interface Size {
  readonly formulas: number;
  readonly ours: Cost;
  readonly builtIns: Cost;
  /** It has no list of problems. */
  readonly plain: Omit<Cost, "problems">;
  /** Rows of the tables that stand by themselves. */
  readonly opened: readonly string[];
  readonly keys: readonly string[];
  readonly rest: readonly string[];
}

const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)]!;
const ms = (one: number): string => one.toFixed(one < 10 ? 1 : 0);

function ofPlain(rows: number): Size["plain"] {
  const empty = held();
  const [open, values] = cost(() => plainArithmetic(rows, 70, 6, 7));
  // The bytes of the figures themselves do not count as heap.
  const memory = Math.max(held() - empty, 0) + values.byteLength / 1e6;
  const key = median(times(KEYS, (n) => void plainArithmetic(rows, 70 + n / 10, 6, 7)));
  return { open, key, memory };
}

function ofBuiltIns(rows: number): Cost & { readonly keys: readonly number[] } {
  const empty = held();
  const sheet = Array.from({ length: rows }, (_, i) => plainRow(i + 1));
  sheet[0]!.push("", 6);
  sheet[1]!.push("", 7);
  const beside = (name: string) => ({ licenseKey: "gpl-v3", maxRows: 1e5, [name]: 0 });
  const [open, hf] = cost(() => HyperFormula.buildFromSheets({ Measure: sheet }, beside("undoLimit")));
  const memory = held() - empty;
  const keys = times(KEYS, (n) => hf.setCellContents({ sheet: 0, row: 20, col: 1 }, 70 + n / 10));
  // Without a list of what may be wrong, every value is looked at.
  const [problems] = cost(() =>
    hf.getSheetValues(0).reduce((sum, row) => sum + row.filter((one) => one instanceof DetailedCellError).length, 0),
  ); // biome-ignore format: short
  hf.destroy();
  return { open, key: median(keys), problems, memory, keys };
}

async function measured(size: number): Promise<Size> {
  const { asWritten, writeBook, checks, typeCells, open: opened } = await loaded();
  const rows = size / IN_ROW;
  const plain = ofPlain(rows);
  const builtIns = ofBuiltIns(rows);
  const before = held();
  const book = bookOf(size);
  const [open, store] = cost(() => opened(book));
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
  store.engine.destroy();
  return {
    formulas: size,
    ours: { open, key: median(parts[0]!), problems: median(parts[2]!), memory },
    builtIns,
    plain,
    opened: [screen, first].map(ms),
    keys: [...parts.map(told), told(all), told(formula), told(builtIns.keys)],
    rest: [written, saved].map(ms),
  };
}

const RATIOS = [
  ["open", "opening, ms"],
  ["key", "a key in the engine, median ms"],
  ["memory", "memory, MB"],
] as const;

it("what a book costs against its size", async () => {
  // What is made once, whatever the size, is made before.
  await measured(500);
  const sizes: Size[] = [];
  for (const size of SIZES) sizes.push(await measured(size));
  for (const [field, title] of RATIOS)
    print(title, [
      ["formulas", "ours", "built-ins", "ratio", "plain TypeScript", "ratio"],
      ...sizes.map(({ formulas, ours, builtIns, plain }) => [
        `${formulas}`,
        ms(ours[field]),
        ms(builtIns[field]),
        (ours[field] / builtIns[field]).toFixed(2),
        plain[field].toFixed(2),
        (ours[field] / plain[field]).toFixed(plain[field] > ours[field] ? 2 : 0),
      ]),
    ]);
  print("the list of problems after a key, median ms; with built-ins every value is looked at", [
    ["formulas", "ours", "built-ins", "ratio"],
    ...sizes.map(({ formulas, ours, builtIns }) => [
      `${formulas}`,
      ms(ours.problems),
      ms(builtIns.problems),
      (ours.problems / builtIns.problems).toFixed(2),
    ]),
  ]);
  const row = (of: "opened" | "keys" | "rest") =>
    sizes.map(({ formulas, ...size }) => [`${formulas}`, ...size[of]]);
  print("after opening, ms", [["formulas", "first screen", "first problems"], ...row("opened")]);
  print("after a key, median / 95th percentile in ms", [
    ["formulas", "engine", "screen", "problems", "all three", "one formula typed", "built-ins"],
    ...row("keys"),
  ]);
  print("saving, ms", [["formulas", "a step written down", "saved"], ...row("rest")]);

  const line = (name: string, of: (size: Size) => number | undefined): Line => ({
    name,
    // What took less than the clock can tell is drawn at a hundredth.
    points: sizes.map((size) => [size.formulas, Math.max(of(size)!, 0.01)]),
  });
  const panels = (["open", "key", "problems", "memory"] as const).map((field) => ({
    title: { open: "Opening", key: "A key", problems: "Problems after a key", memory: "Memory" }[field],
    unit: field === "memory" ? "MB" : "ms of processor time",
    lines: [
      line("Ellwand", ({ ours }) => ours[field]),
      line("built-in functions of HyperFormula", ({ builtIns }) => builtIns[field]),
      ...(field === "problems" ? [] : [line("plain TypeScript, all anew", ({ plain }) => plain[field])]),
    ],
  }));
  mkdirSync(dirname(PLOT), { recursive: true });
  writeFileSync(PLOT, costPlot(panels));
  console.log(`the plot is in ${PLOT}`);
});
