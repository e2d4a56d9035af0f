/**
 * The pieces of cloth in stock, from the rows of their list. What is reserved for other jobs is taken
 * off its length first, then what it loses in washing before it is cut.
 */
import { sameName } from "../compared-name.ts";
import type { ListRow } from "../define.ts";
import type { LayCloth } from "../lay.ts";
import { nearestWord } from "../nearest-word.ts";
import { phrase, writtenIn } from "../phrase.ts";
import { readPiece } from "../pieces/piece.ts";
import { type CellOfList, Refusal, refusingAt } from "../refusal.ts";
import { oddCloth } from "./cloth-in-stock.ts";
import { clothIn } from "./cloth-name.ts";
import { STOCK_LIST, type StockField } from "./stock-form.ts";

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
  readonly at: (field: StockField) => CellOfList | undefined;
}

const textIn = (row: ListRow, field: StockField): string => String(row.cells[field] ?? "").trim();
const figureIn = (row: ListRow, field: StockField): number | null => row.cells[field] as number | null;
const nameIn = (row: ListRow): string => textIn(row, "name") || textIn(row, "cloth");

/** The pieces in stock of one cloth, all pieces when it is blank. Refuses a cloth that is likely misspelt; there may be no piece of the cloth. */
export function stockOf(
  stock: readonly ListRow[],
  cloth: string,
  job: string | null,
  cm: (figure: number) => number,
): StockPiece[] {
  if (stock.length === 0)
    throw new Refusal(phrase`${writtenIn(STOCK_LIST.noun)} is empty: give at least one piece of cloth`);
  const called = stock.map((row) => clothIn(row.cells.cloth) || nameIn(row));
  const cloths = called.filter((one, i) => called.findIndex((other) => sameName(one, other)) === i);
  if (cloth === "" && cloths.length > 1)
    throw new Refusal(
      phrase`${writtenIn(STOCK_LIST.noun)} has ${cloths.length} cloths (${listText(cloths)}): say in the argument cloth which is laid on`,
    );
  const rows = stock.filter((_, i) => cloth === "" || sameName(called[i]!, cloth));
  const near = rows.length > 0 ? undefined : nearestWord(cloth, cloths);
  if (near) throw new Refusal(phrase`no cloth in stock is "${cloth}"; is "${near}" meant?`);
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
    near
      ? phrase`no cloth in stock is called "${name.trim().slice(0, 40)}"; is "${near}" meant?`
      : phrase`no cloth in stock is called "${name.trim().slice(0, 40)}", only ${listText(names)}`,
  );
}

function listText(names: readonly string[]): string {
  const first = names
    .slice(0, 3)
    .map((one) => `"${one}"`)
    .join(", ");
  return names.length > 3 ? phrase`${first} and others` : first;
}

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
        phrase`two pieces of cloth in stock are called "${name}", in rows ${first.number} and ${row.number}: give each a name of its own`,
      );
  });
  return rows.map((row) => stockPiece(row, job, cm));
}

const cellOf = (row: ListRow, field: StockField): CellOfList | undefined =>
  row.places[field] === undefined ? undefined : { argument: "stock", cell: row.places[field] };

const refusal = (row: ListRow, field: StockField, sentence: ConstructorParameters<typeof Refusal>[0]) =>
  new Refusal(sentence, cellOf(row, field));

function stockPiece(row: ListRow, job: string | null, cm: (figure: number) => number): StockPiece {
  const name = nameIn(row);
  const at = (field: StockField) => cellOf(row, field);
  if (name === "")
    throw refusal(row, "cloth", phrase`row ${row.number} of ${writtenIn(STOCK_LIST.noun)} has no name`);
  const [full, usable] = [figureIn(row, "full"), figureIn(row, "width")];
  if (full !== null && usable !== null && usable > full * (1 + 1e-9))
    throw refusal(
      row,
      "width",
      (say) =>
        phrase`the usable width of ${name}, ${say(usable, full)}, is more than its width, ${say(full, usable)}: correct one of them`,
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
    throw refusal(row, "width", phrase`${name} has no usable width: measure it between the selvedges`);
  if (length === null)
    throw refusal(row, "length", phrase`${name} has no length: measure it, or take its row out of the stock`);
  const asked = figureIn(row, "reserved") ?? 0;
  if (asked > length * (1 + 1e-9))
    throw refusal(
      row,
      "reserved",
      (say) =>
        phrase`${say(asked, length)} of ${name} is reserved, but it is only ${say(length, asked)} long: reserve less of it`,
    );
  const isOwn = job !== null && job.trim() !== "" && sameName(textIn(row, "job"), job);
  const reserved = isOwn ? 0 : asked;
  const left = Math.max(0, length - reserved);
  const isGone = left <= 1e-9 * length;
  if (shape && reserved > 0 && !isGone)
    throw refusal(
      row,
      "reserved",
      phrase`part of ${name} is reserved, and what is left of it has a shape of its own: draw that shape, and clear its reserved length`,
    );
  return {
    name,
    cloth: clothIn(row.cells.cloth) || name,
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
    throw new Refusal(phrase`the shape of ${name} is not a valid piece: ${(reason as Error).message}`);
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
        phrase`${first.name} and ${one.name} are both ${first.cloth}, but only ${(first.isNapped ? first : one).name} has a nap: write the same for both, or call them different cloths`,
        one.at("nap"),
      );
    if (Math.abs(one.repeat - first.repeat) > 1e-9 * Math.max(one.repeat, first.repeat))
      throw new Refusal(
        (say) =>
          phrase`${first.name} and ${one.name} are both ${first.cloth}, but their repeats are ${say(first.repeat, one.repeat)} and ${say(one.repeat, first.repeat)}: write the same for both, or call them different cloths`,
        one.at("repeat"),
      );
  }
  return { oneWay: first.isNapped, repeat: first.repeat };
}
