/** The list of pieces that a garment is sewn from: what each is called, its outline without allowances, and how many there are. */
import { comparedName } from "../compared-name.ts";
import type { ListForm, ListRow } from "../define.ts";
import { rememberWithObject } from "../memo.ts";
import { isMeant, nearestWord } from "../nearest-word.ts";
import { phrase, written } from "../phrase.ts";
import { foldOf } from "../pieces/cut-on-fold.ts";
import { bareEdgeText, edgeNumberOf } from "../pieces/edge-names.ts";
import { edgeLength, type Piece, readPiece } from "../pieces/piece.ts";
import { type CellOfList, Refusal, refusingAt } from "../refusal.ts";

export const PIECE_LIST = {
  noun: "the list of pieces",
  columns: {
    name: {
      headings: ["piece", "pieces", "name", "called", "part"],
      about: "what each piece is called",
      take: { kind: "text", about: "the piece" },
      needed: true,
    },
    outline: {
      headings: ["outline", "outlines", "pattern", "shape"],
      about: "the outline of the piece, without allowances",
      take: { kind: "piece", about: "the outline" },
      needed: true,
    },
    count: {
      headings: ["how many", "quantity", "quantities", "copies", "cut", "to cut"],
      about: "how many the garment has of it in one layer; 1 where it is blank",
      take: { kind: "count", about: "how many", from: 1, to: 500 },
    },
    fold: {
      headings: ["on the fold", "fold", "on fold", "cut on the fold", "cut on fold"],
      about: "yes where the outline is half of a piece that lies on the fold",
      take: { kind: "flag", about: "on the fold" },
    },
    grain: {
      headings: ["grain", "grain line", "grainline"],
      about: "straight, cross or bias; straight where it is blank",
      take: { kind: "text", about: "the grain", choices: ["straight", "cross", "bias"] },
    },
  },
} as const satisfies ListForm;

/** A piece of the garment. */
export interface GarmentPiece {
  readonly name: string;
  readonly count: number;
  /** The cell for how many there are, where the list has such a column. */
  readonly countCell?: CellOfList;
  /** The same cell where it is blank and counts as 1. */
  readonly blankCount?: CellOfList;
  readonly onFold: boolean;
  readonly grain: "straight" | "cross" | "bias";
  /** Reads the outline; refuses one that is no piece or that has its allowances on. */
  readonly outline: () => Piece;
}

/** Kept because every seam and every notch asks for the list. */
const piecesRead = rememberWithObject<readonly ListRow[], ReadonlyMap<string, GarmentPiece>>();

/** The pieces of the list by the name that is compared. Refuses a row without a name or outline, and a name twice. */
export const piecesOf = (rows: readonly ListRow[]): ReadonlyMap<string, GarmentPiece> =>
  piecesRead(rows, () => readPieces(rows));

function readPieces(rows: readonly ListRow[]): ReadonlyMap<string, GarmentPiece> {
  const pieces = new Map<string, GarmentPiece>();
  for (const { number, cells, places } of rows) {
    const at = (field: keyof typeof PIECE_LIST.columns): CellOfList => ({
      argument: "pieces",
      cell: places[field]!,
    });
    const where = written`row ${number} of the list of pieces`;
    if (cells.name === null)
      throw new Refusal(phrase`${where} has no name: write what the piece is called`, at("name"));
    const name = String(cells.name).trim();
    const key = comparedName(name);
    if (pieces.has(key))
      throw new Refusal(
        phrase`${where} is called "${name}", and so is a row above it: give each piece its own name`,
        at("name"),
      );
    const text = cells.outline ?? null;
    // A list without a column for how many has one of each piece.
    const hasCount = places.count !== undefined;
    const isBlank = hasCount && (cells.count ?? null) === null;
    pieces.set(key, {
      name: key,
      count: Number(cells.count ?? 1),
      ...(hasCount && { countCell: at("count") }),
      ...(isBlank && { blankCount: at("count") }),
      onFold: cells.fold === true,
      grain: (cells.grain ?? "straight") as GarmentPiece["grain"],
      outline: () => refusingAt(at("outline"), () => outlineOf(text, name)),
    });
  }
  return pieces;
}

function outlineOf(text: unknown, name: string): Piece {
  if (text === null) throw new Refusal(phrase`the list of pieces has no outline for "${name}"`);
  let piece: Piece;
  try {
    piece = readPiece(String(text));
  } catch (reason) {
    throw new Refusal(
      phrase`the outline of "${name}" in the list of pieces is not a valid piece: ${(reason as Error).message}`,
    );
  }
  if (piece.marks.some(({ role }) => role === "seam"))
    throw new Refusal(
      phrase`the outline of "${name}" in the list of pieces has its allowances on: give the outline without them, because seams are measured on the line that is sewn`,
    );
  return piece;
}

/** The piece of this name; refuses a name that the list does not have. `where` says who asks: "row 2 of the list of seams". */
export function pieceCalled(
  pieces: ReadonlyMap<string, GarmentPiece>,
  name: string,
  where: string,
): GarmentPiece {
  const found = pieces.get(comparedName(name));
  if (found) return found;
  const near = nearestWord(comparedName(name), pieces.keys());
  throw new Refusal(
    phrase`${where} names the piece "${name.trim()}", and the list of pieces has none of that name${isMeant(near)}`,
  );
}

/** An edge as the garment has it. */
export interface GarmentEdge {
  readonly piece: GarmentPiece;
  readonly outline: Piece;
  /** Counted from 1. */
  readonly number: number;
  /** "the skirt's waist" */
  readonly text: string;
  /** How many such edges the garment has. */
  readonly copies: number;
  /** Length of one of them: twice the drawn edge where it runs on over the fold. */
  readonly length: number;
  readonly overFold: boolean;
  /** Of such an edge: whether it is drawn from the fold outwards. */
  readonly foldAtBegin: boolean;
}

/**
 * The edge of a piece of the garment. Of a piece on the fold an edge that meets the fold runs on beyond it:
 * the garment has it once for each piece, twice as long as drawn. Every other edge of such a piece is there twice.
 */
export function garmentEdge(piece: GarmentPiece, edge: string, where: string): GarmentEdge {
  const outline = piece.outline();
  const asked = comparedName(edge).replace(/^edge (?=\d+$)/, "");
  const number = /^\d+$/.test(asked)
    ? Number(asked)
    : edgeNumberOf(outline, edge, phrase`the edge "${edge.trim()}" of the ${piece.name} in ${where}`);
  if (number < 1 || number > outline.edges.length)
    throw new Refusal(
      phrase`${where} names edge ${number} of the ${piece.name}, which has ${outline.edges.length} edges`,
    );
  const text = written`the ${piece.name}'s ${bareEdgeText(outline, number)}`;
  const length = edgeLength(outline.edges[number - 1]!);
  const common = { piece, outline, number, text };
  if (!piece.onFold) return { ...common, copies: piece.count, length, overFold: false, foldAtBegin: false };
  const fold = foldOf(outline);
  if (!fold)
    throw new Refusal(
      phrase`the ${piece.name} is on the fold, and its outline has no straight edge along the grain at its left or right to fold at`,
    );
  if (fold.edges.has(number))
    throw new Refusal(phrase`${where} names ${text}, which lies on the fold: nothing is sewn there`);
  const overFold = fold.meets.has(number);
  const before = ((number - 2 + outline.edges.length) % outline.edges.length) + 1;
  return {
    ...common,
    copies: piece.count * (overFold ? 1 : 2),
    length: length * (overFold ? 2 : 1),
    overFold,
    foldAtBegin: overFold && fold.edges.has(before),
  };
}
