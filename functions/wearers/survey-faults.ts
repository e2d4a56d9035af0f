/** Figures of a chart that no body has, and those that do not fit the wearer's others, by the survey of bodies. */
import type { Cell } from "../define.ts";
import { rememberWithObjects } from "../memo.ts";
import { written } from "../phrase.ts";
import type { Measure } from "../survey/body-data.ts";
import { type Outlier, outlierText } from "../survey/outlier.ts";
import { measureNamed, surveysOf } from "../survey/survey.ts";
import { beyondBodies, childMisfits } from "./body-limits.ts";
import { type Chart, type ChartRow, cellOf, roleText, rowText } from "./chart.ts";
import { type Fault, isFigure, type Said } from "./fault.ts";
import { isThin } from "./layer-set.ts";
import { misfitsAmong } from "./misfits.ts";

/** Measures that what is worn beneath does not change. */
const UNCHANGED: ReadonlySet<Measure> = new Set<Measure>([
  "stature", "cervical height", "knee height", "shoulder length", "arm length", "head girth", "hand girth",
  "wrist girth", "ankle girth",
]); // biome-ignore format: a list

/** Whether a row's figures are the body's own: taken over the skin or over thin layers. */
const isBare = ({ layers }: ChartRow): boolean => layers?.every(isThin) === true;

/** Kept because the row itself and the rows over other layers ask for the same. */
const faultsBySurvey = rememberWithObjects<readonly Fault[]>();

/**
 * Figures that no body has, and those that do not fit the wearer's others: by the survey of bodies, or for a child by the
 * shares of an adult's. Girths over thick layers are no body's.
 */
export const surveyFaults = (
  chart: Chart,
  row: ChartRow,
  rows: readonly ChartRow[],
  words: Said,
): readonly Fault[] =>
  faultsBySurvey([rows, row], `${words.unit} ${words.mark}`, () => findMisfits(chart, row, rows, words));

/** What is wrong with a figure that no body has; null for every other. */
export function bodyFault(
  row: ChartRow,
  heading: string,
  figure: number,
  { say, cm }: Pick<Said, "say" | "cm">,
): string | null {
  const measure = measureNamed(heading);
  const dressed = !isBare(row) && heading.includes("girth") && !(measure && UNCHANGED.has(measure));
  const wrong = beyondBodies(heading, figure / cm(0.1), dressed, (mm) => say(mm * cm(0.1)));
  return wrong && written`${rowText(row)}: ${wrong}`;
}

function findMisfits(chart: Chart, row: ChartRow, rows: readonly ChartRow[], words: Said): Fault[] {
  const { say, cm, unit } = words;
  const faults: Fault[] = [];
  const beyond = (one: ChartRow, heading: string, figure: number) => bodyFault(one, heading, figure, words);
  for (const [heading, column] of chart.measured) {
    const figure = row.cells[column];
    const sentence = isFigure(figure) ? beyond(row, heading, figure) : null;
    if (sentence !== null) faults.push({ sort: "doubtful", sentence, at: [cellOf(chart, row, column)] });
  }
  const survey = roleText(chart, row, "survey").toLowerCase();
  if (!/^(female|male|either|child|none|no|)$/.test(survey))
    return [
      ...faults,
      {
        sort: "doubtful",
        sentence: written`the survey to compare ${row.wearer} with must be female, male, either or child, not "${survey.slice(0, 24)}"`,
        at: [cellOf(chart, row, chart.columns.get("survey")!)],
      },
    ];
  const size = cm(0.1);
  const own = new Map<Measure, number>();
  const known = new Map<Measure, number>();
  const columns = new Map<Measure, number>();
  const bare = isBare(row);
  const bodyRows = bare ? [] : rows.filter((one) => one !== row && isBare(one));
  for (const [heading, column] of chart.measured) {
    const measure = measureNamed(heading);
    if (!measure) continue;
    columns.set(measure, column);
    const figure = row.cells[column];
    const counts = bare || UNCHANGED.has(measure);
    const isOf = (one: ChartRow, value: Cell | undefined): value is number =>
      isFigure(value) && beyond(one, heading, value) === null;
    const other = bodyRows
      .map((one) => [one, one.cells[column]] as const)
      .find(([one, value]) => isOf(one, value))?.[1] as number | undefined;
    if (isOf(row, figure) && counts) own.set(measure, figure / size);
    const value = own.get(measure) ?? (other === undefined ? undefined : other / size);
    if (value !== undefined) known.set(measure, value);
  }
  const sayMm = (mm: number, ...beside: number[]) => say(mm * size, ...beside.map((one) => one * size));
  const mine = new Set(own.keys());
  const doubtful = (finding: string, concerned: Iterable<Measure | null | undefined>): Fault => ({
    sort: "doubtful",
    sentence: written`${rowText(row)}: ${finding}`,
    at: [...new Set(concerned)].flatMap((one) => {
      const column = one && own.has(one) ? columns.get(one) : undefined;
      return column === undefined ? [] : [cellOf(chart, row, column)];
    }),
  });
  if (/^(none|no)$/.test(survey)) return faults;
  if (survey === "child") {
    const found = childMisfits(known, mine, unit, sayMm);
    return [...faults, ...found.map(({ measures, finding }) => doubtful(finding, measures))];
  }
  const data = survey === "" ? "either" : (survey as "female" | "male" | "either");
  const misfits = misfitsAmong(surveysOf(data), known, mine).map(({ measure, outlier, figures }) => {
    const why = outlierText(measure, figures, outlier, sayMm);
    return doubtful(why, [measure, outlier.swap, pairOf(outlier.order, measure)]);
  });
  return [...faults, ...misfits];
}

/** The other of two measures whose order is broken. */
const pairOf = (order: Outlier["order"], measure: Measure): Measure | undefined =>
  order ? (order[0] === measure ? order[1] : order[0]) : undefined;
