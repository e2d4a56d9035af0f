import { findPlace } from "../book/address.ts";
import { blankBook } from "../book/shape.ts";
import { Engine } from "../engine/engine.ts";
import { show } from "../engine/show.ts";
import { layDesk } from "../lay/desk.ts";
import { openBook, placeOf, setCells } from "./open.ts";
import { readOptions } from "./options.ts";
import { type Io, type Verb, Wrong } from "./verb.ts";

type Value = number | string | boolean | null;

/** A number without the dust of binary arithmetic: at most 12 figures. */
const clean = (value: Value): Value => (typeof value === "number" ? Number(value.toPrecision(12)) : value);

export const calculate: Verb = {
  name: "calculate",
  usage: "BOOK [--set NAME=VALUE]... [--show NAME,...] [--json]  |  --formula '=...' [--unit in|cm] [--json]",
  about: "Works a book and prints its named cells, or works one formula.",
  async run(args, io) {
    const { values, positionals } = readOptions(
      args,
      {
        set: { type: "string", multiple: true },
        show: { type: "string" },
        formula: { type: "string" },
        unit: { type: "string" },
        json: { type: "boolean" },
      },
      1,
    );
    if (values.formula !== undefined)
      return formula(values.formula, values.unit ?? "in", values.json ?? false, io);
    const path = positionals[0];
    if (path === undefined) throw new Wrong("calculate needs a book's file, or --formula '=...'");
    const engine = openBook(path, io);
    setCells(engine, values.set ?? []);
    const names =
      values.show
        ?.split(",")
        .map((name) => name.trim())
        .filter((name) => name !== "") ?? Object.keys(engine.book.names);
    const rows = names.map((name) => ({
      name,
      view: engine.view(
        values.show ? placeOf(engine, name) : findPlace(engine.book, engine.book.names[name]!)!,
      ),
    }));
    const wrong = rows.find(({ view }) => view.look?.is === "error");
    if (values.json) {
      if (wrong && values.show) throw new Wrong(`${wrong.name}: ${wrong.view.look!.sentence}`);
      const entries = rows.map(({ name, view }) => [
        name,
        view.look?.is === "error" ? { error: view.look.sentence } : clean(view.value),
      ]);
      io.out(JSON.stringify(Object.fromEntries(entries), null, 2));
      return 0;
    }
    const width = Math.max(0, ...rows.map(({ name }) => name.length));
    for (const { name, view } of rows)
      io.out(`${name.padEnd(width)}  ${view.look ? `look: ${view.look.sentence}` : view.shown}`);
    return wrong && values.show ? 2 : 0;
  },
};

function formula(text: string, unit: string, json: boolean, io: Io): number {
  if (unit !== "in" && unit !== "cm") throw new Wrong(`--unit must be in or cm, not "${unit}"`);
  const engine = new Engine(blankBook("A formula", unit, unit === "in" ? "1/8" : "1 mm"), layDesk);
  const answer = engine.evaluate(text.startsWith("=") ? text : `=${text}`);
  if ("problem" in answer) throw new Wrong(answer.problem);
  const value = clean(answer.value);
  if (json) io.out(JSON.stringify({ value }));
  else
    io.out(
      typeof value === "number" || typeof value === "string"
        ? String(value)
        : show(value, answer.kind, engine.book),
    );
  return 0;
}
