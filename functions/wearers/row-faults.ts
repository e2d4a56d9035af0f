/** What is doubtful in one row of a measurement chart, and which of its cells to measure again. */
import type { Takes } from "../define.ts";
import { rememberWithObjects } from "../memo.ts";
import { written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { measureNamed } from "../survey/survey.ts";
import {
  alikeSentence,
  type Chart,
  type ChartRow,
  cellOf,
  figureIn,
  measuredIn,
  rowsOver,
  rowText,
} from "./chart.ts";
import type { Fault, Said } from "./fault.ts";
import { isoDay } from "./iso-day.ts";
import { layerFaults } from "./layer-faults.ts";
import { FAR_APART } from "./plausible-day.ts";
import { surveyFaults } from "./survey-faults.ts";

/** By which age figures count as too old: the arguments of the functions that check a chart. */
export const AGE_ASKED = {
  today: {
    kind: "days",
    about: "the day on which the figures are used; when left out, dates are not checked",
    from: 0,
    to: 200_000,
    otherwise: null,
  },
  days: { kind: "days", about: "the greatest age allowed, in days", from: 0, to: 4000, otherwise: 90 },
} as const satisfies Takes;

/** What a row is checked against. */
export interface Wanted {
  /** The day on which the figures are used, and the greatest age in days; null when dates are not checked. */
  readonly today: number | null;
  readonly days: number;
  /** The measurements that must be there. */
  readonly needed: readonly string[];
}

/** Kept because the row's own verdict and those on the whole chart ask for the same. */
const faultsFound = rememberWithObjects<readonly Fault[]>();
/** Everything doubtful in a row; `rows` are all rows of its wearer. */
export const rowFaults = (
  chart: Chart,
  row: ChartRow,
  rows: readonly ChartRow[],
  wanted: Wanted,
  words: Said,
): readonly Fault[] =>
  faultsFound(
    [rows, row],
    JSON.stringify([words.unit, words.mark, wanted.today, wanted.days, wanted.needed]),
    () => findFaults(chart, row, rows, wanted, words),
  );

function findFaults(
  chart: Chart,
  row: ChartRow,
  rows: readonly ChartRow[],
  wanted: Wanted,
  words: Said,
): Fault[] {
  const wearerCell = cellOf(chart, row, chart.columns.get("wearer")!);
  const beneath = chart.columns.get("beneath");
  const wrong: Fault[] = [];
  if (row.layers === null && beneath !== undefined)
    wrong.push({
      sort: "doubtful",
      sentence: written`nothing says over which layers ${row.wearer} was measured: write them, or "skin"`,
      at: [cellOf(chart, row, beneath)],
    });
  else if (row.layers !== null && rowsOver(rows, row.layers).length > 1)
    wrong.push({
      sort: "doubtful",
      sentence: alikeSentence(row),
      at: [wearerCell],
    });
  const taken = [...chart.measured.values()].filter((column) => typeof row.cells[column] === "number");
  const texts = [...chart.measured].flatMap(([heading, column]) =>
    textFault(chart, row, heading, column, words),
  );
  if (taken.length === 0 && texts.length === 0)
    return [
      ...wrong,
      {
        sort: "unmeasured",
        sentence: written`the row of ${rowText(row)} has no figure`,
        at: [wearerCell],
      },
    ];
  return [
    ...wrong,
    ...texts,
    ...missingOf(chart, [row], wanted.needed),
    ...dateFaults(chart, row, wanted),
    ...(texts.length > 0
      ? []
      : [...surveyFaults(chart, row, rows, words), ...layerFaults(chart, row, rows, words)]),
  ];
}

/** A measurement that is no length: a text, or not above 0. */
function textFault(
  chart: Chart,
  row: ChartRow,
  heading: string,
  column: number,
  { say }: Pick<Said, "say">,
): Fault[] {
  try {
    // A column of words, such as remarks, holds no measurement.
    if (typeof row.cells[column] === "string" && measureNamed(heading) === null) return [];
    figureIn(chart, row, column, heading);
    return [];
  } catch (reason) {
    if (!(reason instanceof Refusal)) throw reason;
    return [{ sort: "doubtful", sentence: reason.sentence(say), at: [cellOf(chart, row, column)] }];
  }
}

/** The measurements of a list, "bust girth, waist girth", that are missing in all of these rows of a wearer. */
export const neededOf = (chart: Chart, rows: readonly ChartRow[], needed: string | null): Fault[] =>
  missingOf(chart, rows, measurementsIn(needed));

/** The measurements that a text lists. */
export const measurementsIn = (list: string | null): readonly string[] =>
  (list ?? "")
    .split(/[,;]/)
    .map((one) => one.trim())
    .filter((one) => one !== "");

/** The measurements that are missing in all of these rows of a wearer. A row without any figure has a fault of its own. */
export function missingOf(chart: Chart, rows: readonly ChartRow[], needed: readonly string[]): Fault[] {
  return needed.flatMap((measurement) => {
    const { heading, column } = measuredIn(chart, measurement);
    if (rows.some((row) => typeof row.cells[column] === "number")) return [];
    const [row] = rows as [ChartRow];
    const who = rows.length > 1 ? row.wearer : rowText(row);
    return [
      {
        sort: "missing",
        sentence: written`the ${heading} of ${who} was never taken: measure it`,
        at: [cellOf(chart, row, column)],
      },
    ];
  });
}

function dateFaults(chart: Chart, row: ChartRow, { today, days }: Wanted): Fault[] {
  if (today === null) return [];
  const column = chart.columns.get("taken");
  const who = rowText(row);
  if (column === undefined)
    return [
      {
        sort: "missing",
        sentence: written`no date says when ${who} was measured: add a column "taken on"`,
        at: [],
      },
    ];
  const at = [cellOf(chart, row, column)];
  const day = row.cells[column];
  if (typeof day !== "number")
    return [
      {
        sort: "missing",
        sentence: written`no date says when ${who} was measured: write it, or measure again`,
        at,
      },
    ];
  const age = Math.floor(today) - Math.floor(day);
  if (Math.abs(age) > Math.max(days, FAR_APART))
    return [
      {
        sort: "doubtful",
        sentence: written`today, ${isoDay(today)}, is more than ten years from the day on which the figures were taken: check both dates`,
        at: [{ argument: "today", cell: 0 }],
      },
    ];
  if (age < 0)
    return [
      {
        sort: "doubtful",
        sentence: written`the figures of ${who} are dated ${isoDay(day)}, which is still to come: check the date`,
        at,
      },
    ];
  return age > days
    ? [
        {
          sort: "too old",
          sentence: written`the figures of ${who} were taken ${age} days ago, ${days} are allowed: measure again before cutting`,
          at,
        },
      ]
    : [];
}
