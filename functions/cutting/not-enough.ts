/** What proves, without any lay, that the cloth in stock is not enough for a cut list. */

import type { CallContext } from "../define.ts";
import { markSize } from "../fractions.ts";
import type { LayCloth, LayQuestion } from "../lay.ts";
import { written } from "../phrase.ts";
import { pieceBounds, turnPiece } from "../pieces/piece.ts";
import { joinedByAnd } from "../verdict.ts";
import { type CutRow, unfoldedPiece } from "./cut-list.ts";
import { GRAIN_TURNS } from "./lay-question.ts";
import { leastLength, shareOfCloth } from "./least-length.ts";

/** Pieces that no cloth could take even alone, each with what the nearest one lacks. */
export function tooLarge(
  rows: readonly CutRow[],
  cloths: readonly LayCloth[],
  say: CallContext["say"],
): { readonly row: CutRow; readonly says: string }[] {
  return rows.flatMap((row) => {
    const whole = unfoldedPiece(row);
    const lacks = GRAIN_TURNS[row.grain].oneWay
      .flatMap((turn) => {
        const { left, right, low, high } = pieceBounds(turnPiece(whole, turn));
        return cloths.map(({ name, width, length }) => {
          const [wide, long] = [right - left - width, high - low - length!];
          return { name, wide, long, worst: Math.max(wide, long), size: right - left + high - low };
        });
      })
      .sort((a, b) => a.worst - b.worst);
    const { name, wide, long, worst, size } = lacks[0]!;
    if (worst <= 1e-6 * size) return [];
    const cloth = cloths.length > 1 ? name : written`the cloth`;
    const words = [
      ...(wide > 0 ? [written`${say(wide, 0)} wider`] : []),
      ...(long > 0 ? [written`${say(long, 0)} longer`] : []),
    ];
    return [{ row, says: written`${row.name} is ${joinedByAnd(words)} than ${cloth}` }];
  });
}

/** Why no lay at all can do, in words that a list of what has no place follows; "" when that is not proved. */
export function proofOfTooLittle(question: LayQuestion, { say, mark, unit }: CallContext): string {
  const share = shareOfCloth(question);
  if (share > 1 + 1e-9)
    return written`by area there is not enough: the pieces cover ${Math.ceil(share * 1000) / 10} % of all the cloth; `;
  const [cloth, ...others] = question.cloths;
  if (others.length > 0) return "";
  const least = leastLength(question);
  if (least <= cloth!.length! * (1 + 1e-6)) return "";
  const size = markSize(mark, unit);
  const shown = Math.floor(least / size + 1e-6) * size;
  return shown > cloth!.length!
    ? written`there is not enough: no lay of these pieces on ${say(cloth!.width)} cloth is shorter than ${say(shown)}; `
    : written`there is not enough: no lay of these pieces on ${say(cloth!.width)} cloth is that short; `;
}
