import { asBlock } from "../block.ts";
import { define } from "../define.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import {
  CHART,
  type Chart,
  type ChartRow,
  cellOf,
  figureIn,
  measuredIn,
  readChart,
  rowOver,
  rowsOf,
  rowText,
} from "../wearers/chart.ts";
import { isoDay } from "../wearers/iso-day.ts";
import { bodyFault } from "../wearers/survey-faults.ts";

/**
 * A wearer's measurement from a chart, in the book's unit: the figure in the row of this wearer and
 * these layers, under this heading. Names are compared without regard to capitals, layers as sets in
 * any order, measurements also by their other names ("waist" is the waist girth). `beneath` may be left out
 * where the measurement was taken over one layer set only. Refuses a wearer, a layer set or a measurement
 * that the chart does not have, two rows alike, a figure that was never taken and a misspelt heading. A figure that no
 * body has is answered with a doubt.
 * Names of measurements: ISO 8559-1. Source: common practice.
 */
export const MEASURE_OF = define({
  name: "MEASURE_OF",
  summary: "One measurement of one wearer, from the measurement chart.",
  source: "common practice; measurements are named after ISO 8559-1",
  words: "figure wearer role cast chart look up body table person over stays layers",
  takes: {
    chart: CHART,
    wearer: {
      kind: "text",
      about: "whose measurement, as the chart's column wearer has it",
      otherwise: null,
    },
    measurement: { kind: "text", about: "which measurement, as its heading has it, such as waist girth" },
    beneath: {
      kind: "text",
      about:
        'over which layers, such as "shift, stays"; may be left out where it was taken over one layer set only',
      otherwise: null,
    },
  },
  returns: "length",
  compute({ chart: block, wearer, measurement, beneath }, { measure, takes, doubt, say, cm }) {
    if ((wearer ?? "").trim() === "")
      throw new Refusal(phrase`wearer is empty: choose whose measurement is meant`);
    const chart = readChart(block);
    const { heading, column } = measuredIn(chart, measurement);
    const row =
      (beneath ?? "").trim() === ""
        ? onlyRow(chart, wearer!, heading, column)
        : rowOver(chart, wearer!, beneath!);
    const figure = figureIn(chart, row, column, heading);
    if (figure === null) throw neverTaken(chart, row, heading, column);
    takes(cellOf(chart, row, column));
    const wrong = bodyFault(row, heading, figure, { say, cm });
    if (wrong !== null) doubt(wrong, cellOf(chart, row, column));
    const day = row.cells[chart.columns.get("taken") ?? -1];
    const how = () =>
      typeof day === "number"
        ? phrase`the ${heading} of ${rowText(row)}, taken on ${isoDay(day)}`
        : phrase`the ${heading} of ${rowText(row)}`;
    return measure("figure", how, figure);
  },
  examples: [
    {
      given: {
        chart: asBlock(
          [
            ...["Wearer", "Worn beneath", "Taken on", "Waist girth", "Hip girth"],
            ...["the widow", "shift", 46146, 29, 39.5],
            ...["the widow", "shift, stays", 46146, 26.5, 40],
            ...["the miller", "shirt", 46146, 38, 41],
          ],
          5,
          [],
        ),
        wearer: "the widow",
        measurement: "waist girth",
        beneath: "stays over shift",
      },
      gives: 26.5,
      because: "the widow's second row is over shift and stays, in whatever order they are named",
    },
    {
      given: {
        chart: asBlock(["role", "bust", "over", "the cook", 94, "shift", "the smith", 103, "shirt"], 3, []),
        wearer: "the smith",
        measurement: "bust girth",
      },
      gives: 103,
      unit: "cm",
      because: "the columns stand in any order, and bust is the bust girth",
    },
  ],
});

/** The one row of a wearer in which the measurement was taken. */
function onlyRow(chart: Chart, wearer: string, heading: string, column: number): ChartRow {
  const rows = rowsOf(chart, wearer);
  const [first, ...more] = rows.filter((row) => figureIn(chart, row, column, heading) !== null);
  if (!first) throw neverTaken(chart, rows[0]!, heading, column, rows.length > 1);
  if (more.length > 0)
    throw new Refusal(
      phrase`the ${heading} was taken of ${andOf([first, ...more])}: say in beneath which is meant`,
    );
  return first;
}

/** The sentence of a figure that is not there, and over which layers it was taken instead. */
function neverTaken(chart: Chart, row: ChartRow, heading: string, column: number, anywhere = false): Refusal {
  const others = rowsOf(chart, row.wearer).filter(
    (one) => one !== row && figureIn(chart, one, column, heading) !== null,
  );
  const who = anywhere ? row.wearer : rowText(row);
  return new Refusal(
    others.length > 0
      ? phrase`the ${heading} of ${who} was never taken, only of ${andOf(others)}`
      : phrase`the ${heading} of ${who} was never taken`,
    cellOf(chart, row, column),
  );
}

const andOf = (rows: readonly ChartRow[]): string =>
  rows.map(rowText).reduce((before, row) => written`${before}, and of ${row}`);
