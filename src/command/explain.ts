import { chain, type Working } from "../engine/explain.ts";
import { openBook, placeOf, setCells } from "./open.ts";
import { readOptions } from "./options.ts";
import { type Verb, Wrong } from "./verb.ts";

export const explain: Verb = {
  name: "explain",
  usage: "BOOK CELL [--set NAME=VALUE]... [--json]",
  about: "Tells how a cell's figure came about, from tape to cut.",
  async run(args, io) {
    const { values, positionals } = readOptions(
      args,
      { set: { type: "string", multiple: true }, json: { type: "boolean" } },
      2,
    );
    const [path, cell] = positionals;
    if (path === undefined || cell === undefined)
      throw new Wrong("explain needs a book's file and a cell, such as: explain book.json hem");
    const engine = openBook(path, io);
    setCells(engine, values.set ?? []);
    const workings = chain(engine, placeOf(engine, cell));
    if (values.json) io.out(JSON.stringify(workings.map(told), null, 2));
    else io.out(workings.map(inWords).join("\n\n"));
    return 0;
  },
};

/** A working without what only a drawing needs. */
function told({ address, name, typed, shown, look, calls }: Working) {
  return {
    cell: name ?? address,
    address,
    typed,
    shown,
    ...(look ? { look: look.sentence } : {}),
    calls: calls.map(({ declaration, given, steps, answer }) => ({
      function: declaration.name,
      given: Object.fromEntries(given.map((one) => [one.name, one.shown])),
      steps: steps.map(({ name: step, rule, filled, shown: value }) => ({ step, rule, filled, value })),
      answer,
    })),
  };
}

function inWords({ address, name, typed, shown, look, calls }: Working): string {
  const lines = [
    `${name ?? address}${name ? `  (${address})` : ""}  ${look ? `look: ${look.sentence}` : shown}`,
  ];
  if (typed.startsWith("=")) lines.push(`  ${typed}`);
  for (const { declaration, given, steps, answer } of calls) {
    lines.push(
      `  ${declaration.name}: ${given.map((one) => `${one.name} ${one.shown.length > 60 ? "…" : one.shown}`).join(", ")}`,
    );
    for (const step of steps)
      lines.push(
        `    ${step.name} = ${step.filled === step.rule && !step.formula ? `${step.rule}:` : `${step.filled} =`} ${step.shown}`,
      );
    lines.push(`    gives ${answer}`);
  }
  return lines.join("\n");
}
