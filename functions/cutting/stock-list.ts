/**
 * The list of the cloth in stock: one row is one piece of cloth. What is reserved for other jobs is taken
 * off its length first, then what it loses in washing before it is cut.
 */
import type { ListForm, ListRow, Take } from "../define.ts";
import type { LayCloth } from "../lay.ts";
import { nearestWord } from "../nearest-word.ts";
import { readPiece } from "../pieces/piece.ts";
import { type CellOfList, Refusal, refusingAt } from "../refusal.ts";
import { oddCloth } from "./cloth-in-stock.ts";

const length = (about: string, from = 0): Take => ({ kind: "length", about, from, to: 100_000 });

const STOCK_LIST = {
  noun: "the list of cloth in stock",
  columns: {
    cloth: {
      headings: ["cloth", "fabric", "material"],
      about: "which cloth it is, as a cut list calls it; what follows a comma is a note",
      take: { kind: "text", about: "the cloth" },
    },
    name: {
      headings: ["piece of cloth", "name", "called", "stock piece", "remnant"],
      about: "what this one piece is called; the cloth where it is blank. No two pieces have one name",
      take: { kind: "text", about: "the name of the piece of cloth" },
    },
    full: {
      headings: ["width", "full width"],
      about: "its width from edge to edge; it is laid on where no usable width is given",
      take: { kind: "length", about: "the width", from: 1, to: 1000 },
    },
    width: {
      headings: ["usable width", "width between the selvedges"],
      about: "its width between the selvedges, as it is before washing",
      take: { kind: "length", about: "the usable width", from: 1, to: 1000 },
    },
    length: {
      headings: ["length", "length in stock", "in stock"],
      about: "its length, as it is before washing; blank where a shape is given",
      take: length("the length"),
    },
    shape: {
      headings: ["shape", "outline"],
      about:
        "the outline of a remnant that is no rectangle, its grain down the page, closed lines inside it holes or flaws",
      take: { kind: "piece", about: "the outline" },
    },
    nap: {
      headings: ["nap", "one way"],
      about: "yes where no piece may be turned end for end on it",
      take: { kind: "flag", about: "whether it has a nap" },
    },
    repeat: {
      headings: ["repeat", "pattern repeat"],
      about: "the length of its pattern repeat along the selvedge; blank for plain cloth",
      take: { kind: "length", about: "the repeat", from: 0, to: 200 },
    },
    shrinkage: {
      headings: ["shrinkage", "shrinkage of length"],
      about:
        "the share of its length that it still loses when it is washed before cutting, such as 5%; blank for cloth already washed",
      take: { kind: "share", about: "the shrinkage", from: -0.5, to: 0.9 },
    },
    widthShrinkage: {
      headings: ["shrinkage of width", "width shrinkage"],
      about: "the share of its width that it still loses in that wash",
      take: { kind: "share", about: "the shrinkage of its width", from: -0.5, to: 0.9 },
    },
    price: {
      headings: ["price", "price paid"],
      about: "what it cost; not used in laying",
      take: { kind: "money", about: "the price" },
    },
    colour: {
      headings: ["colour", "color"],
      about: "its colour; not used in laying",
      take: { kind: "text", about: "the colour" },
    },
    reserved: {
      headings: ["reserved", "length reserved"],
      about: "the length of it that a job has reserved, as it is before washing",
      take: length("the length reserved"),
    },
    job: {
      headings: ["reserved for", "job"],
      about: "the job that it is reserved for; that job itself may cut it",
      take: { kind: "text", about: "the job" },
    },
  },
} as const satisfies ListForm;

type Field = keyof typeof STOCK_LIST.columns;

/** The argument of every function that reads the list. */
export const STOCK_TAKE = {
  kind: "block",
  about: "the list of cloth in stock with its headings; order and other columns don't matter",
  list: STOCK_LIST,
} as const satisfies Take;

/** The argument of the job that cuts. */
export const JOB_TAKE = {
  kind: "text",
  about:
    "the job that cuts: what the stock has reserved for it is there for it; all else that is reserved is taken off",
  otherwise: null,
} as const satisfies Take;

