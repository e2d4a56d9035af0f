/** Values and measures as ISO/IEC 26300 writes them in attributes. */
import type { Rectangle } from "./foreign-book.ts";

/** A number of repetitions; anything but a whole number from 1 counts as 1. */
export function count(text: string | undefined): number {
  const number = Number(text ?? 1);
  return Number.isInteger(number) && number >= 1 ? number : 1;
}

/** "of:=SUM([.A1])" → "SUM([.A1])". */
export const plainFormula = (text: string): string => text.replace(/^(?:[a-z]+:)?=?/i, "");

/** The pixels, 96 to an inch, of "2.5cm". */
export function pixels(text: string | undefined): number {
  const found = /^([\d.]+)(cm|mm|in|pt|pc|px)$/.exec(text ?? "");
  return found ? Math.round(Number(found[1]) * PER_UNIT[found[2]!]!) : 90;
}

const PER_UNIT: Readonly<Record<string, number>> = {
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  in: 96,
  pt: 96 / 72,
  pc: 16,
  px: 1,
};

/** The days since 30 December 1899 of "2026-05-04" or "2026-05-04T18:00:00"; the text itself when it is not a date. */
export function daysOf(text: string): number | string {
  const time = Date.parse(/T/.test(text) ? `${text.replace(/Z$/, "")}Z` : `${text}T00:00:00Z`);
  return Number.isNaN(time) ? text : (time - Date.UTC(1899, 11, 30)) / 86_400_000;
}

/** The share of a day of "PT14H30M00S"; the text itself when it is not a time. */
export function timeOf(text: string): number | string {
  const found = /^(-?)P(?:(\d+)D)?T(?:(\d+)H)?(?:(\d+)M)?(?:([\d.]+)S)?$/.exec(text);
  if (!found) return text;
  const [days, hours, minutes, seconds] = found.slice(2).map((part) => Number(part ?? 0)) as [
    number,
    number,
    number,
    number,
  ];
  const share = days + (hours + (minutes + seconds / 60) / 60) / 24;
  return found[1] === "-" ? -share : share;
}

/** Rectangles of the same columns, one right below the other, as one. */
export function joined(places: readonly Rectangle[]): Rectangle[] {
  const done: Rectangle[] = [];
  for (const place of places) {
    const i = done.findIndex(
      ({ left, right, bottom }) => left === place.left && right === place.right && bottom === place.top - 1,
    );
    if (i < 0) done.push(place);
    else done[i] = { ...done[i]!, bottom: place.bottom };
  }
  return done;
}
