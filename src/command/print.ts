import { nearestWord } from "../../functions/nearest-word.ts";
import { piecesOf } from "../engine/pieces.ts";
import { PAPER_NAMES, readPaper, SCALES } from "../paper/paper.ts";
import { patternPdf } from "../paper/pattern-pdf.ts";
import { patternSheet } from "../paper/pattern-sheet.ts";
import { fileName } from "./machine.ts";
import { namesIn, openBook, setCells } from "./open.ts";
import { readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  what: { type: "string", default: "pattern", value: "WHAT", about: "what is printed: pattern" },
  piece: {
    type: "string",
    multiple: true,
    value: "NAMES",
    about: "only these pieces, names or addresses with commas between; without it every piece",
  },
  paper: {
    type: "string",
    default: "a4",
    value: "PAPER",
    about: `${PAPER_NAMES.join(", ")}, or a roll with its width, such as roll=36in`,
  },
  scale: {
    type: "string",
    default: "1",
    value: "SCALE",
    about: `the scale: ${Object.keys(SCALES).join(", ")}`,
  },
  out: { type: "string", value: "FILE", about: "the PDF file to write" },
  ...SET_OPTION,
  ...JSON_OPTION,
} as const satisfies VerbOptions;

export const print: Verb = {
  name: "print",
  usage:
    "BOOK --out FILE.pdf [--what pattern] [--piece NAMES] [--paper PAPER] [--scale SCALE] [--set NAME=VALUE]... [--json]",
  about:
    "Writes the pattern as a PDF for a printer: true to scale, packed on as few sheets of paper as are found.",
  options: OPTIONS,
  examples: [
    "print templates/peplum-bodice.json --paper a4 --out pattern.pdf",
    "print templates/peplum-bodice.json --piece skirt_cut --paper roll=36in --out peplum.pdf",
  ],
  writes: "A PDF file; the number of its sheets on standard output.",
  problems: "a piece could not be drawn or a word found no room; the rest is written",
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const [path] = positionals;
    if (path === undefined) throw new Wrong("print needs a book's file");
    const file = values.out?.trim() ?? "";
    if (file === "") throw new Wrong("print needs a file to write to, such as --out pattern.pdf");
    if (values.what !== "pattern") throw new Wrong(`--what must be pattern, not "${values.what}"`);
    const paper = readPaper(values.paper);
    if ("reason" in paper) throw new Wrong(`--${paper.reason}`);
    const scale = Object.hasOwn(SCALES, values.scale) ? SCALES[values.scale] : undefined;
    if (scale === undefined)
      throw new Wrong(`--scale must be one of ${Object.keys(SCALES).join(", ")}, not "${values.scale}"`);
    const engine = openBook(path, io);
    setCells(engine, values.set ?? []);
    const all = piecesOf(engine);
    const wanted = namesIn(values.piece ?? [], "--piece");
    const is = (one: { readonly title: string; readonly address: string }, name: string) =>
      one.title === name || one.address === name;
    for (const name of wanted) {
      const broken = all.lost.find((one) => is(one, name));
      if (broken) throw new Wrong(`${name} cannot be drawn: ${broken.sentence}`);
      if (all.found.some((one) => is(one, name))) continue;
      const near = nearestWord(
        name,
        all.found.map(({ title }) => title),
      );
      throw new Wrong(
        `no pattern piece of this book is called "${name}"${near ? `; is ${near} meant?` : ""}`,
      );
    }
    const found = all.found.filter((one) => wanted.length === 0 || wanted.some((name) => is(one, name)));
    const lost = wanted.length === 0 ? all.lost : [];
    if (found.length === 0)
      throw new Wrong(
        lost[0]
          ? `no piece of ${fileName(path)} can be drawn: ${lost[0].title}: ${lost[0].sentence}`
          : `${fileName(path)} has no pattern pieces: a cell with =RECTANGLE(10; 20) or another function that makes a piece is one`,
      );
    const sheet = patternSheet(engine.book, found, paper, scale);
    if ("reason" in sheet) throw new Wrong(sheet.reason);
    const what = found.length === 1 ? found[0]!.title : `${found.length} pieces`;
    const heading = { title: engine.book.title, what, scale: values.scale, day: new Date() };
    const { bytes, sheets, missing } = await patternPdf(sheet, paper, heading);
    io.write(file, bytes);
    const remarks = [
      ...lost.map(({ title, sentence }) => `${title} is not drawn: ${sentence}`),
      ...sheet.leftOut.map((text) => `"${text}" found no room on the sheet`),
      ...(missing.length > 0 ? [`these letters stand as empty boxes: ${missing.join(" ")}`] : []),
    ];
    const pieces = found.map(({ title }) => title);
    if (values.json)
      io.out(JSON.stringify({ file, paper: paper.name, sheets, pieces, check: remarks }, null, 2));
    else {
      io.out(`${file}  ${what} on ${sheets} ${sheets === 1 ? "sheet" : "sheets"} of ${paper.name}`);
      for (const remark of remarks) io.out(`check: ${remark}`);
    }
    return remarks.length > 0 ? 1 : 0;
  },
};
