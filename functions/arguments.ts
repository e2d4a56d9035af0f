/** Checks the arguments of a call: that each is of its kind and within its limits. */

import { isBlock, listRows } from "./block.ts";
import type { Decimal } from "./decimal.ts";
import type { Block, BlockForm, Cell, Declaration, Kind, ListForm, ListRow, Take, Takes } from "./define.ts";
import { DEFAULT_MARK, type TapeMark, tapeTextBeside } from "./fractions.ts";
import { limitsOf, limitText } from "./limits.ts";
import { readMarks } from "./marks-text.ts";
import { rememberWithObjects } from "./memo.ts";
import { suggestion } from "./nearest-word.ts";
import { numberText } from "./number-text.ts";
import { phrase, plural, translated, type Words, written, writtenIn } from "./phrase.ts";
import { edgeNumberOf } from "./pieces/edge-names.ts";
import { type Piece, readPiece } from "./pieces/piece.ts";
import { Refusal, refusingAt } from "./refusal.ts";
import { fromTape, type Unit } from "./units.ts";
import { orderedList } from "./verdict.ts";

/** An argument as the caller holds it: the value of a cell, or the values of a range; a blank cell is null. */
export type Argument = Cell | readonly Cell[];

interface Setting {
  readonly unit: Unit;
  readonly mark?: TapeMark;
  readonly decimal?: Decimal | undefined;
}

/**
 * The arguments of a call by name, defaults filled in and pieces read; `onGiven` gets them as they were
 * given. Throws the refusal of the first argument that is not allowed.
 */
export function checkArguments(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  onGiven?: (raw: Readonly<Record<string, Argument>>) => void,
  onCells?: (cells: Readonly<Record<string, readonly number[]>>) => void,
) {
  const form = formOf(declaration, args);
  const takes = form?.takes ?? declaration.takes;
  const names = Object.keys(takes);
  if (args.length > names.length) {
    throw new Refusal(
      phrase`${declaration.name} takes at most ${plural(names.length, "# argument", "# arguments")}, not ${args.length}`,
    );
  }
  const raw: Record<string, Argument> = {};
  const checked: Record<string, unknown> = {};
  names.forEach((name, i) => {
    const take = takes[name]!;
    let value: Argument | undefined = args[i];
    if ((value === undefined || value === null) && take.otherwise !== undefined)
      value = defaultValue(take, setting.unit);
    if (value === undefined)
      throw new Refusal(phrase`${name} is missing: ${nounFor(take.kind)} is needed there`);
    raw[name] = value;
  });
  const list = form ? form.read(args[0] as Block, raw) : null;
  if (list) {
    delete raw[names[0]!];
    onCells?.(list.cells);
  }
  if (onGiven) {
    // A list of many columns is no help among the arguments of the Working; its steps say what was read from it.
    const shown = Object.fromEntries(Object.entries(raw).filter(([name]) => !takes[name]?.list));
    onGiven(list ? { ...list.columns, ...shown } : shown);
  }
  for (const name of Object.keys(list ? { ...raw, ...declaration.takes } : raw)) {
    const take = takes[name] ?? declaration.takes[name]!;
    const value = raw[name] ?? defaultValue(take, setting.unit);
    if (list && Object.hasOwn(list.columns, name)) continue;
    checked[name] =
      value === null && take.otherwise === null ? null : checkArgument(name, take, value, setting, checked);
  }
  for (const [name, cells] of Object.entries(list?.columns ?? {})) {
    const { take } = form!.columns[name]!;
    checked[name] = cells.map((cell, i) =>
      cell === null
        ? null
        : refusingAt({ argument: name, cell: i }, () =>
            checkOne(
              () => written`${list!.headings[name]!} of ${list!.rows[i]!}`,
              take,
              cell,
              setting,
              checked,
            ),
          ),
    );
  }
  if (list) Object.assign(checked, list.decides, { headings: list.headings });
  return checked;
}

/** The arguments of this call in order: those of the block form where the first is a block that the function reads by its headings. */
export const takesOf = (declaration: Declaration, args: readonly Argument[]): Takes =>
  formOf(declaration, args)?.takes ?? declaration.takes;

/** The form of this call when its first argument is a block. Returns null when the call gives its columns one by one. */
const formOf = (declaration: Declaration, args: readonly Argument[]): BlockForm | null =>
  blockFormOf(declaration, (place) => isBlock(args[place]));

