import { define } from "../define.ts";
import { nearestWord } from "../nearest-word.ts";
import { EXAMPLE_LOG, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { cellOfLog, LOG_LIST, logOf } from "../seams/log-list.ts";
import { edgeKey, SEAM_LIST, seamsOf } from "../seams/seam-list.ts";

/**
 * Whether every entry of the fitting log that still counts names an edge of the list of seams: "ok", or a
 * sentence about the first that does not. An entry of any other name changes no figure. Source: common practice.
 */
export const LOG_VERDICT = define({
  name: "LOG_VERDICT",
  summary:
    "Checks that every entry of the fitting log names an edge of the list of seams, so that none is lost.",
  source: "common practice",
  words: "fitting log misspelt entry seam that is not there verdict list",
  takes: {
    fitting_log: { kind: "block", about: "the fitting log with its headings", list: LOG_LIST },
    seams: { kind: "block", about: "the list of seams with its headings", list: SEAM_LIST },
  },
  returns: "verdict",
  compute({ fitting_log, seams }, { measure, points }) {
    const listed = new Set(seamsOf(seams).flatMap(({ sides }) => sides.flat().map(edgeKey)));
    const { entries } = logOf(fitting_log);
    measure("entries", "entries of the log that still count", entries.length);
    const strange = entries.filter(({ name }) => !listed.has(name));
    measure("strange", "those that name no edge of the list of seams", strange.length);
    const [first] = strange;
    if (!first) return "ok";
    const near = nearestWord(first.name, listed);
    const sentence = `row ${first.number} of the fitting log names "${first.name}", and the list of seams has no such edge${near ? `; is "${near}" meant?` : ": correct it, or add the seam"}${strange.length > 1 ? ` (and ${strange.length - 1} more)` : ""}`;
    points(cellOfLog(first.places, "seam"), sentence);
    return `check: ${sentence}`;
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
