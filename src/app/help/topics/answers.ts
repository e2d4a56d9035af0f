import { LAID_SIGNS } from "../../../engine/laid.ts";
import type { Chapter } from "./topic.ts";

/** What the book says back. */
export const ANSWERS: Chapter = {
  title: "What the book says back",
  topics: [
    {
      name: "Problems in cells",
      summary:
        "An underlined cell with an exclamation mark has an error or a warning: select it to read why and how to mend it.",
      words:
        "error, error in a cell, exclamation mark, problem, problems, warning, wrong, red, why, does not work, look, underlined, unusual, #REF, question mark, dotted underline, est., estimate, estimated, which figure to measure again",
      says: [
        "The sentence under the formula says what is wrong, where, and what was given. All such cells are in the list at the foot of the page; `Alt L` opens it.",
        "A warning is no error: the cell has its answer, and something in it is unusual, such as a measurement that does not fit the wearer's others.",
        "A cell with a question mark and a dotted line is one that a problem elsewhere is about, such as a figure in a measurement chart to take again, or a gap in a cut list; the list at the foot leads to it. A figure marked est. is an estimate or is worked out from one, such as a girth that `GIRTH_OVER` gives: measure before you cut.",
      ],
      see: ["See the working", "IFERROR"],
    },
    {
      name: "See the working",
      summary:
        "*Working*, beside the grid, shows how the selected figure was calculated, step by step from the tape.",
      words:
        "see how a figure was calculated, working, steps, explain, where does it come from, why this number, check, proof, trace",
      says: [
        "Each step stands with its figures in it. Below are the cells that the figure depends on; press one to go to it.",
      ],
      see: ["Problems in cells", "Ask what if"],
    },
    {
      name: "Ask what if",
      summary:
        "*What if*, beside the grid, tries another figure and shows what would follow; the book is unchanged until you choose *Keep*.",
      words:
        "what if, try another figure without changing the book, experiment, slider, solve, solve for, how deep can it be with two yards, goal, compare, trial, trials, sensitivity, what matters, best, largest possible with the cloth",
      says: [
        "*Vary* takes a measurement through a range. *Solve for* looks for the figure that gives what you want, such as the depth that the cloth in stock allows. *Trials* keep several settings side by side. *What matters* ranks the measurements by how much they change an answer.",
      ],
      see: ["See the working"],
    },
    {
      name: "How a length of cloth was found",
      summary:
        "A sign beside a length of cloth says how it was found: by a quick lay, by a search, proved, or by hand.",
      words: `lay, layout, sign, signs, what does ≈ mean, approximately, less or equal, cloth length, nesting, search, quick, ${LAID_SIGNS.map(([sign]) => sign).join(" ")}`,
      says: [
        "Ellwand lays the outlines of all pieces on the cloth, first quickly and then, while you pause, by a search. What a search finds is kept in the book.",
      ],
      table: LAID_SIGNS,
      see: ["YARDAGE", "CLOTH_CHECK"],
    },
  ],
};
