/**
 * A cut list as one block of cells. Its headings say what each column is, in any order and any case;
 * other columns are passed over. One list may hold the pieces of several cloths.
 */
import { headed } from "../block.ts";
import { comparedName } from "../compared-name.ts";
import type { Block, BlockForm, Cell, ListColumn, Take, Takes } from "../define.ts";
import { grouped } from "../grouped.ts";
import { rememberWithObject } from "../memo.ts";
import { nearestWord } from "../nearest-word.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { CLOTH_HEADINGS, clothIn } from "./cloth-name.ts";
import { CUTTING_RULES, PIECES_TO_CUT } from "./cut-list.ts";

const flag = (about: string): Take => ({ kind: "flag", about, many: true, blanks: true, otherwise: null });

/** Every column that a cut list may have, by the name of the argument that it gives; the first heading is its usual one. */
const COLUMNS = {
  pieces: {
    take: PIECES_TO_CUT.pieces,
    headings: ["outline", "outlines", "pattern", "shape"],
    about: "the outline of the piece, allowances included",
  },
  quantities: {
    take: PIECES_TO_CUT.quantities,
    headings: ["how many", "quantity", "quantities", "copies", "cut", "to cut", "how many to cut", "number to cut"],
    about: "how many to cut; a pair counts as 2",
  },
  names: {
    take: CUTTING_RULES.names,
    headings: ["piece", "pieces", "name", "called", "part"],
    about: "what the piece is called; the outlines stand here when no other column has them",
  },
  pairs: {
    take: CUTTING_RULES.pairs,
    headings: ["mirrored pair", "pair", "pairs", "mirrored", "mirrored pairs"],
    about: "yes where half of them are mirror images",
  },
  folds: {
    take: CUTTING_RULES.folds,
    headings: ["on the fold", "fold", "on fold", "cut on the fold", "cut on fold"],
    about: "yes where the outline is half of a piece cut on the fold",
  },
  grains: {
    take: CUTTING_RULES.grains,
    headings: ["grain", "grain line", "grainline"],
    about: "straight, cross or bias",
  },
  ways: {
    take: flag("yes where this piece may not be turned end for end"),
    headings: ["one way", "nap"],
    about: "yes where this piece may not be turned end for end",
  },
  turns: {
    take: flag("no where this piece may not be turned end for end"),
    headings: ["turn", "may turn", "may be turned"],
    about: "no where this piece may not be turned end for end",
  },
  cloths: {
    take: { kind: "text", about: "the cloth", many: true, blanks: true, otherwise: null },
    headings: CLOTH_HEADINGS,
    about: "which cloth it is cut from; what follows a comma is a note",
  },
} as const satisfies Readonly<Record<string, ListColumn>>; // biome-ignore format: a table

type Role = keyof typeof COLUMNS;

/** Headings that could mean two things, and what to write instead. */
const UNCLEAR = ["seam", "seams", "seam allowance", "seam allowances", "allowance", "allowances"];

const KNOWN: readonly string[] = [
  ...Object.values(COLUMNS).flatMap(({ headings }): readonly string[] => headings),
  ...UNCLEAR,
  "seam included",
];

const roleOf = (heading: string): Role | undefined =>
  (Object.keys(COLUMNS) as Role[]).find((role) =>
    (COLUMNS[role].headings as readonly string[]).includes(heading),
  );

/** The columns of a cut list by what they hold, found by headings as `headingText` compares them. Returns null when no heading says how many to cut. */
export function cutListColumns(headings: readonly string[]): ReadonlyMap<Role, number> | null {
  const found = new Map<Role, number>();
  for (const [at, heading] of headings.entries()) {
    const role = roleOf(heading);
    if (role && !found.has(role)) found.set(role, at);
  }
  return found.has("quantities") ? found : null;
}

/** Looks no farther than the first letter: outlines are long. */
const isBlank = (cell: Cell | undefined): boolean =>
  cell === undefined || cell === null || !/\S/.test(String(cell));

const isOutline = (cell: Cell): boolean => typeof cell === "string" && /^\s*m[\s\d.+-]/i.test(cell);

