/** What there is to look at in a book. */
import { lookUp, type Place } from "../book/address.ts";
import { formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "./engine.ts";
import { dimension } from "./kind-of-tree.ts";

export interface Check {
  readonly place: Place;
  readonly address: string;
  readonly name: string | undefined;
  readonly is: "error" | "verdict" | "blank";
  readonly sentence: string;
  /** How many other cells wait for this one. */
  readonly waiting: number;
}

const key = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

/** Every cell that is not as it should be, once where it begins, in the order of the book. */
export function checks(engine: Engine): Check[] {
  const found: Check[] = [];
  const waiting = new Map<string, number>();
  const blanks = new Set<string>();
  engine.book.pages.forEach((page, index) => {
    page.rows.forEach((row, r) => {
      row.forEach((typed, column) => {
        if (!isFormula(typed)) return;
        const place = { page: index, row: r, column };
        const { look, name } = engine.view(place);
        if (!look) {
          for (const blank of blanksCounted(engine, typed, index)) {
            if (blanks.has(key(blank))) waiting.set(key(blank), (waiting.get(key(blank)) ?? 0) + 1);
            else
              found.push({
                ...blankCheck(engine, blank),
                sentence: `this is empty, and ${name ?? engine.address(place)} counts it as 0: type a figure`,
              });
            blanks.add(key(blank));
          }
          return;
        }
        if (key(look.from) !== key(place)) {
          waiting.set(key(look.from), (waiting.get(key(look.from)) ?? 0) + 1);
          return;
        }
        found.push({
          place,
          address: engine.address(place),
          name,
          is: look.is,
          sentence: look.sentence,
          waiting: 0,
        });
      });
    });
  });
  return found.map((check) => ({ ...check, waiting: waiting.get(key(check.place)) ?? 0 }));
}

const blankCheck = (engine: Engine, place: Place) => ({
  place,
  address: engine.address(place),
  name: engine.view(place).name,
  is: "blank" as const,
  waiting: 0,
});

/**
 * The named cells that are blank and yet are added or multiplied, where 0 is silently taken: a
 * measurement that was never written down. Blanks in lists and without a name may well mean none.
 */
function blanksCounted(engine: Engine, formula: string, page: number): Place[] {
  return counted(formulaTree(formula)).flatMap((name) => {
    const place = lookUp(engine.book, name, page);
    if (!place || typedAt(engine.book, place.page, place.row, place.column).trim() !== "") return [];
    return dimension(engine.kinds.of(place)) ? [place] : [];
  });
}

const COUNTING = new Set(["+", "-", "*", "/", "^", "%"]);

/** The names that stand beside a sign that counts. */
function counted(tree: Tree): string[] {
  if (tree.is === "list") return tree.items.flatMap(counted);
  if (tree.is !== "sign" && tree.is !== "call") return [];
  const counts = tree.is === "sign" && COUNTING.has(tree.sign);
  return tree.args.flatMap((arg) =>
    arg === null ? [] : counts && arg.is === "name" ? [arg.text] : counted(arg),
  );
}
