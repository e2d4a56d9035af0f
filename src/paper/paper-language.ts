/** In which language documents are. */
import type { Language } from "../../functions/phrase.ts";

/** A letter of another script than those which the documents' typeface has and sets one after another from the left. */
const OTHER_LETTER =
  /[^\P{L}\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Armenian}\p{Script=Georgian}\p{Script=Common}]/u;

/**
 * Whether documents can be in a language: lines, tables and drawings are set from left to right, and the typeface
 * has the letters of some scripts only. Documents are in English where they can't be.
 */
export const isForPaper = ({ direction, phrases }: Language): boolean =>
  direction === "ltr" && !OTHER_LETTER.test(JSON.stringify(phrases));