/** One piece of cloth in stock. */
export interface StockPiece {
  readonly name: string;
  readonly cloth: string;
  /** Its length before washing, what is reserved of it, and what is left. */
  readonly length: number;
  readonly reserved: number;
  readonly left: number;
  /** The cloth to lay on, washed; null when nothing is left of it. */
  readonly washed: LayCloth | null;
  readonly isNapped: boolean;
  readonly repeat: number;
  /** No usable width is given, so that the full width counts as usable. */
  readonly isFullWidth: boolean;
  /** The cell of its row in this column. */
  readonly at: (field: Field) => CellOfList | undefined;
}

const textIn = (row: ListRow, field: Field): string => String(row.cells[field] ?? "").trim();
const figureIn = (row: ListRow, field: Field): number | null => row.cells[field] as number | null;
/** The cloth of a cell: "linen, from the chest" is linen. */
const clothIn = (row: ListRow): string => textIn(row, "cloth").split(",")[0]!.trim();
const nameIn = (row: ListRow): string => textIn(row, "name") || textIn(row, "cloth");

export const sameName = (a: string, b: string): boolean =>
  a.trim().toLowerCase().replace(/\s+/g, " ") === b.trim().toLowerCase().replace(/\s+/g, " ");

/** The pieces in stock of one cloth, all pieces when it is blank. Refuses a cloth that is likely misspelt; none may be of it. */
export function stockOf(
  stock: readonly ListRow[],
  cloth: string,
  job: string | null,
  cm: (figure: number) => number,
): StockPiece[] {
  if (stock.length === 0) throw new Refusal(`${STOCK_LIST.noun} is empty: give at least one piece of cloth`);
  const called = stock.map((row) => clothIn(row) || nameIn(row));
  const cloths = called.filter((one, i) => called.findIndex((other) => sameName(one, other)) === i);
  if (cloth === "" && cloths.length > 1)
    throw new Refusal(
      `${STOCK_LIST.noun} has ${cloths.length} cloths (${listText(cloths)}): say in the argument cloth which is laid on`,
    );
  const rows = stock.filter((_, i) => cloth === "" || sameName(called[i]!, cloth));
  const near = rows.length > 0 ? undefined : nearestWord(cloth, cloths);
  if (near) throw new Refusal(`no cloth in stock is "${cloth}"; is "${near}" meant?`);
  return stockPieces(rows, job, cm);
}

/** The piece in stock of this name. Refuses a name that no piece has, or two have. */
export function stockNamed(
  stock: readonly ListRow[],
  name: string,
  job: string | null,
  cm: (figure: number) => number,
): StockPiece {
  const rows = stock.filter((row) => sameName(nameIn(row), name));
  if (rows.length > 0) return stockPieces(rows, job, cm)[0]!;
  const names = stock.map(nameIn).filter((one) => one !== "");
  const near = nearestWord(name, names);
  throw new Refusal(
    `no cloth in stock is called "${name.trim().slice(0, 40)}"${near ? `; is "${near}" meant?` : `, only ${listText(names)}`}`,
  );
}

const listText = (names: readonly string[]): string =>
  `${names
    .slice(0, 3)
    .map((one) => `"${one}"`)
    .join(", ")}${names.length > 3 ? " and others" : ""}`;

/** The rows as pieces of cloth. Refuses two of one name. */
function stockPieces(
  rows: readonly ListRow[],
  job: string | null,
  cm: (figure: number) => number,
): StockPiece[] {
  rows.forEach((row, i) => {
    const name = nameIn(row);
    const first = rows.slice(0, i).find((other) => sameName(nameIn(other), name));
    if (first && name !== "")
      throw refusal(
        row,
        textIn(row, "name") === "" ? "cloth" : "name",
        `two pieces of cloth in stock are called "${name}", in rows ${first.number} and ${row.number}: give each a name of its own`,
      );
  });
  return rows.map((row) => stockPiece(row, job, cm));
}

const cellOf = (row: ListRow, field: Field): CellOfList | undefined =>
  row.places[field] === undefined ? undefined : { argument: "stock", cell: row.places[field] };

const refusal = (row: ListRow, field: Field, sentence: ConstructorParameters<typeof Refusal>[0]) =>
  new Refusal(sentence, cellOf(row, field));

