/** References and names of a spreadsheet file as the book writes them. */
import { phrase, plural } from "../../functions/phrase.ts";
import { pageReference } from "../book/address.ts";
import { nameFault } from "../book/names.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS } from "../book/shape.ts";
import { isFunction } from "../engine/function-names.ts";
import { addresses, counted } from "./cell-report.ts";
import type { ForeignBook } from "./foreign-book.ts";
import { type End, endText, foreignParts, type Places } from "./foreign-formula.ts";
import type { Planned } from "./sheet-plan.ts";

export interface LandedNames {
  /** Each name of the file as the book spells it, by its sheet and its name in small letters. */
  readonly spelt: ReadonlyMap<string, string>;
  readonly books: Book["names"];
  readonly pages: ReadonlyMap<number, Book["names"]>;
  readonly said: readonly string[];
}

const nameKey = (name: string, sheet: string | null): string =>
  `${sheet?.toLowerCase() ?? ""}!${name.toLowerCase()}`;

export function landedNames(file: ForeignBook, planned: readonly Planned[]): LandedNames {
  const spelt = new Map<string, string>();
  const books: Record<string, string> = {};
  const pages = new Map<number, Record<string, string>>();
  const [left, lost]: [string[], string[]] = [[], []];
  for (const { name, sheet, formula } of file.names) {
    const home = sheet === null ? null : planned.find((one) => one.sheet.title === sheet);
    const [part, ...rest] = foreignParts(formula, file.signs);
    const isOne = part?.is === "reference" && rest.length === 0 && part.sheet !== null;
    const at = isOne ? area(planned, null, part.sheet, part.from, part.to) : null;
    const fault = nameFault(name);
    if (fault) left.push(`${name.slice(0, 40)}: ${fault}`);
    else if (!at || "why" in at || (home && home.page === null)) lost.push(name);
    else {
      const into = home ? (pages.get(home.page!) ?? {}) : books;
      if (Object.keys(into).some((one) => one.toLowerCase() === name.toLowerCase())) continue;
      into[name] = at.text.replaceAll("$", "");
      if (home) pages.set(home.page!, into);
      spelt.set(nameKey(name, sheet), name);
    }
  }
  const said = [
    ...(lost.length > 0
      ? [
          phrase`${counted(lost.length)} ${plural(lost.length, "name", "names")} of the file ${plural(lost.length, "stands", "stand")} for no cells that come along and ${plural(lost.length, "is", "are")} left out: ${addresses(lost)}.`,
        ]
      : []),
    ...(left.length > 0
      ? [
          left.length > 1
            ? phrase`${counted(left.length)} ${plural(left.length, "name", "names")} can't be used here and ${plural(left.length, "is", "are")} left out: ${left[0]!}, and others.`
            : phrase`${counted(left.length)} ${plural(left.length, "name", "names")} can't be used here and ${plural(left.length, "is", "are")} left out: ${left[0]!}.`,
        ]
      : []),
  ];
  return { spelt, books, pages, said };
}

type Written = { readonly text: string } | { readonly why: string };

/** A reference of the file as the book writes it; with its page when `from` is another sheet, or null. */
function area(
  planned: readonly Planned[],
  from: Planned | null,
  sheet: string | null,
  first: End,
  last: End | null,
): Written {
  const home =
    sheet === null ? from : planned.find((one) => one.sheet.title.toLowerCase() === sheet.toLowerCase());
  if (!home) return { why: phrase`it uses a sheet that the file does not have` };
  if (home.page === null) return { why: phrase`it uses the sheet ${home.title}, which is left out` };
  const page = home === from ? "" : `${pageReference(home.title)}!`;
  const shift = home.headings ? 1 : 0;
  if (last === null) {
    if (first.row !== null && first.row < shift) return { why: phrase`it uses a heading` };
    if ((first.row ?? 0) - shift >= MOST_ROWS || (first.column ?? 0) >= MOST_COLUMNS)
      return { why: phrase`it uses a cell beyond the last of a page` };
    const end = { ...first, row: first.row === null ? null : first.row - shift };
    return end.row === null || end.column === null
      ? { why: phrase`it names no cell` }
      : { text: `${page}${endText(end)}` };
  }
  const ends = [first, last].map((end) => ({ ...end, row: end.row === null ? null : end.row - shift }));
  const [a, b] = ends as [End, End];
  // From the first row of a sheet to its last, as some files write whole columns.
  const [top, bottom] = [Math.min(a.row ?? 0, b.row ?? 0), Math.max(a.row ?? 0, b.row ?? 0)];
  if (a.row !== null && b.row !== null && bottom < 0) return { why: phrase`it uses the headings` };
  if (top >= MOST_ROWS || Math.min(a.column ?? 0, b.column ?? 0) >= MOST_COLUMNS)
    return { why: phrase`it uses cells beyond the last of a page` };
  const whole = a.row !== null && b.row !== null && top <= 0 && bottom >= MOST_ROWS;
  const clipped = ends.map((end) => ({
    ...end,
    row: whole || end.row === null ? null : Math.min(Math.max(end.row, 0), MOST_ROWS - 1),
    column: end.column === null ? null : Math.min(end.column, MOST_COLUMNS - 1),
  }));
  const wide = clipped.map(({ column }) => column ?? -1);
  if (clipped[0]!.row !== null && wide[0] === 0 && wide[1] === MOST_COLUMNS - 1)
    return { text: `${page}${clipped.map((end) => endText({ ...end, column: null })).join(":")}` };
  return { text: `${page}${clipped.map(endText).join(":")}` };
}

export function placesOf(planned: readonly Planned[], own: Planned, spelt: LandedNames["spelt"]): Places {
  return {
    isFunction,
    reference: (sheet, from, to) => area(planned, own, sheet, from, to),
    name: (name, sheet) => {
      if (sheet !== null) {
        const home = planned.find((one) => one.sheet.title.toLowerCase() === sheet.toLowerCase());
        const found = home && spelt.get(nameKey(name, home.sheet.title));
        if (found && home.page !== null) return { text: `${pageReference(home.title)}!${found}` };
      }
      const found = spelt.get(nameKey(name, own.sheet.title)) ?? spelt.get(nameKey(name, null));
      return found === undefined
        ? { why: phrase`the name ${name.slice(0, 60)} stands for no cells here` }
        : { text: found };
    },
  };
}
