import type { Chapter } from "./topic.ts";

/** Seams, notches, lists of marks, and what a fitting changes. */
export const SEAMS: Chapter = {
  title: "Seams and fittings",
  topics: [
    {
      name: "A page of seams",
      summary:
        "A list with the headings Piece, Edge, Sewn to, Its edge, How and Wanted difference says which edge is sewn to which; each row gets its lengths and its verdict.",
      words:
        "seam list, which edge is sewn to which, match seams, walk all seams, waistband to fronts and back, gathered into, ease per seam, check a whole garment",
      says: [
        "Give the list the name seams, and a second list with the headings Piece, Outline, How many and On the fold the name pieces; its outlines are without allowances. In each row `=SEAM_VERDICT(seams;pieces;A2;B2;C2;D2)` says whether the seam is right, `=SEAM_LENGTH(seams;pieces;A2;B2;C2;D2)` how long its first side is, and `=SEAM_GRAIN(seams;pieces;A2;B2;C2;D2)` how it lies to the grain.",
        "One list serves both ways. Only its columns with these headings are read, and a fitting is carried by Piece, Edge, Sewn to, Its edge and How alone: its wanted differences may be worked out from the draft, and its lengths and verdicts may stand in columns of the same list.",
        "Lengths are those of the garment: a piece on the fold has an edge that meets the fold once, twice as long as drawn, and every other edge twice. Several edges in succession are one side: write `front + back + front` for the pieces, and one edge name for all.",
        "`=SEAM_NOTCHES(seams;pieces;A2)` gives a piece all its notches. A column with the heading Notches at says where, else there is one in the middle; Notch says single, double or none.",
      ],
      see: ["SEAM_VERDICT", "SEAM_NOTCHES", "MATCH_MARK", "A measurement that follows the fittings"],
    },
    {
      name: "A measurement that follows the fittings",
      summary:
        "Choose *Choices, decimals, unit and fittings…* in the cell's menu and write a seam, such as bodice waist: the log's net change is added to what is typed.",
      words:
        "fitting log, fitting changes, let out, taken in, after a fitting, carry over, alteration flows, no formula retyped, mock-up, toile, fitted figure",
      says: [
        "The log is a list with the name fitting_log and the headings Piece, Seam, Amount, In or out, Top or bottom, Each side or all round. What is typed in the measurement's cell stays; the line under the formula says what was measured, what the fittings changed, and the result. Every formula that uses the cell follows.",
        "Where an edge has no entries of its own, the change of the edge that it is sewn to counts, along the list with the name seams, through plain and eased seams. Neighbours that disagree are a problem, and so is a seam that nobody knows.",
        "Behind the seam may stand top, bottom or each side. `=FITTING_CHANGE(fitting_log;A2;seams)` gives the same change in a formula, and `=LOG_VERDICT(fitting_log;seams)` finds misspelt entries.",
      ],
      see: ["A page of seams", "Begin the next version", "FITTING_CHANGE", "LOG_VERDICT"],
    },
    {
      name: "Begin the next version",
      summary:
        "Press *Books*, then *Begin the next version* beside the open book: its measurements start from what was fitted, and the log stays as history.",
      words:
        "next version, version 2, second mock-up, new draft after the fitting, history of fittings, carried into",
      says: [
        "The book as it was stays in the list as a book of its own. In the log, the entries that were carried are marked in the column Carried into version and count no longer. No other answer moves; where one would, nothing is done and a sentence says why. One *Undo* takes it back.",
      ],
      see: ["Compare two books", "A measurement that follows the fittings"],
    },
    {
      name: "All marks at once",
      summary:
        "A row of buttons, eyelets, tucks or pleats stands in one cell as a list of places with their unit, such as 1; 3 1/2; 6 in.",
      words:
        "list of positions in one cell, all buttons, all eyelets, all pleats, row of marks, mark the piece",
      says: [
        "`BUTTON_MARKS`, `EYELET_MARKS`, `PLEAT_MARKS`, `TUCK_MARKS` and `SPACED_MARKS` give such a list; `MARKS` puts lengths in several cells together to one. A typed list names its unit behind the last place, so that it means the same after a change of unit.",
        "`WITH_MARKS` draws all of them on an edge of a piece, `OPEN_PLEATS` and `PLEATED_PANEL` open a pleat at each, and `MARK_AT` reads one of them.",
      ],
      see: ["WITH_MARKS", "MARKS", "SPACED_MARKS"],
    },
  ],
};
