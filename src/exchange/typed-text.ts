/** A value of a spreadsheet file as it is typed in a book. */

import { type Decimal, withDecimalMark } from "../../functions/decimal.ts";
import { phrase } from "../../functions/phrase.ts";
import { isFormula } from "../book/formula.ts";
import { LONGEST } from "../book/shape.ts";
import { dayText } from "../engine/show.ts";
import type { ForeignCell } from "./foreign-book.ts";

export interface Typed {
  readonly text: string;
  /** What does not come along as it was: a time of day, an error, a text that looked like a formula, a cut text. */
  readonly lost?: "time" | "time-of-day" | "error" | "like a formula" | "cut";
  /** What goes into a note. */
  readonly note?: string;
}

/** The finest fraction that a figure shown as a fraction is typed with. */
const UNDERS = [2, 4, 8, 16, 32, 64];

export function typedText(
  { value, as, places }: Pick<ForeignCell, "value" | "as" | "places">,
  decimal: Decimal,
): Typed {
  if (value === null) return { text: "" };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE" };
  if (typeof value === "number") return figure(value, as, decimal, places);
  if (as === "error") return { text: value, lost: "error" };
  const text = value.length > LONGEST.typed ? value.slice(0, LONGEST.typed) : value;
  if (isFormula(text)) return { text: `'${text}`.slice(0, LONGEST.typed), lost: "like a formula" };
  return text.length < value.length ? { text, lost: "cut" } : { text };
}

const plain = (value: number, decimal: Decimal): string => withDecimalMark(String(value), decimal);

function figure(value: number, as: ForeignCell["as"], decimal: Decimal, places = 0): Typed {
  // Too great for a figure, or none at all.
  if (!Number.isFinite(value)) return { text: "#NUM!", lost: "error" };
  switch (as) {
    case "share": {
      const percent = Number((value * 100).toPrecision(15));
      return { text: percent / 100 === value ? `${plain(percent, decimal)}%` : plain(value, decimal) };
    }
    case "fraction": {
      const under = UNDERS.find((one) => Number.isInteger(value * one));
      if (under === undefined || Math.abs(value) >= 1e9) return { text: plain(value, decimal) };
      const whole = Math.floor(Math.abs(value));
      const top = (Math.abs(value) - whole) * under;
      return { text: `${value < 0 ? "-" : ""}${whole > 0 ? `${whole} ` : ""}${top}/${under}` };
    }
    case "date": {
      const day = Math.floor(value);
      // The engine's days begin with 1900, and four digits end with 9999.
      if (value < 2 || value >= 2_958_466) return { text: plain(value, decimal) };
      const time = value - day;
      return time < 1e-9
        ? { text: dayText(day) }
        : { text: dayText(day), lost: "time-of-day", note: phrase`At ${clock(time)} in the file.` };
    }
    case "time":
      return { text: clock(value), lost: "time" };
    default: {
      // 18.00 is typed so where the file shows it so; a finer figure keeps all it has.
      const shown = value.toFixed(places);
      return { text: Number(shown) === value ? withDecimalMark(shown, decimal) : plain(value, decimal) };
    }
  }
}

/** The hours, minutes and, if there are any, seconds of a number of days: 0.604166… is "14:30". */
function clock(days: number): string {
  const seconds = Math.round(Math.abs(days) * 86_400);
  const two = (number: number) => String(number).padStart(2, "0");
  const [hours, minutes, rest] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return `${days < 0 ? "-" : ""}${two(hours)}:${two(minutes)}${rest > 0 ? `:${two(rest)}` : ""}`;
}
