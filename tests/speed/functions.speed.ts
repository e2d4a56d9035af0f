/**
 * What one call of each sewing function costs through the engine, and the engine with sewing
 * functions against the same arithmetic written in its built-in ones.
 * npx vitest run --config tests/speed/vitest.config.ts tests/speed/functions.speed.ts
 */
import { HyperFormula } from "hyperformula";
import { it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell, Declaration } from "../../functions/define.ts";
import { engineConfig } from "../../src/engine/config.ts";
import { register } from "../../src/engine/register.ts";
import { closedForm } from "../functions/closed-form.ts";
import { argumentsOf, setting } from "../functions/laws.ts";

register();

/** Cells of a sheet that ask one question: the arguments in a row, each at its own columns. */
interface Question {
  readonly row: Cell[];
  /** Where each argument stands, as a reference with `#` for the row. */
  readonly at: Readonly<Record<string, string>>;
  /** A cell that can be changed a little, and what to the n-th time: no answer may be known beforehand. */
  readonly turn: { readonly column: number; readonly to: (n: number) => Cell };
}

const COPIES = 40;
const ROUNDS = 41;

const letters = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : letters(Math.floor(column / 26) - 1) + letters(column % 26);

function questionOf(declaration: Declaration, example = declaration.examples[0]!): Question {
  const row: Cell[] = [];
  const at: Record<string, string> = {};
  let turn: Question["turn"] | null = null;
  let turned: "measure" | "piece" | null = null;
  argumentsOf(declaration, example).forEach((value, i) => {
    const name = Object.keys(declaration.takes)[i]!;
    const { kind } = declaration.takes[name]!;
    const list = Array.isArray(value) ? (value as Cell[]) : [value as Cell];
    const first = row.length;
    row.push(...list);
    at[name] = list.length === 1 ? `${letters(first)}#` : `${letters(first)}#:${letters(row.length - 1)}#`;
    const told = list[0];
    // A length or another measure a hair greater or less, else a mark on a piece; counts and words stay.
    if (turned !== "measure" && typeof told === "number" && !["count", "days"].includes(kind)) {
      turn = { column: first, to: (n) => (told === 0 ? 1e-10 * n : told * (1 - 1e-10 * n)) };
      turned = "measure";
    }
    if (!turned && kind === "piece") {
      turn = { column: first, to: (n) => `${told} M 1 1 L 1 ${1 + n / 1e4}` };
      turned = "piece";
    }
  });
  const told = row[0];
  const other = (n: number): Cell =>
    typeof told === "string" ? told + " ".repeat(n % 2) : typeof told === "number" ? told + (n % 2) : told!;
  return { row, at, turn: turn ?? { column: 0, to: other } };
}

/** Formulas in rows of one sheet, each beside its question; returns the time of one recalculation in microseconds. */
function recalculation(questions: readonly Question[], formulas: readonly string[]): () => number {
  const width = Math.max(...questions.map(({ row }) => row.length));
  const sheet = questions.flatMap(({ row }, i) =>
    Array.from({ length: COPIES }, (_, copy) => {
      const padded = [...row, ...Array<Cell>(width - row.length).fill(null)];
      return [...padded, formulas[i]!.replaceAll("#", String(i * COPIES + copy + 1))];
    }),
  );
  const engine = HyperFormula.buildFromArray(sheet, engineConfig(setting("in")));
  let n = 0;
  return () => {
    const began = performance.now();
    engine.batch(() => {
      questions.forEach(({ turn }, i) => {
        for (let copy = 0; copy < COPIES; copy += 1) {
          n += 1;
          engine.setCellContents({ sheet: 0, col: turn.column, row: i * COPIES + copy }, turn.to(n));
        }
      });
    });
    return (performance.now() - began) * 1000;
  };
}

/** A formula with `#` for its row, the arguments replaced by where they stand. */
const placed = (formula: string, { at }: Question): string =>
  `=${formula.replace(/"[^"]*"|[A-Za-z_][A-Za-z0-9_.]*(?!\s*\()\b/g, (word) => at[word] ?? word)}`;

const asked = (declaration: Declaration, question: Question): string =>
  `=${declaration.name}(${Object.keys(declaration.takes)
    .map((name) => question.at[name])
    .join(";")})`;

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Medians of two or more measurements taken in turn, so that a busy moment strikes all of them. */
function inTurn(measures: readonly (() => number)[]): number[] {
  const seen = measures.map((): number[] => []);
  for (let round = 0; round < ROUNDS + 5; round += 1)
    measures.forEach((measure, i) => {
      const time = measure();
      if (round >= 5) seen[i]!.push(time);
    });
  return seen.map(median);
}

const functions = [...catalogue.values()];

it("one call of each function through the engine", () => {
  // The cost of setting a cell that nothing but a plain reference reads is taken off.
  const rows = functions.map((declaration) => {
    const question = questionOf(declaration);
    const column = `=${letters(question.turn.column)}#`;
    const [call, plain] = inTurn([
      recalculation([question], [asked(declaration, question)]),
      recalculation([question], [column]),
    ]);
    return { name: declaration.name, returns: declaration.returns, cost: (call! - plain!) / COPIES };
  });
  rows.sort((a, b) => b.cost - a.cost);
  console.log(`median cost of one call, in microseconds; ${rows.length} functions`);
  for (const { name, returns, cost } of rows)
    console.log(
      `${cost.toFixed(1).padStart(9)}  ${name.padEnd(18)} ${returns}${cost > 50 ? "  above 50" : ""}`,
    );
  console.log(
    `${median(rows.map(({ cost }) => cost))
      .toFixed(1)
      .padStart(9)}  in the middle`,
  );
});

it("the engine with sewing functions against the same in built-in ones", () => {
  const pairs = functions.flatMap((declaration) => {
    const formula = closedForm(declaration, "in");
    if (formula === null) return [];
    const question = questionOf(
      declaration,
      declaration.examples.find(({ unit }) => (unit ?? "in") === "in"),
    );
    return [{ declaration, question, sewn: asked(declaration, question), plain: placed(formula, question) }];
  });
  const all = (which: "sewn" | "plain") =>
    recalculation(
      pairs.map(({ question }) => question),
      pairs.map((pair) => pair[which]),
    );
  const [sewn, plain] = inTurn([all("sewn"), all("plain")]);
  const rows = pairs.map(({ declaration, question, sewn, plain }) => {
    const [a, b] = inTurn([recalculation([question], [sewn]), recalculation([question], [plain])]);
    return { name: declaration.name, ratio: a! / b! };
  });
  rows.sort((a, b) => b.ratio - a.ratio);
  console.log(
    `recalculation of ${pairs.length * COPIES} cells: ${(sewn! / 1000).toFixed(1)} ms with sewing functions, ${(plain! / 1000).toFixed(1)} ms with built-in ones: ratio ${(sewn! / plain!).toFixed(2)}`,
  );
  console.log(`one function at a time: median ratio ${median(rows.map(({ ratio }) => ratio)).toFixed(2)}`);
  for (const { name, ratio } of rows.filter((_, i) => i < 12 || i >= rows.length - 5))
    console.log(`${ratio.toFixed(2).padStart(7)}  ${name}`);
});
