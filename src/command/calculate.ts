import { withDecimalMark } from "../../functions/decimal.ts";
import type { Kind } from "../../functions/define.ts";
import { DEFAULT_MARK } from "../../functions/fractions.ts";
import { originText } from "../../functions/lay.ts";
import { toDigits } from "../../functions/number-text.ts";
import { asRead, phrase } from "../../functions/phrase.ts";
import { UNITS } from "../../functions/units.ts";
import { namedCells } from "../book/names.ts";
import { type Book, blankBook } from "../book/shape.ts";
import { besideText } from "../engine/beside-answer.ts";
import { careText, cautionsAt, cautionsIn } from "../engine/cautions.ts";
import { Engine } from "../engine/engine.ts";
import { estimateText } from "../engine/estimates.ts";
import { fittedText } from "../engine/fitted-text.ts";
import type { LayDesk } from "../engine/lay-desk.ts";
import { hasAnswer } from "../engine/sentences.ts";
import { show } from "../engine/show.ts";
import type { CellView } from "../engine/view.ts";
import { searchingDesk } from "../lay/searching-desk.ts";
import { deskFor, laidData, SECONDS_OPTION } from "./laid.ts";
import { answeredBy, namesIn, openBook, placeOf, setCells } from "./open.ts";
import { readOptions, unitFrom } from "./options.ts";
import { type Io, JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

type Value = number | string | boolean | null;

/** A number without the rounding errors of binary arithmetic: at most 12 digits. */
const clean = (value: Value): Value => (typeof value === "number" ? toDigits(value, 12) : value);

const OPTIONS = {
  ...SET_OPTION,
  show: {
    type: "string",
    multiple: true,
    value: "NAME,...",
    about: phrase`prints these cells, by name or address, instead of all named cells`,
  },
  formula: {
    type: "string",
    value: "'=...'",
    about: phrase`works this formula instead, alone or as if it stood in the book`,
  },
  unit: {
    type: "string",
    value: UNITS.join("|"),
    about: phrase`the unit of a formula without a book; inches when left out`,
  },
  ...JSON_OPTION,
  ...SECONDS_OPTION,
} as const satisfies VerbOptions;

export const calculate: Verb = {
  name: "calculate",
  usage: `BOOK [--set NAME=VALUE]... [--show NAME,...|--formula '=...'] [--seconds N] [--json]  |  --formula '=...' [--unit ${UNITS.join("|")}] [--seconds N] [--json]`,
  about: phrase`Calculates a book and prints its named cells, or calculates one formula, alone or as if it stood in the book. Each lay is searched for N seconds with --seconds N; without it quick lays answer, and a list that finds no place on the cloth in hand is searched for 2 seconds before the answer is no.`,
  options: OPTIONS,
  examples: [
    "calculate --formula '=SPREAD_PER_GAP(16.5;23.5;5)'",
    "calculate templates/peplum-bodice.json --set hip=46 --show hem,cloth_length_a --json",
  ],
  writes: phrase`The answer on standard output, and no file.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const path = positionals[0];
    if (path === undefined && values.formula === undefined)
      throw new Wrong(phrase`${"calculate"} needs a book's file, or ${"--formula '=...'"}`);
    if (path === undefined && values.set)
      throw new Wrong(phrase`--set needs a book's file, whose cells it sets`);
    if (path !== undefined && values.unit !== undefined)
      throw new Wrong(phrase`--unit is for a formula without a book; a book has its own unit`);
    if (values.formula !== undefined && values.show)
      throw new Wrong(phrase`choose ${"--formula"} or ${"--show"}, not both`);
    const desk = deskFor(values.seconds, searchingDesk(0));
    const opened = path === undefined ? blankEngine(values.unit ?? "in", desk) : openBook(path, io);
    setCells(opened, values.set ?? []);
    const engine = path === undefined ? opened : answeredBy(opened, desk);
    if (values.formula !== undefined) return formula(engine, values.formula, values.json ?? false, io);
    const cells = values.show
      ? namesIn(values.show, "--show").map((name) => ({ name, place: placeOf(engine, name) }))
      : namedCells(engine.book);
    const rows = cells.map(({ name, place }) => ({
      name,
      view: engine.view(place),
      estimate: estimateText(engine, place),
      fitted: fittedText(engine, place),
      beside: besideText(engine, place),
    }));
    const cautions = cautionsAt(
      engine,
      cells.map(({ place }) => place),
    );
    const wrong = rows.find(({ view }) => view.problem?.is === "error");
    if (values.json) {
      if (wrong && values.show) throw new Wrong(`${wrong.name}: ${wrong.view.problem!.sentence}`);
      const entries = rows.map(({ name, view }) => [
        name,
        view.problem?.is === "error"
          ? { error: view.problem.sentence }
          : view.problem && hasAnswer(view.problem)
            ? { value: clean(view.value), check: view.problem.sentence }
            : clean(view.value),
      ]);
      const lays = laidData(engine);
      const estimates = rows.flatMap(({ name, estimate }) => (estimate === "" ? [] : [[name, estimate]]));
      // No cell can have a name of two words.
      if (estimates.length > 0) entries.push(["rests on estimates", Object.fromEntries(estimates) as never]);
      const fitted = rows.flatMap((row) => (row.fitted === "" ? [] : [[row.name, row.fitted]]));
      if (fitted.length > 0) entries.push(["with fittings", Object.fromEntries(fitted) as never]);
      const beside = rows.flatMap((row) => (row.beside === "" ? [] : [[row.name, row.beside]]));
      if (beside.length > 0) entries.push(["beside the answers", Object.fromEntries(beside) as never]);
      if (Object.keys(lays).length > 0) entries.push(["how laid", lays as never]);
      if (cautions.length > 0) entries.push(["take care", cautions as never]);
      io.out(JSON.stringify(Object.fromEntries(entries), null, 2));
      return 0;
    }
    const width = Math.max(0, ...rows.map(({ name }) => name.length));
    for (const { name, view, estimate, fitted, beside } of rows)
      io.out(`${name.padEnd(width)}  ${inTable(view, [estimate, fitted, beside])}`);
    for (const caution of cautions) io.out(careText(caution));
    return wrong && values.show ? 2 : 0;
  },
};

