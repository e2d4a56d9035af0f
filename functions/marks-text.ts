/**
 * A list of places along an edge as one text: "1; 3 1/2; 6 in". The unit stands once, behind the last
 * place, so that the text means the same in a book of another unit; a place may also name its own.
 */
import { type Decimal, withDecimalMark } from "./decimal.ts";
import { markSize, readTape, roundTo, type TapeMark, tapeText } from "./fractions.ts";
import { phrase, type Words } from "./phrase.ts";
import { Refusal } from "./refusal.ts";
import { BOOK_UNITS, isTapeUnit, type TapeUnit, type Unit, unitNamed } from "./units.ts";

interface Reader {
  readonly unit: Unit;
  readonly decimal?: Decimal | undefined;
}

const MOST_PLACES = 1000;

/** The places of a list in the book's unit, in its order. `name` is the argument, for refusals. An empty text has no places. */
export function readMarks(text: string, name: Words, { unit, decimal }: Reader): number[] {
  const parts = text.split(/[;\n]/).map((part) => part.trim());
  const given = parts.filter((part) => part !== "");
  if (given.length === 0) return [];
  if (given.length > MOST_PLACES)
    throw new Refusal(phrase`${name} must have at most ${MOST_PLACES} places, not ${given.length}`);
  const common = unitOf(given.at(-1)!);
  if (common === null)
    throw new Refusal(
      phrase`${name} must be a length, or places with their unit behind the last, such as "1; 3; 6 ${unit}", not "${text.slice(0, 24)}"`,
    );
  return given.map((part) => {
    const named = unitOf(part) === null ? `${part} ${common}` : part;
    const read = readTape(named, unit, decimal);
    if (read) return read.length;
    throw new Refusal(
      phrase`${name} must be places such as "1; 3; 6 ${unit}", and "${part.slice(0, 24)}" is no length`,
    );
  });
}

/** The unit that a part names at its end. Returns null when it names no unit. */
function unitOf(part: string): TapeUnit | null {
  const word = /\d\s*([a-z]+\.?|''|'|"|″|′′|′)$/i.exec(part)?.[1];
  const unit = word === undefined ? undefined : unitNamed(word);
  return unit !== undefined && isTapeUnit(unit) ? unit : null;
}

/** Places as one text, each to ten decimal places: a fraction where it lies on a mark of the tape. */
export function marksText(places: readonly number[], unit: Unit, decimal: Decimal = "point"): string {
  if (places.length === 0) return "";
  return `${places.map((place) => withDecimalMark(placeText(place, unit), decimal)).join("; ")} ${unit}`;
}

function placeText(place: number, unit: Unit): string {
  const step = markSize("1/32", "in");
  const onMark = Math.abs(roundTo(place, step) - place) < 1e-11 * Math.max(1, Math.abs(place));
  if (BOOK_UNITS[unit].tape === "in" && onMark) return tapeText(place, unit, "1/32");
  return place.toFixed(10).replace(/\.?0+$/, "");
}

/** A list as the tape shows it, each place to the nearest mark; any other text as it is. */
export function marksOnTape(
  text: string,
  { unit, mark, decimal = "point" }: { unit: Unit; mark: TapeMark; decimal?: Decimal | undefined },
): string {
  const [, list, named] = LIST.exec(text) ?? [];
  if (list === undefined || named !== unit) return text;
  const isFraction = BOOK_UNITS[unit].tape === "in";
  const places = list.split("; ").map((place) => {
    const off = OFF_MARK.exec(place);
    if (!off || (off[1]!.length <= MOST_READ_PLACES && !(isFraction && list.includes(";")))) return place;
    return tapeText(Number(place.replace(",", ".")), unit, mark, decimal);
  });
  return `${places.join("; ")} ${unit}`;
}

/** A list as `marksText` writes it. */
const LIST = /^(\d[\d ./,]*(?:; \d[\d ./,]*)*) (in|cm|mm)$/;

/** A place that no fraction of the tape is written for; the group is its decimal places. */
const OFF_MARK = /^\d+[.,](\d+)$/;

/** A figure with more decimal places than this was worked out: nobody reads it off a tape. */
const MOST_READ_PLACES = 4;
