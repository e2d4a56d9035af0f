import { define } from "../define.ts";
import { nearestWord } from "../nearest-word.ts";
import { phrase, written } from "../phrase.ts";
import { entryNames, loggedTwice, type TwiceLogged } from "../seams/carried-change.ts";
import { EXAMPLE_LOG, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { cellOfLog, LOG_LIST, type LogEntry, logOf } from "../seams/log-list.ts";
import { misspeltSeam } from "../seams/misspelt-seam.ts";
import { JOINING, listedEdges, SEAM_LIST, seamsOf } from "../seams/seam-list.ts";
import { toCheck } from "../verdict.ts";

/**
 * Whether every entry of the fitting log that still counts names an edge of the list of seams, and every seam is
 * logged under one name: "ok", or a sentence about the first entry or seam that is not. An entry of any other name
 * changes no figure, and of a seam that is logged under both its names, by different amounts, FITTING_CHANGE counts only
 * the entries of the edge that it is asked about. The same amount under both names counts once, with a caution. Source: common practice.
 */
export const LOG_VERDICT = define({
  name: "LOG_VERDICT",
  summary:
    "Checks that every entry of the fitting log names an edge of the list of seams, and each seam by one name, so that none is lost.",
  source: "common practice",
  words: "fitting log misspelt entry seam that is not there verdict list",
  takes: {
    fitting_log: { kind: "block", about: "the fitting log with its headings", list: LOG_LIST },
    seams: { kind: "block", about: "the list of seams with its headings", list: SEAM_LIST, reads: JOINING },
  },
  returns: "verdict",
  compute({ fitting_log, seams }, { measure, points, doubt }) {
    const list = seamsOf(seams);
    const listed = listedEdges(list);
    const log = logOf(fitting_log);
    measure("entries", "entries of the log that still count", log.entries.length);
    const strange = log.entries.filter(({ name }) => !listed.has(name));
    measure("strange", "those that name no edge of the list of seams", strange.length);
    const twice = [null, "top" as const, "bottom" as const].flatMap((end) => loggedTwice(end, log, list));
    const unlike = twice.filter(({ isAlike }) => !isAlike);
    const called = ({ names }: TwiceLogged) => names.flat().join(" + ");
    const count = new Set(unlike.map(called)).size;
    measure("two_names", "seams that the log alters under both of their names, by different amounts", count);
    const check = (at: LogEntry, sentence: string): string => {
      points(cellOfLog(at.places, "seam"), sentence);
      return toCheck(sentence);
    };
    const [first] = strange;
    if (first) {
      const near = nearestWord(first.name, listed);
      const slip = near === undefined ? null : misspeltSeam(first.name, near, list);
      if (slip) {
        if (slip.at) points(slip.at, slip.sentence);
        return toCheck(slip.sentence);
      }
      return check(
        first,
        near
          ? written`row ${first.number} of the fitting log names "${first.name}", and the list of seams has no such edge; is "${near}" meant?${andMore(strange.length - 1)}`
          : written`row ${first.number} of the fitting log names "${first.name}", and the list of seams has no such edge: correct it, or add the seam${andMore(strange.length - 1)}`,
      );
    }
    const [seam] = unlike;
    if (seam)
      return check(
        seam.entries.flat().toSorted((a, b) => b.number - a.number)[0]!,
        written`rows ${rowsOf(seam)} of the fitting log alter one seam under two names, ${entryNames(seam.entries[0])} and ${entryNames(seam.entries[1])}, by different amounts: write all its changes under one of them${andMore(count - 1)}`,
      );
    for (const [i, one] of twice.entries())
      if (twice.findIndex((other) => called(other) === called(one)) === i)
        doubt(
          phrase`rows ${rowsOf(one)} of the fitting log alter one seam under two names, ${entryNames(one.entries[0])} and ${entryNames(one.entries[1])}, by the same amount, which counts once: where these are two alterations, write both under one name`,
        );
    return "ok";
  },
  examples: [
    {
      given: { fitting_log: EXAMPLE_LOG, seams: EXAMPLE_SEAMS },
      gives: "ok",
      because: "front waist, back waist and armhole lower are in the list of seams",
      formula: "=LOG_VERDICT(fitting_log; seams)",
    },
  ],
});

const rowsOf = ({ entries }: TwiceLogged): string =>
  entries
    .flat()
    .map(({ number }) => number)
    .toSorted((a, b) => a - b)
    .join(", ");

/** How many more there are than the one that a sentence names, to stand behind it; nothing for 0. */
const andMore = (count: number): string => (count > 0 ? written` (and ${count} more)` : "");
