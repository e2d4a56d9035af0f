import type { Cell } from "../../functions/define.ts";
import { phrase } from "../../functions/phrase.ts";
import { chain, type Working } from "../engine/explain.ts";
import { clean } from "../engine/varied-cell.ts";
import { workingText } from "../engine/working-text.ts";
import { openBook, placeOf, setCells } from "./open.ts";
import { readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = { ...SET_OPTION, ...JSON_OPTION } as const satisfies VerbOptions;

export const explain: Verb = {
  name: "explain",
  usage: "BOOK CELL [--set NAME=VALUE]... [--json]",
  about: phrase`Shows how the value of a cell was calculated, from tape to cut.`,
  options: OPTIONS,
  examples: [
    "explain templates/peplum-bodice.json hem",
    "explain templates/peplum-bodice.json Draft!B5 --json",
  ],
  writes: phrase`The answer on standard output, and no file.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 2);
    const [path, cell] = positionals;
    if (path === undefined || cell === undefined)
      throw new Wrong(
        phrase`${"explain"} needs a book's file and a cell, such as: ${"explain book.json hem"}`,
      );
    const engine = openBook(path, io);
    setCells(engine, values.set ?? []);
    const workings = chain(engine, placeOf(engine, cell));
    if (values.json) io.out(JSON.stringify(workings.map(asData), null, 2));
    else io.out(workings.map((working) => workingText(working, engine.book)).join("\n\n"));
    return 0;
  },
};

/** A working as data, without what only a drawing needs. Each value is given as the tape shows it and in full. */
function asData({ address, name, label, typed, shown, value, problem, parts, calls }: Working) {
  return {
    cell: name ?? address,
    address,
    ...(label === null ? {} : { label }),
    typed,
    shown,
    value: full(value),
    ...(problem ? { check: problem.sentence } : {}),
    ...(parts ? { parts } : {}),
    calls: calls.map(({ declaration, given, steps, answer, value: gives }) => ({
      function: declaration.name,
      given: Object.fromEntries(given.map((one) => [one.name, one.shown])),
      steps: steps.map(({ name: step, rule, filled, shown: stepShown, value: exact, parts: split }) => ({
        step,
        rule,
        filled,
        value: stepShown,
        exact: full(exact),
        ...(split ? { parts: split } : {}),
      })),
      answer,
      exact: full(gives),
      ...(declaration.cautions ? { care: declaration.cautions } : {}),
    })),
  };
}

const full = (value: Cell): Cell => (typeof value === "number" ? clean(value) : value);