/** What a cell holds, its problem, or both where the answer rests on something unusual. */
const inTable = ({ problem, shown, origin }: CellView, said: readonly string[]): string => {
  const remarks = [!problem && origin && asRead(originText(origin)), ...said].filter(Boolean).join("; ");
  if (problem)
    return `${hasAnswer(problem) ? `${shown}  ` : ""}${phrase`check: ${problem.sentence}`}${remarks && hasAnswer(problem) ? `  (${remarks})` : ""}`;
  return remarks ? `${shown}  (${remarks})` : shown;
};

function blankEngine(text: string, desk: LayDesk): Engine {
  const unit = unitFrom(text);
  return new Engine(blankBook("A formula", unit, DEFAULT_MARK[unit]), desk);
}

function formula(engine: Engine, text: string, json: boolean, io: Io): number {
  if (text.trim() === "")
    throw new Wrong(phrase`--formula is empty; give one such as ${"--formula '=EASE(36 1/2; 39)'"}`);
  const asked = text.trim().startsWith("=") ? text.trim() : `=${text}`;
  const answer = engine.evaluate(asked);
  if ("problem" in answer) throw new Wrong(answer.problem);
  const value = clean(answer.value);
  const warning = answer.unusual;
  const cautions = cautionsIn(engine, asked);
  const care = cautions.length > 0 && { "take care": cautions };
  if (json) io.out(JSON.stringify({ value, ...(warning && { check: warning }), ...care }));
  else {
    const lines = [inWords(value, answer.kind, engine.book), ...(warning ? [phrase`check: ${warning}`] : [])];
    io.out([...lines, ...cautions.map(careText)].join("\n"));
  }
  return 0;
}

/** A number in full, because a formula is asked for to the last place; a day as a date. */
const inWords = (value: Value, kind: Kind, book: Book): string =>
  (typeof value === "number" && kind !== "days") || typeof value === "string"
    ? withDecimalMark(String(value), book.decimal)
    : show(value, kind, book);
