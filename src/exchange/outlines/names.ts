/** What a piece is called, from what the drawing calls its line: safe in a cell, a file name and a drawing. */
import type { Role } from "../../../functions/pieces/piece.ts";

const LONGEST = 60;

/** Names that a drawing program gives by itself: "path1234", "Layer_1", "g12". */
const BY_ITSELF =
  /^(?:svg|path|poly(?:gon|line)|rect(?:angle)?|circle|ellipse|line|curve|group|layer|g|use|shape|object|page|defs)?[-_ .]*\d*[-_ .\d]*$/i;

/**
 * A name of at most 60 letters without control characters, invisible signs and line breaks, which begins
 * with a letter or a figure, so that no cell takes it for a formula; empty when nothing is left, or only
 * what a drawing program counts by itself.
 */
export function plainName(text: string): string {
  const plain = text
    .normalize("NFC")
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cs}\s]+/gu, " ")
    .replace(/^[^\p{L}\p{N}]+/u, "")
    .trim();
  const short = [...plain].slice(0, LONGEST).join("").trim();
  return BY_ITSELF.test(short) ? "" : short;
}

/** The same names, a number added to those that come again: "sleeve", "sleeve 2". */
export function differentNames(names: readonly string[]): string[] {
  const used = new Set<string>();
  return names.map((name) => {
    let one = name;
    for (let i = 2; used.has(one.toLowerCase()); i += 1) one = `${name} ${i}`;
    used.add(one.toLowerCase());
    return one;
  });
}

const WORDS: readonly (readonly [RegExp, Role])[] = [
  [/^grain/, "grain"],
  [/^fold/, "fold"],
  [/^dart/, "dart"],
  [/^notch/, "notch"],
  [/^stitch/, "stitch"],
  [/^slash/, "slash"],
  [/^seam$|^seamline/, "seam"],
];

/** The role of a mark whose name has a word that says it, such as "grain line"; undefined when none does. */
export function roleIn(name: string): Role | undefined {
  const words = name.toLowerCase().split(/[^a-z]+/);
  return WORDS.find(([pattern]) => words.some((word) => pattern.test(word)))?.[1];
}
