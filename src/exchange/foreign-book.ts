/** A spreadsheet file as plain data, whichever standard it follows, before it becomes pages of a book. */

/** What a cell shows its value as. A date is a number of days and a time a share of a day. */
export type ShownAs = "plain" | "text" | "flag" | "date" | "time" | "share" | "money" | "fraction" | "error";

export interface ForeignCell {
  /** Null for a formula whose value the file does not have. */
  readonly value: string | number | boolean | null;
  readonly as: ShownAs;
  /** The decimal places that a figure is always shown with, as in 18.00. */
  readonly places?: number;
  /** Without "=", in the signs of its standard. */
  readonly formula?: string;
}

export interface Rectangle {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface ForeignSheet {
  readonly title: string;
  readonly hidden: boolean;
  readonly rows: readonly (readonly (ForeignCell | undefined)[])[];
  readonly merged: readonly Rectangle[];
  /** In pixels, by column. */
  readonly widths: ReadonlyMap<number, number>;
  readonly hiddenRows: ReadonlySet<number>;
  readonly hiddenColumns: ReadonlySet<number>;
  /** By the cell's address. */
  readonly notes: ReadonlyMap<string, string>;
  readonly choices: readonly ForeignChoices[];
  /** Columns that stay in sight. */
  readonly frozen: number;
  readonly links: number;
  /** What the sheet has and a page can't have, such as "2 pictures". */
  readonly ignored: readonly string[];
}

/** Cells that are chosen from a list of words, or from the cells that a formula names. */
export interface ForeignChoices {
  readonly where: Rectangle;
  readonly list: readonly string[] | { readonly formula: string };
}

export interface ForeignName {
  readonly name: string;
  /** The sheet it belongs to; null for one of the whole file. */
  readonly sheet: string | null;
  /** What it stands for, in the signs of the file's standard. */
  readonly formula: string;
}

export interface ForeignBook {
  /** How its formulas are written. */
  readonly signs: "29500" | "26300";
  readonly title: string | null;
  /** Its description. */
  readonly about: string | null;
  readonly sheets: readonly ForeignSheet[];
  readonly names: readonly ForeignName[];
  /** Whether the file has macros; nothing of them is read. */
  readonly macros: boolean;
  /** Whether it refers to other files. */
  readonly elsewhere: boolean;
}