/** Which column of the block has each role. */
function columnsOf(headings: readonly string[], rows: readonly (readonly Cell[])[]): Map<Role, number> {
  const found = new Map<Role, number>();
  headings.forEach((heading, at) => {
    if (UNCLEAR.includes(heading))
      throw new Refusal(
        phrase`the cut list's heading "${heading}" does not say whether the outlines have it: nothing is added here; head the column "seam included", or add it to the outlines with WITH_ALLOWANCE`,
      );
    const role = roleOf(heading);
    if (!role) return;
    const other = found.get(role);
    if (other !== undefined)
      throw new Refusal(
        headings[other] === heading
          ? phrase`the cut list has two columns headed "${heading}": keep one`
          : phrase`the cut list has two columns that mean the same, "${headings[other]!}" and "${heading}": keep one`,
      );
    found.set(role, at);
  });
  const named = found.get("names");
  if (!found.has("pieces") && named !== undefined) {
    const first = rows.map((row) => row[named] ?? null).find((cell) => !isBlank(cell));
    if (first !== undefined && !isOutline(first))
      throw new Refusal(
        phrase`the cut list has no column "outline", and its column "${headings[named]!}" holds words such as "${String(first).slice(0, 24)}": add a column "outline" with the outline of each piece`,
      );
    found.set("pieces", named);
    found.delete("names");
  }
  for (const role of ["pieces", "quantities"] as const)
    if (!found.has(role))
      throw new Refusal(
        phrase`the cut list has no column "${COLUMNS[role].headings[0]}": give that heading to the column with ${COLUMNS[role].about}`,
      );
  return found;
}

interface CutListRead {
  readonly headings: readonly string[];
  readonly columns: ReadonlyMap<Role, number>;
  /** The rows that cut something. */
  readonly lines: readonly Line[];
  /** The lines of each cloth, by its name as it is compared; "" for those without one. */
  readonly byCloth: ReadonlyMap<string, readonly Line[]>;
  readonly cellOf: (i: number, role: Role) => number;
}

/** Kept because each cloth of a list is laid by a formula of its own. */
const cutListsRead = rememberWithObject<Block, CutListRead>();

const cellAt = (row: readonly Cell[], column: number | undefined): Cell => {
  const cell = column === undefined ? null : (row[column] ?? null);
  return isBlank(cell) ? null : cell;
};

/** The rows of a cut list that cut something. Refuses headings that are missing, twice or misspelt, and half-filled rows. */
function linesOf(block: Block): CutListRead {
  const { headings, rows, above } = headed(
    block,
    KNOWN,
    () => phrase`write "piece", "outline" and "how many" over its columns`,
    () => phrase`the cut list`,
  );
  const columns = columnsOf(headings, rows);
  const at = (row: readonly Cell[], role: Role): Cell => cellAt(row, columns.get(role));
  const cellOf = (i: number, role: Role) => (i + above) * block.wide + columns.get(role)!;
  const lines = rows.flatMap((row, i) => {
    const refuse = (role: Role, sentence: string) =>
      new Refusal(sentence, { argument: "cut_list", cell: cellOf(i, role) });
    const name = String(at(row, "names") ?? written`piece ${i + 1}`).trim();
    const [outline, quantity] = [at(row, "pieces"), at(row, "quantities")];
    if (outline === null && quantity === null) {
      const more = (["pairs", "folds", "grains", "ways", "turns", "cloths"] as const).some(
        (role) => at(row, role) !== null,
      );
      if (more)
        throw refuse(
          "pieces",
          phrase`${name} has neither an outline nor how many to cut: fill them in, or clear its row`,
        );
      return [];
    }
    if (outline === null)
      throw refuse(
        "pieces",
        phrase`${name} has no outline in the column "${headings[columns.get("pieces")!]!}"`,
      );
    if (quantity === null)
      throw refuse(
        "quantities",
        phrase`${name} is not counted: the column "${headings[columns.get("quantities")!]!}" is empty there`,
      );
    return [{ row, name, i, cloth: clothIn(at(row, "cloths")) }];
  });
  const byCloth = grouped(lines, (line) => comparedName(line.cloth));
  return { headings, columns, lines, byCloth, cellOf };
}

/**
 * The columns of a cut list by argument, rows that cut nothing left out; `cloth` chooses the rows of one
 * cloth. Refuses headings that are missing, twice or misspelt, half-filled rows, and a list of several cloths of
 * which no cloth is chosen. With a list of the stock, `cloth` chooses there too: it may be the only one of the cut
 * list, and a cut list without a column of cloths is all of it.
 */
