/** Which pieces a lay cuts from one of its cloths, in words. */
import type { Lay, LayQuestion } from "../lay.ts";
import { asRead, phrase, written } from "../phrase.ts";
import { commaList } from "../verdict.ts";

/** "2 of front, 1 of sleeve, mirrored" for the cloth of this number. Returns "" when nothing lies on it. */
export function piecesOn({ pieces }: LayQuestion, { placements }: Lay, cloth: number): string {
  return commaList(
    pieces.flatMap(({ name }, i) => {
      const count = placements.filter((one) => one.cloth === cloth && one.piece === i).length;
      return count > 0 ? [copiesText(count, name)] : [];
    }),
  );
}

/** "2 of front" */
export const copiesText = (count: number, name: string): string => written`${count} of ${name}`;

/** The sentence beside an answer names so many kinds of piece of each cloth; the Working names all. */
const MOST_KINDS = 4;

/**
 * "cut 2 of front from the bolt; cut 1 of back from the remnant" for all cloths of a lay; "cut all 18 pieces from the
 * bolt" where one cloth takes everything, "" when nothing is laid.
 */
export function piecesByCloth(question: LayQuestion, lay: Lay): string {
  const { pieces, cloths } = question;
  const used = cloths.flatMap(({ name }, i) => {
    const kinds = pieces.flatMap((piece, at) => {
      const count = lay.placements.filter((one) => one.cloth === i && one.piece === at).length;
      return count > 0 ? [asRead(copiesText(count, piece.name))] : [];
    });
    return kinds.length > 0 ? [{ name, kinds }] : [];
  });
  const [only, ...others] = used;
  if (only && others.length === 0 && lay.missing.length === 0)
    return lay.placements.length === 1
      ? phrase`cut the one piece from ${only.name}`
      : phrase`cut all ${lay.placements.length} pieces from ${only.name}`;
  return used
    .map(({ name, kinds }) => {
      const more = kinds.length - MOST_KINDS;
      const shown = more > 1 ? [...kinds.slice(0, MOST_KINDS), phrase`${more} more kinds`] : kinds;
      return phrase`cut ${shown.join(", ")} from ${name}`;
    })
    .join("; ");
}
