/**
 * The headings of a page that comes from a table in another language, as the sewing functions know them. Two headings or
 * more tell the language. What may mean two things keeps its heading until the maker says which is meant.
 */
import { headingText } from "../../functions/block.ts";
import { phrase } from "../../functions/phrase.ts";
import { columnLetters } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import type { Page } from "../book/shape.ts";
import { columnWidth } from "./column-width.ts";
import { isDataText } from "./heading-line.ts";
import { ALSO_ENGLISH, CELL_WORDS, type HeadingLanguage, MEANINGS, type Meaning } from "./heading-words.ts";
import type { CalledColumn } from "./table-form.ts";

const LANGUAGES: readonly HeadingLanguage[] = ["de", "fr", "es"];

const languageName = (language: HeadingLanguage): string =>
  ({ de: phrase`German`, fr: phrase`French`, es: phrase`Spanish` })[language];

/** Without its accents, so that "Größe" and "grosse" are one word. */
const plain = (text: string): string =>
  headingText(text).normalize("NFD").replace(/\p{M}/gu, "").replaceAll("ß", "ss");

/** By language, what each word may mean. */
const KNOWN: ReadonlyMap<HeadingLanguage, ReadonlyMap<string, readonly Meaning[]>> = new Map(
  LANGUAGES.map((language) => {
    const words = new Map<string, Meaning[]>();
    for (const meaning of MEANINGS)
      for (const word of meaning.words[language])
        words.set(plain(word), [...(words.get(plain(word)) ?? []), meaning]);
    return [language, words];
  }),
);

/** The headings that the functions know as they are. */
const OURS: ReadonlySet<string> = new Set(MEANINGS.map(({ heading }) => heading));

const isUnsure = (word: string, { unsure = [] }: Meaning): boolean =>
  unsure.some((one) => plain(one) === word);

interface Told {
  readonly page: Page;
  /** Which columns have a heading of another language, by column. */
  readonly called: Readonly<Record<number, CalledColumn>>;
  readonly said: readonly string[];
}

/** The page with the headings that its functions know; `chosen` says which heading a column gets, "" for its own. */
export function withKnownHeadings(page: Page, chosen: Readonly<Record<number, string>> = {}): Told {
  const words = page.columns.map(({ heading }) => (OURS.has(headingText(heading)) ? "" : plain(heading)));
  const meant = (language: HeadingLanguage, word: string) => KNOWN.get(language)!.get(word) ?? [];
  const counted = words.filter((word) => !ALSO_ENGLISH.includes(word));
  const found = new Map(
    LANGUAGES.map((language) => [
      language,
      counted.filter((word) => meant(language, word).length > 0).length,
    ]),
  );
  const most = Math.max(...found.values());
  if (most === 0) return { page, called: {}, said: [] };
  const spoken = LANGUAGES.filter((language) => found.get(language) === most);
  const taken = new Set(page.columns.map(({ heading }) => headingText(heading)));
  const called: Record<number, CalledColumn> = {};
  for (const [at, word] of words.entries()) {
    const may = [...new Set(spoken.flatMap((language) => meant(language, word)))];
    if (may.length === 0) continue;
    const fit = may.filter((meaning) => suits(page, at, meaning));
    const [only] = fit;
    const isSure = most > 1 && fit.length === 1 && !isUnsure(word, only!) && !taken.has(only!.heading);
    const told = chosen[at] ?? (isSure ? only!.heading : null);
    called[at] = { heading: page.columns[at]!.heading, may: may.map(({ heading }) => heading), is: told };
  }
  // Two columns of one meaning are asked about, unless the maker has said so.
  const isTwice = ({ is }: CalledColumn) =>
    is !== null && is !== "" && Object.values(called).filter((one) => one.is === is).length > 1;
  const twice = Object.entries(called).filter(
    ([at, one]) => chosen[Number(at)] === undefined && isTwice(one),
  );
  for (const [at, one] of twice) called[Number(at)] = { ...one, is: null };
  return { page: renamed(page, called, spoken), called, said: saidOf(called, spoken) };
}

/** Whether the cells of a column are what a meaning has in it. */
function suits({ rows }: Page, column: number, { holds }: Meaning): boolean {
  if (holds === undefined) return true;
  const cells = rows.map((row) => row[column] ?? "").filter((typed) => typed.trim() !== "");
  const figures = cells.filter(
    (typed) => isFormula(typed) || isDataText(typed) || /^\s*[-+]?\d/.test(typed),
  ).length;
  return holds === "figures"
    ? cells.length === 0 || figures > 0
    : cells.length === 0 || figures < cells.length;
}

/** The page with the headings that were found or chosen, and their cells in the words of the functions. */
function renamed(page: Page, called: Told["called"], spoken: readonly HeadingLanguage[]): Page {
  const cellWords = new Map<number, ReadonlyMap<string, string>>();
  const columns = page.columns.map((column, at) => {
    const is = called[at]?.is;
    if (!is) return column;
    const { cells } = MEANINGS.find(({ heading }) => heading === is) ?? {};
    if (cells)
      cellWords.set(
        at,
        new Map(
          Object.entries(CELL_WORDS[cells]).flatMap(([ours, theirs]) =>
            spoken.map((language) => [plain(theirs[language]), ours] as const),
          ),
        ),
      );
    // A unit in brackets behind the words stays.
    const unit = /\s*[([][^()[\]]*[)\]]\s*$/.exec(column.heading)?.[0] ?? "";
    const heading = `${is}${unit}`;
    return { ...column, heading, width: Math.max(column.width, columnWidth(heading, [])) };
  });
  if (cellWords.size === 0) return { ...page, columns };
  const rows = page.rows.map((row) => row.map((typed, at) => cellWords.get(at)?.get(plain(typed)) ?? typed));
  return { ...page, columns, rows };
}

function saidOf(called: Told["called"], spoken: readonly HeadingLanguage[]): string[] {
  const all = Object.entries(called).map(([at, one]) => ({ at: columnLetters(Number(at)), ...one }));
  const read = all.flatMap(({ heading, is }) => (is ? [phrase`“${heading}” is read as “${is}”`] : []));
  const asked = all.filter(({ is }) => is === null);
  return [
    ...(read.length > 0
      ? [phrase`Headings in ${spoken.map(languageName).join(phrase` or `)} get the words that the functions know: ${read.join("; ")}.`]
      : []),
    ...asked.map(({ at, heading, may }) =>
      phrase`The heading “${heading}” of column ${at} may mean ${may.map((one) => `“${one}”`).join(phrase` or `)}; it is kept as it is until you say which.`,
    ),
  ];
} // biome-ignore format: sentences
