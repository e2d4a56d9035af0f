import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase, written } from "../phrase.ts";
import { bestFit, findOutlier, outlierText } from "../survey/outlier.ts";
import { isRelated, knownFigures, measureNamed, requireMeasure, surveysOf } from "../survey/survey.ts";
import { toCheck } from "../verdict.ts";
import { blameAmong } from "../wearers/misfits.ts";

/**
 * Whether a body measurement agrees with the wearer's other measurements: "ok", or the range that
 * would be expected, how far the value lies outside it, which slip would explain it, and a request
 * to measure again. The range is that of the regression on the other measurements, three residual
 * standard deviations either way. With no others to compare with, it is the survey's smallest and
 * largest value with one standard deviation to spare; that is never enough for an "ok", because
 * other measurements could tell more. Orders that held for everybody measured (hip height below
 * waist height, wrist less than upper arm) must hold too. It finds mixed-up units and swapped or
 * misread heights; it can't find a waist written 5 cm wrong, because bodies differ by more than
 * that. The measurement itself may be among the rows; rows that the survey does not know are
 * skipped. Refuses a term that is not in the survey. Source: functions/survey/body-data.ts.
 */
export const MEASURE_CHECK = define({
  name: "MEASURE_CHECK",
  summary: "Whether a body measurement is plausible beside the wearer's others, or should be taken again.",
  source:
    "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public release, NATICK/TR-15/007: 1986 women, 4082 men",
  words: "wrong mistake slip swapped inches centimetres typo plausible range verify tape chart",
  takes: {
    term: { kind: "text", about: "which measurement, such as waist girth, back waist length or stature" },
    value: { kind: "length", about: "the value measured", from: 0.1, to: 500 },
    terms: { kind: "text", about: "names of the wearer's measurements", many: true, blanks: true },
    values: {
      kind: "length",
      about: "the values of these measurements",
      from: 0.1,
      to: 500,
      many: true,
      blanks: true,
    },
    data: {
      kind: "text",
      about: "women's or men's measurements to compare with",
      choices: ["female", "male", "either"],
      otherwise: "either",
    },
  },
  returns: "verdict",
  compute({ term, value, terms, values, data }, { measure, cm, say, points }) {
    const asked = requireMeasure(term);
    const size = cm(0.1);
    const figures = new Map(knownFigures(terms, values, size)).set(asked, value / size);
    const known = new Map(figures);
    known.delete(asked);
    const surveys = surveysOf(data);
    const found = findOutlier(surveys, asked, value / size, known);
    const expected = found?.expected ?? bestFit(surveys, asked, value / size, known);
    measure("others", "other measurements it was compared with", expected.others);
    measure("likely", "the likeliest value beside them", expected.likely * size);
    measure("least", "the smallest value expected", expected.least * size);
    measure("most", "the largest value expected", expected.most * size);
    if (!found && (known.size === 0 || (expected.others === 0 && isRelated(asked))))
      return toCheck(
        written`there is no other measurement to compare ${asked} with; it lies between ${say(expected.least * size)} and ${say(expected.most * size)}, as for any adult; give some of the wearer's other measurements`,
      );
    if (!found) return "ok";
    const { swap, suspect } = blameAmong(surveys, asked, figures, found);
    const first = suspect ?? asked;
    const cell = terms.findIndex((one) => one !== null && measureNamed(one) === first);
    if (!swap)
      points(
        first === asked ? { argument: "value", cell: 0 } : { argument: "values", cell },
        phrase`${first} does not fit the wearer's other measurements: measure it first`,
      );
    return toCheck(
      outlierText(asked, figures, { ...found, swap, suspect }, (millimetres, ...beside) =>
        say(millimetres * size, ...beside.map((one) => one * size)),
      ),
    );
  },
  draw({ value }, { least = 0, most = 0, likely = 0 }) {
    const [low, high] = [Math.min(least, value), Math.max(most, value)];
    const tall = (high - low) / 20;
    return [
      stroke([[low, 0], [high, 0]], "guide"),
      stroke([[least, -tall], [least, tall], [most, tall], [most, -tall], [least, -tall]], "guide", { label: phrase`expected` }),
      stroke([[likely, -tall], [likely, tall]], "guide", { label: phrase`likeliest` }),
      stroke([[value, -2 * tall], [value, 2 * tall]], "cut", { label: phrase`taken` }),
      dimension([0, 3 * tall], [least, 3 * tall], least > 0 ? { shows: "least" } : {}),
      dimension([0, 4 * tall], [most, 4 * tall], { shows: "most" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: {
        term: "waist girth",
        value: 30,
        terms: ["hip girth", "bust girth", "stature"],
        values: [40, 37, 65],
        data: "female",
      },
      gives: "ok",
      because: "within the range expected beside these three",
    },
    {
      given: {
        term: "waist girth",
        value: 31,
        terms: ["hip girth", "bust girth", "stature"],
        values: [102, 94, 165],
        data: "female",
      },
      unit: "cm",
      gives: "check: waist girth of 31 cm is",
      because: "31 in written in a chart of centimetres: 78.7 cm would fit",
    },
    {
      given: { term: "waist height", value: 83, terms: ["hip height", "stature"], values: [100, 166] },
      unit: "cm",
      gives: "check: hip height was",
      because: "the hip stood below the waist in all 6068 people: the two values are swapped",
    },
  ],
  cautions:
    "The survey measured soldiers, adults of 2010 to 2012, and not everybody is built like them: a measurement it finds odd may be quite right. Measure again, and believe the tape. Not for children.",
});
