/**
 * Which of two names that differ by a slip is misspelt: one in the list of seams, or one in the fitting log or a
 * question. The list itself decides: a word that stands in other places of it is right, and one that stands nowhere
 * else is the slip.
 */

import { written } from "../phrase.ts";
import type { CellOfList } from "../refusal.ts";
import { cellOfSeams, edgeKey, type NamedEdge, type Seam } from "./seam-list.ts";

const wordsOf = (name: string): string[] => name.split(" ");

/** The row of the list of seams whose name `listed` is misspelt where `name` was meant, in a sentence with its cell. Returns null where `name` is as likely to be the slip. */
export function misspeltSeam(
  name: string,
  listed: string,
  seams: readonly Seam[],
): { readonly sentence: string; readonly at: CellOfList | undefined } | null {
  const [words, others] = [wordsOf(name), wordsOf(listed)];
  if (words.length !== others.length) return null;
  const sides = seams.flatMap((seam) => seam.sides.map((edges, side) => ({ seam, side, edges })));
  const own = sides.filter(({ edges }) => edges.some((edge) => edgeKey(edge) === listed));
  const elsewhere = new Set(
    sides
      .filter((one) => !own.includes(one))
      .flatMap(({ edges }) => edges.flatMap((edge) => wordsOf(edgeKey(edge)))),
  );
  const slips = words.flatMap((word, i) => (word === others[i] ? [] : [{ word, other: others[i]!, i }]));
  const [slip] = slips;
  const [row] = own;
  if (!slip || !row || own.length > 1) return null;
  if (!slips.every(({ word, other }) => elsewhere.has(word) && !elsewhere.has(other))) return null;
  const edge = row.edges.find((one: NamedEdge) => edgeKey(one) === listed)!;
  const isPiece = slip.i < wordsOf(edge.piece).length;
  const fields = row.side === 0 ? (["piece", "edge"] as const) : (["other", "otherEdge"] as const);
  return {
    sentence: written`row ${row.seam.number} of the list of seams names "${listed}"; is "${name}" meant?`,
    at: cellOfSeams(row.seam.places, fields[isPiece ? 0 : 1]),
  };
}
