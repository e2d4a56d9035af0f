/** What is doubtful in one row of a measurement chart, and which of its cells to measure again. */
import { isAbove, isBelow } from "../compared-figures.ts";
import type { CallContext, Cell, Takes } from "../define.ts";
import { rememberWithObjects } from "../memo.ts";
import type { CellOfList } from "../refusal.ts";
import type { Measure } from "../survey/body-data.ts";
import { type Outlier, outlierVerdict } from "../survey/outlier.ts";
import { measureNamed, surveysOf } from "../survey/survey.ts";
import {
  alikeSentence,
  type Chart,
  type ChartRow,
  cellOf,
  figureIn,
  measuredIn,
  roleText,
  rowsOver,
  rowText,
} from "./chart.ts";
import { isoDay } from "./iso-day.ts";
import { isShaping, isThin, layersText } from "./layer-set.ts";
import { misfitsAmong } from "./misfits.ts";
import { FAR_APART } from "./plausible-day.ts";

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

/** What kind of fault it is: the first word of its verdict, so that a narrow column shows it. */
export type Sort = "unmeasured" | "missing" | "too old" | "doubtful";

/** Something doubtful: a sentence, and the cells that it is about. */
export interface Fault {
  readonly sort: Sort;
  readonly sentence: string;
  readonly at: readonly CellOfList[];
}

/** What a row is checked against. */
export interface Wanted {
  /** The day on which the figures are used, and the greatest age in days; null when dates are not checked. */
  readonly today: number | null;
  readonly days: number;
  /** The measurements that must be there. */
  readonly needed: readonly string[];
}

/** What a fault is written with; unit and mark decide how. */
type Said = Pick<CallContext, "say" | "cm" | "unit" | "mark">;

/** Measures that what is worn beneath does not change. */
const UNCHANGED: ReadonlySet<Measure> = new Set<Measure>([
  "stature", "cervical height", "knee height", "shoulder length", "arm length", "head girth", "hand girth",
  "wrist girth", "ankle girth",
]); // biome-ignore format: a list

/** Whether a row's figures are the body's own: taken over the skin or over thin layers. */
const isBare = ({ layers }: ChartRow): boolean => layers?.every(isThin) === true;

/** Whether a cell holds a length. Anything else has a fault of its own in its row, and nothing is compared with it. */
const isFigure = (cell: Cell | undefined): cell is number => typeof cell === "number" && cell > 0;

/** Kept because the row's own verdict and those on the whole chart ask for the same. */
const faultsFound = rememberWithObjects<readonly Fault[]>();
const faultsBySurvey = rememberWithObjects<readonly Fault[]>();

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
      sentence: `nothing says over which layers ${row.wearer} was measured: write them, or "skin"`,
      at: [cellOf(chart, row, beneath)],
    });
  else if (row.layers !== null && rowsOver(rows, row.layers).length > 1)
    wrong.push({
      sort: "doubtful",
      sentence: alikeSentence(row),
      at: [wearerCell],
    });
  const taken = [...chart.measured.values()].filter((column) => typeof row.cells[column] === "number");
  const texts = [...chart.measured].flatMap(([heading, column]) => textFault(chart, row, heading, column));
  if (taken.length === 0 && texts.length === 0)
    return [
      ...wrong,
      {
        sort: "unmeasured",
        sentence: `the row of ${rowText(row)} has no figure`,
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
function textFault(chart: Chart, row: ChartRow, heading: string, column: number): Fault[] {
  try {
    // A column of words, such as remarks, holds no measurement.
    if (typeof row.cells[column] === "string" && measureNamed(heading) === null) return [];
    figureIn(chart, row, column, heading);
    return [];
  } catch (reason) {
    return [{ sort: "doubtful", sentence: (reason as Error).message, at: [cellOf(chart, row, column)] }];
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
        sentence: `the ${heading} of ${who} was never taken: measure it`,
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
      { sort: "missing", sentence: `no date says when ${who} was measured: add a column "taken on"`, at: [] },
    ];
  const at = [cellOf(chart, row, column)];
  const day = row.cells[column];
  if (typeof day !== "number")
    return [
      { sort: "missing", sentence: `no date says when ${who} was measured: write it, or measure again`, at },
    ];
  const age = Math.floor(today) - Math.floor(day);
  if (Math.abs(age) > Math.max(days, FAR_APART))
    return [
      {
        sort: "doubtful",
        sentence: `today, ${isoDay(today)}, is more than ten years from the day on which the figures were taken: check both dates`,
        at: [{ argument: "today", cell: 0 }],
      },
    ];
  if (age < 0)
    return [
      {
        sort: "doubtful",
        sentence: `the figures of ${who} are dated ${isoDay(day)}, which is still to come: check the date`,
        at,
      },
    ];
  return age > days
    ? [
        {
          sort: "too old",
          sentence: `the figures of ${who} were taken ${age} days ago, ${days} are allowed: measure again before cutting`,
          at,
        },
      ]
    : [];
}

/** Figures that do not fit the wearer's others, by the survey of bodies. Girths over thick layers are no body's. */
const surveyFaults = (
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
        sentence: `the survey to compare ${row.wearer} with must be female, male, either or child, not "${survey.slice(0, 24)}"`,
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
    const verdict = outlierVerdict(measure, figures, outlier, (mm, ...beside) =>
      say(mm * size, ...beside.map((one) => one * size)),
    );
    const concerned = new Set([measure, outlier.swap, pairOf(outlier.order, measure)]);
    const cells = [...concerned].flatMap((one) => {
      const column = one && own.has(one) ? columns.get(one) : undefined;
      return column === undefined ? [] : [cellOf(chart, row, column)];
    });
    return {
      sort: "doubtful" as const,
      sentence: `${rowText(row)}: ${verdict.replace(/^check: /, "")}`,
      at: cells,
    };
  });
}

