/** The papers that are printed on and the scales of a pattern. Lengths are in millimetres. */
import { phrase } from "../../functions/phrase.ts";
import { convert, isTapeUnit, unitNamed } from "../../functions/units.ts";

export interface Paper {
  readonly name: string;
  readonly width: number;
  /** Null for a roll, which is cut off where the pattern ends. */
  readonly height: number | null;
  /** Large paper has its test squares and its map above the pattern; small paper has them on a sheet of their own. */
  readonly isLarge: boolean;
}

/** The border that no printer has to reach. */
export const MARGIN = 10;
/** The strip that two neighbouring sheets share. */
export const OVERLAP = 10;
/** A roll is printed in lengths of at most this; a PDF page ends at 200 in (ISO 32000-1, annex C.2). */
export const LONGEST = 4900;

/** A-sizes from ISO 216; Letter is 8½ by 11 in (ANSI/ASME Y14.1). */
const SHEETS: Readonly<Record<string, Paper>> = {
  a4: { name: "A4", width: 210, height: 297, isLarge: false },
  letter: { name: "Letter", width: 215.9, height: 279.4, isLarge: false },
  a3: { name: "A3", width: 297, height: 420, isLarge: false },
  a0: { name: "A0", width: 841, height: 1189, isLarge: true },
};

export const PAPER_NAMES = Object.keys(SHEETS);

/** The narrowest and the widest roll: the test squares and the legend stand side by side on it. */
const ROLL = { least: 350, most: 2000 };

/** The paper that a text such as "a4" or "roll=36in" means, or a sentence that says why it means no paper. */
export function readPaper(text: string): Paper | { readonly reason: string } {
  const plain = text.trim().toLowerCase();
  const sheet = Object.hasOwn(SHEETS, plain) ? SHEETS[plain] : undefined;
  if (sheet) return sheet;
  const [, number, word] = /^roll=(\d+(?:\.\d+)?)\s*([a-z"]+)$/.exec(plain) ?? [];
  const unit = word === undefined ? undefined : unitNamed(word);
  if (number === undefined || unit === undefined || !isTapeUnit(unit))
    return {
      reason: phrase`paper is ${PAPER_NAMES.join(", ")} or a roll with its width, such as roll=36in, not "${text}"`,
    };
  const width = convert(Number(number), unit, "mm");
  if (width < ROLL.least || width > ROLL.most)
    return { reason: phrase`a roll is 35 cm to 2 m (14 in to 78 in) wide, not ${`${number} ${word}`}` };
  return { name: phrase`roll ${`${number} ${word}`} wide`, width, height: null, isLarge: true };
}

/** The scales by their names: full size, and smaller for a model in paper. */
export const SCALES: Readonly<Record<string, number>> = {
  "1": 1,
  "1/2": 1 / 2,
  "1/4": 1 / 4,
  "1/5": 1 / 5,
  "1/8": 1 / 8,
};
