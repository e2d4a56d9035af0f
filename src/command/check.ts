import { checks } from "../engine/checks.ts";
import { cellTextWithName } from "../engine/label.ts";
import { searchingDesk } from "../lay/searching-desk.ts";
import { deskFor, SECONDS_OPTION } from "./laid.ts";
import { answeredBy, openBook, setCells } from "./open.ts";
import { readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = { ...SET_OPTION, ...JSON_OPTION, ...SECONDS_OPTION } as const satisfies VerbOptions;

export const check: Verb = {
  name: "check",
  usage: "BOOK [--set NAME=VALUE]... [--seconds N] [--json]",
  about:
    "Lists the problems of a book; exits 1 when it has any. Each lay is searched for N seconds with --seconds N; without it, 2 seconds before it says that a cut list finds no place on the cloth in hand.",
  options: OPTIONS,
  examples: [
    "check templates/peplum-bodice.json",
    "check templates/peplum-bodice.json --set 'hip=20' --json",
  ],
  writes: "The answer on standard output, and no file.",
  problems: "the book has problems; they are listed",
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    if (positionals[0] === undefined) throw new Wrong("check needs a book's file");
    const opened = openBook(positionals[0], io);
    setCells(opened, values.set ?? []);
    const engine = answeredBy(opened, deskFor(values.seconds, searchingDesk(0)));
    const found = checks(engine);
    if (values.json) {
      io.out(
        JSON.stringify(
          found.map(({ address, name, label, is, sentence, at, waiting }) => ({
            address,
            name: name ?? null,
            label,
            is,
            sentence,
            at: at.map((one) => engine.address(one)),
            waiting,
          })),
          null,
          2,
        ),
      );
    } else if (found.length === 0) io.out("no problems");
    for (const { place, sentence, at, waiting } of values.json ? [] : found) {
      io.out(
        `${cellTextWithName(engine.book, place)}: ${sentence}${at.length > 0 ? `; see ${at.map((one) => engine.address(one)).join(", ")}` : ""}${waiting > 0 ? `; it affects ${waiting} more cell${waiting === 1 ? "" : "s"}` : ""}`,
      );
    }
    return found.length > 0 ? 1 : 0;
  },
};