/** The same when it is already known which arguments of the call are blocks. */
export function blockFormOf(
  { block, twoBlocks }: Pick<Declaration, "block" | "twoBlocks">,
  isBlockAt: (place: number) => boolean,
): BlockForm | null {
  if (!block || !isBlockAt(0)) return null;
  return twoBlocks && isBlockAt(1) && !isBlockAt(2) ? twoBlocks : block;
}

/** The value of an argument that is left out, in the book's unit; null when the function decides or when it is needed. */
export function defaultValue({ otherwise = null }: Take, unit: Unit): Cell {
  return typeof otherwise === "object" && otherwise !== null ? fromTape(otherwise, unit) : otherwise;
}

/** What an argument must be, in "hip is empty: a length is needed there" and "hip must be a length". */
const NOUNS: Record<Kind, string> = {
  length: "a length", area: "an area", count: "a whole number", share: "a number", angle: "an angle in degrees",
  days: "a date or a number of days", money: "a price", figure: "a number", flag: "TRUE or FALSE", text: "a text",
  piece: "a piece", edge: "the name or number of an edge", verdict: "a text",
  block: "a block of cells with headings",
}; // biome-ignore format: a table

const nounFor = (kind: Kind): string => translated(NOUNS[kind]);

/** The arguments that are checked already, by name. */
type Checked = Readonly<Record<string, unknown>>;

function checkArgument(
  name: string,
  take: Take,
  value: Argument,
  setting: Setting,
  before: Checked,
): unknown {
  if (take.list) return checkList(name, take.list, take.reads, value, setting);
  if (take.kind === "block") {
    if (isBlock(value)) return value;
    throw new Refusal(phrase`${name} must be a block of cells with headings, not one cell`);
  }
  if (!take.many) {
    const one = isList(value) && value.length === 1 ? value[0]! : value;
    if (!isList(one))
      return refusingAt({ argument: name, cell: 0 }, () => checkOne(name, take, one, setting, before));
    throw new Refusal(phrase`${name} must be one cell, not a range of ${one.length} cells`);
  }
  const list = isList(value) ? value : [value];
  return list.flatMap((one, i) => {
    if ((one === null || one === "") && take.blanks) return [null];
    // Every cell of a range is checked, and few are refused.
    const called = list.length > 1 ? () => written`${name}, number ${i + 1},` : name;
    return refusingAt({ argument: name, cell: i }, () => {
      const several = take.marks && typeof one === "string" ? readMarks(one, called, setting) : [one];
      return several.map((each) => checkOne(called, take, each, setting, before));
    });
  });
}

/** Kept because many formulas read the same list. What a row may hold depends on the unit, and on no other setting. */
const listsRead = rememberWithObjects<readonly ListRow[]>();

/** The rows of a list that is read by its headings. */
function checkList(
  name: string,
  form: ListForm,
  reads: Take["reads"],
  value: Argument,
  setting: Setting,
): readonly ListRow[] {
  if (!isBlock(value))
    throw new Refusal(
      phrase`${name} must be a block of two columns or more with their headings: ${writtenIn(form.noun)}`,
    );
  const check = (called: Words, field: string, cell: Cell, at: number): Cell => {
    const { take } = form.columns[field]!;
    // An outline is read when a row is used, so that a faulty piece stops only what is asked about it.
    if (take.kind === "piece") return cell;
    return refusingAt({ argument: name, cell: at }, () => checkOne(called, take, cell, setting, {}) as Cell);
  };
  return listsRead([value, form, reads ?? form.columns], setting.unit, () =>
    listRows(value, form, check, reads),
  );
}

export const isList = (value: Argument): value is readonly Cell[] => Array.isArray(value);

function checkOne(name: Words, take: Take, value: Cell, setting: Setting, before: Checked): unknown {
  if (value === null || value === "") {
    if (value === "" && take.kind === "text" && !take.choices) return "";
    throw new Refusal(phrase`${name} is empty: ${nounFor(take.kind)} is needed there`);
  }
  switch (take.kind) {
    case "text":
    case "verdict":
      return checkText(name, take, value);
    case "flag":
      return checkFlag(name, value);
    case "piece":
      return checkPiece(name, value);
    case "edge":
      return checkEdge(name, value, before[take.of!] as Piece);
    default:
      return checkNumber(name, take, value, setting);
  }
}