function readCutList(
  block: Block,
  cloth: Cell,
  { isOfStock, mayBeNone }: Choosing,
): ReturnType<BlockForm["read"]> {
  const { headings, columns, lines, byCloth, cellOf } = cutListsRead(block, () => linesOf(block));
  const named = isBlank(cloth) ? "" : String(cloth).trim();
  const hasColumn = columns.has("cloths");
  const chosen =
    isOfStock && !hasColumn ? lines : ofCloth({ lines, byCloth, cellOf }, hasColumn, named, mayBeNone);
  const only = named || (chosen.find((line) => line.cloth !== "")?.cloth ?? "");
  const role = (one: Role) => chosen.map(({ row }) => cellAt(row, columns.get(one)));
  const given = [...columns.keys()].filter((one) => one !== "cloths");
  return {
    columns: Object.fromEntries(given.map((one) => [one, role(one)])),
    headings: Object.fromEntries(given.map((one) => [one, headings[columns.get(one)!]!])),
    rows: chosen.map(({ name }) => name),
    cells: Object.fromEntries(given.map((one) => [one, chosen.map(({ i }) => cellOf(i, one))])),
    ...(isOfStock && { decides: { cloth: only } }),
  };
}

interface Choosing {
  /** A list of the stock stands beside the cut list, and the cloth chooses in it too. */
  readonly isOfStock: boolean;
  /** No piece need be of the cloth. */
  readonly mayBeNone: boolean;
}

interface Line {
  readonly row: readonly Cell[];
  readonly name: string;
  /** The row of the list, counted from 0. */
  readonly i: number;
  readonly cloth: string;
}

function ofCloth(
  { lines, byCloth, cellOf }: Pick<CutListRead, "lines" | "byCloth" | "cellOf">,
  hasColumn: boolean,
  cloth: string,
  mayBeNone: boolean,
): readonly Line[] {
  const cloths = [...byCloth.values()].map(([line]) => line!.cloth).filter((one) => one !== "");
  const listed = cloths
    .slice(0, 3)
    .map((one) => `"${one}"`)
    .join(", ");
  if (cloth === "") {
    if (cloths.length > 1)
      throw new Refusal(
        phrase`the cut list has pieces of ${cloths.length} cloths (${listed}): say in the argument cloth which is laid`,
      );
    return lines;
  }
  if (!hasColumn)
    throw new Refusal(
      phrase`the cut list has no column "cloth", so "${cloth}" chooses nothing: add the column, or leave the cloth out`,
    );
  const bare = byCloth.get("")?.[0];
  if (bare)
    throw new Refusal(phrase`${bare.name} has no cloth: write in its row which it is cut from`, {
      argument: "cut_list",
      cell: cellOf(bare.i, "cloths"),
    });
  const chosen = byCloth.get(comparedName(cloth));
  if (chosen) return chosen;
  const near = nearestWord(cloth, cloths);
  if (mayBeNone && !near) return [];
  throw new Refusal(
    near
      ? phrase`no piece of the cut list is of "${cloth}"; is "${near}" meant?`
      : phrase`no piece of the cut list is of "${cloth}", only of ${listed}${cloths.length > 3 ? phrase` and others` : ""}`,
  );
}

/** The cut list of a form whose other arguments these are, in order; `cloth` stands among them. */
export const CLOTH: Take = {
  kind: "text",
  about: "which cloth to lay, as the cut list's column cloth calls it; needed when it has several",
  otherwise: null,
};

/** The way to give a function its cut list as one block; `after` are the arguments that follow it, `cloth` among them. */
export const cutListForm = (
  after: Takes,
  examples: BlockForm["examples"],
  { mayBeNone = false }: Partial<Choosing> = {},
): BlockForm => ({
  takes: {
    cut_list: {
      kind: "block",
      about:
        "the cut list with its headings, or under those of the page's columns; order and other columns don't matter",
    },
    ...after,
  },
  columns: COLUMNS,
  read: (block, { cloth = null }) =>
    readCutList(block, cloth as Cell, { isOfStock: Object.hasOwn(after, "stock"), mayBeNone }),
  examples,
});
