import { phrase } from "../../functions/phrase.ts";
import { leftOut } from "../engine/left-out.ts";
import { oddSteps } from "../engine/odd-steps.ts";
import { numberOf, type QuestionEngine, type Reading } from "../engine/question-engine.ts";
import { Upstream } from "../engine/references.ts";
import { type Row, readingText, sweepCsv, type Watched } from "../engine/sweep.ts";
import type { Thresholds } from "../engine/thresholds.ts";
import { clean, figureText, type VariedCell } from "../engine/varied-cell.ts";
import { answerTo } from "./answer.ts";
import { isLaid, unsureNote } from "./laid.ts";
import { openBook, setCells } from "./open.ts";
import { needsBook, readOptions } from "./options.ts";
import { VARIED_OPTIONS, variedCellsOf, watchesOf } from "./varied-cells.ts";
import { type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  ...VARIED_OPTIONS,
  watch: {
    type: "string",
    multiple: true,
    value: "NAME,...",
    about: phrase`the cells whose values are shown at each step`,
  },
  csv: { type: "boolean", about: phrase`prints a table of comma-separated values` },
} as const satisfies VerbOptions;

export const vary: Verb = {
  name: "vary",
  usage:
    "BOOK --cell NAME --from A --to B [--step S] --watch NAME,... [--cell NAME --from A --to B ...] [--set NAME=VALUE]... [--seconds N] [--json|--csv]",
  about: phrase`Takes one or two typed cells through a range and shows what becomes of others, and where they jump; with --seconds N every lay at each step is searched with the effort of N seconds.`,
  options: OPTIONS,
  examples: [
    "vary templates/peplum-bodice.json --cell depth --from 8 --to 10 --step 1 --watch hem",
    "vary templates/peplum-bodice.json --cell depth --from 8 --to 9 --watch hem,spread_per_gap --csv",
  ],
  writes: phrase`The answer on standard output, and no file.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    if (positionals[0] === undefined) throw needsBook("vary");
    if (values.json && values.csv) throw new Wrong(phrase`choose ${"--json"} or ${"--csv"}, not both`);
    const engine = openBook(positionals[0], io);
    setCells(engine, values.set ?? []);
    const { varied, spans } = variedCellsOf(engine, values, "vary");
    const ranges = varied.map(({ label, step: usual }, i) => {
      const { from, to, step = usual } = spans[i]!;
      if (from === undefined || to === undefined)
        throw new Wrong(phrase`${"vary"} needs --from and --to for ${label}, such as ${"--from 8 --to 14"}`);
      return { from, to, step };
    });
    const watched = watchesOf(engine, values.watch ?? [], "--watch");
    if (watched.length === 0)
      throw new Wrong(phrase`${"vary"} needs --watch and the name of a cell to watch`);
    const { book } = engine;
    const places = varied.map(({ place }) => place);
    const { rows, thresholds, laid } = answerTo(
      { is: "sweep", book, varied: places, spans: ranges, watched, withoutThresholds: values.csv === true },
      values.seconds,
    );
    const failed = rows[0]!.readings.find((reading) => "sentence" in reading);
    if (failed && rows.every(({ readings }) => readings.every((reading) => "sentence" in reading)))
      throw new Wrong(phrase`no step has an answer: at the first, ${failed.sentence}`);
    const asked = { book, varied };
    if (values.csv) {
      io.pass(sweepCsv(asked, watched, rows));
      return 0;
    }
    const watchedPlaces = watched.map(({ place }) => place);
    const warnings = [...leftOut(engine, watchedPlaces, places), ...oddSteps(asked, rows)];
    const unsure = watched.flatMap(({ place, label }, i) => {
      const figures = rows.map(({ readings }) => numberOf(readings[i]));
      return laid && isLaid(engine, place) ? unsureNote(label, figures, laid, "steps") || [] : [];
    });
    if (values.json) {
      const data = asData(varied, watched, rows, thresholds);
      const how = laid && { "how laid": laid, notes: unsure };
      io.out(JSON.stringify({ ...data, ...(warnings.length > 0 && { check: warnings }), ...how }, null, 2));
    } else
      io.out(
        [...asTable(asked, watched, rows), ...notes(asked, watched, thresholds, warnings), ...unsure].join(
          "\n",
        ),
      );
    return 0;
  },
};

type Asked = Pick<QuestionEngine, "book" | "varied">;

const plain = (reading: Reading) =>
  "sentence" in reading
    ? { error: reading.sentence }
    : typeof reading.value === "number"
      ? clean(reading.value)
      : reading.value;

function asData(
  varied: readonly VariedCell[],
  watched: readonly Watched[],
  rows: readonly Row[],
  found: readonly Thresholds[],
) {
  const settingOf = ({ figures }: Row) => varied.map(({ label }, i) => [label, figures[i]]);
  const unusual = rows.flatMap((row) =>
    (row.odd ?? []).map(({ label, sentence }) => ({
      at: Object.fromEntries(settingOf(row)),
      cell: label,
      sentence,
    })),
  );
  return {
    rows: rows.map((row) =>
      Object.fromEntries([
        ...settingOf(row),
        ...watched.map(({ label }, i) => [label, plain(row.readings[i]!)]),
      ]),
    ),
    ...(unusual.length > 0 && { unusual }),
    thresholds: found
      .flatMap(({ jumps }) => jumps)
      .map(({ watched: { label }, at, before, after, sentence }) => ({
        cell: label,
        at,
        before: plain(before),
        after: plain(after),
        sentence,
      })),
  };
}

function asTable(asked: Asked, watched: readonly Watched[], rows: readonly Row[]): string[] {
  const heads = [...asked.varied, ...watched].map(({ label }) => label);
  const table = [
    heads,
    ...rows.map(({ figures, readings, odd = [] }) => [
      ...asked.varied.map((cell, i) => figureText(asked.book, cell.kind, figures[i]!)),
      ...watched.map((one, i) => readingText(asked.book, one, readings[i]!)),
      ...(odd.length > 0
        ? [phrase`check: ${odd.map(({ label }) => phrase`${label} is unusual`).join(", ")}`]
        : []),
    ]),
  ];
  // A sentence in a cell does not make its column wide.
  const isShort = (line: number, column: number) =>
    line === 0 || !isSentence(rows[line - 1]!.readings[column - asked.varied.length]);
  const widths = heads.map((_, i) =>
    Math.max(...table.map((line, k) => (isShort(k, i) ? line[i]!.length : 0))),
  );
  return table.map((line) =>
    line
      .map((text, i) => text.padEnd(widths[i] ?? 0))
      .join("  ")
      .trimEnd(),
  );
}

const isSentence = (reading: Reading | undefined): boolean =>
  reading !== undefined &&
  ("sentence" in reading || (typeof reading.value === "string" && reading.value.startsWith("check: ")));

const linesOf = ({ watched, jumps, tooMany }: Thresholds): string[] =>
  tooMany
    ? [phrase`${watched.label} jumps at too many places to name`]
    : jumps.map(({ sentence }) => sentence);

function notes(
  asked: Asked,
  watched: readonly Watched[],
  found: readonly Thresholds[],
  warnings: readonly string[],
): string[] {
  const idle = watched.flatMap(({ place, label }) => {
    const upstream = new Upstream(asked.book, [place]);
    const still = asked.varied.filter((cell) => !upstream.has(cell.place));
    return still.map((cell) => phrase`${label} does not rest on ${cell.label}`);
  });
  const lines = [
    ...found.flatMap(linesOf),
    ...idle,
    ...warnings.map((sentence) => phrase`check: ${sentence}`),
  ];
  return lines.length > 0 ? ["", ...lines] : [];
}
