/** Figures of a chart that do not fit those of the same wearer over other layers. */
import { isAbove, isBelow } from "../compared-figures.ts";
import { written } from "../phrase.ts";
import { measureNamed } from "../survey/survey.ts";
import { type Chart, type ChartRow, cellOf, roleText, rowText } from "./chart.ts";
import { type Fault, isFigure, type Said } from "./fault.ts";
import { isShaping, layersText } from "./layer-set.ts";
import { surveyFaults } from "./survey-faults.ts";

/** A layer is seldom thicker than this at the waist, in centimetres of its girth: common practice. */
const GAIN_OF_A_LAYER = 4;
/** Tapes differ by so much without anything being wrong, in centimetres. */
const SLACK = 0.5;
/** A waist or a bust is seldom laced to less than the first share of its girth, or built up to more than the second: common practice. */
const SHARES = [0.62, 1.6] as const;

/** Figures that do not fit those of the same wearer over other layers. */
export function layerFaults(chart: Chart, row: ChartRow, rows: readonly ChartRow[], words: Said): Fault[] {
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
  const both = written`the ${heading} of ${rowText(row)} is ${say(over, beneath)}, and over ${layersText(other.layers!)} ${say(beneath, over)}`;
  const measure = measureNamed(heading);
  const torso = measure === "waist girth" || measure === "bust girth";
  if (torso && (isBelow(over, beneath * SHARES[0]) || isAbove(over, beneath * SHARES[1])))
    return written`${both}: one of them may be in another unit or halved; measure both again`;
  const shaped = added.some(isShaping);
  if (!shaped && isBelow(over, beneath - cm(SLACK)))
    return written`${both}: a girth does not shrink under ${layersText(added)}; measure both again`;
  const laced = row.layers!.some(isShaping) && other.layers!.some(isShaping);
  return measure === "waist girth" &&
    laced &&
    !shaped &&
    isAbove(over - beneath, cm(GAIN_OF_A_LAYER) * added.length, over)
    ? written`${both}: ${layersText(added)} can't add ${say(over - beneath)}; was it laced alike? Measure both again`
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
    sentence: written`the ${layersText(shared)} of ${rowText(row)} were laced "${mine.slice(0, 24)}", and over ${layersText(other.layers!)} "${theirs.slice(0, 24)}": lace them alike and measure again`,
    at: [row, other].map((one) => cellOf(chart, one, column)),
  };
}