/** The other of two measures whose order is broken. */
const pairOf = (order: Outlier["order"], measure: Measure): Measure | undefined =>
  order ? (order[0] === measure ? order[1] : order[0]) : undefined;

/** A layer is seldom thicker than this at the waist, in centimetres of its girth: common practice. */
const GAIN_OF_A_LAYER = 4;
/** Tapes differ by so much without anything being wrong, in centimetres. */
const SLACK = 0.5;
/** A waist or a bust is seldom laced to less than the first share of its girth, or built up to more than the second: common practice. */
const SHARES = [0.62, 1.6] as const;

/** Figures that do not fit those of the same wearer over other layers. */
function layerFaults(chart: Chart, row: ChartRow, rows: readonly ChartRow[], words: Said): Fault[] {
  const others = rows.filter((one) => one !== row && one.layers !== null);
  const faults: Fault[] = [];
  if (row.layers === null) return faults;
  for (const other of others) {
    const laced = lacedOtherwise(chart, row, other);
    if (laced) faults.push(laced);
    const within = other.layers!.every((layer) => row.layers!.includes(layer));
    if (!within || other.layers!.length === row.layers.length) continue;
    const added = row.layers.filter((layer) => !other.layers!.includes(layer));
    const toBlame = blamedIn([row, other], chart, rows, words);
    for (const [heading, column] of chart.measured) {
      const [over, beneath] = [row.cells[column], other.cells[column]];
      if (!heading.endsWith("girth") && !measureNamed(heading)?.endsWith("girth")) continue;
      if (!isFigure(over) || !isFigure(beneath)) continue;
      if ([row, other].some((one) => toBlame.has(cellOf(chart, one, column).cell))) continue;
      const why = girthFault(heading, over, beneath, row, other, added, words);
      if (why)
        faults.push({
          sort: "doubtful",
          sentence: why,
          at: [row, other].map((one) => cellOf(chart, one, column)),
        });
    }
  }
  return faults;
}

/** The cells of some rows that do not fit the survey of bodies. Their faults are reported in their own rows, and not again as faults of layers. */
const blamedIn = (some: readonly ChartRow[], chart: Chart, rows: readonly ChartRow[], words: Said) =>
  new Set(
    some.flatMap((row) =>
      surveyFaults(chart, row, rows, words).flatMap(({ at }) => at.map(({ cell }) => cell)),
    ),
  );

function girthFault(
  heading: string,
  over: number,
  beneath: number,
  row: ChartRow,
  other: ChartRow,
  added: readonly string[],
  { say, cm }: Said,
): string | null {
  const both = `the ${heading} of ${rowText(row)} is ${say(over, beneath)}, and over ${layersText(other.layers!)} ${say(beneath, over)}`;
  const measure = measureNamed(heading);
  const torso = measure === "waist girth" || measure === "bust girth";
  if (torso && (isBelow(over, beneath * SHARES[0]) || isAbove(over, beneath * SHARES[1])))
    return `${both}: one of them may be in another unit or halved; measure both again`;
  const shaped = added.some(isShaping);
  if (!shaped && isBelow(over, beneath - cm(SLACK)))
    return `${both}: a girth does not shrink under ${layersText(added)}; measure both again`;
  const laced = row.layers!.some(isShaping) && other.layers!.some(isShaping);
  return measure === "waist girth" &&
    laced &&
    !shaped &&
    isAbove(over - beneath, cm(GAIN_OF_A_LAYER) * added.length, over)
    ? `${both}: ${layersText(added)} can't add ${say(over - beneath)}; was it laced alike? Measure both again`
    : null;
}

/** Two rows over the same stays that say they were laced in different ways. Reported at the later of the two. */
function lacedOtherwise(chart: Chart, row: ChartRow, other: ChartRow): Fault | null {
  const column = chart.columns.get("laced");
  if (column === undefined || other.number > row.number) return null;
  const shared = row.layers!.filter((layer) => isShaping(layer) && other.layers!.includes(layer));
  const [mine, theirs] = [roleText(chart, row, "laced"), roleText(chart, other, "laced")];
  if (shared.length === 0 || mine === "" || theirs === "" || mine.toLowerCase() === theirs.toLowerCase())
    return null;
  return {
    sort: "doubtful",
    sentence: `the ${layersText(shared)} of ${rowText(row)} were laced "${mine.slice(0, 24)}", and over ${layersText(other.layers!)} "${theirs.slice(0, 24)}": lace them alike and measure again`,
    at: [row, other].map((one) => cellOf(chart, one, column)),
  };
}