function stockPiece(row: ListRow, job: string | null, cm: (figure: number) => number): StockPiece {
  const name = nameIn(row);
  const at = (field: Field) => cellOf(row, field);
  if (name === "") throw refusal(row, "cloth", `row ${row.number} of ${STOCK_LIST.noun} has no name`);
  const [full, usable] = [figureIn(row, "full"), figureIn(row, "width")];
  if (full !== null && usable !== null && usable > full * (1 + 1e-9))
    throw refusal(
      row,
      "width",
      (say) =>
        `the usable width of ${name}, ${say(usable, full)}, is more than its width, ${say(full, usable)}: correct one of them`,
    );
  const shares = {
    length: figureIn(row, "shrinkage") ?? 0,
    width: figureIn(row, "widthShrinkage") ?? 0,
  };
  const drawn = textIn(row, "shape");
  const shape =
    drawn === ""
      ? null
      : refusingAt(at("shape"), () =>
          oddCloth({ name, width: usable, length: figureIn(row, "length") }, outlineOf(name, drawn), {
            number: name,
            cm,
          }),
        );
  const width = usable ?? full;
  const length = shape?.length ?? figureIn(row, "length");
  if (!shape && width === null)
    throw refusal(row, "width", `${name} has no usable width: measure it between the selvedges`);
  if (length === null)
    throw refusal(row, "length", `${name} has no length: measure it, or take its row out of the stock`);
  const asked = figureIn(row, "reserved") ?? 0;
  if (asked > length * (1 + 1e-9))
    throw refusal(
      row,
      "reserved",
      (say) =>
        `${say(asked, length)} of ${name} is reserved, but it is only ${say(length, asked)} long: reserve less of it`,
    );
  const isOwn = job !== null && job.trim() !== "" && sameName(textIn(row, "job"), job);
  const reserved = isOwn ? 0 : asked;
  const left = Math.max(0, length - reserved);
  const isGone = left <= 1e-9 * length;
  if (shape && reserved > 0 && !isGone)
    throw refusal(
      row,
      "reserved",
      `part of ${name} is reserved, and what is left of it has a shape of its own: draw that shape, and clear its reserved length`,
    );
  return {
    name,
    cloth: clothIn(row) || name,
    length,
    reserved,
    left: isGone ? 0 : left,
    washed: isGone ? null : washed(shape ?? { name, width: width!, length: left }, shares),
    isNapped: row.cells.nap === true,
    repeat: figureIn(row, "repeat") ?? 0,
    isFullWidth: !shape && usable === null,
    at,
  };
}

/** The outline of an odd piece of cloth. */
function outlineOf(name: string, text: string) {
  try {
    return readPiece(text);
  } catch (reason) {
    throw new Refusal(`the shape of ${name} is not a valid piece: ${(reason as Error).message}`);
  }
}

/** The cloth when it has lost these shares of its length and width; an odd piece and its flaws shrink evenly. */
function washed(cloth: LayCloth, lost: { readonly length: number; readonly width: number }): LayCloth {
  const [along, across] = [1 - lost.length, 1 - lost.width];
  const ring = (points: NonNullable<LayCloth["outline"]>) =>
    points.map(([x, y]): [number, number] => [x * along, y * across]);
  return {
    name: cloth.name,
    width: cloth.width * across,
    length: cloth.length! * along,
    ...(cloth.outline && { outline: ring(cloth.outline) }),
    ...(cloth.flaws && { flaws: cloth.flaws.map(ring) }),
  };
}

/** What is common to the pieces of one cloth: its nap and its repeat. Refuses pieces that differ in either. */
export function clothConditions(pieces: readonly StockPiece[]): { oneWay: boolean; repeat: number } {
  const [first, ...others] = pieces;
  if (!first) return { oneWay: false, repeat: 0 };
  for (const one of others) {
    if (one.isNapped !== first.isNapped)
      throw new Refusal(
        `${first.name} and ${one.name} are both ${first.cloth}, but only ${(first.isNapped ? first : one).name} has a nap: write the same for both, or call them different cloths`,
        one.at("nap"),
      );
    if (Math.abs(one.repeat - first.repeat) > 1e-9 * Math.max(one.repeat, first.repeat))
      throw new Refusal(
        (say) =>
          `${first.name} and ${one.name} are both ${first.cloth}, but their repeats are ${say(first.repeat, one.repeat)} and ${say(one.repeat, first.repeat)}: write the same for both, or call them different cloths`,
        one.at("repeat"),
      );
  }
  return { oneWay: first.isNapped, repeat: first.repeat };
}
