/** What is not certain on the sheets of a document: figures that carry a sign, and lays that were not searched for. */
import { ESTIMATE_SAYS, ESTIMATE_SIGN } from "../../engine/estimates.ts";
import { LAID_SIGNS, laidText } from "../../engine/laid.ts";
import type { DrawnSheet } from "../../paper/marks.ts";

/** A proved length, and one that the maker laid, need no word. */
const CERTAIN = ["✓", "✎"];
const SIGNS = [
  ...LAID_SIGNS.filter(([sign]) => !CERTAIN.includes(sign)),
  [ESTIMATE_SIGN, ESTIMATE_SAYS] as const,
];
const QUICK = laidText({ by: "quick" });
const QUICK_SIGN = "≈";

/** A remark as a sentence of its own: it begins with a capital and ends with a full stop. */
export const asSentence = (remark: string): string =>
  `${remark.charAt(0).toUpperCase()}${remark.slice(1)}${/[.?!]$/.test(remark) ? "" : "."}`;

const firstWords = (text: string): string => text.split(/\s+/).slice(0, 4).join(" ");

/** What the remarks on the sheets say, once each. */
export function doubtsOn(sheets: readonly DrawnSheet[]): string[] {
  const texts = sheets.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.is === "text" ? [mark.text.trim()] : [])),
  );
  const isQuick = texts.some((text) => text.includes(QUICK));
  return SIGNS.filter(
    ([sign, says]) =>
      (sign === QUICK_SIGN && isQuick) ||
      texts.some((text) => firstWords(text) === firstWords(`${sign} ${says}`)),
  ).map(([, says]) => says);
}