const quoted = (value: Cell): string => {
  if (typeof value !== "string") return String(value).toUpperCase();
  return `"${value.length > 24 ? `${value.slice(0, 21)}...` : value}"`;
};

function checkText(name: Words, take: Take, value: Cell): string {
  const text = String(value);
  if (!take.choices) return text;
  const found = take.choices.find((choice) => choice === text.trim().toLowerCase());
  if (found === undefined)
    throw new Refusal(
      phrase`${name} must be ${orderedList(take.choices.map(quoted), "or")}, not ${quoted(value)}${suggestion(text.trim(), take.choices)}`,
    );
  return found;
}

function checkFlag(name: Words, value: Cell): boolean {
  const typed = typeof value === "string" ? value.trim().toLowerCase() : value;
  if (typed === true || typed === 1 || typed === "yes" || typed === "true") return true;
  if (typed === false || typed === 0 || typed === "no" || typed === "false") return false;
  throw new Refusal(phrase`${name} must be TRUE or FALSE, not ${quoted(value)}`);
}

function checkPiece(name: Words, value: Cell): Piece {
  if (typeof value !== "string")
    throw new Refusal(phrase`${name} must be a piece (an outline in path data), not ${quoted(value)}`);
  try {
    return readPiece(value);
  } catch (reason) {
    throw new Refusal(phrase`${name} is not a valid piece: ${(reason as Error).message}`);
  }
}

/** The number of an edge that is given by number or by name. */
function checkEdge(name: Words, value: Cell, piece: Piece): number {
  const number = typeof value === "string" && /^\s*\d+\s*$/.test(value) ? Number(value) : value;
  if (typeof number === "string") return edgeNumberOf(piece, number, name);
  const count = piece.edges.length;
  if (typeof number !== "number")
    throw new Refusal(phrase`${name} must be ${nounFor("edge")}, not ${quoted(number)}`);
  if (!Number.isInteger(number))
    throw new Refusal(phrase`${name} must be a whole number, not ${numberText(number, 8)}`);
  if (number < 1) throw new Refusal(phrase`${name} must be at least 1, not ${numberText(number, 8)}`);
  if (number > count)
    throw new Refusal(
      phrase`${name} must be at most ${count}, because the piece has ${count} edges, not ${numberText(number, 8)}`,
    );
  return number;
}

function checkNumber(name: Words, take: Take, value: Cell, setting: Setting): number {
  if (typeof value !== "number")
    throw new Refusal(phrase`${name} must be ${nounFor(take.kind)}, not ${quoted(value)}`);
  if (!Number.isFinite(value)) throw new Refusal(phrase`${name} must be a finite number, not ${value}`);
  if (take.kind === "count" && !Number.isInteger(value))
    throw new Refusal(phrase`${name} must be a whole number, not ${numberText(value, 8)}`);
  const { least, most } = limitsOf(take, setting.unit);
  if (least !== undefined && value < least - 1e-9 * Math.abs(least))
    throw new Refusal(beyondLimit(name, take, "least", value, setting));
  if (most !== undefined && value > most + 1e-9 * Math.abs(most))
    throw new Refusal(beyondLimit(name, take, "most", value, setting));
  return value;
}

/** A figure of a kind with its unit, in words. */
export function withUnit(figure: string, kind: Kind, unit: Unit): string {
  if (kind === "length") return `${figure} ${unit}`;
  if (kind === "area") return phrase`${figure} square ${unit}`;
  return kind === "angle" ? phrase`${figure} degrees` : figure;
}

/** "waist must be at least 4 in, not 3 1/2 in": both as the tape shows them. */
function beyondLimit(
  name: Words,
  take: Take,
  which: "least" | "most",
  value: number,
  setting: Setting,
): string {
  const { unit, mark = DEFAULT_MARK[unit] } = setting;
  const limit = which === "least" ? take.from! : take.to!;
  const shown = limitText(limit, take.kind, unit);
  const given =
    take.kind === "length"
      ? tapeTextBeside(value, [limitsOf(take, unit)[which]!, 0], unit, mark)
      : numberText(value, 8);
  const inUnit = (figure: number, text: string) => (figure === 0 ? text : withUnit(text, take.kind, unit));
  const [bound, found] = [inUnit(limit, shown), inUnit(value, given)];
  return which === "least"
    ? phrase`${name} must be at least ${bound}, not ${found}`
    : phrase`${name} must be at most ${bound}, not ${found}`;
}
