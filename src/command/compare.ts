import type { LayOrigin } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { lessSearched } from "../engine/laid.ts";
import { titleText } from "../engine/trial-titles.ts";
import type { Comparison } from "../engine/trials.ts";
import { clean } from "../engine/varied-cell.ts";
import type { CellView } from "../engine/view.ts";
import { answerTo } from "./answer.ts";
import { compareBooks } from "./compare-books.ts";
import { SECONDS_OPTION, unsureNote } from "./laid.ts";
import { namesIn, openBook, placeOf, setCells } from "./open.ts";
import { needsBook, readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  show: {
    type: "string",
    multiple: true,
    value: "NAME,...",
    about: phrase`shows these cells too, by name or address`,
  },
  ...SET_OPTION,
  ...JSON_OPTION,
  ...SECONDS_OPTION,
} as const satisfies VerbOptions;

export const compare: Verb = {
  name: "compare",
  usage: "BOOK [OTHER BOOK] [--show NAME,...] [--set NAME=VALUE]... [--seconds N] [--json]",
  about: phrase`Puts the trials kept in a book side by side: where their settings differ and what comes of each; with --seconds N every lay of each trial is searched for N seconds. With two books it says what differs between them, where, and which answers came out otherwise.`,
  options: OPTIONS,
  examples: ["compare book.json", "compare book.json templates/peplum-bodice.json --json"],
  writes: phrase`The answer on standard output, and no file.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 2);
    if (positionals[0] === undefined) throw needsBook("compare");
    if (positionals[1] !== undefined) {
      if (values.set || values.show)
        throw new Wrong(
          phrase`--set and --show belong to the trials of one book; two books are compared as they are`,
        );
      compareBooks([positionals[0], positionals[1]], io, values);
      return 0;
    }
    const engine = openBook(positionals[0], io);
    setCells(engine, values.set ?? []);
    if (engine.book.trials.length === 0)
      throw new Wrong(phrase`this book keeps no trials; keep a setting under a title in What if first`);
    const also = (values.show ? namesIn(values.show, "--show") : []).map((name) => placeOf(engine, name));
    const comparison = answerTo({ is: "compare", book: engine.book, also }, values.seconds).comparison!;
    const unsure = comparison.outputs.flatMap(
      ({ label, views, origins }) =>
        unsureNote(label, views.map(figureOf), origins.reduce(lessSearched), "trials") || [],
    );
    if (values.json) io.out(JSON.stringify(asData(comparison), null, 2));
    else io.out([...asTable(comparison), ...(unsure.length > 0 ? ["", ...unsure] : [])].join("\n"));
    return 0;
  },
};

const figureOf = ({ value }: CellView): number | null => (typeof value === "number" ? value : null);

const plain = ({ value, problem }: CellView) =>
  problem?.is === "error" ? { error: problem.sentence } : typeof value === "number" ? clean(value) : value;

const asData = ({ titles, inputs, outputs }: Comparison) => ({
  trials: titles.map((title, i) => ({
    title,
    cells: Object.fromEntries(inputs.map(({ label, typed }) => [label, typed[i]])),
    answers: Object.fromEntries(outputs.map(({ label, views }) => [label, plain(views[i]!)])),
    ...howLaid(outputs.map(({ label, origins }) => [label, origins[i]!])),
  })),
});

function howLaid(origins: readonly (readonly [string, LayOrigin | null])[]) {
  const laid = origins.filter(([, origin]) => origin !== null);
  return laid.length > 0 ? { "how laid": Object.fromEntries(laid) } : {};
}

function asTable({ titles, inputs, outputs }: Comparison): string[] {
  const table = [
    ["", ...titles.map(titleText)],
    ...inputs.map(({ label, typed }) => [label, ...typed.map((text) => text || phrase`(blank)`)]),
    ...outputs.map(({ label, answers }) => [label, ...answers]),
  ];
  const widths = table[0]!.map((_, i) => Math.max(...table.map((line) => Math.min(line[i]!.length, 40))));
  const lines = table.map((line) =>
    line
      .map((text, i) => text.padEnd(widths[i]!))
      .join("  ")
      .trimEnd(),
  );
  return outputs.length > 0 ? lines : [...lines, "", phrase`no named answer differs between the trials`];
}
