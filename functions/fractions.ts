/**
 * Lengths as a tape shows them: "16 1/2", "16½", "16-1/2 in", "5' 3\"", "1 yd 9 in", "42 cm", "42,5 cm".
 */
import { type Decimal, withDecimalMark, withoutGroups, withPoints } from "./decimal.ts";
import { BOOK_UNITS, convert, type TapeUnit, UNITS, type Unit, unitNamed } from "./units.ts";

/** The finest mark of a tape, as typed in a book: a fraction of an inch or a metric length. */
export type TapeMark = (typeof BOOK_UNITS)[Unit]["marks"][number];

const VULGAR: Record<string, string> = {
  "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
  "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}; // biome-ignore format: a table

/** One figure: 16, 16.5, 3/8, 16 1/2 or 16-1/2. Groups: a lone fraction's top and under, or whole or decimal, top, under. */
const FIGURE = String.raw`(?:(\d+)\/(\d+)|(\d+(?:\.\d+)?|\.\d+)(?:[\s-]+(\d+)\/(\d+))?)`;
const PART = new RegExp(String.raw`^${FIGURE}\s*([a-z]+\.?|''|'|"|″|′′|′)?\s*`, "i");

/** What `readTape` made of a text: the length in the asked unit, and whether a unit or fraction was written. */
export interface TapeReading {
  readonly length: number;
  /** True when the text can be nothing but a length: it names a unit or has a fraction. */
  readonly certain: boolean;
}

/**
 * Reads a length as people write it on a pattern. A figure without a unit is in `unit`.
 * Several parts add up ("1 yd 9 in", "5' 3\""); each but a lone one must name its unit.
 * Returns null when the text is not a length: words, a stray sign, a fraction over
 * zero, a number too large for the computer, a figure with two readings (`unclearFigure` says which).
 */
export function readTape(text: string, unit: Unit, decimal: Decimal = "point"): TapeReading | null {
  const plain = withPoints(withoutGroups(text, BOOK_UNITS[unit].tape !== "in"), decimal);
  if (plain === null) return null;
  let rest = plain
    .trim()
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .trim();
  const sign = /^[-−]/.test(rest) ? -1 : 1;
  if (sign < 0) rest = rest.slice(1).trim();
  let length = 0;
  let certain = false;
  let parts = 0;
  while (rest !== "") {
    const found = PART.exec(rest);
    if (!found) return null;
    const [whole, loneTop, loneUnder, figureText, top, under, word] = found;
    const over = Number(loneUnder ?? under ?? 1);
    if (over === 0) return null;
    const figure = Number(figureText ?? 0) + Number(loneTop ?? top ?? 0) / over;
    const named = word === undefined ? undefined : unitNamed(word);
    if (word !== undefined && named === undefined) return null;
    rest = rest.slice(whole.length);
    parts += 1;
    if (named === undefined && (parts > 1 || rest !== "")) return null;
    certain ||= named !== undefined || loneTop !== undefined || top !== undefined;
    length += convert(figure, named ?? unit, unit);
  }
  return parts === 0 || !Number.isFinite(length) ? null : { length: sign * length, certain };
}

/** The size of a mark, in `unit`. */
export function markSize(mark: TapeMark, unit: Unit): number {
  if (mark.endsWith("mm") || mark.endsWith("cm")) {
    const [figure, named] = mark.split(" ");
    return convert(Number(figure), named as TapeUnit, unit);
  }
  const [top, under] = mark.split("/");
  return convert(Number(top) / Number(under), "in", unit);
}

/** The most by which a figure may miss a step and count as on it, as a share of the step. */
const MOST_SLACK = 0.01;

/** Rounds to whole steps; a figure that misses a step by a billionth of itself counts as on it. */
export function roundTo(
  value: number,
  step: number,
  direction: "nearest" | "up" | "down" = "nearest",
): number {
  const steps = value / step;
  const slack = Math.min(MOST_SLACK, 1e-9 * Math.max(1, Math.abs(steps)));
  if (direction === "up") return Math.ceil(steps - slack) * step;
  if (direction === "down") return Math.floor(steps + slack) * step;
  return Math.floor(steps + 0.5 + slack) * step;
}

/** Of two whole numbers; `b` is one of the few that a mark of the tape has under its stroke. */
function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** A length from here on, in the unit of its tape, is shown as a power of ten. */
const LONGEST_READ = 1e12;

/**
 * A length as the tape shows it, to the nearest mark, without the unit's name: 16.5 → "16 1/2"
 * on an inch tape, "16.5" on a metric one, "16,5" where the comma is the decimal mark. Marks of the
 * other system are converted first. From 1e12 on there are no marks: "1.0000e+15".
 */
export function tapeText(length: number, unit: Unit, mark: TapeMark, decimal: Decimal = "point"): string {
  if (!Number.isFinite(length)) return String(length);
  if (Math.abs(length) >= LONGEST_READ) return length.toExponential(4);
  const step = markSize(mark, unit);
  const rounded = roundTo(Math.abs(length), step);
  const minus = length < 0 && rounded > 0 ? "-" : "";
  const { tape, places } = BOOK_UNITS[unit];
  if (tape !== "in" || !mark.includes("/")) {
    return minus + withDecimalMark(String(Number(rounded.toFixed(places))), decimal);
  }
  const under = Number(mark.split("/")[1]);
  const parts = Math.round(rounded * under);
  const whole = Math.floor(parts / under);
  const left = parts % under;
  if (left === 0) return minus + String(whole);
  const divisor = commonDivisor(left, under);
  const fraction = `${left / divisor}/${under / divisor}`;
  return minus + (whole === 0 ? fraction : `${whole} ${fraction}`);
}

/** The usual finest mark of a book in this unit. */
export const DEFAULT_MARK = Object.fromEntries(
  UNITS.map((unit) => [unit, BOOK_UNITS[unit].defaultMark]),
) as Record<Unit, TapeMark>;

/** Every mark that a book in any unit can show. */
export const TAPE_MARKS: readonly TapeMark[] = [...new Set(UNITS.flatMap((unit) => BOOK_UNITS[unit].marks))];

const FINER: readonly TapeMark[] = ["1/16", "1/32"];

/** The marks of the tape finer than the one a book shows, the coarsest first. */
export const finerMarks = (unit: Unit, mark: TapeMark): readonly TapeMark[] =>
  BOOK_UNITS[unit].tape === "in" && mark.includes("/")
    ? FINER.filter((one) => markSize(one, unit) < markSize(mark, unit))
    : [];

/**
 * A length as the tape shows it, on a finer mark, and in the end in decimals, where it would read
 * like one of the lengths beside it and yet is not equal to it. Two lengths written
 * beside each other come out on the same mark.
 */
export function tapeTextBeside(
  length: number,
  beside: readonly number[],
  unit: Unit,
  mark: TapeMark,
): string {
  const others = beside.filter((one) => Math.abs(one - length) > 1e-9 * Math.max(1, Math.abs(one)));
  const apart = (text: (length: number) => string) =>
    others.every((one) => text(one) !== text(length)) ? text(length) : null;
  const marks = [mark, ...finerMarks(unit, mark)];
  for (const one of marks) {
    const found = apart((figure) => tapeText(figure, unit, one));
    if (found !== null) return found;
  }
  for (let places = 2; places <= 12; places += 1) {
    const found = apart((figure) => String(Number(figure.toFixed(places)) + 0));
    if (found !== null) return found;
  }
  return String(length);
}
