/** Figures of a chart that do not fit the wearer's others, by the survey of bodies. */
import { rememberWithObjects } from "../memo.ts";
import { written } from "../phrase.ts";
import type { Measure } from "../survey/body-data.ts";
import { type Outlier, outlierText } from "../survey/outlier.ts";
import { measureNamed, surveysOf } from "../survey/survey.ts";
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

/** Figures that do not fit the wearer's others, by the survey of bodies. Girths over thick layers are no body's. */
export const surveyFaults = (
  chart: Chart,
  row: ChartRow,
  rows: readonly ChartRow[],
  words: Said,
): readonly Fault[] =>
  faultsBySurvey([rows, row], `${words.unit} ${words.mark}`, () => findMisfits(chart, row, rows, words));

function findMisfits(chart: Chart, row: ChartRow, rows: readonly ChartRow[], { say, cm }: Said): Fault[] {
  const survey = roleText(chart, row, "survey").toLowerCase();
  if (/^(child|none|no)$/.test(survey)) return [];
  if (!/^(female|male|either|)$/.test(survey))
    return [
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
    const other = bodyRows.map(({ cells }) => cells[column]).find(isFigure);
    if (isFigure(figure) && counts) own.set(measure, figure / size);
    const value = own.get(measure) ?? (other === undefined ? undefined : other / size);
    if (value !== undefined) known.set(measure, value);
  }
  const data = survey === "" ? "either" : (survey as "female" | "male" | "either");
  return misfitsAmong(surveysOf(data), known, new Set(own.keys())).map(({ measure, outlier, figures }) => {
    const why = outlierText(measure, figures, outlier, (mm, ...beside) =>
      say(mm * size, ...beside.map((one) => one * size)),
    );
    const concerned = new Set([measure, outlier.swap, pairOf(outlier.order, measure)]);
    const cells = [...concerned].flatMap((one) => {
      const column = one && own.has(one) ? columns.get(one) : undefined;
      return column === undefined ? [] : [cellOf(chart, row, column)];
    });
    return {
      sort: "doubtful" as const,
      sentence: written`${rowText(row)}: ${why}`,
      at: cells,
    };
  });
}

/** The other of two measures whose order is broken. */
const pairOf = (order: Outlier["order"], measure: Measure): Measure | undefined =>
  order ? (order[0] === measure ? order[1] : order[0]) : undefined;
