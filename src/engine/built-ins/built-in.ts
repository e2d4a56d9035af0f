/** The shape of what help, hints and completion say of a function that HyperFormula brings along. */
import { phrase } from "../../../functions/phrase.ts";
import { type Book, blankBook, type Column } from "../../book/shape.ts";

export interface BuiltIn {
  readonly name: string;
  /** What it gives, in one sentence for people who sew. */
  readonly summary: string;
  /** Words a maker might search by, beyond those of the summary. */
  readonly words: string;
  /** What each argument is, by its name, in order. A name in square brackets may be left out; "…" at the end may be repeated. */
  readonly takes: Readonly<Record<string, string>>;
  /** Formulas over the cells of `exampleBook`, and what a cell then shows. */
  readonly examples: readonly {
    readonly formula: string;
    readonly gives: string;
    readonly because: string;
  }[];
  /** Where the answer is easily misread. */
  readonly cautions?: string;
}

const column = (heading: string, kind: Column["kind"]): Column => ({ heading, kind, width: 110 });

/** The cells that the examples use: a short cut list, and a waist and a hip, which have names. */
export const EXAMPLE_CELLS: readonly (readonly string[])[] = [
  ["Skirt front", "wool", "2", "38 1/2", "2026-05-04"],
  ["Skirt back", "wool", "2", "40 1/4", "2026-05-04"],
  ["Cuff", "linen", "4", "9", "2026-05-11"],
  ["Waistband", "linen", "1", "29", ""],
  ["Waist", "", "", "28", ""],
  ["Hip", "", "", "40", ""],
];

export const EXAMPLE_COLUMNS: readonly Column[] = [
  column("Piece", "text"),
  column("Cloth", "text"),
  column("How many", "number"),
  column("Length", "length"),
  column("Cut on", "date"),
];

/** A book in inches whose first page holds the cells of the examples, and `formula` in F1. */
export function exampleBook(formula: string): Book {
  const book = blankBook("Examples", "in", "1/8");
  const [first, ...others] = book.pages;
  const rows = EXAMPLE_CELLS.map((cells, row) => [...cells, row === 0 ? formula : ""]);
  const page = { ...first!, columns: [...EXAMPLE_COLUMNS, column("", "any")], rows };
  return {
    ...book,
    pages: [page, ...others],
    names: { waist: `${page.title}!D5`, hip: `${page.title}!D6` },
  };
}

/** `IF(test; if_true; [if_false])` */
export const builtInSignature = ({ name, takes }: BuiltIn): string =>
  `${name}(${Object.keys(takes).join("; ")})`;

/** The whole help of a built-in function as plain text. */
export function builtInText(builtIn: BuiltIn): string {
  const { summary, takes, examples, cautions } = builtIn;
  const width = Math.max(0, ...Object.keys(takes).map((name) => name.length));
  return [
    builtInSignature(builtIn),
    summary,
    "",
    ...Object.entries(takes).map(([name, about]) => `  ${name.padEnd(width)}  ${about}`),
    ...(cautions ? ["", phrase`Take care: ${cautions}`] : []),
    "",
    ...examples.map(({ formula, gives, because }) => phrase`  ${formula} gives ${gives} (${because})`),
    "",
    phrase`The examples use these cells, in inches; ${"D5"} is named ${"waist"}, ${"D6"} is named ${"hip"}:`,
    ...EXAMPLE_CELLS.map((cells, row) => `  ${row + 1}  ${cells.join("; ").replace(/(; )+$/, "")}`),
  ].join("\n");
}
