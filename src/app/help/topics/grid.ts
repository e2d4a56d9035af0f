import type { Chapter } from "./topic.ts";

/** Pages, rows, columns and cells. */
export const GRID: Chapter = {
  title: "The grid and its pages",
  topics: [
    {
      name: "Rows and columns",
      summary:
        "Press *Rows and columns* above the grid, or right-click a cell: insert, delete, move, hide, widen, keep in sight.",
      words:
        "insert a row, insert row, delete a row, add a row, remove a row, insert a column, delete a column, add a column, hide rows, show hidden rows, unhide, make a column wider, width, narrower, freeze, keep column in sight, move rows, heading, kind of column, fit, drag",
      says: [
        "Formulas and names follow when rows and columns are inserted, deleted or moved. Several rows are selected by dragging over their numbers, several columns over their headings; drag them by the same place to move them.",
        "Draw the edge of a heading to make its column wider; press it twice to fit the column to what it holds. *Heading and kind of column* also says what the column holds: lengths, numbers, texts, dates.",
        "Hidden rows count in formulas like all others; a line below the grid says which they are.",
        "With the keyboard: `Alt Insert`, `Alt Delete`, `Alt Shift` and an arrow.",
      ],
      see: ["Sort a block", "Keys"],
    },
    {
      name: "Pages",
      summary:
        "The *+* beside a stage adds a page to it; the *…* beside the open page renames, copies, moves or deletes it.",
      words:
        "add a page, new page, rename a page, copy a page, duplicate, another wearer, second wearer, delete a page, move a page, sheet, tab, stage, order of pages, next page, save as CSV, export a table",
      says: [
        "*Copy for another wearer…* copies a page with its names, so that the same draft stands in the book twice. Where the page names its wearer in a cell of its own, the copy has the other wearer's name there, and all that it takes from a measurement chart follows. The copy for another wearer follows no fittings, because those in the log are the first wearer's. The form says which cells of other pages the copy goes on using.",
        "*Save as CSV, as shown* writes the page as a table for other programs, with fractions as they are seen; *Save as CSV, figures in full* writes plain numbers.",
        "Drag a page to another place or another stage, or press `Alt Shift` and an arrow in the list. `Alt Page Down` turns to the next page.",
        "When a page is deleted, the message says which formulas lose what they refer to; *Undo* brings all of it back.",
      ],
      see: ["Point at cells", "Copy a book", "Undo and redo"],
    },
    {
      name: "Sort a block",
      summary: "Select the rows, open the menu and choose *Sort…*: by any column, upwards or downwards.",
      words: "sort, sort by size, order, alphabetical, arrange, ascending, descending, rank rows",
      says: [
        "Say whether the first row holds headings. A block whose formulas use other rows of the same block is not sorted, and the reason is shown.",
      ],
      see: ["Rows and columns"],
    },
    {
      name: "Photographs in cells",
      summary:
        "Drop or paste a picture on a cell, or open the cell's menu and choose *Photograph in*: a small copy is kept in the book.",
      words:
        "photo, photograph, picture, image, swatch, snapshot of the cloth, camera, add a picture, paste a picture, alternative text",
      says: [
        "A JPEG, PNG or WebP picture of at most 25 MB is made small, to 320 pixels and 40 kB, without the place and time that a camera writes into it. All photographs of a book together take at most 4 MB.",
        "The cell shows it beside its text, and larger in the line under the formula while the cell is selected. The description that you type in the form is read to people who can't see the picture. It follows its cell like a note, and is copied with it.",
      ],
      see: ["Copy and paste"],
    },
    {
      name: "Find and replace",
      summary: "`Ctrl F` finds a text in the whole book, in texts and formulas, and replaces it in one step.",
      words:
        "find, search, find a word in the book, replace, look for, where is, change everywhere, rename everywhere",
      says: [
        "Press an address in the list to go to its cell. A replacement is one step: *Undo* takes all of it back.",
      ],
      see: ["Undo and redo"],
    },
    {
      name: "Copy and paste",
      summary: "`Ctrl C`, `Ctrl X` and `Ctrl V`, within the book and to and from other programs.",
      words:
        "copy, paste, cut and paste, move a cell, clipboard, paste from another program, import a table, spreadsheet, email",
      says: [
        "A copied formula moves along: what pointed one row up points one row up from its new place. A cut cell stays until it is pasted; then its name, its note and all formulas that use it follow it.",
        "A table from another program comes in cell by cell, as one step.",
      ],
      see: ["Fill cells", "Undo and redo"],
    },
    {
      name: "Fill cells",
      summary:
        "Draw the corner of the selection over more cells, or press `Ctrl D` to fill down and `Ctrl R` to the right.",
      words:
        "fill down, fill right, repeat, drag the corner, handle, copy down, series, same formula in every row",
      says: ["Formulas move along with each row and column, as when they are copied."],
      see: ["Copy and paste"],
    },
    {
      name: "Notes on cells",
      summary:
        "Press *Note* above the grid, or `Shift F2`: a note stays with its cell and is shown when the cell is selected.",
      words: "note, write a note on a cell, comment, remark, annotate, memo, explain, remember",
      says: ["A cell with a note has a mark in its corner. The note goes along when the cell is moved."],
    },
    {
      name: "Choices in a cell",
      summary:
        "*Choices, decimals, unit and fittings…* in the menu: the cell then offers a list to pick from.",
      words:
        "pick from a list, choices, dropdown, drop-down, select, options, allowed values, yes or no, list of values, which wearer",
      says: [
        "Write the choices with `;` between them, `box; knife`, or the cells that hold them, `=A2:A6`. `Alt` and the arrow down open the list.",
        "Another value may still be typed; it is kept and listed among the problems.",
      ],
      see: ["SWITCH"],
    },
  ],
};
