/**
 * A measurement chart as one block of cells: a row for each wearer and layer set, a column for each
 * measurement. Its headings say what each column is, in any order and any case; other columns are
 * passed over.
 */
import { headed, headingText } from "../block.ts";
import { comparedName } from "../compared-name.ts";
import type { Block, Cell, Take } from "../define.ts";
import { grouped } from "../grouped.ts";
import { remember, rememberWithObject, rememberWithObjects } from "../memo.ts";
import { isMeant, misspeltPhrase, suggestion } from "../nearest-word.ts";
import { asRead, phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { MEASURE_NAMES, measureNamed } from "../survey/survey.ts";
import { layersIn, layersKey, layersText } from "./layer-set.ts";

/** The columns of a chart that hold no measurement, by their headings; the first is the usual one. */
const ROLES = {
  wearer: ["wearer", "wearers", "role", "who"],
  beneath: ["worn beneath", "beneath", "over", "taken over", "layers", "worn underneath"],
  taken: ["taken on", "taken", "measured on", "date"],
  survey: ["compare with", "survey"],
  laced: ["laced", "lacing", "laced to"],
} as const;

type Role = keyof typeof ROLES;

const ROLE_HEADINGS: readonly string[] = Object.values(ROLES).flat();
const KNOWN: readonly string[] = [...ROLE_HEADINGS, ...MEASURE_NAMES];

/** Whether a heading, as headings are compared, is that of the wearers. */
export const isWearerHeading = (heading: string): boolean =>
  (ROLES.wearer as readonly string[]).includes(heading);

/** Whether a heading, as headings are compared, is that of the layers worn beneath. */
export const isLayersHeading = (heading: string): boolean =>
  (ROLES.beneath as readonly string[]).includes(heading);

/** The argument of every function that reads a chart. */
export const CHART = {
  kind: "block",
  holds: "length",
  about:
    'the measurement chart with its headings: "wearer", "worn beneath", "taken on", and a column for each measurement',
} as const satisfies Take;

export interface ChartRow {
  /** As it is typed, without spaces at its ends; "" for a row without a wearer. */
  readonly wearer: string;
  /** Null where nothing says what was worn beneath. */
  readonly layers: readonly string[] | null;
  /** The row of the block, counted from 0. */
  readonly number: number;
  readonly cells: readonly Cell[];
}

export interface Chart {
  readonly rows: readonly ChartRow[];
  /** The rows of each wearer, by the name as it is compared. */
  readonly byWearer: ReadonlyMap<string, readonly ChartRow[]>;
  /** The column of each role, counted from 0. */
  readonly columns: ReadonlyMap<Role, number>;
  /** The columns of measurements, by their headings as they are compared. */
  readonly measured: ReadonlyMap<string, number>;
  readonly wide: number;
}

const isBlank = (cell: Cell | undefined): boolean =>
  cell === undefined || cell === null || String(cell).trim() === "" || /^[-–—−]$/.test(String(cell).trim());

/** Kept because every figure taken from a chart reads it; a chart that was changed is another object. */
const charts = rememberWithObject<Block, Chart>();

/**
 * The chart that was read last with the same headings. Rows and wearers of which nothing has changed since stay the same
 * objects, so that what is doubtful in them is not found again for a figure of another wearer.
 */
const latestCharts = remember<string, { chart: Chart | null }>(20);

/** Reads a chart. Refuses one without headings or without wearers, and headings that are twice or misspelt. */
export const readChart = (block: Block): Chart => charts(block, () => chartOf(block));

function chartOf(block: Block): Chart {
  const { headings, rows, above } = headed(
    block,
    KNOWN,
    () => phrase`write "wearer", "worn beneath" and the names of the measurements over its columns`,
    () => phrase`the chart`,
  );
  const columns = new Map<Role, number>();
  const measured = new Map<string, number>();
  const measures = new Map<string, string>();
  headings.forEach((heading, at) => {
    const role = (Object.keys(ROLES) as Role[]).find((one) =>
      (ROLES[one] as readonly string[]).includes(heading),
    );
    if (role) {
      if (columns.has(role))
        throw new Refusal(phrase`the chart has two columns that mean "${ROLES[role][0]}": keep one`);
      columns.set(role, at);
    } else if (heading !== "") {
      const measure = measureNamed(heading) ?? heading;
      const other = measures.get(measure);
      if (other !== undefined)
        throw new Refusal(
          other === heading
            ? phrase`the chart has two columns headed "${heading}": keep one`
            : phrase`the chart has two columns of one measurement, "${other}" and "${heading}": keep one`,
        );
      measures.set(measure, heading);
      measured.set(heading, at);
    }
  });
  const wearer = columns.get("wearer");
  if (wearer === undefined)
    throw new Refusal(
      phrase`the chart has no column "wearer": give that heading to the column with the names`,
    );
  const beneath = columns.get("beneath");
  const latest = latestCharts(JSON.stringify([above, headings]), () => ({ chart: null }));
  const before = latest.chart;
  const chartRows = rows.map((cells, i): ChartRow => {
    const old = before?.rows[i];
    if (old && isSameList(old.cells, cells)) return old;
    return {
      wearer: isBlank(cells[wearer]) ? "" : String(cells[wearer]).trim(),
      layers: beneath === undefined || isBlank(cells[beneath]) ? null : layersIn(String(cells[beneath])),
      number: i + above,
      cells,
    };
  });
  const byWearer = new Map(
    [...grouped(chartRows, (row) => comparedName(row.wearer))].map(([name, own]) => {
      const old = before?.byWearer.get(name);
      return [name, old && isSameList(old, own) ? old : own];
    }),
  );
  latest.chart = { columns, measured, wide: block.wide, rows: chartRows, byWearer };
  return latest.chart;
}

const isSameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => Object.is(one, b[i]));

