/** The unit that a heading names behind its words: "hip (cm)" or "hip [cm]". */

import { phrase } from "../../functions/phrase.ts";
import { isUnit, type Unit } from "../../functions/units.ts";
import { UNIT_WORDS } from "../book/unit-words.ts";

const NAMED = /\s*[([]([a-z]+)[)\]]\s*$/i;

/** The unit of a heading, or null. */
export function headingUnit(heading: string): Unit | null {
  const word = NAMED.exec(heading)?.[1]?.toLowerCase() ?? "";
  return isUnit(word) ? word : null;
}

/** The unit of the first heading that names one, or null. */
export function unitOfHeadings(headings: readonly string[]): Unit | null {
  for (const heading of headings) {
    const unit = headingUnit(heading);
    if (unit) return unit;
  }
  return null;
}

/** A heading without the unit that the whole file is in; another unit stays. */
export const headingWithout = (heading: string, unit: Unit): string =>
  headingUnit(heading) === unit ? heading.replace(NAMED, "") : heading;

/** What is said of the unit: that no heading names one although there are lengths, or that the headings disagree. */
export function unitSaid(
  headings: readonly string[],
  unit: Unit,
  hasLengths: boolean,
  given: boolean,
): string[] {
  const named = [...new Set(headings.flatMap((heading) => headingUnit(heading) ?? []))];
  const others = named.filter((one) => one !== unit).map((one) => UNIT_WORDS[one]);
  if (others.length > 0)
    return [
      phrase`Lengths without a unit are taken for ${UNIT_WORDS[unit]}; columns headed in ${others.join(phrase` and `)} are left as plain numbers: say what each is.`,
    ];
  return named.length === 0 && hasLengths && !given
    ? [phrase`The file names no unit: its lengths are taken for ${UNIT_WORDS[unit]}.`]
    : [];
}
