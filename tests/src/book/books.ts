/** Random small books for property tests: pages of figures, texts and formulas that point at one another. */
import fc from "fast-check";
import type { LayOrigin } from "../../../functions/lay.ts";
import { cellAddress, columnLetters, pageReference } from "../../../src/book/address.ts";
import { type Book, COLUMN_KINDS, type Page, STAGES } from "../../../src/book/shape.ts";

export const ROWS = 5;
export const COLUMNS = 4;
export const TITLES = ["Draft", "Over skirt", "Maker's notes"] as const;

const dollar = fc.constantFrom("", "$");
const column = fc.nat(COLUMNS);
const row = fc.nat(ROWS);

/** "Draft!$B3", "B$3": a cell as a formula names it. */
export const cellReference = fc
  .tuple(fc.constantFrom("", ...TITLES), dollar, column, dollar, row)
  .map(([title, a, c, b, r]) => `${title && `${pageReference(title)}!`}${a}${columnLetters(c)}${b}${r + 1}`);

const ends = (one: fc.Arbitrary<number>) => fc.tuple(one, one).map((pair) => pair.sort((a, b) => a - b));

/** Ranges of cells, of whole columns and of whole rows, the lesser end first. */
export const rangeReference = fc
  .tuple(
    fc.constantFrom("", ...TITLES),
    fc.constantFrom("cells", "cells", "cells", "columns", "rows"),
    ends(column),
    ends(row),
    fc.array(dollar, { minLength: 4, maxLength: 4 }),
  )
  .map(([title, what, [left, right], [top, bottom], [a, b, c, d]]) => {
    const page = title && `${pageReference(title)}!`;
    const [from, to] = [columnLetters(left!), columnLetters(right!)];
    if (what === "columns") return `${page}${a}${from}:${b}${to}`;
    if (what === "rows") return `${page}${a}${top! + 1}:${b}${bottom! + 1}`;
    return `${page}${a}${from}${b}${top! + 1}:${c}${to}${d}${bottom! + 1}`;
  });

/** A formula of sums over references. */
export const referringFormula = fc
  .array(
    fc.oneof(
      cellReference,
      rangeReference.map((range) => `SUM(${range})`),
    ),
    { minLength: 1, maxLength: 3 },
  )
  .map((parts) => `=${parts.join("+")}`);

const text = fc.constantFrom(
  "waist",
  "",
  "=",
  "a, b; c",
  'say "hem"',
  "16 1/2 in",
  "héme",
  "'=A1",
  "</script>",
  "\\",
  "\u2028",
);
const typed = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 1, max: 999 }).map(String) },
  { weight: 2, arbitrary: referringFormula },
  { weight: 1, arbitrary: text },
);

/** Rows of typed cells; every cell of the page is there. */
export const rowsOf = (cell: fc.Arbitrary<string>) =>
  fc.array(fc.array(cell, { minLength: COLUMNS, maxLength: COLUMNS }), { minLength: ROWS, maxLength: ROWS });

const choices = fc.constantFrom("box; knife", "yes; no", "=A1:A3", "='Over skirt'!$B$2:$B$5");

/** Without the fields that are left out. */
const given = <T extends object>(all: T) =>
  Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };

const page = (title: string) =>
  fc
    .record({
      stage: fc.constantFrom(...STAGES),
      columns: fc.array(
        fc.record({
          heading: fc.string({ maxLength: 8 }),
          kind: fc.constantFrom(...COLUMN_KINDS),
          width: fc.integer({ min: 20, max: 2000 }),
          choices: fc.option(choices, { nil: undefined, freq: 2 }),
        }),
        { minLength: COLUMNS, maxLength: COLUMNS },
      ),
      rows: rowsOf(typed),
      notes: fc.dictionary(
        fc.tuple(row, column).map(([r, c]) => cellAddress(r, c)),
        fc.string({ maxLength: 12, minLength: 1 }),
        { maxKeys: 3 },
      ),
      cells: fc.option(
        fc.dictionary(
          fc.tuple(row, column).map(([r, c]) => cellAddress(r, c)),
          fc
            .record({
              choices: fc.option(choices, { nil: undefined }),
              decimals: fc.option(fc.nat(6), { nil: undefined }),
              unit: fc.constantFrom("cm", "yd", undefined),
            })
            .map(given)
            .filter((one) => Object.keys(one).length > 0),
          { minKeys: 1, maxKeys: 3 },
        ),
        { nil: undefined },
      ),
      frozen: fc.constantFrom(1, 2, undefined),
      hidden: fc.constantFrom(["2:3", "9:9"], ["1:1"], undefined),
    })
    .map((rest): Page => ({ title, ...given({ ...rest, columns: rest.columns.map(given) }) }));

const anywhere = fc
  .tuple(fc.constantFrom(...TITLES), row, column)
  .map(([title, r, c]) => `${pageReference(title)}!${cellAddress(r, c)}`);

const figure = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 8);
const origin = fc.oneof(
  fc.constantFrom<LayOrigin>({ by: "quick" }, { by: "hand" }, { proved: true, seconds: 2, by: "search" }),
  fc.nat(600).map((seconds): LayOrigin => ({ seconds, by: "search" })),
);
const found = fc.record({
  length: figure,
  density: figure,
  placements: fc.array(
    fc.record({ y: figure, x: figure, turn: figure, piece: fc.nat(9), copy: fc.nat(9), cloth: fc.nat(3) }),
    { maxLength: 2 },
  ),
});
/** Kept lays as books have them: those of earlier days do not say how they were found. */
const lay = fc.oneof(
  found,
  fc.tuple(found, origin).map(([rest, by]) => ({ ...rest, origin: by })),
);

export const book: fc.Arbitrary<Book> = fc.record({
  title: fc.string({ minLength: 1, maxLength: 12 }).map((told) => `Skirts ${told}`),
  about: fc.string({ maxLength: 30 }),
  unit: fc.constantFrom("in", "cm"),
  mark: fc.constantFrom("1/2", "1/4", "1/8", "1/16", "1/32", "1 cm", "5 mm", "1 mm"),
  pages: fc.tuple(...TITLES.map(page)),
  names: fc.dictionary(fc.constantFrom("hem", "waist", "Hip_over_pad", "_x", "tour_de_taille"), anywhere),
  trials: fc.array(
    fc.record({ title: fc.string({ maxLength: 8 }), cells: fc.dictionary(anywhere, typed, { maxKeys: 3 }) }),
    { maxLength: 2 },
  ),
  lays: fc.dictionary(fc.stringMatching(/^[0-9a-f]{16}$/), lay, { maxKeys: 2 }),
});
