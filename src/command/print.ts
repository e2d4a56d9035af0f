import { phrase, plural } from "../../functions/phrase.ts";
import { layDesk } from "../lay/desk.ts";
import { DOCUMENTS, type DocumentKind, type DocumentOption } from "../paper/kinds.ts";
import { PAPER_NAMES, SCALES } from "../paper/paper.ts";
import { deskFor, SECONDS_OPTION } from "./laid.ts";
import { answeredBy, namesIn, openBook, setCells } from "./open.ts";
import { needsBook, notOneOf, readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  what: {
    type: "string",
    default: "pattern",
    value: "WHAT",
    about: phrase`what is printed: ${DOCUMENTS.map(({ name }) => name).join(", ")}`,
  },
  page: { type: "string", value: "TITLE", about: phrase`only what is on this page of the book` },
  piece: {
    type: "string",
    multiple: true,
    value: "NAMES",
    about: phrase`only these pieces, names or addresses with commas between; without it those that a cut list cuts, and every piece of a book without one`,
  },
  "every-piece": {
    type: "boolean",
    about: phrase`every piece of the book, also those that no cut list cuts`,
  },
  paper: {
    type: "string",
    default: "a4",
    value: "PAPER",
    about: phrase`${PAPER_NAMES.join(", ")}, or a roll with its width, such as ${"roll=36in"}`,
  },
  scale: {
    type: "string",
    value: "SCALE",
    about: phrase`the scale: ${Object.keys(SCALES).join(", ")}; a lay takes any 1/n, and without it is as large as the paper holds`,
  },
  cell: {
    type: "string",
    multiple: true,
    value: "NAMES",
    about: phrase`of lay, strip and working: only these cells, names or addresses with commas between`,
  },
  blank: { type: "boolean", about: phrase`a form without figures, with room to write` },
  large: { type: "boolean", about: phrase`large type, to be read from where one stands at the table` },
  out: { type: "string", value: "FILE", about: phrase`the PDF file to write` },
  ...SECONDS_OPTION,
  ...SET_OPTION,
  ...JSON_OPTION,
} as const satisfies VerbOptions;

export const print: Verb = {
  name: "print",
  usage:
    "BOOK --out FILE.pdf [--what WHAT] [--page TITLE] [--piece NAMES] [--every-piece] [--cell NAMES] [--paper PAPER] [--scale SCALE] [--blank] [--large] [--seconds N] [--set NAME=VALUE]... [--json]",
  about: phrase`Writes the pattern, or another document of the book, as a PDF for a printer. A pattern is true to scale and packed on as few sheets of paper as are found.`,
  options: OPTIONS,
  examples: [
    "print templates/peplum-bodice.json --paper a4 --out pattern.pdf",
    "print templates/peplum-bodice.json --what chart --blank --out chart.pdf",
  ],
  writes: phrase`A PDF file; the number of its sheets on standard output.`,
  problems: phrase`something printed is to be checked, or could not be drawn; the rest is written`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const [path] = positionals;
    if (path === undefined) throw needsBook("print");
    const file = values.out?.trim() ?? "";
    if (file === "")
      throw new Wrong(phrase`${"print"} needs a file to write to, such as ${"--out pattern.pdf"}`);
    const what = DOCUMENTS.find(({ name }) => name === values.what)?.name;
    if (!what)
      throw notOneOf(
        "--what",
        DOCUMENTS.map(({ name }) => name),
        values.what,
      );
    refuseIdle(what, values);
    const opened = openBook(path, io);
    setCells(opened, values.set ?? []);
    const engine =
      values.seconds === undefined ? opened : answeredBy(opened, deskFor(values.seconds, layDesk));
    const { printed } = await import("../paper/documents.ts");
    const done = await printed(engine, {
      what,
      paper: values.paper,
      day: new Date(),
      ...(values.piece && { pieces: namesIn(values.piece, "--piece") }),
      ...(values["every-piece"] && { everyPiece: true }),
      ...(values.scale !== undefined && { scale: values.scale }),
      ...(values.cell && { cells: namesIn(values.cell, "--cell") }),
      ...(values.page !== undefined && { page: values.page }),
      ...(values.blank && { blank: true }),
      ...(values.large && { large: true }),
    });
    if ("reason" in done) throw new Wrong(done.reason);
    const { bytes, sheets, paper, says, sentences, notes, pieces } = done;
    io.write(file, bytes);
    if (values.json)
      io.out(JSON.stringify({ file, what, paper, sheets, says, pieces, notes, check: sentences }, null, 2));
    else {
      io.out(phrase`${file}  ${says} on ${plural(sheets, "# sheet", "# sheets")} of ${paper}`);
      for (const sentence of notes) io.out(sentence);
      for (const sentence of sentences) io.out(phrase`check: ${sentence}`);
    }
    return sentences.length > 0 ? 1 : 0;
  },
};

/** The options that only some documents take, by their names on the command line. */
const TAKEN: Readonly<Record<"scale" | "piece" | "every-piece" | "page" | "cell" | "blank", DocumentOption>> =
  {
    scale: "scale",
    piece: "pieces",
    "every-piece": "pieces",
    page: "page",
    cell: "cells",
    blank: "blank",
  };

/** Refuses an option that the document does not take, instead of ignoring it without a word. */
function refuseIdle(what: string, values: Readonly<Record<string, unknown>>): void {
  const kinds: readonly DocumentKind[] = DOCUMENTS;
  const kind = kinds.find(({ name }) => name === what)!;
  for (const [option, takes] of Object.entries(TAKEN)) {
    if (values[option] === undefined || kind.takes.includes(takes)) continue;
    const others = kinds.filter((one) => one.takes.includes(takes)).map(({ name }) => name);
    throw new Wrong(
      phrase`${`--${option}`} has no effect on ${`--what ${what}`}; it is for ${others.join(", ")}`,
    );
  }
}
