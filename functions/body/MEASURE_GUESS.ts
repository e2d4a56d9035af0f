import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { expectation, knownFigures, measuringNote, requireMeasure, surveysOf } from "../survey/survey.ts";

/**
 * The likeliest figure of a measurement nobody took, from those that were, in the book's unit: the
 * survey's multiple regression on them, in the Working with three residual standard deviations
 * either way. With nothing to go by, the survey's median. With data "either" the mean of what
 * women's and men's figures give. The measurement's own row, if among the rows, is not looked at.
 * Source: functions/survey/body-data.ts.
 */
export const MEASURE_GUESS = define({
  name: "MEASURE_GUESS",
  summary: "A first guess at a measurement nobody took, from the wearer's others.",
  source: "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public release, NATICK/TR-15/007",
  words: "missing estimate absent actor unknown predict stand-in mock-up",
  takes: {
    term: { kind: "text", about: "which measurement is missing, such as thigh girth" },
    terms: { kind: "text", about: "names of the wearer's measurements", many: true, blanks: true },
    values: { kind: "length", about: "their figures", from: 0.1, to: 500, many: true, blanks: true },
    data: {
      kind: "text",
      about: "whose figures to go by",
      choices: ["female", "male", "either"],
      otherwise: "either",
    },
  },
  returns: "length",
  compute({ term, terms, values, data }, { measure, cm }) {
    const asked = requireMeasure(term);
    const size = cm(0.1);
    const known = new Map(knownFigures(terms, values, size));
    known.delete(asked);
    const found = surveysOf(data).map((survey) => expectation(survey, asked, known));
    measure("others", "measurements it goes by", found[0]!.others);
    measure("least", "the least that would be expected", Math.min(...found.map((one) => one.least)) * size);
    measure("most", "the most that would be expected", Math.max(...found.map((one) => one.most)) * size);
    const likely = found.reduce((sum, one) => sum + one.likely, 0) / found.length;
    const note = measuringNote(asked);
    return measure("likely", `the likeliest figure${note ? `; ${note}` : ""}`, Math.max(0, likely) * size);
  },
  draw(_, { least = 0, most = 0, likely = 0 }) {
    const tall = most / 20;
    return [
      stroke([[0, 0], [most, 0]], "guide"),
      stroke([[least, -tall / 2], [least, tall / 2]], "guide", { label: "least" }),
      stroke([[most, -tall / 2], [most, tall / 2]], "guide", { label: "most" }),
      stroke([[likely, -tall], [likely, tall]], "seam"),
      dimension([0, 2 * tall], [likely, 2 * tall], { shows: "likely" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { term: "thigh girth", terms: ["hip girth"], values: [100], data: "female" },
      gives: 60.14684,
      within: 0.0005,
      unit: "cm",
      because: "the survey's line thigh = 0.690918 hip − 89.4496 mm",
    },
    {
      given: { term: "cervical height", terms: ["stature"], values: [65], data: "female" },
      gives: (0.912558 * 1651 - 90.4097) / 25.4,
      within: 0.0002,
      because: "the survey's line cervical height = 0.912558 stature − 90.4097 mm",
    },
  ],
  cautions:
    "A guess to cut a mock-up by, never the cloth: single bodies differ from it by as much as the Working says. From adults, soldiers; not for children. Measure the wearer before cutting.",
});
