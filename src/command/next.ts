/** Begins the next version of a garment from its fitted figures. */
import { phrase } from "../../functions/phrase.ts";
import { writeBook } from "../book/write.ts";
import { nextVersion } from "../engine/next-version.ts";
import { layDesk } from "../lay/desk.ts";
import { openBook } from "./open.ts";
import { needsBook, readOptions } from "./options.ts";
import { JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  out: { type: "string", value: "FILE", about: phrase`writes the next version into FILE` },
  ...JSON_OPTION,
} as const satisfies VerbOptions;

export const next: Verb = {
  name: "next",
  usage: "BOOK --out FILE [--json]",
  about: phrase`Begins the next version of a book: figures that follow the fittings start from the fitted figures, and their entries in the log stay as history.`,
  options: OPTIONS,
  examples: [
    "next templates/peplum-bodice.json --out version-2.json",
    "next templates/peplum-bodice-cm.json --out version-2.json --json",
  ],
  writes: phrase`The next version into the file of --out; the book itself stays as it is.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    if (positionals[0] === undefined) throw needsBook("next");
    if (values.out === undefined)
      throw new Wrong(phrase`${"next"} needs --out FILE, where the next version is written`);
    const engine = openBook(positionals[0], io);
    const begun = nextVersion(engine.book, layDesk);
    engine.destroy();
    if ("refusal" in begun) throw new Wrong(begun.refusal);
    io.write(values.out, writeBook(begun.book));
    const { number, sentence, book } = begun;
    if (values.json)
      io.out(JSON.stringify({ file: values.out, title: book.title, version: number, sentence }, null, 2));
    else io.out(`${values.out}: ${sentence}`);
    return 0;
  },
};