/** The number of a cell in the block, of the column of a role or of a measurement. */
export const cellOf = (chart: Chart, row: ChartRow, column: number) => ({
  argument: "chart",
  cell: row.number * chart.wide + column,
});

/** A wearer and a layer set in a sentence: "the widow over shift and stays". */
export const rowText = ({ wearer, layers }: ChartRow): string =>
  layers === null ? wearer : written`${wearer} over ${layersText(layers)}`;

/** The rows of a wearer. Refuses a wearer that the chart does not have, with the nearest name. */
export function rowsOf(chart: Chart, wearer: string): readonly ChartRow[] {
  const rows = chart.byWearer.get(comparedName(wearer));
  if (rows) return rows;
  const names = new Set(chart.rows.map((row) => row.wearer).filter((name) => name !== ""));
  throw new Refusal(
    names.size === 0
      ? phrase`the chart has no wearers yet: write their names in its first column and measure them`
      : phrase`the chart has no wearer called "${wearer.trim().slice(0, 40)}"${suggestion(wearer.trim(), names) || phrase`: measure them, and give them a row`}`,
  );
}

/** The rows among these over the same layers. */
export const rowsOver = (rows: readonly ChartRow[], layers: readonly string[]): readonly ChartRow[] =>
  rows.filter((row) => row.layers !== null && layersKey(row.layers) === layersKey(layers));

/** The one row of a wearer over these layers. Refuses layers the wearer was not measured over, and two rows alike. */
export function rowOver(chart: Chart, wearer: string, beneath: string): ChartRow {
  const rows = rowsOf(chart, wearer);
  if (!chart.columns.has("beneath"))
    throw new Refusal(
      phrase`the chart has no column "worn beneath", so nothing says over which layers its figures were taken: add the column`,
    );
  const found = rowsOver(rows, layersIn(beneath));
  if (found.length === 1) return found[0]!;
  if (found.length > 1) throw twoAlike(chart, found[1]!);
  const sets = rows.map((row) =>
    row.layers === null ? phrase`layers that are not written down` : asRead(layersText(row.layers)),
  );
  const listed = [...new Set(sets)].reduce((before, set) => phrase`${before}; over ${set}`);
  throw new Refusal(
    phrase`the chart has no row of ${rows[0]!.wearer} over ${layersText(layersIn(beneath))}, only over ${listed}`,
    // Where the missing row belongs, so that all figures that want it are one problem.
    cellOf(chart, rows[0]!, chart.columns.get("wearer")!),
  );
}

/** What is said of each of two rows alike: two wearers have one name, or one wearer has two rows of one layer set. */
export const alikeSentence = (row: ChartRow): string =>
  written`two rows are of ${rowText(row)}: where they are two people, give them different names; else delete the older row`;

export const twoAlike = (chart: Chart, second: ChartRow): Refusal =>
  new Refusal(alikeSentence(second), cellOf(chart, second, chart.columns.get("wearer")!));

interface Measured {
  readonly heading: string;
  readonly column: number;
}

/** Kept because many formulas take the same measurement, each of another wearer. */
const measurementsFound = rememberWithObjects<Measured>();

/** The column of a measurement, and its heading. Refuses a measurement that the chart does not have, with the nearest. */
export const measuredIn = (chart: Chart, measurement: string): Measured =>
  measurementsFound([chart], measurement, () => findMeasured(chart, measurement));

function findMeasured(chart: Chart, measurement: string): Measured {
  const wanted = headingText(measurement);
  if (wanted === "")
    throw new Refusal(phrase`measurement is empty: write its name as the chart's heading has it`);
  const measure = measureNamed(wanted);
  for (const [heading, column] of chart.measured)
    if (heading === wanted || (measure !== null && measureNamed(heading) === measure))
      return { heading, column };
  const near = misspeltPhrase(wanted, chart.measured.keys());
  throw new Refusal(
    phrase`the chart has no column "${wanted.slice(0, 40)}"${near ? isMeant(near) : suggestion(wanted, chart.measured.keys())}`,
  );
}

/** The figure in a cell of measurements. Returns null when the measurement was never taken. Refuses a value that is not a length. */
export function figureIn(chart: Chart, row: ChartRow, column: number, heading: string): number | null {
  const cell = row.cells[column];
  if (isBlank(cell)) return null;
  if (typeof cell === "number" && cell > 0) return cell;
  // A verdict may have this sentence.
  const given = `"${String(cell).slice(0, 24)}"`;
  throw new Refusal(
    typeof cell === "number"
      ? (say) =>
          written`the ${heading} of ${rowText(row)} must be a length above 0, not ${cell === 0 ? 0 : say(cell)}`
      : written`the ${heading} of ${rowText(row)} must be a length, not ${given}`,
    cellOf(chart, row, column),
  );
}

/** What a cell of a role holds, as a text; "" where it is blank or where the chart has no such column. */
export function roleText(chart: Chart, row: ChartRow, role: Role): string {
  const column = chart.columns.get(role);
  const cell = column === undefined ? null : row.cells[column];
  return isBlank(cell) ? "" : String(cell).trim();
}
