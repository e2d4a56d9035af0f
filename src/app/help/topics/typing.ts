import type { Chapter } from "./topic.ts";

/** Figures, formulas and names. */
export const TYPING: Chapter = {
  title: "Figures and formulas",
  topics: [
    {
      name: "Type a length",
      summary:
        "Type it with its fractions, as the tape shows it: `16 1/2`, `16½`, `42 cm`, `1 yd 9 in`, `5' 3\"`. A figure without a unit is in the book's unit.",
      words:
        "fractions, fraction, type a measurement, enter a measurement, tape, eighths of an inch, half, quarter, inches, centimetres, centimeters, feet, yards, date, dates",
      says: [
        "What you typed is kept to the letter and shown again when you edit the cell; the cell itself shows the length to the finest mark that is chosen under *Round to*.",
        "A fraction stands behind the whole number with a space: `16 1/2`. In a formula it is written in the same way: `=EASE(36 1/2; 39)`.",
        "A date is typed as `2026-05-04`. `25.12.2026` and `12/25/2026` are understood, since only one of their figures can be the month; where both can be, as in `4.5.2026`, a book that shows decimal commas puts the day first, and in other books you are asked which day is meant. A column of dates also understands `4 May 2026`, `4. Mai 2026`, `4 mai 2026` and `4 de mayo de 2026`.",
      ],
      see: ["Change how figures are shown", "Decimal comma or point", "ROUND_TAPE", "TAPE_TEXT"],
    },
    {
      name: "Write a formula",
      summary:
        "Begin with `=`. Then come figures, names, cells such as `B3`, the signs `+ - * /`, and functions with `;` between their arguments.",
      words:
        "formula, how do I write a formula, equals sign, calculate, function, argument, semicolon, brackets, arithmetic, plus minus times divide, multiply, percent, subtract",
      says: [
        "`=waist + 2` adds 2 to the cell that is called waist; `=B3 / 4` divides B3 by 4; `=SUM(B1:B4)` adds a block of cells.",
        "While you type, the names and functions that fit are listed: `Tab` takes the first, the arrow keys and `Enter` another. Inside a function the hint says which argument is being typed, what it means, what is usual, and shows what it measures. `F1` opens the whole help of that function, and closing the help leads back to where you were.",
        "A `,` between arguments is read as `;` where it can't be a decimal comma.",
        "A formula that is not finished is never lost: while you look at another cell or page it waits in the line above the grid. `Enter` puts it into its own cell, `Escape` drops it.",
      ],
      see: ["Point at cells", "Name a cell or a list", "IF", "SUM", "ROUND"],
    },
    {
      name: "Point at cells",
      summary:
        "While a formula waits for a figure, press a cell: its name or address is put in. Drag for a block; turn to another page first for a cell there.",
      words:
        "click a cell, use a cell of another page, refer to another page, reference, select cells in a formula, point, other sheet, link cells, range, block",
      says: [
        "A formula waits for a figure after `=`, after a sign, after `(` and after `;`. Anywhere else a press on a cell leaves the formula, which is kept.",
        "A cell of another page is written `Draft!B3`, a title with spaces `'Second fitting'!B3`. A cell with a name is put in by its name.",
      ],
      see: ["Write a formula", "Name a cell or a list"],
    },
    {
      name: "Name a cell or a list",
      summary:
        "Select the cell or the block, type a name into the field above the grid (*no name*), and press `Enter`. Then use it in any formula: `=hip - waist`.",
      words:
        "name a cell, name a list, naming, rename, names, label, names from labels, name a block, call a cell, variable, named cell, named range",
      says: [
        "A name begins with a letter and has letters, digits and `_`: `hip_over_pad`. It must not look like an address, such as `B3`.",
        "*Names from labels…* in the menu of the grid gives a whole block its names in one step: each label names the cell at its right, each heading the column below it, or the block gets one name. Every name is shown before it is given, can be changed or left out, and can belong to one page alone.",
        "A name goes along when its cell is moved; when it is changed, every formula that uses it is changed too.",
      ],
      see: ["Write a formula", "Point at cells"],
    },
    {
      name: "Decimal comma or point",
      summary:
        "Both are read: `28,5` and `28.5`. *Decimals* at the top of the page chooses which of them is shown.",
      words:
        "decimal comma, decimal point, comma, dot, decimals, thousand, separator, 28,5, european, number format",
      says: [
        "What could be two figures, such as `1,250`, is asked about in the cell instead of being guessed.",
        "Between the arguments of a function stands `;`, so that the comma stays free for decimals.",
      ],
      see: ["Type a length", "Change how figures are shown"],
    },
    {
      name: "Change the unit",
      summary:
        "*Unit* at the top of the page: the whole book is shown in inches, centimetres or another unit, and no measurement changes.",
      words:
        "change the unit, units, centimetres instead of inches, inches instead of centimetres, metric, imperial, convert, switch, cm, in, mm, millimetres",
      says: [
        "Lengths that were typed without a unit are converted, and so are figures inside formulas, so that every answer stays as it was. `Ctrl Z` takes it back.",
        "A single cell can be shown in another unit: open the menu with `Shift F10` and choose *Choices, decimals, unit and fittings…*. For one length in a formula there are functions: `=CM(42)`.",
      ],
      see: ["Change how figures are shown", "CM", "IN", "YD"],
    },
    {
      name: "Change how figures are shown",
      summary:
        "*Round to* chooses the finest mark of the tape for the book; *Choices, decimals, unit and fittings…* in the menu sets a cell's decimals.",
      words:
        "how many decimals are shown, rounding of lengths, precision, eighths, sixteenths, finest mark, exact, decimal places, full precision, format, hidden digits",
      says: [
        "This changes only what is shown: formulas go on with the full figure. *Full precision* above the grid shows the selected cell's.",
        "To round the figure itself, use a function.",
      ],
      see: ["ROUND_TAPE", "ROUND", "Type a length"],
    },
  ],
};
