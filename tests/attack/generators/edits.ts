import * as edit from "../../../src/book/edit.ts";
import { type Book, COLUMN_KINDS, type ColumnKind } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import * as commands from "../../../src/store/commands.ts";
import { nameCell } from "../../../src/store/names.ts";
import { Store } from "../../../src/store/store.ts";
import { define } from "../generator.ts";
import { argument } from "../pieces-of-formula.ts";
import { bookWith, engineFault, SHORT } from "../probe.ts";
import type { Random } from "../random.ts";

const FUNCTIONS = [
  "SUM",
  "IF",
  "INDEX",
  "VLOOKUP",
  "SEQUENCE",
  "OFFSET",
  "TEXT",
  "ISREF",
  "ROW",
  "MATCH",
  "COUNTIF",
  "SORT",
  "WITH_EASE",
];
const BOMBS = [
  "=0:5",
  "=OFFSET()",
  "=SUM({B1;B2})",
  "=SEQUENCE(3)",
  "=A:Z",
  "1e308",
  "=1e308*1 in",
  "=D1",
  "=D2+D3",
];

type Step = readonly [what: string, ...rest: (number | string)[]];

function step(random: Random): Step {
  const [page, row, column] = [random.below(3), random.below(7), random.below(6)];
  const typed = random.chance(0.3)
    ? random.pick(BOMBS)
    : random.chance(0.2)
      ? random.pick(["5", "", "a text", "16 1/2"])
      : `=${argument(random, FUNCTIONS)}${random.pick(["", "+", "*", "&"])}${random.pick(["", "B1", "D2", "hem", "SUM(B1:D9)"])}`;
  return random.pick<Step>([
    ["type", page, row, column, typed],
    ["type", 0, row, 3, typed],
    ["type", 0, row, 3, typed],
    ["rows in", page, row, random.between(1, 3)],
    ["rows out", page, row, random.between(1, 3)],
    ["columns in", page, column],
    ["columns out", page, column],
    ["kind", page, column, random.pick(COLUMN_KINDS)],
    ["name", page, row, column, random.pick(["hem", "waist", "brim", "__proto__", "constructor"])],
    ["page out", page],
    ["page called", page, random.pick(["Cut", "Measures", "Ärmel", "constructor", "__proto__", "A1", "1"])],
    ["unit", random.pick(["in", "cm"])],
    ["undo"],
    ["redo"],
  ]);
}

function act(store: Store, [what, ...rest]: Step): void {
  const [a, b, c, d] = rest as [number, number, number, string];
  const { book } = store;
  if (typeof a === "number" && a >= book.pages.length) return;
  const at = { page: a, row: b, column: c };
  switch (what) {
    case "type":
      store.run(commands.typeCells([{ ...at, typed: d }]));
      break;
    case "rows in":
      store.run(commands.insertRows(a, b, c));
      break;
    case "rows out":
      store.run(commands.removeRows(a, b, c));
      break;
    case "columns in":
      store.run(commands.insertColumns(a, Math.min(b, book.pages[a]!.columns.length), 1));
      break;
    case "columns out":
      store.run(commands.removeColumns(a, Math.min(b, book.pages[a]!.columns.length - 1), 1));
      break;
    case "kind":
      if (b < book.pages[a]!.columns.length)
        store.run(commands.changeColumn(a, b, { kind: rest[2] as ColumnKind }));
      break;
    case "name":
      store.run(nameCell(at, d));
      break;
    case "page out":
      store.run(commands.removePage(a));
      break;
    case "page called":
      store.run(commands.renamePage(a, String(rest[1])));
      break;
    case "unit":
      store.run(changeUnit(rest[0] as "in" | "cm"));
      break;
    case "undo":
      store.undo();
      break;
    default:
      store.redo();
  }
}

/** What a page shows of every cell. Where a circle begins depends on the way there. */
function shown(engine: Engine): string[] {
  return engine.book.pages.flatMap((page, index) =>
    page.rows.flatMap((cells, row) =>
      cells.map((typed, column) => {
        const { shown, value, problem, kind } = engine.view({ page: index, row, column });
        const says =
          problem && (/rests on itself|stopped after/.test(problem.sentence) ? "a circle" : problem.sentence);
        const changing = /TODAY|NOW|RAND/.test(typed);
        return `${index}.${row}.${column} ${typed}: ${changing ? "" : `${shown} ${value}`} ${kind} ${says}`;
      }),
    ),
  );
}

function difference(engine: Engine, book: Book): string | null {
  const fresh = new Engine(book, layDesk, SHORT);
  try {
    const [a, b] = [shown(engine), shown(fresh)];
    const at = a.findIndex((one, i) => one !== b[i]);
    return at < 0 ? null : `after the edits ${a[at]}; built anew ${b[at]}`;
  } finally {
    fresh.destroy();
  }
}

export const generator = define<readonly Step[]>({
  name: "edits",
  about: "25 random edits of a small book, undone and redone: the engine shows what one built anew shows",
  make: (random) => random.many(25, () => step(random)),
  attempt(steps) {
    const store = new Store(
      edit.type(bookWith(["=B1+1", "=D1*2", "=SUM(B1:B4)"]), []),
      layDesk,
      (book) => new Engine(book, layDesk, SHORT),
    );
    for (const one of steps) act(store, one);
    const { engine } = store;
    const fault = engineFault(engine, false) ?? difference(engine, store.book);
    while (store.undoable) {
      const refusal = store.undo();
      if (refusal) return `undo: ${refusal}`;
    }
    const first = fault ?? difference(engine, store.book);
    engine.destroy();
    return first;
  },
  longest: 10_000,
});
