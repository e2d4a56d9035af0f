/**
 * The fitting changes that a cell follows, as its settings write them: the piece and its edge, then its end
 * and whether the change on each side is meant: "bodice waist", "bodice side, bottom", "sleeve cap, each side".
 */
import { phrase } from "../../functions/phrase.ts";

export interface Fitting {
  /** "bodice waist" */
  readonly seam: string;
  readonly end: "top" | "bottom" | null;
  readonly eachSide: boolean;
}

/** The names by which a book calls its fitting log and its list of seams, so that cells can follow them. */
export const LOG_NAME = "fitting_log";
export const SEAMS_NAME = "seams";

/** Reads what is written in a cell's settings, or says in a sentence why it can't be. */
export function readFitting(text: string): Fitting | { readonly fault: string } {
  const [seam = "", ...more] = text.split(",").map((part) => part.trim().replace(/\s+/g, " "));
  if (!/\S\s+\S/.test(seam))
    return {
      fault: phrase`"${text.trim()}" names no seam: write the piece and its edge, such as "bodice waist"`,
    };
  let end: Fitting["end"] = null;
  let eachSide = false;
  for (const word of more.map((one) => one.toLowerCase())) {
    if (word === "top" || word === "bottom") end = word;
    else if (word === "each side") eachSide = true;
    else if (word !== "all round")
      return {
        fault: phrase`"${word}" can't stand behind a seam: write top, bottom, each side or all round`,
      };
  }
  return { seam, end, eachSide };
}

/** A seam in a sentence: "the bottom of bodice side, each side". */
export const fittingWords = ({ seam, end, eachSide }: Fitting): string =>
  `${end ? `the ${end} of ` : ""}${seam}${eachSide ? ", each side" : ""}`;
