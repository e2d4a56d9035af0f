import { define } from "../define.ts";
import { nearestWord } from "../nearest-word.ts";
import { entryNames, loggedTwice } from "../seams/carried-change.ts";
import { EXAMPLE_LOG, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { cellOfLog, LOG_LIST, type LogEntry, logOf } from "../seams/log-list.ts";
import { edgeKey, SEAM_LIST, seamsOf } from "../seams/seam-list.ts";

/**
 * Whether every entry of the fitting log that still counts names an edge of the list of seams, and every seam is
 * logged under one name: "ok", or a sentence about the first entry or seam of which that is not so. An entry of any other name
 * changes no figure, and of a seam that is logged under both its names, by different amounts, FITTING_CHANGE counts only
 * the entries of the edge that it is asked about. Source: common practice.
 */
export const LOG_VERDICT = define({
  name: "LOG_VERDICT",
  summary:
    "Checks that every entry of the fitting log names an edge of the list of seams, and each seam by one name, so that none is lost.",
  source: "common practice",
  words: "fitting log misspelt entry seam that is not there verdict list",
  takes: {
    fitting_log: { kind: "block", about: "the fitting log with its headings", list: LOG_LIST },
    seams: { kind: "block", about: "the list of seams with its headings", list: SEAM_LIST },
  },
  returns: "verdict",
  compute({ fitting_log, seams }, { measure, points }) {
    const list = seamsOf(seams);
    const listed = new Set(list.flatMap(({ sides }) => sides.flat().map(edgeKey)));
    const log = logOf(fitting_log);
    measure("entries", "entries of the log that still count", log.entries.length);
    const strange = log.entries.filter(({ name }) => !listed.has(name));
    measure("strange", "those that name no edge of the list of seams", strange.length);
    const twice = [null, "top" as const, "bottom" as const].flatMap((end) => loggedTwice(end, log, list));
    const seamNames = new Set(twice.map(({ names }) => names.flat().join(" + ")));
    measure(
      "two_names",
      "seams that the log alters under both of their names, by different amounts",
      seamNames.size,
    );
    const check = (at: LogEntry, sentence: string): string => {
      points(cellOfLog(at.places, "seam"), sentence);
      return `check: ${sentence}`;
    };
    const [first] = strange;
    if (first) {
      const near = nearestWord(first.name, listed);
      return check(
        first,
        `row ${first.number} of the fitting log names "${first.name}", and the list of seams has no such edge${near ? `; is "${near}" meant?` : ": correct it, or add the seam"}${strange.length > 1 ? ` (and ${strange.length - 1} more)` : ""}`,
      );
    }
    const [seam] = twice;
    if (!seam) return "ok";
    const rows = seam.entries
      .flat()
      .map(({ number }) => number)
      .toSorted((a, b) => a - b);
    const last = seam.entries.flat().find(({ number }) => number === rows.at(-1))!;
    return check(
      last,
      `rows ${rows.join(", ")} of the fitting log alter one seam under two names, ${entryNames(seam.entries[0])} and ${entryNames(seam.entries[1])}, by different amounts: write all its changes under one of them${seamNames.size > 1 ? ` (and ${seamNames.size - 1} more)` : ""}`,
    );
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
