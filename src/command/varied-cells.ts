/** The options that vary and solve share: cells to vary, their ranges, cells to watch. */

import { unclearFigure } from "../../functions/decimal.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import type { Engine } from "../engine/engine.ts";
import { type Watched, watchAt } from "../engine/sweep.ts";
import type { OpenSpan } from "../engine/target.ts";
import { figureFor, isProblem, type Problem, type VariedCell, variedCellAt } from "../engine/varied-cell.ts";
import { SECONDS_OPTION } from "./laid.ts";
import { namesIn, placeOf } from "./open.ts";
import { JSON_OPTION, SET_OPTION, type VerbOptions, Wrong } from "./verb.ts";

/** `--cell` and its range may be given twice; the ranges belong to the cells in their order. */
export const VARIED_OPTIONS = {
  cell: {
    type: "string",
    multiple: true,
    value: "NAME",
    about: phrase`the typed cell to change; may be given twice, for two cells`,
  },
  from: {
    type: "string",
    multiple: true,
    value: "A",
    about: phrase`the first value of its range, as typed in the book; the second one belongs to the second cell`,
  },
  to: { type: "string", multiple: true, value: "B", about: phrase`the last value of its range` },
  step: {
    type: "string",
    multiple: true,
    value: "S",
    about: phrase`the distance between two values of the range; the book's finest mark for a length`,
  },
  ...SET_OPTION,
  ...JSON_OPTION,
  ...SECONDS_OPTION,
} as const satisfies VerbOptions;

interface Typed {
  readonly cell?: string[] | undefined;
  readonly from?: string[] | undefined;
  readonly to?: string[] | undefined;
  readonly step?: string[] | undefined;
}

/** The answer, or a wrong request that says why. */
export function sound<T extends object>(answer: T | Problem): T {
  if (isProblem(answer)) throw new Wrong(answer.problem);
  return answer;
}

/** The cells to vary, with the ranges that were given for them. */
export function variedCellsOf(
  engine: Engine,
  typed: Typed,
  verb: string,
): { varied: VariedCell[]; spans: OpenSpan[] } {
  const cells = typed.cell ?? [];
  if (cells.length === 0)
    throw new Wrong(phrase`${verb} needs --cell and the name of a typed cell, such as ${"--cell depth"}`);
  if (cells.length > 2) throw new Wrong(phrase`${verb} varies one or two cells, not ${cells.length}`);
  for (const option of ["from", "to", "step"] as const) {
    if ((typed[option]?.length ?? 0) > cells.length)
      throw new Wrong(
        phrase`${`--${option}`} is given ${typed[option]!.length} times for ${plural(cells.length, "one cell", "# cells")}`,
      );
  }
  const varied = cells.map((cell) => sound(variedCellAt(engine.book, placeOf(engine, cell))));
  if (varied.length === 2 && varied[0]!.label === varied[1]!.label)
    throw new Wrong(phrase`--cell ${varied[0]!.label} is given twice; choose another cell for the second`);
  const spans = varied.map((cell, i) => ({
    from: figure(engine, cell, "from", typed.from?.[i]),
    to: figure(engine, cell, "to", typed.to?.[i]),
    step: figure(engine, cell, "step", typed.step?.[i]),
  }));
  return { varied, spans };
}

function figure(
  engine: Engine,
  cell: VariedCell,
  option: string,
  text: string | undefined,
): number | undefined {
  if (text === undefined) return undefined;
  // The step of a date is a number of days.
  const read = figureFor(
    engine.book,
    option === "step" && cell.kind === "days" ? { kind: "figure" } : cell,
    text,
  );
  if (read !== null) return read;
  const unclear = unclearFigure(text, engine.book.decimal ?? "point");
  if (unclear) throw new Wrong(`--${option}: ${unclear}`);
  if (cell.kind === "length") throw new Wrong(notALength(option, "8 1/2", text));
  if (cell.kind === "days" && option !== "step")
    throw new Wrong(phrase`${`--${option}`} must be a date such as ${"2026-05-04"}, not "${text}"`);
  throw new Wrong(notANumber(option, text));
}

export const notALength = (option: string, example: string, text: string): string =>
  phrase`${`--${option}`} must be a length such as ${example}, not "${text}"`;

export const notANumber = (option: string, text: string): string =>
  phrase`${`--${option}`} must be a number, not "${text}"`;

/** Cells to watch, by their names with commas between. */
export function watchesOf(engine: Engine, names: readonly string[], option: string): Watched[] {
  const watched = namesIn(names, option).map((name) => sound(watchAt(engine, placeOf(engine, name))));
  return watched.filter(({ label }, i) => watched.findIndex((one) => one.label === label) === i);
}
