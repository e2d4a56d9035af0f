import { phrase, plural } from "../../functions/phrase.ts";
import { checks } from "../engine/checks.ts";
import { cellTextWithName } from "../engine/label.ts";
import { searchingDesk } from "../lay/searching-desk.ts";
import { deskFor, SECONDS_OPTION } from "./laid.ts";
import { answeredBy, openBook, setCells } from "./open.ts";
import { needsBook, readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions } from "./verb.ts";

const OPTIONS = { ...SET_OPTION, ...JSON_OPTION, ...SECONDS_OPTION } as const satisfies VerbOptions;

export const check: Verb = {
  name: "check",
  usage: "BOOK [--set NAME=VALUE]... [--seconds N] [--json]",
  about: phrase`Lists the problems of a book; exits 1 when it has any. Each lay is searched for N seconds with --seconds N; without it, 2 seconds before it says that a cut list finds no place on the cloth in hand.`,
  options: OPTIONS,
  examples: [
    "check templates/peplum-bodice.json",
    "check templates/peplum-bodice.json --set 'hip=20' --json",
  ],
  writes: phrase`The answer on standard output, and no file.`,
  problems: phrase`the book has problems; they are listed`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    if (positionals[0] === undefined) throw needsBook("check");
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
    } else if (found.length === 0) io.out(phrase`no problems`);
    for (const { place, sentence, at, waiting } of values.json ? [] : found) {
      const see = at.map((one) => engine.address(one)).join(", ");
      const also = [
        ...(at.length > 0 ? [phrase`see ${see}`] : []),
        ...(waiting > 0 ? [phrase`it affects ${plural(waiting, "# more cell", "# more cells")}`] : []),
      ];
      io.out(`${cellTextWithName(engine.book, place)}: ${[sentence, ...also].join("; ")}`);
    }
    return found.length > 0 ? 1 : 0;
  },
};
