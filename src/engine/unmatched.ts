/**
 * Words that a formula looks for and that stand nowhere in the cells it looks through: a misspelt
 * criterion of SUMIF and its like, which is answered with 0, or of a search, which has no answer.
 */

import { remember } from "../../functions/memo.ts";
import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { type Call, formulaTree, type Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { countingCalls } from "./oddities.ts";
import { type Area, areaOf, typedIn } from "./references.ts";

/** Where the pairs of a range and a criterion begin among the arguments, and whether more pairs may follow. */
const CRITERIA: Record<string, { readonly first: number; readonly many: boolean }> = {
  COUNTIF: { first: 0, many: false },
  SUMIF: { first: 0, many: false },
  AVERAGEIF: { first: 0, many: false },
  COUNTIFS: { first: 0, many: true },
  SUMIFS: { first: 1, many: true },
  MINIFS: { first: 1, many: true },
  MAXIFS: { first: 1, many: true },
};

/** Searches: the argument that is searched for, and the one that is searched through, in its first column or row. */
const SEARCHES: Record<string, "list" | "column" | "row"> = {
  MATCH: "list", XLOOKUP: "list", VLOOKUP: "column", HLOOKUP: "row",
}; // biome-ignore format: a table

const HAS_CRITERIA = /(?:COUNT|SUM|AVERAGE|MIN|MAX)IFS?\s*\(/i;

const criteriaKnown = remember<string, boolean>(5000);

/** Whether a formula may have criteria. Every formula on the screen is asked at each revision. */
export const hasCriteria = (formula: string): boolean =>
  criteriaKnown(formula, () => HAS_CRITERIA.test(formula));

/** What the module needs to know of an engine. */
export interface Asked {
  readonly book: Book;
  readonly value: (place: Place) => unknown;
  /** The value of a part of a formula on a page. */
  readonly calculate: (part: string, page: number) => unknown;
}

/** The words of one state of a book that are not found; areas and formulas are looked through once. */
export class Unmatched {
  readonly #asked: Asked;
  readonly #words = new Map<string, ReadonlyMap<string, string>>();
  readonly #known = new Map<string, readonly string[]>();

  constructor(asked: Asked) {
    this.#asked = asked;
  }

  /** A sentence for each criterion of a formula whose word stands in no cell of its range. */
  in(formula: string, page: number): readonly string[] {
    if (!hasCriteria(formula)) return [];
    const key = `${page} ${formula}`;
    let found = this.#known.get(key);
    if (!found) {
      const { calculate } = this.#asked;
      const calls = countingCalls(formula, (part) => calculate(`=${part}`, page));
      found = [
        ...new Set(
          calls.flatMap(({ call, counts, asks }) =>
            counts && !asks ? this.#ofCall(call, formula, page) : [],
          ),
        ),
      ];
      this.#known.set(key, found);
    }
    return found;
  }

  #ofCall(call: Call, formula: string, page: number): string[] {
    const pairs = CRITERIA[call.name];
    if (!pairs) return [];
    const found: string[] = [];
    const end = pairs.many ? call.args.length : pairs.first + 2;
    for (let i = pairs.first; i + 1 < end; i += 2) {
      const [range, criterion] = [call.args[i], call.args[i + 1]];
      const area = range && areaOf(this.#asked.book, range, page);
      if (!area || !criterion) continue;
      const rangeText = formula.slice(...call.spans[i]!).trim();
      const word = wordOf(this.#valueOf(criterion, formula.slice(...call.spans[i + 1]!), page));
      if (word === null) continue;
      const words = this.#wordsIn(area);
      if (words.size === 0 || words.has(word.toLowerCase())) continue;
      // The engine knows best what a criterion matches: wildcards, texts of digits.
      const count = this.#asked.calculate(`=COUNTIF(${rangeText};"=${word.replaceAll('"', '""')}")`, page);
      if (count === 0) found.push(`${call.name}: ${notFound(word, rangeText, words.values())}`);
    }
    return found;
  }

  #valueOf(tree: Tree, text: string, page: number): unknown {
    if (tree.is === "text") return tree.text;
    const area = areaOf(this.#asked.book, tree, page);
    return area ? this.#asked.value(topLeft(area)) : this.#asked.calculate(`=${text}`, page);
  }

  /** The texts of an area by their small letters, and what else stands there as a text of its own. */
  #wordsIn(area: Area): ReadonlyMap<string, string> {
    const key = Object.values(area).join(".");
    let words = this.#words.get(key);
    if (!words) {
      words = wordsIn(this.#asked, area);
      this.#words.set(key, words);
    }
    return words;
  }
}

function wordsIn({ book, value }: Pick<Asked, "book" | "value">, area: Area): Map<string, string> {
  const words = new Map<string, string>();
  for (const place of typedIn(book, area)) {
    const held = value(place);
    if (held !== null && held !== "") words.set(String(held).toLowerCase(), String(held));
  }
  return words;
}

/** The word that a criterion asks for; null when it is blank, a figure, or compares with < or >. */
function wordOf(criterion: unknown): string | null {
  if (typeof criterion !== "string") return null;
  const [, sign = "", word = ""] = /^(<>|<=|>=|[<>=])?(.*)$/s.exec(criterion) ?? [];
  if (word.trim() === "" || /^[<>]=?$/.test(sign)) return null;
  return Number.isNaN(Number(word)) ? word : null;
}

const topLeft = ({ page, top, left }: Area): Place => ({ page, row: top, column: left });

/** "no cell of A2:A9 says "waist girht"; the nearest is "waist girth"". */
function notFound(word: string, rangeText: string, words: Iterable<string>): string {
  const near = nearestWord(word, words);
  return near === undefined
    ? phrase`no cell of ${rangeText} says "${short(word)}"`
    : phrase`no cell of ${rangeText} says "${short(word)}"; the nearest is "${short(near)}"`;
}

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 37)}...` : text);

/** What a search of a formula without an answer looks for and does not find, in a sentence; null when it looks for no word. */
export function searchedInVain(
  formula: string,
  page: number,
  asked: Pick<Asked, "book" | "value">,
): string | null {
  const visit = (tree: Tree | null): string | null => {
    if (tree?.is === "sign" || tree?.is === "call") {
      for (const arg of tree.args) {
        const found = visit(arg);
        if (found) return found;
      }
    }
    if (tree?.is !== "call" || !SEARCHES[tree.name]) return null;
    const [sought, through] = tree.args;
    const area = through && areaOf(asked.book, through, page);
    const cell = sought && areaOf(asked.book, sought, page);
    const word = sought?.is === "text" ? sought.text : cell ? asked.value(topLeft(cell)) : null;
    if (!area || typeof word !== "string" || word === "") return null;
    const how = SEARCHES[tree.name];
    const looked: Area = {
      ...area,
      ...(how === "column" && { right: area.left }),
      ...(how === "row" && { bottom: area.top }),
    };
    const words = wordsIn(asked, looked);
    if (words.has(word.toLowerCase())) return null;
    const range = formula.slice(...tree.spans[1]!).trim();
    const where =
      how === "column"
        ? phrase`the first column of ${range}`
        : how === "row"
          ? phrase`the first row of ${range}`
          : range;
    return notFound(word, where, words.values());
  };
  return visit(formulaTree(formula));
}
