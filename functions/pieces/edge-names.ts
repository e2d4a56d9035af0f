/** What the edges of a piece are called, and an edge found by its name or number. */

import { suggestion } from "../nearest-word.ts";
import { phrase, type Words, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { orderedList } from "../verdict.ts";

/** The arguments of a function that works on one edge of its argument "piece". */
export const EDGE_OF_PIECE = {
  kind: "edge",
  of: "piece",
  about: 'which edge: its name, such as "waist", or its number; the Drawing shows what each edge is called',
} as const;

/** A piece, as far as it concerns what its edges are called. */
interface Piece {
  readonly edges: readonly unknown[];
  readonly names: readonly string[];
}

const MAX_LETTERS = 40;

/**
 * Names written as "waist, centre front, hem", one for each of `count` edges in drawing order; an empty
 * place leaves an edge without a name, and so does the end of the text. Throws an Error when a name is
 * no name or when there are more names than edges.
 */
export function readEdgeNames(text: string, count: number): string[] {
  const names = text.trim() === "" ? [] : text.split(",").map((name) => name.trim().replace(/\s+/g, " "));
  if (names.length > count)
    throw new Error(phrase`${names.length} edges are named, but there are only ${count}`);
  for (const name of names) {
    if (name === "") continue;
    if (!/\p{L}/u.test(name) || /[;|"]/.test(name))
      throw new Error(phrase`"${name.slice(0, 24)}" can not be the name of an edge, which has letters in it`);
    if (name.length > MAX_LETTERS)
      throw new Error(
        phrase`the name of an edge has at most ${MAX_LETTERS} letters, not "${name.slice(0, 24)}..."`,
      );
  }
  return Array.from({ length: count }, (_, i) => names[i] ?? "");
}

/** The names as `readEdgeNames` reads them; an empty text when no edge has one. */
export const edgeNamesText = (names: readonly string[]): string => names.join(", ").replace(/[,\s]+$/, "");

/** The numbers of the edges with this name, in capital or small letters. */
function edgesCalled(piece: Piece, name: string): number[] {
  const wanted = name.trim().replace(/\s+/g, " ").toLowerCase();
  return piece.names.flatMap((one, i) => (one.toLowerCase() === wanted ? [i + 1] : []));
}

/** The numbers of the hem edges: those named "hem", or else edge 3 of a piece with four edges. */
export function hemEdges(piece: Piece): readonly number[] {
  const called = edgesCalled(piece, "hem");
  return called.length > 0 || piece.edges.length !== 4 ? called : [3];
}

/** An edge in a sentence: "the waist", "edge 3" where it has no name, "the hem (edge 6)" where it shares one. */
export function edgeText(piece: Piece, number: number): string {
  const bare = bareEdgeText(piece, number);
  return piece.names[number - 1] ? written`the ${bare}` : bare;
}

/** The same behind the name of its piece: "waist", "edge 3", "hem (edge 6)". */
export function bareEdgeText(piece: Piece, number: number): string {
  const name = piece.names[number - 1];
  if (!name) return written`edge ${number}`;
  return edgesCalled(piece, name).length > 1 ? written`${name} (edge ${number})` : name;
}

/** An edge as the Drawing labels it: "waist", "edge 3" where it has no name, "hem, edge 6" where it shares one. */
export function edgeLabel(piece: Piece, number: number): string {
  const name = piece.names[number - 1];
  if (!name) return phrase`edge ${number}`;
  return edgesCalled(piece, name).length > 1 ? phrase`${name}, edge ${number}` : name;
}

/** The number of the edge with this name; refuses a name that no edge has, or several. `argument` holds the name. */
export function edgeNumberOf(piece: Piece, name: string, argument: Words): number {
  const [found, ...others] = edgesCalled(piece, name);
  const quoted = `"${name.length > 24 ? `${name.slice(0, 21)}...` : name}"`;
  if (found !== undefined && others.length === 0) return found;
  if (found !== undefined)
    throw new Refusal(
      phrase`${argument} must be a number where several edges have one name: ${orderedList([found, ...others].map(String), "and")} are all called ${quoted}`,
    );
  const names = [...new Set(piece.names.filter((one) => one !== ""))];
  const count = piece.edges.length;
  if (names.length === 0)
    throw new Refusal(
      phrase`${argument} must be the number of an edge, from 1 to ${count}, not ${quoted}, because the edges of this piece have no names`,
    );
  throw new Refusal(
    phrase`${argument} must be the name of an edge (${orderedList(names.slice(0, 8), "or")}) or its number, from 1 to ${count}, not ${quoted}${suggestion(name.trim(), names)}`,
  );
}

/** The name of an edge on the mirrored piece: its left side is the right side of the other. */
export const mirroredName = (name: string): string =>
  name.replace(/\b(left|right)\b/gi, (word) => {
    const other = word.toLowerCase() === "left" ? "right" : "left";
    return /^[A-Z]/.test(word) ? other[0]!.toUpperCase() + other.slice(1) : other;
  });
