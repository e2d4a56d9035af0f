/** The headings of the list of cloth in stock, and the arguments of the functions that read it. One row is one piece of cloth. */
import type { ListForm, Take } from "../define.ts";
import { CLOTH_HEADINGS } from "./cloth-name.ts";

const length = (about: string, from = 0): Take => ({ kind: "length", about, from, to: 100_000 });

export const STOCK_LIST = {
  noun: "the list of cloth in stock",
  columns: {
    cloth: {
      headings: CLOTH_HEADINGS,
      about: "which cloth it is, as a cut list calls it; what follows a comma is a note",
      take: { kind: "text", about: "the cloth" },
    },
    name: {
      headings: ["piece of cloth", "name", "called", "stock piece", "remnant"],
      about: "what this one piece is called; the cloth where it is blank. No two pieces have one name",
      take: { kind: "text", about: "the name of the piece of cloth" },
    },
    full: {
      headings: ["width", "full width"],
      about: "its width from edge to edge; it is laid on where no usable width is given",
      take: { kind: "length", about: "the width", from: 1, to: 1000 },
    },
    width: {
      headings: ["usable width", "width between the selvedges"],
      about: "its width between the selvedges, as it is before washing",
      take: { kind: "length", about: "the usable width", from: 1, to: 1000 },
    },
    length: {
      headings: ["length", "length in stock", "in stock"],
      about: "its length, as it is before washing; blank where a shape is given",
      take: length("the length"),
    },
    shape: {
      headings: ["shape", "outline"],
      about:
        "the outline of a remnant that is no rectangle, its grain down the page, closed lines inside it holes or flaws",
      take: { kind: "piece", about: "the outline" },
    },
    nap: {
      headings: ["nap", "one way"],
      about: "yes where no piece may be turned end for end on it",
      take: { kind: "flag", about: "whether it has a nap" },
    },
    repeat: {
      headings: ["repeat", "pattern repeat"],
      about: "the length of its pattern repeat along the selvedge; blank for plain cloth",
      take: { kind: "length", about: "the repeat", from: 0, to: 200 },
    },
    shrinkage: {
      headings: ["shrinkage", "shrinkage of length"],
      about:
        "the share of its length that it still loses when it is washed before cutting, such as 5%; blank for cloth already washed",
      take: { kind: "share", about: "the shrinkage", from: -0.5, to: 0.9 },
    },
    widthShrinkage: {
      headings: ["shrinkage of width", "width shrinkage"],
      about: "the share of its width that it still loses in that wash",
      take: { kind: "share", about: "the shrinkage of its width", from: -0.5, to: 0.9 },
    },
    price: {
      headings: ["price", "price paid"],
      about: "what it cost; not used in laying",
      take: { kind: "money", about: "the price" },
    },
    colour: {
      headings: ["colour", "color"],
      about: "its colour; not used in laying",
      take: { kind: "text", about: "the colour" },
    },
    reserved: {
      headings: ["reserved", "length reserved"],
      about: "the length of it that a job has reserved, as it is before washing",
      take: length("the length reserved"),
    },
    job: {
      headings: ["reserved for", "job"],
      about: "the job that it is reserved for; that job itself may cut it",
      take: { kind: "text", about: "the job" },
    },
  },
} as const satisfies ListForm;

export type StockField = keyof typeof STOCK_LIST.columns;

/** The argument of every function that reads the list. */
export const STOCK_TAKE = {
  kind: "block",
  about: "the list of cloth in stock with its headings; order and other columns don't matter",
  list: STOCK_LIST,
} as const satisfies Take;

/** The argument of the job that cuts. */
export const JOB_TAKE = {
  kind: "text",
  about:
    "the job that cuts: it may cut what the stock has reserved for it; what is reserved for other jobs is taken off",
  otherwise: null,
} as const satisfies Take;
