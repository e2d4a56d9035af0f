/** Descriptions of a lay in words. */

import type { Decimal } from "../../../functions/decimal.ts";
import {
  type Lay,
  type LayOrigin,
  type LayPiece,
  type LayQuestion,
  originText,
} from "../../../functions/lay.ts";
import { asRead, phrase, plural } from "../../../functions/phrase.ts";
import type { Unit } from "../../../functions/units.ts";
import { plainNumber } from "../../engine/show.ts";
import { turned } from "../../lay/outline.ts";

export const shareText = ({ density }: Lay, decimal?: Decimal): string =>
  `${plainNumber(100 * density, 1, decimal)} %`;

export const coverText = (lay: Lay, decimal?: Decimal): string => phrase`${shareText(lay, decimal)} covered`;

/** The most copies that are described one by one; the others are only counted. */
const MOST_SPOKEN = 60;

/** Where each copy lies, for readers who can't see the lay: "cuff 2: 0 to 9 along, 12 to 16 across". */
export function layInWords(
  { pieces, cloths }: LayQuestion,
  lay: Lay,
  say: (length: number) => string,
): string {
  const words = lay.placements.slice(0, MOST_SPOKEN).map(({ piece, copy, cloth, turn, x, y }) => {
    const { name, outline } = pieces[piece]!;
    const points = turned(outline, turn, x, y);
    const [along, across] = [0, 1].map((axis) => {
      const at = points.map((point) => point[axis]!);
      return phrase`${say(Math.min(...at))} to ${say(Math.max(...at))}`;
    });
    const called = `${name} ${copy + 1}`;
    return cloths.length > 1
      ? phrase`${called} on ${cloths[cloth]!.name}: ${along!} along, ${across!} across`
      : phrase`${called}: ${along!} along, ${across!} across`;
  });
  const more = lay.placements.length - words.length;
  const listed = words.join("; ");
  return more > 0 ? phrase`${listed}; and ${plural(more, "# more copy", "# more copies")}` : listed;
}

/** Area of the cloth used, of width × length used. */
export const clothArea = ({ cloths }: LayQuestion, { lengths }: Lay): number =>
  lengths.reduce((sum, length, i) => sum + length * cloths[i]!.width, 0);

/** The cloth between the pieces, up to the end of the lay. */
export function leftOver(question: LayQuestion, lay: Lay, unit: Unit, decimal?: Decimal): string {
  const area = clothArea(question, lay) * (1 - lay.density);
  return phrase`${plainNumber(Math.max(0, area), area < 10 ? 1 : 0, decimal)} sq ${unit}`;
}

export function missingText({ pieces }: LayQuestion, { missing }: Lay): string {
  const list = missing.map(([piece, count]) => phrase`${count} of ${pieces[piece]!.name}`);
  return phrase`No place for ${list.join(", ")}.`;
}

/** Whether a piece may be turned end for end, its grain kept. */
export const liesEitherWay = ({ turns }: LayPiece): boolean =>
  turns.some((turn) => turns.some((other) => (other - turn + 360) % 360 === 180));

export const isOneWay = ({ pieces }: LayQuestion): boolean => !pieces.some(liesEitherWay);

/** How the lay was found, as a sentence; `kept` when the book keeps it for this very question. */
export function originSentence(origin: LayOrigin | undefined, kept: boolean): string {
  if (!origin || origin.by === "quick")
    return phrase`A quick lay, made at once: a search may find a shorter one.`;
  const text = asRead(originText(origin));
  const found = `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return kept
    ? phrase`${found}; the book keeps the lay.`
    : phrase`${found}, for a larger job that this one fits into.`;
}
