import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { expectation, knownFigures, measuringNote, requireMeasure, surveysOf } from "../survey/survey.ts";

/**
 * The likeliest value of a measurement nobody took, estimated from the measurements that were, in
 * the book's unit: the survey's multiple regression on them; the Working shows three residual
 * standard deviations either way. Without other measurements it is the survey's median. With data
 * "either" it is the mean of the women's and the men's value. The measurement's own row, if it is
 * among the rows, is ignored. Source: functions/survey/body-data.ts.
 */
export const MEASURE_GUESS = define({
  name: "MEASURE_GUESS",
  summary: "Estimates a measurement that nobody took from the wearer's other measurements.",
  source: "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public release, NATICK/TR-15/007",
  words: "missing estimate absent actor unknown predict stand-in mock-up",
  takes: {
    term: { kind: "text", about: "which measurement is missing, such as thigh girth" },
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
      about: "women's or men's measurements to go by",
      choices: ["female", "male", "either"],
      otherwise: "either",
    },
  },
  returns: "length",
  compute({ term, terms, values, data }, { measure, cm, doubt, estimates }) {
    const asked = requireMeasure(term);
    const size = cm(0.1);
    const known = new Map(knownFigures(terms, values, size));
    known.delete(asked);
    const found = surveysOf(data).map((survey) => expectation(survey, asked, known));
    if (found[0]!.others === 0)
      doubt(
        known.size === 0
          ? phrase`no other measurement of the wearer is given, so this is the middle one of all people measured, whatever the wearer's size`
          : phrase`the survey does not say how this goes with the others, so this is the middle one of all people measured, whatever the wearer's size`,
      );
    estimates(phrase`the ${asked} was guessed from the survey of bodies: measure the wearer before cutting`);
    measure("others", "other measurements used", found[0]!.others);
    measure("least", "the smallest value expected", Math.min(...found.map((one) => one.least)) * size);
    measure("most", "the largest value expected", Math.max(...found.map((one) => one.most)) * size);
    const likely = found.reduce((sum, one) => sum + one.likely, 0) / found.length;
    const note = measuringNote(asked);
    return measure(
      "likely",
      () => (note ? phrase`the likeliest value; ${note}` : phrase`the likeliest value`),
      Math.max(0, likely) * size,
    );
  },
  draw(_, { least = 0, most = 0, likely = 0 }) {
    const tall = most / 20;
    return [
      stroke([[0, 0], [most, 0]], "guide"),
      stroke([[least, -tall / 2], [least, tall / 2]], "guide", { label: phrase`smallest` }),
      stroke([[most, -tall / 2], [most, tall / 2]], "guide", { label: phrase`largest` }),
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
    "Cut a mock-up by this estimate, never the cloth: a real body may differ from it by as much as the Working says. The survey measured adult soldiers; not for children. Measure the wearer before cutting.",
});
